using System.Diagnostics;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Judges simulated days and sets what is said beside the truth.</summary>
internal static class DayJudging
{
    /// <summary>Judges one day as a user would, and again knowing the generator's hyperparameters where asked.</summary>
    public static DayOutcome Of(long seed, SimulatedDay day, bool oracle) => Of(seed, day, day.Table, oracle ? day.Truth.Hyperparameters : null);

    /// <summary>The same with another table of the day than the gun's.</summary>
    /// <param name="seed">Seed of the judge.</param>
    /// <param name="day">The day.</param>
    /// <param name="table">What was noted of it.</param>
    /// <param name="oracle">What the oracle knows; null: it isn't asked.</param>
    public static DayOutcome Of(long seed, SimulatedDay day, ReadingsTable table, Hyperparameters? oracle)
    {
        JudgeSettings settings = new(Seed: seed, Threads: 1);
        Stopwatch watch = Stopwatch.StartNew();
        Judgement judgement = Judge.Of(table, settings);
        double seconds = watch.Elapsed.TotalSeconds;
        if (judgement is not Judged judged)
            return new(seed, day.Stratum, FailureOf(judgement), "", [], [], 0, seconds);
        Judgement? second = oracle is null ? null : Judge.With(table, settings, KnownTo(oracle));
        Verdict verdict = judged.Verdict;
        Dictionary<string, TruePeak> peaks = day.Truth.Peaks(verdict.Fair.AmbientC, verdict.Fair.DriveS).ToDictionary(p => p.Option);
        return new(seed, day.Stratum, "", second is null or Judged ? "" : FailureOf(second),
            [.. verdict.Options.Select(o => new OptionOutcome(o.Name, o.PeakCanC, peaks[o.Name].CanC, o.PeakWindingC, peaks[o.Name].WindingC))],
            Pairs(day, table, verdict, (second as Judged)?.Verdict, peaks), verdict.Sampler.Chains * verdict.Sampler.Draws, seconds);
    }

    private static PairOutcome[] Pairs(SimulatedDay day, ReadingsTable table, Verdict verdict, Verdict? oracle, Dictionary<string, TruePeak> peaks)
    {
        Dictionary<string, double> floor = day.Truth.Floors(verdict.Fair.AmbientC, verdict.Fair.DriveS).GroupBy(f => f.Run.Option).ToDictionary(g => g.Key, g => g.Average(f => f.CanC));
        Dictionary<string, double> naive = FirstReadingMinusAir(table);
        return [.. verdict.Pairs.Select((p, i) =>
        {
            bool can = p.On == ComparedOn.Can;
            double truth = can ? peaks[p.A].CanC - peaks[p.B].CanC : peaks[p.A].WindingC - peaks[p.B].WindingC;
            return new PairOutcome(
                p.A, p.B, p.On, truth, p.DifferenceK, p.ProbabilityACooler, p.Call, oracle?.Pairs[i].DifferenceK,
                oracle?.Pairs[i].Call ?? PairCall.Open, can ? floor[p.A] - floor[p.B] : double.NaN, can ? naive[p.A] - naive[p.B] : double.NaN);
        })];
    }

    // What people do without a program; where the air of a run is blank they take the day's.
    private static Dictionary<string, double> FirstReadingMinusAir(ReadingsTable table)
    {
        Run[] runs = [.. table.Runs.Where(r => r.Kind == RunKind.Test && r.Readings.Count > 0)];
        double air = runs.Where(r => r.AirC is not null).Select(r => r.AirC!.Value).Median();
        return runs.GroupBy(r => r.Option).ToDictionary(g => g.Key, g => g.Average(r => r.Readings[0].ReadC!.Value - (r.AirC ?? air)));
    }

    // Spreads that have a floor in squares are told without it.
    private static KnownConstants KnownTo(Hyperparameters h) => new(
        Above(h.OptionLogSd, Priors.OptionFloor), h.MountingSd, Above(h.LoadSd, Priors.RunHeatFloor), h.DayHeatSd, Above(h.ScatterK, Priors.ScatterFloor), h.AimLossMean);

    private static double Above(double whole, double floor) => Math.Sqrt(Math.Max(whole * whole - floor * floor, 1e-4 * whole * whole));

    private static string FailureOf(Judgement judgement) => judgement switch
    {
        NotConverged n => $"{n.Quantity}: {n.Reason}",
        Refused r => r.Reason,
        _ => throw new ArgumentException($"{judgement} is no failure.", nameof(judgement)),
    };
}
