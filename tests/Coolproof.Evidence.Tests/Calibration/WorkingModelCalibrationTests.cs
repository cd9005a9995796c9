using System.Globalization;
using Coolproof.Evidence.Model;
using Coolproof.Sampling;
using Coolproof.Sampling.Calibration;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>
/// Simulation-based calibration of the joint model (Talts and others 2018): days that the working model makes itself from its prior, judged by it. Ranks of
/// the true values among the draws must be uniform, whatever the coordinates that are sampled in.
/// </summary>
public class WorkingModelCalibrationTests(ITestOutputHelper output)
{
    private const int Runs = 4, Options = 2;
    private const double Coverage = 0.99, MostFailed = 0.01;
    private static readonly FairConditions Fair = new(25, 360);

    private static readonly string[] Names =
    [
        "core over can capacity", "core to can", "winding share", "slot", "copper share", "mean log heat", "mean log conductance", "stopped ratio", "option spread", "mounting spread", "run heat spread",
        "gun offset", "aim loss", "scatter", "option A", "option B", "day heat", "day conductance", "day air", "trend", "heat of run 1", "heat of run 4", "mounting of run 1", "air of run 1",
        "can at the first reading", "can of A", "can of B", "winding of A", "difference on the can", "squares of the heats of runs", "spread of day heat",
    ];

    [Fact]
    public void Days_made_by_the_working_model_are_judged_rightly_by_it() =>
        Check(60, 31, new NutsSettings(Chains: 2, WarmUp: 250, Draws: 200), new GateLimits(1.05, 100, 0.005), 3200);

    [Fact]
    [Trait("Suite", "long")]
    public void Days_made_by_the_working_model_are_judged_rightly_by_it_five_hundred_times() =>
        Check(500, 99, new NutsSettings(WarmUp: 500, Draws: 500), new GateLimits(), 8000);

    private void Check(int replicates, int kept, NutsSettings settings, GateLimits limits, int mostDraws)
    {
        int again = 0, failed = 0;
        CalibrationResult result = SimulationBasedCalibration.Run(Names, replicates, kept, Coverage, chance =>
        {
            WorkingModelDay day = WorkingModelDay.Drawn(chance);
            long seed = (long)(chance.NextBits() >> 1);
            GatedResult sample = Sample(day, settings, limits, mostDraws, seed);
            if (!sample.Gate.Passed)
            {
                // Longer and with smaller steps; what still fails is kept all the same.
                Interlocked.Increment(ref again);
                sample = Sample(day, settings with { WarmUp = 4 * settings.WarmUp, Draws = 4 * settings.Draws, TargetAcceptance = 0.95 }, limits, 4 * mostDraws, seed + 1);
                if (!sample.Gate.Passed)
                    Interlocked.Increment(ref failed);
            }
            double[] truth = new double[Names.Length];
            Quantities(day.Model)(day.Truth, truth);
            return new CalibrationReplicate(truth, sample.Quantities, settings.Chains);
        }, 1, 2);
        foreach (QuantityCalibration q in result.Quantities)
        {
            double mean = q.Ranks.Average() / kept, spread = q.Ranks.Average(r => Math.Pow((double)r / kept - 0.5, 2)) * 12;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{q.Name,-32} mean rank {mean:F3} (0.5), spread {spread:F2} (1){(q.LeavesAt is { } at ? $", leaves the band at {at}" : "")}"));
        }
        output.WriteLine($"{replicates} replicates, {again} sampled again, {failed} still failed, {result.ShortReplicates} with too few effective draws");
        Assert.True(result.Calibrated, string.Join(", ", result.Quantities.Where(q => q.LeavesAt is not null).Select(q => q.Name)));
        Assert.True(failed <= Math.Max(MostFailed * replicates, 1), $"{failed} of {replicates} replicates did not converge");
    }

    private static GatedResult Sample(WorkingModelDay day, NutsSettings settings, GateLimits limits, int mostDraws, long seed)
    {
        DayFit fit = DayFit.Of(DayModelBuilder.Build(day.Table));
        int n = fit.Model.Dimension;
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        DerivedQuantities of = Quantities(fit.Model);
        double[] position = new double[n];
        NutsSettings now = settings with { Metric = MetricKind.LeadingBlock, LeadingBlock = fit.Model.Layout.Globals, TargetAcceptance = Math.Max(settings.TargetAcceptance, 0.85) };
        return GatedSampling.Run(n, fit.Whitened(), (_, stream) => Start(n, stream), now, Names, (draw, values) =>
        {
            whitening.ToPosition(draw, position);
            of(position, values);
        }, limits, mostDraws, seed, 1);
    }

    // Physical quantities, the same whatever the coordinates of the parameters.
    private static DerivedQuantities Quantities(DayModel model)
    {
        DayDensity density = new(model);
        FairPeaks peaks = new(model, [0, 1], Fair);
        DayEntry day = model.Days[0];
        InstrumentEntry gun = model.Instruments[0];
        double[] can = new double[Options], winding = new double[Options];
        int daySpread = model.Groups.First(g => g.Members.Contains(day.Heat)).Spread;
        return (u, values) =>
        {
            density.Visit(u);
            peaks.Fill(u, can, winding, []);
            Constants c = density.Motor;
            for (int i = 0; i < Global.Fixed; i++)
                values[i] = u[i];
            (values[Global.Heat], values[Global.Conductance]) = (c.LogHeat, c.LogConductance);
            int at = Global.Fixed;
            foreach (double value in (ReadOnlySpan<double>)[u[gun.Offset], u[gun.LogAim], u[gun.Scatter], density.Deviation(model.OptionEffect[0]), density.Deviation(model.OptionEffect[1]),
                density.Deviation(day.Heat), u[day.Conductance], u[day.Air], u[day.Trend], density.States[0].Deviation, density.States[Runs - 1].Deviation, density.Deviation(model.Runs[0].Mounting),
                density.States[0].Air, density.Seen[0].Can, can[0], can[1], winding[0], can[0] - can[1]])
                values[at++] = value;
            // A quantity of all runs together and their spread: ranks of single ones can look right where their spread does not.
            double spread = 0;
            foreach (RunState s in density.States)
                spread += s.Deviation * s.Deviation;
            values[at++] = spread;
            values[at] = u[daySpread];
        };
    }

    private static double[] Start(int n, RandomStream stream)
    {
        double[] z = new double[n];
        stream.FillNormal(z);
        return [.. z.Select(x => 0.5 * x)];
    }
}
