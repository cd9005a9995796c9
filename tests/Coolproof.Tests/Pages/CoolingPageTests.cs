using System.Net;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>How long to cool, on its page.</summary>
public class CoolingPageTests
{
    [Fact]
    public async Task The_page_says_the_same_minutes_as_the_command_and_what_the_next_run_inherits()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await DayAsync(pit);
        await reader.GoAsync($"/cooldown/{day}?air=27&can=70&within=3&wait=12&by=pit-fan&m1=6&c1=44&m2=&c2=&option=");
        var run = ProgramRun.Of(["cooldown", "--air", "27C", "--can", "70C", "--wait", "12min", "--look", "6min=44C", "--by", "pit-fan", "--json"]);
        var ways = JsonNode.Parse(run.Out)!["ways"]!.AsArray();
        var rows = reader.Page.QuerySelectorAll("#ways tbody tr");
        Assert.Equal(4, rows.Length);
        foreach (var (way, row) in ways.Zip(rows))
        {
            var promised = way!["promisedMin"]?.GetValue<double>();
            Assert.Equal(promised is { } minutes ? $"{Math.Ceiling(minutes):0} min" : "over 90 min", row.QuerySelector("td")!.TextContent);
            Assert.StartsWith($"{way["inheritsK"]!.GetValue<double>():0.0} °C".Replace('-', '−'), row.QuerySelectorAll("td")[3].TextContent);
        }
        Assert.Contains("but the core is still at", reader.Text);
        Assert.DoesNotContain("Look at the can after six minutes", reader.Text); // it was looked at
    }

    [Fact]
    public async Task The_page_says_when_to_look_at_the_can_as_the_command_does()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync($"/cooldown/{await DayAsync(pit)}");
        Assert.Contains("Look at the can after six minutes, whatever cools it", reader.Text);
        const string When = "six minutes after the halt tells most with every way of cooling, blown on 1, 2 and 3 minutes as well";
        Assert.Contains(When, reader.Page.QuerySelector("#when-to-look")!.TextContent);
        Assert.Contains(When, string.Join(' ', ProgramRun.Good("cooldown", "--help").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
    }

    [Fact]
    public async Task A_look_without_its_minutes_and_a_can_below_the_air_are_said_where_they_stand()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await DayAsync(pit);
        await reader.GoAsync($"/cooldown/{day}?air=27&can=25&within=3&wait=12&m1=&c1=44");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        Assert.Contains("there is nothing to cool", reader.Text);
        Assert.Contains("type both", reader.Text);
        Assert.Equal("25", reader.Page.QuerySelector("[name=can]")!.GetAttribute("value"));
        Assert.Null(reader.Page.QuerySelector("#ways"));
    }

    [Fact]
    public async Task Who_reads_fahrenheit_types_and_reads_it()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        var day = await DayAsync(pit);
        await reader.GoAsync($"/cooldown/{day}?air=27&can=70&within=3&wait=12");
        var celsius = reader.Page.QuerySelector("#ways td")!.TextContent;
        reader.Keep("coolproof-look", "theme=&units=f&mass=g&hand=right");
        await reader.GoAsync($"/cooldown/{day}?air=80.6&can=158&within=5.4&wait=12");
        Assert.Equal(celsius, reader.Page.QuerySelector("#ways td")!.TextContent);
        Assert.Contains("within 5.4 °F of the air, 80.6 °F", reader.Text);
    }

    static async Task<Guid> DayAsync(PitServer pit)
    {
        var day = Guid.CreateVersion7();
        using var kept = await pit.SendAsync(PitServer.Entry(EntryKind.DaySet, day, new() { ["date"] = "2026-06-13" }));
        Assert.True(kept.IsSuccessStatusCode);
        return day;
    }
}
