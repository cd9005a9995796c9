using System.Globalization;
using System.Net;
using Coolproof.Board;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The page of gearing: what it asks and what it takes from cards, what the class card allows, and what can't be right.</summary>
public class GearPageTests
{
    const string Readings = "option,run,drive_min,ambient_c,read_c,stop_to_read_s\nbare can,1,6,27,79.8,9\nbare can,1,,,78.9,18\nblower,2,6,27,61,10\nbare can,3,6,27,80.1,9\n";

    [Fact]
    public async Task Without_a_verdict_it_says_so_and_what_neither_runs_nor_cards_tell_is_asked_first()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = Guid.CreateVersion7();
        await SetAsync(pit, "day.set", day, ("name", "Tuesday"), ("date", "2026-06-13"));
        await reader.GoAsync($"/gear/{day}");
        Assert.Equal("Nothing to reckon from yet", reader.Heading);
        Assert.Null(reader.Page.QuerySelector("#gear-form"));
        await reader.GoAsync($"/gear/{Guid.CreateVersion7()}");
        Assert.Equal("There is no such day or question here", reader.Heading);
    }

    [Fact]
    public async Task It_asks_for_what_is_missing_takes_cards_and_never_passes_the_class_card()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await JudgedAsync(pit, reader);
        await reader.GoAsync($"/gear/{day}?show=1");
        Assert.Equal("First, the gears of the tests", reader.Heading);
        Assert.Equal(["pinion", "spur", "lap"], reader.Page.QuerySelectorAll("#gear-form > .field:not(.slider) input").Select(input => input.GetAttribute("name")));

        var card = Guid.CreateVersion7();
        await SetAsync(pit, "class.set", card, ("name", "Invented stock"), ("timingMinDeg", 20), ("timingMaxDeg", 25), ("ratioMin", 8.5), ("ratioMax", 9.5), ("massMinG", 1500));
        await SetAsync(pit, "vehicle.set", Guid.CreateVersion7(), ("name", "buggy"), ("pinion", 24), ("spur", 84), ("tyreDiameterMm", 84), ("class", card.ToString()));
        await reader.GoAsync($"/gear/{day}?show=1&timing=25&lap=26&can=95&insulation=H&magnet=SH");
        Assert.Equal(HttpStatusCode.OK, reader.Status);
        Assert.Contains("a pinion of", reader.Heading);
        Assert.Contains("Class card “Invented stock”, as you typed it: timing 20 to 25°, ratio 8.5 to 9.5, at least 1500 g", reader.Text);
        Assert.Equal("84, on the vehicle’s card", reader.Page.QuerySelector("#gear-form [name=tyre]")!.GetAttribute("placeholder"));
        Assert.Contains("an internal ratio of 2.6", reader.Page.QuerySelector("#gear-grounds")!.TextContent);
        double[] ratios = [.. reader.Page.QuerySelectorAll("#gear-every td[data-label=Ratio]").Select(cell => double.Parse(cell.TextContent, CultureInfo.InvariantCulture))];
        Assert.True(ratios.Length >= 4);
        Assert.All(ratios, ratio => Assert.InRange(ratio, 8.5, 9.5));
        Assert.Contains("Check the rule book", reader.Text);
        Assert.NotEmpty(reader.Page.QuerySelectorAll("#gear-drawing svg"));
        await reader.GoAsync($"/gear/{day}/answer?show=1&timing=25&lap=26&can=95&insulation=H&magnet=SH&quick=true");
        Assert.Contains("Rough, of few draws", reader.Page.DocumentElement.TextContent);
        Assert.Null(reader.Page.QuerySelector("#gear-every"));
    }

    [Fact]
    public async Task Everything_that_cant_be_right_is_named_in_the_forms_words_and_a_hidden_round_stays_hidden()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await JudgedAsync(pit, reader);
        await reader.GoAsync($"/gear/{day}?show=1&pinion=24.5&spur=84&tyre=8&from=30&to=20&near=25&air=hot");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        string[] faults = [.. reader.Page.QuerySelectorAll("#gear-head .wrong").Select(one => one.TextContent.Replace('\u00a0', ' '))];
        Assert.All(
            ["Pinion in the tests: found “24.5”; expected a whole number from 6 to 80 teeth", "Driven tyres across: found “8”; expected 30 to 200 mm", "Pinions at hand: the smallest has more teeth", "Shafts apart: both", "Air in the shade: expected a number"],
            said => Assert.Contains(faults, fault => fault.StartsWith(said, StringComparison.Ordinal)));
        await reader.GoAsync($"/gear/{day}?show=1&pinion=24&spur=84&near=10&far=12");
        Assert.Contains("Give other pinions, another spur", reader.Text);
        await reader.GoAsync($"/gear/{day}?show=1&pinion=24&spur=84&race=20&air=45&can=50"); // much too hot: none is proposed, and none fails
        Assert.Equal(HttpStatusCode.OK, reader.Status);
        Assert.Contains("no pinion and timing asked about stays under every limit", reader.Heading);
        reader.Keep("coolproof-hide", "yes");
        await reader.GoAsync($"/gear/{day}?pinion=24&spur=84");
        Assert.Equal("Hidden until the round is done", reader.Heading);
        Assert.Null(reader.Page.QuerySelector("#gear-form, #gear-table, svg.picture"));
        await reader.GoAsync($"/gear/{day}/answer?pinion=24&spur=84");
        Assert.Equal(HttpStatusCode.NoContent, reader.Status);
    }

    static async Task SetAsync(PitServer pit, string kind, Guid about, params (string Name, object? Value)[] fields)
    {
        System.Text.Json.Nodes.JsonObject body = [];
        foreach (var (name, value) in fields) body[name] = System.Text.Json.JsonSerializer.SerializeToNode(value);
        using var kept = await pit.SendAsync(PitServer.Entry(kind, about, body));
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    static async Task<Guid> JudgedAsync(PitServer pit, Reader reader)
    {
        await reader.GoAsync("/paper");
        await reader.SendAsync("Look through it", ("table", Readings));
        await reader.SendAsync("Keep these readings");
        var day = reader.Notebook.Days.Single().Id;
        for (var tries = 0; tries < 600 && pit.Get<VerdictBoard>().Of(day).Judgement is not Evidence.Judged; tries++) await Task.Delay(200, TestContext.Current.CancellationToken);
        return day;
    }
}
