using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Model;

public class SpreadStepTests(ITestOutputHelper output)
{
    private const int Moves = 6000;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_step_draws_each_spread_from_its_density_given_the_deviations_and_temperatures_and_changes_no_temperature(bool charge)
    {
        RehearsalOption[] options = [.. Enumerable.Range(0, 3).Select(i => new RehearsalOption("option " + i))];
        DayModel model = DayModelBuilder.Build(Rehearse.Day(new RehearsalSettings(5, options, 3) { ReadingsPerRun = 2, ChargeNoted = charge }).Table);
        DayFit fit = DayFit.Of(model);
        DayDensity density = new(fit.Model), centred = new(model.Centred([.. model.Groups.Select(_ => 1.0)]));
        double[] u = [.. fit.Centre], before = Cans(density, u), there = Coordinates.Carry(density, u, centred);
        int[] spreads = [Global.RunHeatSpread, Global.MountingSpread, Global.OptionSpread, fit.Model.Instruments[0].Scatter, .. fit.Model.Charge is { } c ? new[] { c.Spread } : []];
        SpreadStep step = new(fit.Model);
        RandomStream random = new(3);
        double[][] drawn = [.. spreads.Select(_ => new double[Moves])];
        for (int i = 0; i < Moves; i++)
        {
            step.Move(u, random);
            for (int s = 0; s < spreads.Length; s++)
                drawn[s][i] = u[spreads[s]];
        }
        double[] after = Cans(density, u);
        for (int i = 0; i < before.Length; i++)
            Assert.Equal(before[i], after[i], 1e-6);
        for (int s = 0; s < spreads.Length; s++)
        {
            (double mean, double sd) = Conditional(centred, there, spreads[s]);
            double z = (drawn[s].Average() - mean) / (sd / Math.Sqrt(Moves / 3.0)), ratio = Sd(drawn[s]) / sd;
            output.WriteLine($"{model.Parameters[spreads[s]].Name}: mean {mean:F3}, {z:F1} standard errors off; sd {sd:F3}, {ratio:F3} times");
            Assert.InRange(z, -4, 4);
            Assert.InRange(ratio, 0.93, 1.07);
        }
    }

    private static double[] Cans(DayDensity density, double[] u)
    {
        density.Visit(u);
        return [.. density.Seen.ToArray().Select(r => r.Can)];
    }

    // By quadrature over the whole model's density, in coordinates where the deviations themselves are the parameters.
    private static (double Mean, double Sd) Conditional(DayDensity density, double[] u, int spread)
    {
        double[] at = [.. u], ignored = new double[u.Length];
        (double U, double Log)[] points = [.. Enumerable.Range(0, 1401).Select(i => (-7 + 0.01 * i, 0.0))];
        for (int i = 0; i < points.Length; i++)
        {
            at[spread] = points[i].U;
            points[i].Log = density.Evaluate(at, ignored);
        }
        double top = points.Max(p => p.Log), all = points.Sum(p => Math.Exp(p.Log - top)), mean = points.Sum(p => p.U * Math.Exp(p.Log - top)) / all;
        return (mean, Math.Sqrt(points.Sum(p => (p.U - mean) * (p.U - mean) * Math.Exp(p.Log - top)) / all));
    }

    private static double Sd(double[] values) => MathNet.Numerics.Statistics.Statistics.StandardDeviation(values);
}
