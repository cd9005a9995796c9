using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using CsCheck;

namespace Coolproof.Evidence.Tests.Words;

public class VerdictSentenceTests
{
    private const string Clamp = "clamp with a 25 mm fan", Blower = "rear blower", Bare = "bare can";

    private static string Of(OptionVerdict[] options, params PairVerdict[] pairs)
    {
        string sentence = VerdictSentence.Of(options, pairs, pairs.FirstOrDefault(), Said.Fair, 2);
        Said.AssertPlain(sentence);
        Assert.DoesNotContain(". ", sentence, StringComparison.Ordinal);
        return sentence;
    }

    private static OptionVerdict[] Three => [Said.Option(Bare, 88, 0.01), Said.Option(Clamp, 70, 0.95), Said.Option(Blower, 78, 0.04, windingC: 97)];

    private static PairVerdict On(ComparedOn on, PairVerdict pair) => pair with { On = on };

    [Fact]
    public void A_firm_call_is_said_with_difference_range_and_odds()
    {
        string said = Of(Three, Said.Pair(Blower, Clamp, 8, 2.4), Said.Pair(Bare, Clamp, 18, 2.4), On(ComparedOn.Winding, Said.Pair(Blower, Clamp, 9, 3)));
        Assert.Equal("Fit the clamp with a 25 mm fan: its can runs 8 K cooler than with the next best, the rear blower (4 to 12 K), 99 in 100 sure; " +
            "the winding agrees, 9 K cooler (4 to 14 K).", said);
    }

