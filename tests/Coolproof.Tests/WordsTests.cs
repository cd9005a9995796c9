using Coolproof.Commands;
using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;
using CsCheck;

namespace Coolproof.Tests;

public class WordsTests
{
    [Theory]
    [InlineData(0, "32 °F")]
    [InlineData(100, "212 °F")]
    [InlineData(-40, "−40 °F")]
    public void Temperatures_turn_to_fahrenheit_with_the_offset(double celsius, string said) =>
        // Ice, boiling water and the point where the scales meet: NIST SP 811, appendix B.8, gives t/°F = 1.8 t/°C + 32.
        Assert.Equal(said, new DegreeWords(TemperatureUnitChoice.Fahrenheit).Say(celsius));

    [Fact]
    public void Differences_turn_to_fahrenheit_without_the_offset()
    {
        var said = new DegreeWords(TemperatureUnitChoice.Fahrenheit);
        Assert.Equal("18 °F", said.SayDifference(10));
        Assert.Equal("18 °F (9 to 27)", said.DifferenceAndRange(new Summary(10, 3, 5, 8, 10, 12, 15)));
    }

    [Theory]
    [InlineData("fan keeps the can 10 °C cooler (5 to 15) than duct, at 30 °C air.", "fan keeps the can 18 °F cooler (9 to 27) than duct, at 86 °F air.")]
    [InlineData("The same within 2 K.", "The same within 3.6 °F.")]
    [InlineData("The can reaches 100 °C (90 to 110).", "The can reaches 212 °F (194 to 230).")]
    [InlineData("Line 3 reads -10 °C, below the air.", "Line 3 reads 14 °F, below the air.")]
    [InlineData("Air drifted from 20 to 30 °C.", "Air drifted from 68 to 86 °F.")]
    [InlineData("twin 30 mm fans shed 0.9 W/K; 2 more runs, 19 in 20 sure.", "twin 30 mm fans shed 0.9 W/K; 2 more runs, 19 in 20 sure.")]
    [InlineData("5.5 °C apart", "9.9 °F apart")]
    public void Sentences_turn_to_fahrenheit_by_what_each_number_is(string celsius, string fahrenheit) => Assert.Equal(fahrenheit, FahrenheitWords.Of(celsius));

    [Theory]
    [InlineData("30C", 30)]
    [InlineData("86F", 30)]
    [InlineData("30 °C", 30)]
    [InlineData("29,5c", 29.5)]
    [InlineData("-5C", -5)]
    public void Air_is_typed_with_its_unit(string typed, double celsius)
    {
        Assert.Null(Typed.Air(typed, out var read));
        Assert.Equal(celsius, read, 9);
    }

    [Theory]
    [InlineData("360s", 360)]
    [InlineData("6min", 360)]
    [InlineData("6:00", 360)]
    [InlineData("5.5 min", 330)]
    public void A_drive_is_typed_with_its_unit(string typed, double seconds)
    {
        Assert.Null(Typed.Drive(typed, out var read));
        Assert.Equal(seconds, read, 9);
    }

    [Theory]
    [InlineData("2K", 2)]
    [InlineData("3.6F", 2)]
    [InlineData("2C", 2)]
    public void A_difference_is_typed_with_its_unit(string typed, double kelvin)
    {
        Assert.Null(Typed.Difference(typed, out var read));
        Assert.Equal(kelvin, read, 9);
    }

    [Theory]
    [InlineData("30")]
    [InlineData("C")]
    [InlineData("")]
    [InlineData("900C")]
    [InlineData("NaNC")]
    [InlineData("1e3C")]
    [InlineData("30K")]
    public void Air_that_makes_no_sense_is_refused_with_what_would(string typed) => Assert.NotNull(Typed.Air(typed, out _));

    [Theory]
    [InlineData("6")]
    [InlineData("6:61")]
    [InlineData("6:0")]
    [InlineData("-6min")]
    [InlineData(":")]
    [InlineData("99999999999:00")]
    public void A_drive_that_makes_no_sense_is_refused_with_what_would(string typed) => Assert.NotNull(Typed.Drive(typed, out _));

    [Fact]
    public void Typed_quantities_never_throw() => Gen.String.Sample(text =>
    {
        Typed.Air(text, out _);
        Typed.Drive(text, out _);
        Typed.Difference(text, out _);
    });

    [Fact]
    public void Fahrenheit_words_never_throw() => Gen.String[Gen.Char["0123456789 .-−°CK()tocler"], 0, 60].Sample(text => { FahrenheitWords.Of(text); });

    [Fact]
    public void An_open_pair_that_needs_half_the_doubt_needs_four_times_the_runs()
    {
        // 1.96 standard deviations make a firm call; 3 K at sd 3 needs sd 1.53: (3 / 1.53)² = 3.84 times 2 runs, so 6 more.
        var pair = new PairVerdict("a", "b", ComparedOn.Can, Samples.Around(-3, 3), 0.84, PairCall.Open);
        Assert.Equal(6, RunsToSettle.Each(pair.DifferenceK, 2, 2, [], 2));
        Assert.Null(RunsToSettle.Each(Samples.Around(-1, 6), 2, 2, [], 1));
    }

    [Fact]
    public void Wide_letters_take_two_cells_and_combining_ones_none()
    {
        Assert.Equal(4, Cells.Width("風扇"));
        Assert.Equal(1, Cells.Width("e\u0301"));
        Assert.Equal("風…", Cells.Fit("風扇風扇", 4));
    }

    [Fact]
    public void Wrapped_lines_never_pass_the_width() =>
        Gen.Select(Gen.String, Gen.Int[20, 100]).Sample((text, width) => Cells.Wrap(Cells.Clean(text), width, "  ", "    ").All(line => Cells.Width(line) <= width));

    [Fact]
    public void Names_from_a_file_can_not_steer_the_terminal() =>
        Assert.Equal(" [31mduct  x", Cells.Clean("\u001b[31mduct\r\nx\u202e"));
}
