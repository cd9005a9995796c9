using Coolproof.Board;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The page of forecasts before there is a verdict, while a round is hidden, and with what the motor's card tells.</summary>
public class ForecastPageTests
{
    const string Readings = "option,run,drive_min,ambient_c,read_c,stop_to_read_s\nbare can,1,6,27,79.8,9\nbare can,1,,,78.9,18\nblower,2,6,27,61,10\nbare can,3,6,27,80.1,9\n";

    [Fact]
    public async Task A_day_without_a_verdict_says_so_and_where_it_says_what_is_missing()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = Guid.CreateVersion7();
        using var kept = await pit.SendAsync(PitServer.Entry("day.set", day, new() { ["name"] = "Tuesday", ["date"] = "2026-06-13" }));
        await reader.GoAsync($"/forecast/{day}?air=38");
        Assert.Equal("No forecast yet", reader.Heading);
        Assert.Contains("there is none yet", reader.Text);
        Assert.Contains(reader.Page.QuerySelectorAll("a.button"), link => link.GetAttribute("href") == $"/verdict/{day}");
        Assert.Null(reader.Page.QuerySelector("#race-form"));
        await reader.GoAsync($"/forecast/{Guid.CreateVersion7()}");
        Assert.Equal("There is no such day or question here", reader.Heading);
    }

    [Fact]
    public async Task While_the_readings_are_being_judged_the_page_says_how_far_that_is_and_shows_the_forecast_afterwards()
    {
        using var go = new ManualResetEventSlim();
        await using var pit = await PitServer.StartAsync(judging: (table, how, progress, cancel) =>
        {
            progress.Report(new Evidence.JudgeProgress("weighing the readings", 0.4));
            go.Wait(cancel);
            return Evidence.Judge.Of(table, how, progress, cancel);
        });
        using var reader = new Reader(pit);
        var day = await KeptAsync(reader);
        for (var tries = 0; tries < 200 && pit.Get<VerdictBoard>().Of(day).Progress is not { Fraction: 0.4 }; tries++) await Task.Delay(50, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/forecast/{day}?air=38");
        Assert.Equal("Being worked out", reader.Heading);
        Assert.Contains("weighing the readings, 40 %", reader.Page.QuerySelector("[role=status]")!.TextContent);
        Assert.Equal($"verdict:{day}", reader.Page.QuerySelector("#race")!.GetAttribute("data-live")); // so it comes by itself
        Assert.Null(reader.Page.QuerySelector("#race-form, #race-table"));
        await reader.GoAsync($"/forecast/{day}/answer?air=38");
        Assert.Equal(System.Net.HttpStatusCode.NoContent, reader.Status);
        go.Set();
        await JudgedAsync(pit, day);
        await reader.GoAsync($"/forecast/{day}?air=38");
        Assert.Contains("in 100", reader.Text);
    }

    [Fact]
    public async Task While_a_round_is_hidden_so_is_its_forecast_in_every_part_until_it_is_asked_for()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await JudgedAsync(pit, reader);
        reader.Keep("coolproof-hide", "yes");
        await reader.GoAsync($"/forecast/{day}");
        Assert.Equal("Hidden until the round is done", reader.Heading);
        Assert.DoesNotContain("in 100", reader.Text);
        Assert.Null(reader.Page.QuerySelector("svg.picture, .picture svg, #race-table, #race-form"));
        await reader.GoAsync($"/forecast/{day}/answer?quick=true");
        Assert.Equal(System.Net.HttpStatusCode.NoContent, reader.Status);
        await reader.GoAsync($"/forecast/{day}?show=1");
        Assert.Contains("in 100", reader.Text);
        Assert.Equal("1", reader.Page.QuerySelector("#race-form [name=show]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task At_rest_there_are_minutes_of_cooling_and_a_map_for_each_option_and_not_while_a_slider_moves()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await JudgedAsync(pit, reader);
        await reader.GoAsync($"/forecast/{day}?in=c&air=30&race=6");
        Assert.Contains("Cool again after", reader.Text);
        var pictures = reader.Page.QuerySelectorAll("#race-pictures details");
        Assert.Equal(2, pictures.Length);
        Assert.All(pictures, one => Assert.All(["15", "45", "12", "magnet", "winding"], word => Assert.Contains(word, one.TextContent.Replace('\u00a0', ' '))));
        Assert.All(pictures, one => Assert.Contains("by air and length of race", one.TextContent));
        await reader.GoAsync($"/forecast/{day}/answer?in=c&air=30&race=6&quick=true");
        Assert.Contains("in 100", reader.Page.QuerySelector("#race-table")!.TextContent);
        Assert.DoesNotContain("Cool again", reader.Page.DocumentElement.TextContent);
        Assert.Null(reader.Page.QuerySelector("#race-pictures"));
    }

    [Fact]
    public async Task Limits_come_from_the_motors_card_where_it_has_them_and_what_is_unknown_is_said_to_be_assumed()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await JudgedAsync(pit, reader);
        await reader.GoAsync($"/forecast/{day}");
        Assert.Contains("class unknown: E assumed", reader.Text);
        Assert.Contains("grade unknown: M assumed", reader.Text);

        var motor = Guid.CreateVersion7();
        await SetAsync(pit, "motor.set", motor, ("name", "13.5 turns"), ("insulation", "H"), ("magnetGrade", "N42SH"), ("canLimitC", 85));
        await SetAsync(pit, "day.set", day, ("motor", motor.ToString()));
        await reader.GoAsync($"/forecast/{day}");
        Assert.Contains("winding: class H by the motor’s card; magnet: grade SH by the motor’s card", reader.Text);
        Assert.All(["passes 85?", "passes 180?", "passes 150?"], limit => Assert.Contains(limit, reader.Text));
        Assert.DoesNotContain("assumed", reader.Text);
        await reader.GoAsync($"/forecast/{day}?insulation=B"); // what is chosen on the page goes first
        Assert.Contains("winding: class B;", reader.Text);

        await SetAsync(pit, "motor.set", motor, ("insulation", "like the old one"), ("magnetGrade", "N52"), ("windingLimitC", 110));
        await reader.GoAsync($"/forecast/{day}");
        Assert.Contains("winding: on the motor’s card; magnet: plain grade by the motor’s card", reader.Text);
        Assert.All(["passes 110?", "passes 80?"], limit => Assert.Contains(limit, reader.Text));
        await SetAsync(pit, "motor.set", motor, ("windingLimitC", null), ("magnetGrade", "")); // words that name no class are no class
        await reader.GoAsync($"/forecast/{day}");
        Assert.Contains("class unknown: E assumed", reader.Text);
        Assert.Contains("grade unknown: M assumed", reader.Text);
    }

    [Fact]
    public async Task Earlier_days_are_in_the_forecast_where_the_device_or_the_address_puts_them_first()
    {
        using var go = new ManualResetEventSlim();
        await using var pit = await PitServer.StartAsync(together: (table, before, alone, how, progress, cancel) =>
        {
            progress.Report(new Evidence.JudgeProgress("weighing all days together", 0.5));
            go.Wait(cancel);
            return Evidence.Judge.Together(table, before, alone, how, progress, cancel);
        });
        using var reader = new Reader(pit);
        var (_, day) = (await KeptAsync(reader, Named("Monday", 0)), await JudgedAsync(pit, await KeptAsync(reader, Named("Tuesday", 0.6))));
        await reader.GoAsync($"/forecast/{day}?air=38");
        var alone = reader.Heading;
        Assert.Null(reader.Page.QuerySelector("#with-earlier"));
        Assert.Equal("alone", reader.Page.QuerySelector("#race-form [name=days] [selected]")!.GetAttribute("value"));
        Assert.Contains("this day with an earlier day", reader.Page.QuerySelector("#race-form [name=days]")!.TextContent);

        await reader.GoAsync($"/forecast/{day}?air=38&days=together"); // not weighed yet: it says so, and reckons nothing
        for (var tries = 0; tries < 200 && pit.Get<VerdictBoard>().Of(day).Earlier?.Progress is not { Fraction: 0.5 }; tries++) await Task.Delay(50, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/forecast/{day}?air=38&days=together");
        Assert.Equal("Being worked out", reader.Heading);
        Assert.Contains("together with your earlier ones: weighing all days together, 50 %", reader.Text);
        Assert.Contains(reader.Page.QuerySelectorAll("#race a"), link => link.GetAttribute("href") == $"/forecast/{day}?air=38&days=alone");
        await reader.GoAsync($"/forecast/{day}/answer?air=38&days=together");
        Assert.Equal(System.Net.HttpStatusCode.NoContent, reader.Status);

        go.Set();
        for (var tries = 0; tries < 600 && pit.Get<VerdictBoard>().Of(day).Earlier?.Together is null; tries++) await Task.Delay(100, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/forecast/{day}?air=38&days=together");
        var said = reader.Page.QuerySelector("#with-earlier")!.TextContent.Replace('\u00a0', ' ');
        Assert.StartsWith("With an earlier day (Monday). From this day alone: In a race of ", said);
        Assert.Contains(alone.Replace('\u00a0', ' ').Split(" (")[0][..40], said);
        Assert.Contains(", with an earlier day", reader.Page.QuerySelector(".kicker")!.TextContent);
        Assert.Equal("together", reader.Page.QuerySelector("#race-form [name=days] [selected]")!.GetAttribute("value"));
        await reader.GoAsync($"/forecast/{day}/answer?air=38&days=together&quick=true");
        Assert.StartsWith("With an earlier day (Monday).", reader.Page.QuerySelector("#with-earlier")!.TextContent);

        reader.Keep("coolproof-earlier", "yes"); // as a tap on the verdict's page keeps it
        await reader.GoAsync($"/forecast/{day}?air=38");
        Assert.NotNull(reader.Page.QuerySelector("#with-earlier"));
        await reader.GoAsync($"/forecast/{day}?air=38&days=alone"); // the address goes first
        Assert.Null(reader.Page.QuerySelector("#with-earlier"));
    }

    [Fact]
    public async Task Where_days_can_t_be_judged_together_the_forecast_is_of_the_day_alone_and_says_why()
    {
        await using var pit = await PitServer.StartAsync(together: (_, _, _, _, _, _) => new Evidence.NotConverged("the day as a whole", "The tries did not agree.", "Drive on."));
        using var reader = new Reader(pit);
        var (_, day) = (await KeptAsync(reader, Named("Monday", 0)), await JudgedAsync(pit, await KeptAsync(reader, Named("Tuesday", 0.6))));
        reader.Keep("coolproof-earlier", "yes");
        await reader.GoAsync($"/forecast/{day}?air=38");
        for (var tries = 0; tries < 600 && pit.Get<VerdictBoard>().Of(day).Earlier?.Judgement is null; tries++) await Task.Delay(50, TestContext.Current.CancellationToken);
        await reader.GoAsync($"/forecast/{day}?air=38");
        Assert.Contains("in 100", reader.Text);
        Assert.StartsWith("From this day alone: together with an earlier day (Monday) no answer is given.", reader.Page.QuerySelector("#not-together")!.TextContent);
        Assert.Contains("the day as a whole", reader.Page.QuerySelector("#not-together")!.TextContent);
    }

    // The readings on a day with a name, so much hotter.
    static string Named(string day, double hotterK)
    {
        var rows = new[] { ("bare can", 1, 79.8), ("bare can", 1, 78.9), ("blower", 2, 61), ("bare can", 3, 80.1), ("blower", 4, 61.4) };
        return "day,option,run,drive_min,ambient_c,read_c,stop_to_read_s\n" + string.Concat(rows.Select((row, place) => System.FormattableString.Invariant($"{day},{row.Item1},{row.Item2},6,27,{row.Item3 + hotterK:0.0},{9 + place}\n")));
    }

    static async Task SetAsync(PitServer pit, string kind, Guid about, params (string Name, object? Value)[] fields)
    {
        System.Text.Json.Nodes.JsonObject body = [];
        foreach (var (name, value) in fields) body[name] = System.Text.Json.JsonSerializer.SerializeToNode(value);
        using var kept = await pit.SendAsync(PitServer.Entry(kind, about, body));
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    // A day of two options, the second still to be driven again: judged, its round not done.
    static async Task<Guid> JudgedAsync(PitServer pit, Reader reader) => await JudgedAsync(pit, await KeptAsync(reader));

    static async Task<Guid> KeptAsync(Reader reader, string readings = Readings)
    {
        Guid[] before = [.. reader.Notebook.Days.Select(day => day.Id)];
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", readings));
        await reader.SendAsync("Keep these readings");
        return reader.Notebook.Days.Select(day => day.Id).Except(before).Single();
    }

    static async Task<Guid> JudgedAsync(PitServer pit, Guid day)
    {
        for (var tries = 0; tries < 600; tries++)
        {
            if (pit.Get<VerdictBoard>().Of(day).Judgement is Evidence.Judged) return day;
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
        Assert.Fail("no verdict after two minutes");
        return day;
    }
}
