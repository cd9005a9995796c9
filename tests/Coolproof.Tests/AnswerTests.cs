using Coolproof.Commands;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Tests;

/// <summary>What is said, drawn and returned for each thing that can come of judging.</summary>
public sealed class AnswerTests : IDisposable
{
    static readonly ReadingsTable Plain = new([], [], []);

    readonly StringWriter output = new();
    readonly StringWriter error = new();
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-test-");

    public void Dispose() => folder.Delete(recursive: true);

    int Answer(Judgement judgement, CompareRequest? request = null, ReadingsTable? table = null) =>
        new Comparison(new Terminal(() => Stream.Null, output, error, new Ink(false), 100, false)).Answer(judgement, table ?? Plain, request ?? Asked());

    static CompareRequest Asked(
        bool json = false, bool details = false, string? picture = null, TemperatureUnitChoice units = TemperatureUnitChoice.Celsius) =>
        new(new("day.csv", null), null, null, 2, 1, picture, units, json, details);

    [Fact]
    public void A_verdict_is_told_on_standard_output()
    {
        Assert.Equal(0, Answer(new Judged(Samples.Of(6))));
        Assert.StartsWith("twin 30 mm fans in duct keeps the can 8 °C cooler", output.ToString());
        Assert.EndsWith("come first.\n", output.ToString());
        Assert.Empty(error.ToString());
    }

    [Fact]
    public void Json_is_all_that_is_printed_where_it_is_asked_for()
    {
        Assert.Equal(0, Answer(new Judged(Samples.Of(6)), Asked(json: true)));
        CompareJsonTests.AssertFits(output.ToString());
        Assert.Empty(error.ToString());
    }

    [Fact]
    public void A_refusal_gives_reason_and_remedy_and_draws_nothing()
    {
        var picture = Path.Combine(folder.FullName, "verdict.svg");
        Assert.Equal(2, Answer(new Refused("No reading counts.", "Shoot the motor after a run."), Asked(picture: picture)));
        Assert.Empty(output.ToString());
        Assert.Equal("coolproof: No reading counts. Shoot the motor after a run.\n", error.ToString());
        Assert.Empty(folder.GetFiles());
    }

    [Fact]
    public void A_calculation_that_did_not_settle_gives_no_ranking()
    {
        Assert.Equal(1, Answer(new NotConverged("run 3's heat", "its four walks disagree.", "Look at the readings of run 3."), Asked(json: true)));
        Assert.Empty(output.ToString());
        foreach (var said in new[] { "no ranking is given", "run 3's heat: its four walks disagree.", "Look at the readings of run 3." })
            Assert.Contains(said, error.ToString());
    }

    [Fact]
    public void What_is_odd_in_the_table_is_said_beside_the_verdict_once()
    {
        var table = new ReadingsTable([], [new TableProblem(7, "read_c", "21", "a reading above the air, 24 °C")], []);
        Assert.Equal(0, Answer(new Judged(Samples.Of(2)), Asked(), table));
        Assert.Contains("Mind           line 7, read_c: found 21; expected a reading above the air, 24 °C", output.ToString()); // before all else: it may be a slip
    }

    [Theory]
    [InlineData("verdict.svg")]
    [InlineData("verdict.png")]
    public void A_picture_is_drawn_beside_the_page(string name)
    {
        Assert.Equal(0, Answer(new Judged(Samples.Of(6)), Asked(picture: Path.Combine(folder.FullName, name))));
        Assert.Contains("nose-scoop duct", output.ToString());
        var drawn = Assert.Single(folder.GetFiles());
        Assert.Equal(name, drawn.Name);
        Assert.InRange(drawn.Length, 1_000, 5_000_000);
    }

    [Fact]
    public void A_picture_in_fahrenheit_has_no_celsius_in_it()
    {
        var path = Path.Combine(folder.FullName, "verdict.svg");
        var verdict = Samples.Of(3) with { Warnings = ["Temperatures may be off by 3 K together; the air is taken to be 25 °C."] };
        Assert.Equal(0, Answer(new Judged(verdict), Asked(picture: path, units: TemperatureUnitChoice.Fahrenheit)));
        Assert.Contains("off by 5.4 °F together; the air is taken to be 77 °F", File.ReadAllText(path));
        Assert.DoesNotContain("°C", File.ReadAllText(path));
    }

    [Fact]
    public void A_picture_that_can_not_be_written_fails_after_the_page_was_told()
    {
        var gone = Path.Combine(folder.FullName, "gone", "verdict.svg");
        Assert.Equal(1, Answer(new Judged(Samples.Of(2)), Asked(picture: gone)));
        Assert.NotEmpty(output.ToString());
        Assert.Contains(gone, error.ToString());
    }
}
