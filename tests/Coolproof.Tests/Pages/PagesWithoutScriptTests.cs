using System.Net;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>Everything that pages ask for can be given without script, and becomes entries.</summary>
public class PagesWithoutScriptTests
{
    const string Nasty = "<script>alert('x')</script> & \"clamp\"";

    [Fact]
    public async Task A_question_is_asked_options_are_listed_and_their_money_and_grams_are_summed()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/");
        Assert.Contains("Ask a question", reader.Heading);
        await reader.SendAsync("Ask", ("text", "does opening the shell pay?"), ("sort", "pays"));
        Assert.StartsWith("/question/", reader.Path);
        Assert.Equal("does opening the shell pay?", reader.Heading);
        await reader.SendAsync("List it", ("name", "bare can"), ("price", "0"), ("massG", "0"));
        await reader.SendAsync("List it", ("name", Nasty), ("price", "12,50"), ("massG", "31"));
        Assert.Contains("All 2 together: 12.50 in money and 31 g.", reader.Text);
        Assert.Contains(Nasty, reader.Text); // shown as text ...
        Assert.Empty(reader.Page.QuerySelectorAll("main script")); // ... and never as markup
        Assert.Equal(["bare can", Nasty], reader.Notebook.Questions.Single().Options.Select(id => reader.Notebook.Find<NotedOption>(id)!.Name));
    }

    [Fact]
    public async Task A_question_or_an_option_without_words_is_refused_in_sight_and_a_question_without_readings_leads_to_them()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/");
        await reader.SendAsync("Ask", ("text", "  "));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Contains("nothing is typed here: expected something like “which mount", reader.Page.QuerySelector(".fault[role=alert]")!.TextContent);
        Assert.Empty(reader.Notebook.Questions);
        await reader.SendAsync("Ask", ("text", "which?"));
        await reader.SendAsync("List it", ("name", ""));
        Assert.NotNull(reader.Page.QuerySelector(".fault[role=alert]"));
        Assert.Empty(reader.Notebook.Options);
        await reader.SendAsync("List it", ("name", "bare can"));
        await reader.SendAsync("List it", ("name", "fan"));
        Assert.DoesNotContain("together", reader.Text); // neither price nor mass is noted
        Assert.Equal("Plan the day", reader.Page.QuerySelector("main .act a.button")!.TextContent);
        Assert.DoesNotContain("CSV", reader.Text);
        var question = reader.Notebook.Questions.Single().Id;
        await reader.GoAsync($"/verdict/{question}");
        for (var tries = 0; tries < 100 && reader.Heading != "No reading yet"; tries++)
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
            await reader.GoAsync($"/verdict/{question}");
        }
        Assert.Equal("No reading yet", reader.Heading);
        Assert.DoesNotContain("type one row", reader.Text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_readings_of_a_question_are_taken_away_as_the_table_that_can_be_brought()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/");
        await reader.SendAsync("Try the demo");
        var table = reader.Page.QuerySelectorAll("main .act a").Single(link => link.TextContent.Contains("CSV", StringComparison.Ordinal));
        using var client = new HttpClient { BaseAddress = pit.Address };
        client.DefaultRequestHeaders.Add("Cookie", pit.CookieOf("reader"));
        using var answer = new MemoryStream(await client.GetByteArrayAsync(table.GetAttribute("href"), TestContext.Current.CancellationToken));
        var read = Notebook.ReadingsTableReader.Read(answer, null);
        Assert.True(read.Understood);
        Assert.Equal(NotebookTable.Of(reader.Notebook, question: DemoNotebook.Question).Table.Runs.Sum(run => run.Readings.Count), read.Table!.Runs.Sum(run => run.Readings.Count));
    }

    [Fact]
    public async Task What_is_refused_is_said_beside_its_field_what_was_typed_stays_and_nothing_is_kept()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/packs");
        await reader.SendAsync("Keep the pack", ("name", "pack 1"), ("capacityMah", "lots"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Contains("lots is no number", reader.Text);
        Assert.Contains(reader.Page.QuerySelectorAll("input"), input => input.GetAttribute("name") == "capacityMah" && input.GetAttribute("value") == "lots" && input.GetAttribute("aria-invalid") == "true");
        Assert.Contains(reader.Page.QuerySelectorAll("input"), input => input.GetAttribute("value") == "pack 1");
        Assert.Empty(reader.Notebook.Packs);
        await reader.SendAsync("Keep the pack", ("capacityMah", "5000"));
        Assert.Equal(5000, reader.Notebook.Packs.Single().CapacityMah);
    }

    [Fact]
    public async Task A_form_that_was_open_for_long_sets_nothing_back_that_another_device_changed()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var option = Guid.CreateVersion7();
        await pit.SendAsync(PitServer.Entry("option.set", option, new() { ["name"] = "blower", ["price"] = 20, ["massG"] = 40 }, at: "2026-01-01T00:00:00.000Z"));
        await reader.GoAsync($"/option/{option}");
        await pit.SendAsync(PitServer.Entry("option.set", option, new() { ["price"] = 25 }, at: "2026-01-01T00:00:01.000Z"));
        await pit.Get<Board.NotebookBoard>().ReachAsync(await pit.Store.CursorAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        await reader.SendAsync("Keep", ("massG", "41"));
        Assert.Equal((25, 41), (reader.Notebook.Find<NotedOption>(option)!.Price, reader.Notebook.Find<NotedOption>(option)!.MassG));
    }

    [Fact]
    public async Task Units_follow_the_device_and_what_is_kept_is_in_celsius_and_grams()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/settings");
        await reader.SendAsync("Keep", ("units", "f"), ("mass", "oz"), ("theme", "sun"));
        Assert.Equal("sun", reader.Page.DocumentElement.GetAttribute("data-theme"));
        await reader.GoAsync("/vehicle");
        await reader.SendAsync("Keep the motor", ("name", "13.5 turns"), ("canLimitC", "185"), ("massG", "5.82"));
        var motor = reader.Notebook.Motors.Single();
        Assert.Equal(85, motor.CanLimitC!.Value, 6);
        Assert.Equal(165, motor.MassG!.Value, 0);
        Assert.Contains(reader.Page.QuerySelectorAll("input"), input => input.GetAttribute("name") == "canLimitC" && input.GetAttribute("value") == "185");
    }

    [Fact]
    public async Task A_late_number_a_charge_and_missing_air_each_have_the_one_action_that_ends_them()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        Guid day = Guid.CreateVersion7(), run = Guid.CreateVersion7(), shot = Guid.CreateVersion7(), option = Guid.CreateVersion7(), pack = Guid.CreateVersion7();
        using var kept = await pit.SendAsync(
            PitServer.Entry("option.set", option, new() { ["name"] = "bare can" }), PitServer.Entry("pack.set", pack, new() { ["name"] = "pack 1" }), PitServer.Entry("day.set", day, new() { ["name"] = "Tuesday", ["date"] = "2026-06-13" }),
            PitServer.Entry("run.set", run, new() { ["day"] = day.ToString(), ["option"] = option.ToString(), ["number"] = 1, ["pack"] = pack.ToString() }), PitServer.Entry("run.go", run, at: "2026-06-13T15:00:00.000Z"),
            PitServer.Entry("run.stop", run, new() { ["by"] = "horn" }, at: "2026-06-13T15:06:00.000Z"), PitServer.Entry("run.halt", run, at: "2026-06-13T15:06:08.000Z"),
            PitServer.Entry("shot", shot, new() { ["run"] = run.ToString() }, at: "2026-06-13T15:06:20.000Z"));
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        await reader.GoAsync("/loose-ends");
        Assert.Equal("3 loose ends to tie up", reader.Heading);
        await reader.SendAsync(reader.Page.QuerySelectorAll("form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First(form => form.QuerySelector("[name=value]") is not null), ("value", "71.5"));
        await reader.SendAsync(reader.Page.QuerySelectorAll("form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First(form => form.QuerySelector("[name=mah]") is not null), ("mah", "1900"));
        await reader.SendAsync(reader.Page.QuerySelectorAll("form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First(form => form.QuerySelector("[name=airC]") is not null), ("airC", "27"));
        Assert.Equal("No loose ends", reader.Heading);
        var noted = reader.Notebook.Find<NotedRun>(run)!;
        Assert.Equal((71.5, 12, 1900, 27), (noted.Shots.Single().ReadC, noted.StopToReadS(noted.Shots.Single()), noted.ChargeBackMah, noted.Fields.Number("airC")));
    }

    [Fact]
    public async Task Anything_is_taken_back_from_the_history_and_brought_again()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/packs");
        await reader.SendAsync("Keep the pack", ("name", "pack 1"), ("cells", "2"));
        await reader.GoAsync("/history");
        await reader.SendAsync(reader.Page.QuerySelectorAll(".history form").OfType<AngleSharp.Html.Dom.IHtmlFormElement>().First());
        Assert.Empty(reader.Notebook.Packs);
        await reader.SendAsync("Bring it again");
        Assert.Equal("pack 1", reader.Notebook.Packs.Single().Name);
    }

    [Fact]
    public async Task A_race_reading_takes_one_form()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var option = Guid.CreateVersion7();
        await pit.SendAsync(PitServer.Entry("option.set", option, new() { ["name"] = "blower" }));
        await reader.GoAsync("/race");
        await reader.SendAsync("Keep it", ("value", "64"), ("minutesAfter", "3"));
        Assert.Contains("Kept.", reader.Text);
        var reading = reader.Notebook.RaceReadings.Single();
        Assert.Equal((option, 64, 180), (reading.Option, reading.ReadC, reading.AfterS));
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        await using var pit = await PitServer.StartAsync();
        using var answer = await pit.Paired.PostAsync("/demo", new FormUrlEncodedContent([]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        using var page = await pit.Paired.PostAsync("/packs", new FormUrlEncodedContent([new("_handler", "pack.set//new"), new("name", "pack 1")]), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.BadRequest, page.StatusCode);
        Assert.Equal(0, await pit.Store.CursorAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("question")]
    [InlineData("option")]
    [InlineData("day")]
    [InlineData("run")]
    [InlineData("verdict")]
    public async Task What_is_not_there_is_said_to_be_elsewhere_or_gone(string page)
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync($"/{page}/{Guid.CreateVersion7()}");
        Assert.StartsWith("There is no such", reader.Heading);
        Assert.Contains("Nothing is lost", reader.Text);
    }
}
