using Coolproof.Evidence.Curves;
using Coolproof.Evidence.Model;
using CsCheck;

namespace Coolproof.Evidence.Tests.Curves;

public class AimLossTests
{
    // Integrated by the trapezoid rule over the loss: density e^(−L/s) times the two normals of what is left.
    [Fact]
    public void Expected_loss_and_odds_of_a_wild_reading_agree_with_integration() =>
        Gen.Select(Gen.Double[-12, 12], Gen.Double[0.1, 4], Gen.Double[0.3, 3]).Sample((x, s, sigma) =>
        {
            AimLoss loss = AimLoss.Of(x, s, sigma);
            (double expected, double wide) = Integrated(x, s, sigma);
            Assert.Equal(expected, loss.ExpectedK, 1e-4 * Math.Max(1, expected));
            Assert.Equal(wide, loss.WideProbability, 1e-4);
        }, iter: 300);

    [Theory]
    [InlineData(-60, 0.001, 0.2)]
    [InlineData(-3, 1e-7, 1)]
    [InlineData(0, 1e-9, 0.3)]
    public void A_loss_that_is_all_but_ruled_out_stays_between_nothing_and_its_mean(double x, double s, double sigma)
    {
        double expected = AimLoss.Of(x, s, sigma).ExpectedK;
        Assert.InRange(expected, 0, s * (1 + 1e-9));
    }

    [Fact]
    public void A_reading_far_below_lost_much_of_it_to_aim_or_is_wild()
    {
        AimLoss loss = AimLoss.Of(300, 1, 0.5);
        Assert.True(double.IsFinite(loss.ExpectedK) && loss.ExpectedK > 1);
        Assert.InRange(loss.WideProbability, 0, 1);
        Assert.True(AimLoss.Of(-300, 1, 0.5).WideProbability > 0.999999);
    }

    private static (double Expected, double Wide) Integrated(double x, double s, double sigma)
    {
        const int steps = 40000;
        double far = Math.Max(x, 0) + 14 * Math.Max(Priors.WideFactor * sigma, 0), h = Math.Min(far, 40 * s) / steps;
        double narrow = 0, wide = 0, first = 0;
        for (int i = 0; i <= steps; i++)
        {
            double loss = i * h, weight = (i is 0 or steps ? 0.5 : 1) * Math.Exp(-loss / s);
            double a = weight * (1 - Priors.WideWeight) * Normal(loss - x, sigma), b = weight * Priors.WideWeight * Normal(loss - x, Priors.WideFactor * sigma);
            narrow += a;
            wide += b;
            first += loss * (a + b);
        }
        return (first / (narrow + wide), wide / (narrow + wide));
    }

    private static double Normal(double e, double sd) => Math.Exp(-0.5 * e * e / (sd * sd)) / sd;
}
