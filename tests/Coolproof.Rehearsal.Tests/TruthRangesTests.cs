using Coolproof.Thermal.FullModel;
using static Coolproof.Rehearsal.Tests.SomeDays;

namespace Coolproof.Rehearsal.Tests;

public class TruthRangesTests(ITestOutputHelper output)
{
    [Fact]
    public void Every_kind_of_day_occurs_about_as_often_as_it_should()
    {
        Stratum[] kinds = [.. All.Select(d => d.Stratum)];
        Assert.All(TruthRanges.LoadSds, sd => Share(kinds, k => k.LoadSd == sd, 1.0 / 3));
        Share(kinds, k => k.Hands == Hands.Good, 0.5);
        Share(kinds, k => k.DelaysNoted, 0.5);
        Share(kinds, k => k.FanRunsOn, 0.5);
        Share(kinds, k => k.ChargeNoted, 0.5);
        Share(kinds, k => k.ClockNoted, 0.5);
        Share(kinds, k => k.Order == RunOrder.Fixed, 0.5);
        for (int n = 1; n <= 4; n++)
            Share(kinds, k => k.RunsPerOption == n, 0.25);
        for (int n = 2; n <= 6; n++)
            Share(kinds, k => k.Options == n, 0.2);
        Share(kinds, k => k.BlownDown, TruthRanges.BlownChance);
        Share(kinds, k => k.HoldMax, TruthRanges.HoldMaxChance);
        Share(All, d => d.Truth.Runs.Any(r => !r.CountsInRanking), TruthRanges.VoidRunChance);
        Share(All, d => d.Truth.Options.Any(o => !o.HasFan), TruthRanges.FanlessOptionChance);
    }

    [Fact]
    public void Truths_stay_within_their_ranges()
    {
        foreach (SimulatedDay day in All)
        {
            World world = World.Drawn(day.Settings);
            double scale = world.MassScale;
            Assert.True(TruthRanges.MotorMassKg.Holds(scale * MotorBody.ReferenceMassKg));
            Assert.True(TruthRanges.HeatW.Holds(Math.Exp(world.MeanLogHeat) / scale));
            Assert.True(TruthRanges.BaseWPerK.Holds(world.BaseWPerK / scale));
            Assert.True(TruthRanges.LapS.Holds(world.Lap.Seconds));
            Assert.All(day.Truth.Options, o => Assert.True(TruthRanges.OptionWPerK.Holds(o.WattsPerKelvin / scale)));
            Assert.True(TruthRanges.MountingSd.Holds(day.Truth.Hyperparameters.MountingSd));
            Assert.All(day.Truth.Runs, r => Assert.True(TruthRanges.RollInS.Holds(r.RollInS)));
            Between delay = day.Stratum.Hands == Hands.Good ? TruthRanges.DelayGoodS : TruthRanges.DelayBadS;
            Assert.All(day.Truth.Runs, r => Assert.True(delay.Holds(r.DelaysS[0])));
        }
    }

    [Fact]
    public void Fair_can_peaks_of_a_days_options_spread_by_eight_kelvin()
    {
        double meanSquare = All.Average(d => Math.Pow(Sd(d.Truth.Peaks(25, 360).Select(p => p.CanC)), 2));
        output.WriteLine($"sd {Math.Sqrt(meanSquare):f2} K");
        Assert.InRange(Math.Sqrt(meanSquare), 7, 9);
    }

