using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests;

/// <summary>What is left to believe of a table, in few draws: enough for tests of what is said of it.</summary>
internal static class SampledDay
{
    private const int Draws = 100;

    /// <summary>Without draws: the prepared model alone.</summary>
    public static Posterior Prepared(ReadingsTable table)
    {
        int[] options = [.. Enumerable.Range(0, table.Options.Count)];
        double[][] none = [.. options.Select(_ => Array.Empty<double>())];
        return new(table, DayFit.Of(DayModelBuilder.Build(table)), [], Fair(table), options, none, none, none);
    }

    /// <summary>With 4 × 100 draws.</summary>
    public static Posterior Of(ReadingsTable table, long seed = 1)
    {
        Posterior prepared = Prepared(table);
        DayFit fit = prepared.Fit;
        NutsSettings settings = new(WarmUp: 200, Draws: Draws, Metric: MetricKind.LeadingBlock, LeadingBlock: fit.Model.Layout.Globals);
        NutsResult result = Nuts.Sample(fit.Model.Dimension, fit.Whitened(), (_, chance) =>
        {
            double[] z = new double[fit.Model.Dimension];
            chance.FillNormal(z);
            return [.. z.Select(x => 0.3 * x)];
        }, settings, seed, threads: 2);
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        DayDensity density = new(fit.Model);
        double[][] draws = [.. Enumerable.Range(0, 4 * Draws).Select(i =>
        {
            double[] u = new double[fit.Model.Dimension];
            whitening.ToPosition(result.Chains[i / Draws].Draw(i % Draws), u);
            return u;
        })];
        (double CanC, double WindingC, double Conductance)[][] peaks = [.. draws.Select(u => prepared.Options.Select(o => Peak(density, u, o, prepared.Fair)).ToArray())];
        double[][] Each(Func<(double CanC, double WindingC, double Conductance), double> of) => [.. prepared.Options.Select((_, k) => peaks.Select(p => of(p[k])).ToArray())];
        return prepared with { Draws = draws, CanC = Each(p => p.CanC), WindingC = Each(p => p.WindingC), Conductance = Each(p => p.Conductance) };
    }

    private static (double, double, double) Peak(DayDensity density, double[] u, int option, FairConditions fair)
    {
        density.Visit(u);
        double logG = density.Motor.LogConductance + density.Deviation(density.Model.OptionEffect[option]);
        (double can, double winding) = FairDrive.Peak(density.Motor, logG, fair.AmbientC, fair.DriveS);
        return (can, winding, Math.Exp(logG));
    }

    private static FairConditions Fair(ReadingsTable table) =>
        new(table.Runs.Where(r => r.AirC is not null).Select(r => r.AirC!.Value).DefaultIfEmpty(25).Median(), table.Runs.Select(r => r.DriveS).Median());
}
