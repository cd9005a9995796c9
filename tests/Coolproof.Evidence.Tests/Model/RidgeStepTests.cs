using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Model;

public class RidgeStepTests(ITestOutputHelper output)
{
    private const int Moves = 8000;
    private const double Grid = 0.1, From = -5, To = 4.5;

    [Theory]
    [InlineData(false, 3)]
    [InlineData(true, 4)]
    public void The_step_draws_both_spreads_from_the_models_own_density_along_the_sums_of_heats_and_mountings(bool charge, int seed)
    {
        RehearsalOption[] options = [.. Enumerable.Range(0, 3).Select(i => new RehearsalOption("option " + i))];
        DayModel model = DayModelBuilder.Build(Rehearse.Day(new RehearsalSettings(seed, options, 3) { ReadingsPerRun = 2, ChargeNoted = charge }).Table);
        DayFit fit = DayFit.Of(model);
        DayDensity density = new(fit.Model), centred = new(model.Centred([.. model.Groups.Select(_ => 1.0)]));
        RidgeStep step = RidgeStep.Over(fit.Model)!;
        RandomStream random = new(7);
        double[] u = [.. fit.Centre];
        random.FillNormal(u.AsSpan(fit.Model.Layout.Globals));
        u[Global.MountingSpread] = 0.3;
        double[] start = Coordinates.Carry(density, u, centred);
        double[][] drawn = [new double[Moves], new double[Moves]];
        int moved = 0;
        for (int i = 0; i < Moves; i++)
        {
            moved += step.Move(u, random) ? 1 : 0;
            (drawn[0][i], drawn[1][i]) = (u[Global.RunHeatSpread], u[Global.MountingSpread]);
        }
        output.WriteLine($"moved {moved} of {Moves}");
        Assert.InRange(moved, Moves / 10, Moves);
        (double Mean, double Sd)[] asked = Marginals(new Line(model, start, step.Slopes.ToArray()), centred);
        for (int s = 0; s < 2; s++)
        {
            (double mean, double sd) = (drawn[s].Average(), MathNet.Numerics.Statistics.Statistics.StandardDeviation(drawn[s]));
            double z = (mean - asked[s].Mean) / (asked[s].Sd / Math.Sqrt(Moves / 8.0)), ratio = sd / asked[s].Sd;
            output.WriteLine($"mean {mean:F3}, asked {asked[s].Mean:F3}, {z:F1} standard errors off; sd {sd:F3}, {ratio:F3} times");
            Assert.InRange(z, -4, 4);
            Assert.InRange(ratio, 0.92, 1.08);
        }
    }

    [Fact]
    public void Without_a_spread_that_is_unknown_there_is_no_step()
    {
        RehearsalOption[] options = [new("one"), new("two")];
        DayModel model = DayModelBuilder.Build(Rehearse.Day(new RehearsalSettings(5, options, 3)).Table);
        Assert.NotNull(RidgeStep.Over(model));
        Assert.Null(RidgeStep.Over(model.Holding(new Dictionary<int, double> { [Global.MountingSpread] = 1 })));
    }

    // By quadrature over both spreads, of the whole model's density in coordinates where the deviations themselves are the parameters.
    private static (double Mean, double Sd)[] Marginals(Line line, DayDensity density)
    {
        double[] ignored = new double[density.Model.Dimension];
        (double H, double M, double Log)[] points = [.. Places().SelectMany(h => Places().Select(m => (h, m, Log(h, m))))];
        double top = points.Max(p => p.Log), all = points.Sum(p => Math.Exp(p.Log - top));
        return [Of(p => p.H), Of(p => p.M)];

        double Log(double h, double m)
        {
            (double[] at, double logJacobian) = line.At(h, m);
            return density.Evaluate(at, ignored) + logJacobian;
        }

        (double, double) Of(Func<(double H, double M, double Log), double> value)
        {
            double mean = points.Sum(p => value(p) * Math.Exp(p.Log - top)) / all;
            return (mean, Math.Sqrt(points.Sum(p => Math.Pow(value(p) - mean, 2) * Math.Exp(p.Log - top)) / all));
        }
    }

    private static IEnumerable<double> Places() => Enumerable.Range(0, (int)((To - From) / Grid) + 1).Select(i => From + i * Grid);

    // Where sums and standardised mountings stay, for any two spreads; deviations are parameters times the prior scale of their group.
    private sealed class Line(DayModel model, double[] start, double[] slopes)
    {
        private readonly (int Mounting, int[] Runs)[] _mountings =
            [.. model.Groups.Single(g => g.Spread == Global.MountingSpread).Members.Select(m => (m, Enumerable.Range(0, slopes.Length).Where(r => model.Runs[r].Mounting == m).ToArray()))];

        public (double[] At, double LogJacobian) At(double h, double m)
        {
            double[] at = [.. start];
            (at[Global.RunHeatSpread], at[Global.MountingSpread]) = (h, m);
            double logJacobian = 0;
            foreach ((int mounting, int[] runs) in _mountings)
            {
                double was = start[mounting] * Priors.MountingSpread;
                double[] sums = [.. runs.Select(r => start[model.Runs[r].Heat] * Priors.RunHeatSpread - slopes[r] * was)];
                (double mean, double sd) = Given(runs, sums, start[Global.RunHeatSpread], start[Global.MountingSpread]);
                (double newMean, double newSd) = Given(runs, sums, h, m);
                double now = newMean + (was - mean) / sd * newSd;
                at[mounting] = now / Priors.MountingSpread;
                for (int i = 0; i < runs.Length; i++)
                    at[model.Runs[runs[i]].Heat] = (sums[i] + slopes[runs[i]] * now) / Priors.RunHeatSpread;
                logJacobian += Math.Log(newSd);
            }
            return (at, logJacobian);
        }

        // A normal mounting, of which each run says −sum/slope with the sd of heat over the slope.
        private (double Mean, double Sd) Given(int[] runs, double[] sums, double h, double m)
        {
            (double x, double y) = (HalfNormal.At(h).X * Priors.RunHeatSpread, HalfNormal.At(m).X * Priors.MountingSpread);
            double variance = x * x + Priors.RunHeatFloor * Priors.RunHeatFloor, precision = 1 / (y * y), asks = 0;
            for (int i = 0; i < runs.Length; i++)
            {
                precision += slopes[runs[i]] * slopes[runs[i]] / variance;
                asks -= slopes[runs[i]] * sums[i] / variance;
            }
            return (asks / precision, 1 / Math.Sqrt(precision));
        }
    }
}