    [Fact]
    public void An_open_pair_is_said_to_be_open_and_claims_no_difference()
    {
        string said = Of(Three, Said.Pair(Clamp, Blower, -1, 2.4), Said.Pair(Bare, Clamp, 18, 2.4), On(ComparedOn.Winding, Said.Pair(Clamp, Blower, -1, 4)));
        Assert.Equal("Can't be told yet: the clamp with a 25 mm fan and the rear blower are within what the readings can tell (the can 1 K cooler with the clamp " +
            "with a 25 mm fan, −3 to 5 K); the bare can runs hotter than the clamp with a 25 mm fan; the winding doesn't tell either.", said);
        Assert.DoesNotContain("sure", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_that_is_the_same_is_said_to_make_no_difference()
    {
        string said = Of([.. Three.Skip(1)], Said.Pair(Clamp, Blower, -0.2, 0.6, PairCall.Same), On(ComparedOn.Winding, Said.Pair(Clamp, Blower, -0.2, 0.6, PairCall.Same)));
        Assert.Equal("No difference that matters: the cans under the clamp with a 25 mm fan and the rear blower are the same within 2 K, and so are the windings.", said);
    }

    [Fact]
    public void A_small_range_gets_a_tenth_of_a_kelvin() =>
        Assert.Contains("2.4 K cooler than with the rear blower (1.1 to 3.7 K)", Of([.. Three.Skip(1)], Said.Pair(Clamp, Blower, -2.4, 0.8)), StringComparison.Ordinal);

    [Theory]
    [InlineData(9, 3, "the winding says the opposite: it runs 9 K cooler with the rear blower (4 to 14 K)")]
    [InlineData(-2, 6, "but for the winding it can't be told yet (2 K cooler, −8 to 12 K)")]
    [InlineData(2, 6, "but for the winding it can't be told yet (2 K hotter, −8 to 12 K)")]
    public void A_winding_that_disagrees_with_a_firm_can_is_said(double difference, double sd, string said) =>
        Assert.Contains(said, Of(Three, Said.Pair(Clamp, Blower, -8, 2.4), On(ComparedOn.Winding, Said.Pair(Clamp, Blower, difference, sd))), StringComparison.Ordinal);

    [Fact]
    public void A_winding_that_tells_where_the_can_does_not_is_said() => Assert.Contains("but the winding does tell: it runs 9 K cooler with the rear blower",
        Of(Three, Said.Pair(Clamp, Blower, -1, 2.4), On(ComparedOn.Winding, Said.Pair(Clamp, Blower, 9, 3))), StringComparison.Ordinal);

    [Fact]
    public void A_coolest_winding_elsewhere_is_named()
    {
        OptionVerdict[] options = [Said.Option(Bare, 88, 0.01, windingC: 80), Said.Option(Clamp, 70, 0.95), Said.Option(Blower, 78, 0.04)];
        PairVerdict can = Said.Pair(Clamp, Blower, -8, 2.4), windings = On(ComparedOn.Winding, Said.Pair(Clamp, Blower, -9, 3));
        string likely = Of(options, can, windings, On(ComparedOn.Winding, Said.Pair(Clamp, Bare, 10, 8)));
        Assert.Contains("; the coolest winding is with the bare can, 4 in 5 sure", likely, StringComparison.Ordinal);
        Assert.DoesNotContain("coolest winding", Of(options, can, windings, On(ComparedOn.Winding, Said.Pair(Clamp, Bare, 10, 40))), StringComparison.Ordinal);
    }

    [Fact]
    public void An_option_that_is_open_beside_the_best_is_not_passed_over() => Assert.Contains("beside the bare can it can't be told yet",
        Of(Three, Said.Pair(Clamp, Blower, -8, 2.4), Said.Pair(Clamp, Bare, -9, 8)), StringComparison.Ordinal);

    [Fact]
    public void One_option_alone_gets_its_temperature_and_no_ranking() =>
        Assert.Equal("The rear blower takes the can to 78 °C (75 to 81) and the winding to 97 °C (90 to 104) after 360 s of driving in 28 °C air; " +
            "there is nothing to compare it with yet.", Of([Three[2]]));

    [Theory]
    [InlineData("option A", "option A")]
    [InlineData("Clamp 3", "Clamp 3")]
    [InlineData("rear blower", "the rear blower")]
    [InlineData("no fan", "no fan")]
    public void An_option_is_named_as_it_reads_best(string name, string said) => Assert.Equal(said, Say.Option(name));

    [Fact]
    public void In_fahrenheit_numbers_are_rounded_once()
    {
        // 4.6 K are 8.28 °F (1.8 to a kelvin: NIST SP 811, appendix B.8); by way of "5 K" they would be 9.
        PairVerdict[] pairs = [Said.Pair(Clamp, Blower, -4.6, 2), On(ComparedOn.Winding, Said.Pair(Clamp, Blower, -0.4, 0.4, PairCall.Same))];
        Assert.Equal("Fit the clamp with a 25 mm fan: its can runs 8 °F cooler than with the rear blower (2 to 14 °F), 39 in 40 sure; but the winding is the same within 3.6 °F.",
            VerdictSentence.Of([.. Three.Skip(1)], pairs, pairs[0], Said.Fair, 2, TemperatureUnitChoice.Fahrenheit));
        Assert.StartsWith("The rear blower takes the can to 172 °F (166 to 178)", VerdictSentence.Of([Three[2]], [], null, Said.Fair, 2, TemperatureUnitChoice.Fahrenheit), StringComparison.Ordinal);
    }

    [Fact]
    public void In_fahrenheit_no_number_is_a_rounding_off_the_truth() => Gen.Select(Gen.Double[-30, 30], Gen.Double[1, 6]).Sample((difference, sd) =>
    {
        PairVerdict pair = Said.Pair(Clamp, Blower, difference, sd);
        string said = VerdictSentence.Of([.. Three.Skip(1)], [pair], pair, Said.Fair, 2, TemperatureUnitChoice.Fahrenheit);
        string number = System.Text.RegularExpressions.Regex.Match(said, @"([\d.]+) °F (cooler|hotter)").Groups[1].Value;
        double shown = double.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(Math.Abs(shown - Math.Abs(difference) * 1.8), 0, number.Contains('.') ? 0.0501 : 0.501);
        Assert.DoesNotContain(" K", said, StringComparison.Ordinal);
    });

    [Fact]
    public void The_second_look_in_fahrenheit_says_the_numbers_of_its_list()
    {
        SecondOpinionPair[] second = [new(Clamp, Blower, -1.34, 0.5, true)];
        string said = SecondOpinionRemark.Of(second, [Said.Pair(Clamp, Blower, -2.24, 2)], Clamp, TemperatureUnitChoice.Fahrenheit);
        Assert.Equal("A plain comparison of run averages has the clamp with a 25 mm fan 2.4 °F cooler than the rear blower, ours says 4.0 °F: they agree.", said);
        Said.AssertPlain(said);
    }
}
