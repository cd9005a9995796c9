using System.Net;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The demo, rehearsals and tables that are brought.</summary>
public class MadeUpTests
{
    [Fact]
    public async Task The_demo_is_filled_in_marked_taken_out_and_filled_in_again()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/");
        await reader.SendAsync("Try the demo");
        Assert.Equal("Which of these keeps the motor coolest, and is it worth its money?", reader.Heading);
        Assert.Contains("made up", reader.Page.QuerySelector(".kicker")!.TextContent);
        Assert.Equal((4, 6), (reader.Notebook.Days.Count, reader.Notebook.Options.Count));
        await reader.GoAsync("/");
        Assert.Equal(5, reader.Page.QuerySelectorAll("#questions .tag, #days .tag").Length);
        await reader.SendAsync("Take all of it out");
        Assert.Equal((0, 0, 0, 0), (reader.Notebook.Days.Count, reader.Notebook.Options.Count, reader.Notebook.Questions.Count, reader.Notebook.Packs.Count));
        await reader.SendAsync("Try the demo");
        Assert.Equal((4, 6, 1), (reader.Notebook.Days.Count, reader.Notebook.Options.Count, reader.Notebook.Questions.Count));
    }

    [Fact]
    public async Task Rehearsals_share_their_made_up_options_and_leave_the_persons_own_alone()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var own = Guid.CreateVersion7();
        await pit.SendAsync(PitServer.Entry("option.set", own, new() { ["name"] = "bare can" }));
        await reader.GoAsync("/rehearse-not-there");
        Assert.Equal(HttpStatusCode.NotFound, reader.Status);
        await reader.GoAsync("/");
        await reader.SendAsync("Rehearse an evening");
        Assert.StartsWith("/day/", reader.Path);
        Assert.StartsWith("12 runs, ", reader.Heading); // an evening that was made up as a whole is over: nothing is next but its verdict
        Assert.StartsWith("/verdict/", reader.Page.QuerySelector("main .button.big")!.GetAttribute("href"));
        await reader.GoAsync("/");
        Assert.Equal("See what the rehearsal’s readings say.", reader.Heading);
        await reader.SendAsync("Rehearse an evening");
        Assert.Equal(2, reader.Notebook.Days.Count);
        Assert.Equal(7, reader.Notebook.Options.Count); // six made up, and the person's own of the same name as one of them
        Assert.DoesNotContain(reader.Notebook.Runs, run => run.Option == own);
        await reader.GoAsync("/");
        await reader.SendAsync("Take all of it out");
        Assert.Equal(own, Assert.Single(reader.Notebook.Options).Id);
        Assert.Empty(reader.Notebook.Days);
    }

    [Fact]
    public void The_demo_is_that_of_the_demo_files()
    {
        var notebook = PitNotebook.Of(DemoNotebook.Entries().Select((entry, i) => new StoredEntry(entry, Demo.DemoAuthor, i + 1, entry.At)));
        var table = NotebookTable.Of(notebook).Table;
        using var file = File.OpenRead(Path.Combine(TestFiles.Root, "demo", "demo-evenings.csv"));
        var read = Notebook.ReadingsTableReader.Read(file).Table!;
        Assert.Equal(read.Runs.SelectMany(run => run.Readings.Select(reading => (run.Option, run.DriveS, run.AirC, reading.ReadC, reading.StopToReadS))), table.Runs.SelectMany(run => run.Readings.Select(reading => (run.Option, run.DriveS, run.AirC, reading.ReadC, reading.StopToReadS))));
    }

    [Fact]
    public async Task A_table_with_faults_shows_each_beside_its_line_and_nothing_is_kept()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "option,run,drive_min,read_c\nbare can,1,6,71.8\nbare can,2,6,hot\n,3,6,70"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Contains("2 things in the table", reader.Heading);
        Assert.Equal(["bare can,2,6,hot", ",3,6,70"], reader.Page.QuerySelectorAll(".problems pre").Select(line => line.TextContent));
        Assert.Equal(0, reader.Notebook.Entries);
        Assert.Contains("bare can,2,6,hot", reader.Page.QuerySelector("#paper-text")!.TextContent); // to be put right where it stands
    }

    [Fact]
    public async Task A_clean_table_is_previewed_then_kept_once_however_often_it_is_brought()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        const string Table = "option,run,drive_min,ambient_c,read_c,stop_to_read_s\nbare can,1,6,27,71.8,9\nbare can,1,,,70.9,18\nblower,2,6,27,61,10\n";
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", Table));
        Assert.Equal("3 readings of 2 runs and 2 options were understood", reader.Heading);
        Assert.Equal(0, reader.Notebook.Entries);
        await reader.SendAsync("Keep these readings");
        Assert.StartsWith("/verdict/", reader.Path);
        Assert.Equal(2, reader.Notebook.Runs.Count);
        var entries = reader.Notebook.Entries;
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", Table));
        Assert.Contains("brought before", reader.Text);
        await reader.SendAsync("Keep these readings");
        Assert.Equal(entries, reader.Notebook.Entries);
    }

    [Theory]
    [InlineData("leave", 3, "71.8, 60.9, 80")] // what was there, and the run that is new
    [InlineData("replace", 3, "70.8, 60.9, 80")]
    [InlineData("both", 5, "60.9, 60.9, 70.8, 71.8, 80")] // two days without a date stand in no order
    [InlineData(null, 3, "71.8, 60.9, 80")] // nobody chose: nothing counts twice, nothing is touched
    public async Task A_table_that_was_edited_and_brought_again_says_which_runs_are_there(string? choice, int runs, string read)
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        const string First = "option,run,drive_min,ambient_c,read_c\nbare can,1,6,27,71.8\nblower,2,6,27,60.9\n";
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", First));
        Assert.Null(reader.Page.QuerySelector("#there"));
        await reader.SendAsync("Keep these readings");
        var day = reader.Path;
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", First.Replace("71.8", "70.8", StringComparison.Ordinal) + "bare can,3,6,27,80\n"));
        Assert.Contains("2 of these 3 runs are in the notebook already", reader.Text);
        if (choice is null) await reader.SendAsync("Keep these readings");
        else await reader.SendAsync("Keep these readings", ("there", choice));
        Assert.Equal(runs, reader.Notebook.Runs.Count);
        Assert.Equal(choice == "both" ? 2 : 1, reader.Notebook.Days.Count);
        if (choice != "both") Assert.Equal(day, reader.Path);
        var shown = reader.Notebook.Days.SelectMany(one => reader.Notebook.RunsOf(one.Id)).SelectMany(run => run.Shots).Select(shot => shot.ReadC!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(read, string.Join(", ", choice == "both" ? shown.Order() : shown));
    }

    [Fact]
    public async Task Two_sheets_that_only_share_the_names_of_their_runs_are_two_days()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "option,run,drive_min,read_c\nbare can,1,6,71.8\nblower,2,6,60.9\n"));
        await reader.SendAsync("Keep these readings");
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "option,run,drive_min,read_c\nbare can,1,6,73.1\nblower,2,6,64.2\n"));
        Assert.Null(reader.Page.QuerySelector("#there"));
        await reader.SendAsync("Keep these readings");
        Assert.Equal((2, 4), (reader.Notebook.Days.Count, reader.Notebook.Runs.Count));
    }

    [Fact]
    public async Task A_verdict_answers_the_question_draws_it_and_hides_from_a_driver_until_the_round_is_done()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", "option,run,drive_min,ambient_c,read_c,stop_to_read_s\nbare can,1,6,27,79.8,9\nbare can,1,,,78.9,18\nblower,2,6,27,61,10\nbare can,3,6,27,80.1,9\n"));
        await reader.SendAsync("Keep these readings");
        var about = reader.Path;
        for (var tries = 0; tries < 100 && reader.Page.QuerySelector(".picture") is null; tries++)
        {
            await Task.Delay(200, TestContext.Current.CancellationToken);
            await reader.GoAsync(about);
        }
        Assert.Contains("blower", reader.Heading);
        Assert.Equal(2, reader.Page.QuerySelectorAll(".picture svg").Length);
        Assert.Contains("Rough", reader.Text);
        Assert.Contains("Coolest first", reader.Text);
        reader.Keep("coolproof-device", Guid.NewGuid().ToString());
        await reader.GoAsync("/settings");
        await reader.SendAsync(reader.Page.QuerySelectorAll("form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First(form => form.QuerySelector("[name=role]") is not null), ("role", "driver"));
        await reader.GoAsync(about);
        Assert.Equal("Hidden until the round is done", reader.Heading);
        Assert.Null(reader.Page.QuerySelector(".picture"));
        await reader.GoAsync(about + "?show=1");
        Assert.Contains("blower", reader.Heading);
    }
}
