using System.Net;
using Coolproof.Notebook;
using Coolproof.Pages.Spending;
using Coolproof.Tests.Serving;

namespace Coolproof.Tests.Pages;

/// <summary>The page of parts and money: it says what the command says, and what can't be right in the form's words.</summary>
public class SpendPageTests
{
    [Fact]
    public async Task By_guesses_alone_it_says_what_the_search_says_of_the_same_sheet()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/spend");
        Assert.Equal(HttpStatusCode.OK, reader.Status);
        var sheet = SpendSheetReader.Read(SpendFields.File(NotebookParts.MadeUp).ToJsonString()).Asked!;
        var answer = Advice.Spending.BestUse.Of(sheet, null, 1);
        Assert.Equal(Words.SpendPage.Sentence(answer, new("€", MassUnitChoice.Gram), new(TemperatureUnitChoice.Celsius)), Plain(reader.Heading));
        Assert.Contains("made up", reader.Text);
        Assert.Contains("Class rules, makers' limits", reader.Text);
        Assert.NotEmpty(reader.Page.QuerySelectorAll("#spend-head svg"));
        Assert.Equal(Words.SpendPage.Shown(answer).Length, reader.Page.QuerySelectorAll("#spend-steps tbody tr").Length);
    }

    [Fact]
    public async Task Less_money_and_fewer_grams_are_kept_to_and_a_lap_is_told_once_it_is_typed()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/spend?money=20&grams=40");
        Assert.StartsWith("Within 20 € and 40 g over the minimum: finned clamp", Plain(reader.Heading));
        await reader.GoAsync("/spend?cur=€&money=50&lap=0.3&base=bare+can&n1=fan&e1=10&g1=50&k1=8");
        Assert.Contains("A lap takes 0.15 s longer with it", Plain(reader.Heading)); // 50 g at 0.3 s for 100 g
        await reader.GoAsync("/spend?min=1500&car=1480&lap=0.3&n1=fan&e1=10&g1=50&k1=8");
        Assert.Contains("A lap takes 0.09 s longer with it", Plain(reader.Heading)); // 20 of the 50 g don't count
    }

    [Fact]
    public async Task Everything_that_cant_be_right_is_named_by_part_and_label()
    {
        await using var pit = await PitServer.StartAsync();
        using var reader = new Reader(pit);
        await reader.GoAsync("/spend?money=some&n1=clamp&e1=14&n2=fan&e2=1e9&g2=15&w2=clamps&i2=3&min=1500");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, reader.Status);
        string[] faults = [.. reader.Page.QuerySelectorAll("#spend-head .wrong").Select(one => Plain(one.TextContent))];
        Assert.All(
            ["Money: found \"some\"", "clamp, mass: found nothing; expected its mass from 0 to 10000 g.", "fan, price: found \"1e9\"", "fan, needs: found \"clamps\"; expected names of parts in this list", "fan, your guess: cooler by: found nothing", "The car without any of these: found nothing"],
            said => Assert.Contains(faults, fault => fault.StartsWith(said, StringComparison.Ordinal)));
        Assert.DoesNotContain(faults, fault => fault.Contains("parts[", StringComparison.Ordinal) || fault.Contains("coolsK", StringComparison.Ordinal) || fault.Contains("massOz", StringComparison.Ordinal));
        Assert.Equal("1e9", reader.Page.QuerySelector("#spend-form [name=e2]")!.GetAttribute("value")); // so that it can be put right
        await reader.GoAsync("/spend?n1=&money=30");
        Assert.Equal("No parts yet", reader.Heading);
        await reader.GoAsync($"/spend/{Guid.CreateVersion7()}");
        Assert.Equal("There is no such day or question here", reader.Heading);
    }

    [Fact]
    public void A_sheet_comes_back_from_its_fields_as_it_was()
    {
        var sheet = SpendSheetReader.Read(File.ReadAllText(TestFiles.Of("demo", "spend.json"))).Asked!;
        var again = SpendSheetReader.Read(SpendFields.File(SpendFields.Of(sheet)).ToJsonString()).Asked!;
        Assert.Equal((sheet.Currency, sheet.Money, sheet.Grams, sheet.Rules, sheet.Base), (again.Currency, again.Money, again.Grams, again.Rules, again.Base));
        Assert.Equal(sheet.Parts.Select(part => $"{part.Part} {part.Owned} {string.Join('/', part.Places)} {string.Join('/', part.Excludes)} {string.Join('/', part.Needs)} {part.Fans} {part.OpensShell} {part.FitMin} {part.Soldering} {part.Cutting} {part.LapS} {part.CoolsK}"),
            again.Parts.Select(part => $"{part.Part} {part.Owned} {string.Join('/', part.Places)} {string.Join('/', part.Excludes)} {string.Join('/', part.Needs)} {part.Fans} {part.OpensShell} {part.FitMin} {part.Soldering} {part.Cutting} {part.LapS} {part.CoolsK}"));
        Assert.Equal(sheet.Driven.Select(one => $"{one.Option}: {string.Join('+', one.Parts)}"), again.Driven.Select(one => $"{one.Option}: {string.Join('+', one.Parts)}"));
    }

    static string Plain(string text) => text.Replace('\u00a0', ' ').Replace('\u202f', ' ');
}
