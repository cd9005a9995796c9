using Coolproof.Evidence.Words;
using CsCheck;

namespace Coolproof.Evidence.Tests.Words;

public class OddsTests
{
    [Theory]
    [InlineData(0.9999, "99 in 100")]
    [InlineData(1, "99 in 100")]
    [InlineData(0.9749, "19 in 20")]
    [InlineData(0.975, "39 in 40")]
    [InlineData(0.95, "19 in 20")]
    [InlineData(0.5, "1 in 2")]
    [InlineData(0.34, "2 in 5")]
    [InlineData(0.33, "1 in 3")]
    [InlineData(0.06, "1 in 10")]
    [InlineData(0.026, "1 in 20")]
    [InlineData(0.01, "1 in 100")]
    [InlineData(0.004, "under 1 in 100")]
    [InlineData(0, "under 1 in 100")]
    public void A_probability_is_said_rounded_toward_even_chances(double p, string words) => Assert.Equal(words, Odds.Say(p));

    // Worked by hand from the rule: round down, then one more to the largest remainders; of equal ones to the first.
    [Theory]
    [InlineData(new[] { 0.45, 0.33, 0.22 }, new[] { 45, 33, 22 })]
    [InlineData(new[] { 1.0, 1, 1 }, new[] { 34, 33, 33 })]
    [InlineData(new[] { 0.004, 0.996 }, new[] { 0, 100 })]
    [InlineData(new[] { 0.447, 0.348, 0.203, 0.002 }, new[] { 45, 35, 20, 0 })]
    public void Shares_are_said_in_hundredths_that_add_up_to_a_hundred(double[] shares, int[] hundredths) => Assert.Equal(hundredths, Odds.OfHundred(shares));

    [Fact]
    public void Any_shares_add_up_to_a_hundred_and_none_is_off_by_one() => Gen.Double[0.001, 1].Array[1, 12].Sample(shares =>
    {
        IReadOnlyList<int> hundredths = Odds.OfHundred(shares);
        return hundredths.Sum() == 100 && hundredths.Zip(shares).All(pair => Math.Abs(pair.First - (100 * pair.Second / shares.Sum())) < 1);
    });

    [Fact]
    public void Nothing_to_share_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => Odds.OfHundred([0, double.NaN]));

    [Fact]
    public void Words_never_claim_more_than_the_number() => Gen.Double[0.01, 1].Sample(p =>
    {
        string[] parts = Odds.Say(p).Split(" in ");
        double said = double.Parse(parts[0]) / double.Parse(parts[1]);
        return Math.Abs(said - 0.5) <= Math.Abs(p - 0.5) + 1e-12 && Math.Abs(said - p) < 0.11;
    });

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    public void What_is_no_probability_is_refused(double p) => Assert.Throws<ArgumentOutOfRangeException>(() => Odds.Say(p));
}
