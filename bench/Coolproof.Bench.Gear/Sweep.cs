using System.Diagnostics;
using System.Globalization;
using Coolproof.Advice.Gearing;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Rehearsal;
using Coolproof.Thermal;

namespace Coolproof.Bench.Gear;

/// <summary>30 pinions × 5 timings × 6 options × 400 draws, from a judged notebook (made up, seed 6) to the answer.</summary>
internal static class Sweep
{
    private const double BarS = 3;
    private const int Options = 6, Repeats = 5;

    /// <summary>Times it: the first sweep of the process, still being compiled, and the median of those after it.</summary>
    /// <returns>The exit code: 1 where the notebook could not be judged.</returns>
    public static int Report(TextWriter output)
    {
        RehearsalSettings settings = new(6, [.. Enumerable.Range(0, Options).Select(i => new RehearsalOption($"option {(char)('A' + i)}"))]) { ChargeNoted = true };
        Stopwatch watch = Stopwatch.StartNew();
        if (Judge.Of(Rehearse.Day(settings).Table, new()) is not Judged { Races: { } races })
        {
            Console.Error.WriteLine("the notebook could not be judged: nothing was measured.");
            return 1;
        }
        RaceEvidence evidence = races.Value;
        output.WriteLine(Text($"judging, not in the figures below\t{watch.Elapsed.TotalSeconds:0.00} s"));
        GearRig rig = new(Track.OffRoad, false, Car.OffRoad, 2.6, BrushlessMotor.OfTurns(13.5), new(), new(24, 84, 30));
        GearQuestion question = new(rig, new(15, 44, 84, 20, 40), new(28, 360) { BreakS = 600 }, RaceDemand.Of(85, "H", "SH", 0.1)) { Draws = 400 };
        LapNote[] notes = [new(rig.Driven, 26.2, 6, 19, 6)];
        List<One> all = [.. Enumerable.Range(0, Repeats + 1).Select(_ => Once(question, evidence, notes))];
        One first = all[0];
        output.WriteLine(Text($"pinions and timings, options, draws\t{first.Answer.Gears.Count}\t{first.Answer.Options.Count}\t{Math.Min(question.Draws, evidence.Thinned(question.Draws).Draws.Count)}"));
        output.WriteLine(Text($"first of a process\t{first.WallS:0.00} s wall\t{first.CoreS:0.00} core seconds"));
        One[] after = [.. all.Skip(1).OrderBy(o => o.WallS)];
        One median = after[after.Length / 2];
        output.WriteLine(Text($"median of {after.Length} after it\t{median.WallS:0.00} s wall\t{median.CoreS:0.00} core seconds\tof which laps {median.LapsS:0.00} s wall\t{median.Told} times told how far"));
        output.WriteLine(Text($"bar {BarS:0} s wall on 2 cores\tfirst {Verdict(first.WallS)}\tafter it {Verdict(median.WallS)}"));
        // Beside other work wall time tells of that work: half the core time is what two free cores take at least.
        output.WriteLine(Text($"half the core seconds\tfirst {first.CoreS / 2:0.00} s, {Verdict(first.CoreS / 2)}\tafter it {median.CoreS / 2:0.00} s, {Verdict(median.CoreS / 2)}"));
        return 0;
    }

    private static One Once(GearQuestion question, RaceEvidence evidence, LapNote[] notes)
    {
        Told told = new();
        TimeSpan core = Process.GetCurrentProcess().TotalProcessorTime;
        GearAnswer answer = GearSweep.Of(question, evidence, notes, told);
        return new(answer, told.Watch.Elapsed.TotalSeconds, (Process.GetCurrentProcess().TotalProcessorTime - core).TotalSeconds, told.LapsS, told.Times);
    }

    private static string Verdict(double seconds) => seconds < BarS ? "met" : "MISSED";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record One(GearAnswer Answer, double WallS, double CoreS, double LapsS, int Told);

    // Laps are the first part of the work that is told of; races begin with the next report after it.
    private sealed class Told : IProgress<double>
    {
        private const double LapShare = 0.4;

        private int _times;

        public Stopwatch Watch { get; } = Stopwatch.StartNew();

        public double LapsS { get; private set; }

        public int Times => _times;

        public void Report(double value)
        {
            Interlocked.Increment(ref _times);
            if (value <= LapShare)
                LapsS = Watch.Elapsed.TotalSeconds;
        }
    }
}
