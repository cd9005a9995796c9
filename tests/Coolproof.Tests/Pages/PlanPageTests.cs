using System.Net;
using System.Text.Json.Nodes;
using Coolproof.Advice.HowMany;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The plan of a day on its page: asked by its address, kept as entries, taken back from the history.</summary>
public class PlanPageTests
{
    static readonly string[] Names = ["a", "b", "cut"];

    [Fact]
    public async Task A_plan_for_a_question_becomes_the_order_of_a_day_and_is_taken_back_from_the_history()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, options) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}");
        Assert.Contains("runs of 3 options, 16:00 to", reader.Heading);
        await reader.SendAsync("Begin a day with this plan");
        var day = reader.Notebook.Days.Single();
        Assert.StartsWith($"/day/{day.Id}", reader.Path);
        Assert.Equal((question, 960, 1200, 20, 360), (day.Question, day.FromMin, day.ToMin, day.CoolMin, day.DriveS));
        Assert.Equal(options[2], day.Plan[^1]); // a cut shell comes last
        Assert.True(day.Plan.Count >= 6 && options.All(option => day.Plan.Count(one => one == option) is 2 or 3));
        Assert.Equal(day.Plan.Select(id => reader.Notebook.Find<NotedOption>(id)!.Name), reader.Page.QuerySelectorAll("#day-runs ol.runs li .option").Select(name => name.TextContent.Trim()));

        await reader.GoAsync($"/plan/{day.Id}?{Query(options[..2], "from=16:00&to=18:00&drive=5&cool=15&swap=4&packs=6&chargers=2&charge=45&seed=3")}");
        await reader.SendAsync("Keep it in place of the old plan");
        Assert.Contains("This is the order of the day", reader.Text);
        Assert.DoesNotContain(options[2], reader.Notebook.Days.Single().Plan);
        await reader.GoAsync($"/history/{day.Id}");
        Assert.Contains("order of runs: ", reader.Text);
        await reader.SendAsync(reader.Page.QuerySelectorAll(".history form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First());
        Assert.Equal((day.Plan.Count, 1200), (reader.Notebook.Days.Single().Plan.Count, reader.Notebook.Days.Single().ToMin));
    }

    [Fact]
    public async Task The_page_and_the_command_line_plan_alike()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, options) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}?{Query(options, $"from=10:00&to=14:00&drive=6&cool=20&swap=4&packs=4&chargers=2&charge=45&seed=7&ref={options[1]}&last={options[2]}")}");
        var run = ProgramRun.Of(["plan", "--options", "a,b,cut", "--last", "cut", "--reference", "b", "--length", "4h", "--days", "0", "--random-seed", "7", "--json"]);
        var planned = JsonNode.Parse(run.Out)!["runs"]!.AsArray().Select(one => $"{one!["option"]} {one["goAt"]}");
        Assert.Equal(planned, reader.Page.QuerySelectorAll("#order tbody tr").Select(row => $"{row.QuerySelector("th")!.TextContent.Trim()} {row.QuerySelectorAll("td")[1].TextContent}"));
    }

    [Fact]
    public async Task What_a_field_can_not_be_is_said_beside_it_and_what_was_typed_stays()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, options) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}?{Query(options, "from=16:00&to=20:00&drive=six&cool=20&swap=4&packs=0&chargers=2&charge=45&seed=1")}");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Equal("six", reader.Page.QuerySelector("[name=drive]")!.GetAttribute("value"));
        Assert.Equal("true", reader.Page.QuerySelector("[name=drive]")!.GetAttribute("aria-invalid"));
        Assert.Contains("expected a whole number from 1 to 50", reader.Text);
        Assert.Null(reader.Page.QuerySelector("#order"));
        Assert.Empty(reader.Notebook.Days);
    }

    [Fact]
    public async Task A_day_too_short_for_all_says_what_to_leave_out_and_how_to_split_it()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, options) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}?{Query(options, "from=16:00&to=17:30&drive=6&cool=20&swap=4&packs=6&chargers=2&charge=45&seed=1&s0-1=30")}");
        Assert.Contains("too few for 3 options twice each", reader.Text);
        Assert.Contains("With this day only, leave out: ", reader.Text);
        Assert.Contains("Evening 2: ", reader.Text);
    }

    [Fact]
    public async Task The_run_sheet_has_a_row_a_run_and_is_typed_into_its_own_day()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, _) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}");
        await reader.SendAsync("Begin a day with this plan");
        var day = reader.Notebook.Days.Single();
        await reader.GoAsync($"/sheet/{day.Id}");
        Assert.Equal(day.Plan.Count, reader.Page.QuerySelectorAll(".sheet-table tbody tr").Length);
        Assert.Equal("16:00", reader.Page.QuerySelectorAll(".sheet-table tbody tr")[0].QuerySelectorAll("td")[1].TextContent);
        Assert.Contains("Power off first", reader.Text);

        await reader.GoAsync($"/paper?day={day.Id}");
        var rows = ((AngleSharp.Html.Dom.IHtmlTextAreaElement)reader.Page.QuerySelector("#paper-text")!).Value.Split('\n');
        Assert.Equal(1 + 3 * day.Plan.Count, rows.Count(row => row.Length > 0));
        // Two runs were driven: two readings of the first, one of the second; the other rows stay blank.
        (rows[1], rows[2], rows[4]) = (rows[1] + "71.5", rows[2] + "69.9", rows[4] + "64.2");
        await reader.SendAsync("Look through it", ("table", string.Join('\n', rows)));
        Assert.StartsWith("3 readings of 2 runs", reader.Heading);
        await reader.SendAsync("Keep these readings");
        var runs = reader.Notebook.RunsOf(reader.Notebook.Days.Single().Id);
        Assert.Equal(day.Plan.Take(2), runs.Select(run => run.Option!.Value));
        Assert.Equal([71.5, 69.9, 64.2], runs.SelectMany(run => run.Shots).Select(shot => shot.ReadC!.Value));
    }

    [Fact]
    public async Task How_many_rounds_are_enough_is_reckoned_in_the_background_and_can_be_stopped()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var (question, _) = await AskedAsync(pit);
        await reader.GoAsync($"/plan/{question}");
        await reader.SendAsync("Reckon it", ("do", "start"));
        Assert.Contains("Simulating 200 days", reader.Text);
        await reader.GoAsync($"/plan/{question}"); // loaded anew, it goes on
        await reader.SendAsync("Stop it", ("do", "stop"));
        Assert.Contains("It was stopped.", reader.Text);
    }

    [Fact]
    public async Task What_was_reckoned_is_there_and_whoever_listens_is_told()
    {
        await using var pit = await PitServer.StartAsync();
        var rounds = pit.Get<RoundsBoard>();
        var settings = new HowManySettings([new RehearsalOption("a"), new RehearsalOption("b")], [0, 1, 1, 0], Days: 4, Threads: 1);
        TaskCompletionSource told = new(TaskCreationOptions.RunContinuationsAsynchronously);
        rounds.Changed += () =>
        {
            if (rounds.Of("key") is { Promises: not null }) told.TrySetResult();
        };
        rounds.Start("key", settings);
        Assert.NotNull(rounds.Of("key"));
        await told.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        Assert.Equal(RoundsNeeded.Of(settings), rounds.Of("key")!.Promises);
        var (keys, now) = rounds.Since(0);
        Assert.Equal(["key"], keys);
        Assert.Empty(rounds.Since(now).Keys);
    }

    static async Task<(Guid Question, Guid[] Options)> AskedAsync(PitServer pit)
    {
        Guid question = Guid.CreateVersion7();
        Guid[] options = [.. Names.Select(_ => Guid.CreateVersion7())];
        using var kept = await pit.SendAsync(
            [.. options.Select((option, i) => PitServer.Entry("option.set", option, new() { ["name"] = Names[i], ["fans"] = 1, ["cantBeUndone"] = Names[i] == "cut" })),
            PitServer.Entry("question.set", question, new() { ["text"] = "which?", ["options"] = new JsonArray([.. options.Select(option => (JsonNode)option.ToString())]) })]);
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return (question, options);
    }

    static string Query(IEnumerable<Guid> options, string rest) => string.Join('&', options.Select(option => $"o={option}")) + "&" + rest;
}