    [Fact]
    public void A_car_that_stands_sheds_about_three_quarters_with_its_fan_on_and_a_quarter_with_it_off()
    {
        double[] on = Ratios(fan: 1), off = Ratios(fan: 0);
        output.WriteLine($"fan on: median {on[on.Length / 2]:f2}, log-sd {Sd(on.Select(x => Math.Log(x))):f2}; off: {off[off.Length / 2]:f2}, {Sd(off.Select(x => Math.Log(x))):f2}");
        Assert.InRange(on[on.Length / 2], 0.70, 0.80);
        Assert.InRange(off[off.Length / 2], 0.20, 0.30);

        static double[] Ratios(double fan) =>
        [
            .. All.SelectMany(d => d.Truth.Options.Where(o => o.HasFan).Select(o => o.Cooling.OverallWPerK(
                Phase.Steady(25, 0, 0, World.Drawn(d.Settings).BreezeMS, fan) with { ShellOff = true }, 40) / o.WattsPerKelvin)).Order(),
        ];
    }

    [Fact]
    public void The_can_rises_or_falls_after_the_stop_as_the_fan_goes_or_stays()
    {
        double[] on = Changes(fanRunsOn: true), off = Changes(fanRunsOn: false);
        output.WriteLine($"from halt to first reading with the fan on {on.Average():f1} K, {on.Count(c => c < 0) / (double)on.Length:p0} fall; "
            + $"off {off.Average():f1} K, {off.Count(c => c > 0) / (double)off.Length:p0} rise");
        Assert.True(on.Count(c => c < 0) > 0.8 * on.Length);
        // A strong duct on a car in the breeze may still have it fall.
        Assert.True(off.Count(c => c > 0) > 0.65 * off.Length);

        static double[] Changes(bool fanRunsOn) =>
        [
            .. All.Where(d => d.Stratum.FanRunsOn == fanRunsOn).SelectMany(d => d.Truth.Runs
                .Where(r => d.Truth.Options.Single(o => o.Name == r.Option).HasFan)
                .Select(r => r.CanAtReadingsC[0] - r.HaltC[(int)Node.Can])),
        ];
    }

    [Fact]
    public void Readings_scatter_about_the_can_as_the_guns_truth_says()
    {
        double[] standardised =
        [
            .. All.Where(d => !d.Stratum.HoldMax).SelectMany(d => d.Runs.Zip(d.Truth.Runs).SelectMany(p => p.First.Readings.Select((r, i) =>
            {
                Hyperparameters h = d.Truth.Hyperparameters;
                double rise = p.Second.CanAtReadingsC[i] - p.Second.AirC;
                return (r.ReadC!.Value - p.Second.AirC - h.GunOffsetK - (h.GunGain - h.AimLossMean) * rise) / h.ScatterK;
            }))),
        ];
        Array.Sort(standardised);
        double middle = (standardised[(int)(0.84 * standardised.Length)] - standardised[(int)(0.16 * standardised.Length)]) / 2;
        output.WriteLine($"mean {standardised.Average():f3}, middle half-width {middle:f2} of {standardised.Length}");
        Assert.Equal(0, standardised.Average(), 0.1);
        Assert.InRange(middle, 1.0, 1.7);
    }

    [Fact]
    public void Charge_put_back_goes_with_the_heat()
    {
        double[] residuals =
        [
            .. All.Where(d => d.Stratum.ChargeNoted && !d.Settings.WarmUpLaps).SelectMany(d =>
            {
                double[] r = [.. d.Runs.Zip(d.Truth.Runs).Select(p =>
                    Math.Log(p.First.Pack.ChargeBackMah!.Value / p.Second.DriveS) - p.Second.LogHeat / d.Truth.Hyperparameters.ChargeExponent)];
                return r.Select(x => (x - r.Average()) * Math.Sqrt(r.Length / Math.Max(1.0, r.Length - 1)));
            }),
        ];
        Assert.Equal(Math.Sqrt(0.02 * 0.02 + 0.03 * 0.03), Math.Sqrt(residuals.Average(x => x * x)), 0.004);
    }

    static void Share<T>(IReadOnlyCollection<T> all, Func<T, bool> of, double expected)
    {
        double share = all.Count(of) / (double)all.Count;
        Assert.Equal(expected, share, 4 * Math.Sqrt(expected * (1 - expected) / all.Count));
    }
}
