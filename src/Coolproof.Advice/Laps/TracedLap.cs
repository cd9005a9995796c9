using Coolproof.Thermal;

namespace Coolproof.Advice.Laps;

/// <summary>Highest speed of a stretch of full throttle as the trace has it.</summary>
/// <param name="Part">Which part of the lap.</param>
/// <param name="SpeedMS">Speed, m/s.</param>
public readonly record struct SeenPeak(int Part, double SpeedMS);

/// <summary>
/// A lap out of a logged speed (docs/decisions/a-lap-from-a-trace.md). Where the car speeds up as hard as it does anywhere at that speed the throttle counts as open, and motor, gearing and grip decide; everywhere else driver
/// and grip do, and the speeds of the trace are kept whatever the gearing.
/// </summary>
/// <param name="Track">The lap: straights, and stretches whose speeds are known.</param>
/// <param name="Peaks">Highest speeds where the throttle is open.</param>
/// <param name="Found">Where it lies in the trace.</param>
/// <param name="OpenShare">Share of its time with the throttle open.</param>
public sealed record TracedLap(Track Track, IReadOnlyList<SeenPeak> Peaks, FoundLap Found, double OpenShare)
{
    // Open: at least half of the most that is seen at this speed or above, less what a short line may be off, m/s²; a line counts for the most from so many seconds on. Once it is open a car gains less and
    // less as it gets faster, so that an eighth tells it from a corner that is held.
    private const double OpenFrom = 0.5, OpenStill = 0.12, SlopeOffMS2 = 0.3, TellingS = 0.25;
    // A known speed's energy changes so little within a part that one radius serves.
    private const double PartLogEnergy = 0.1, PeakGain = 1.1, PeakFromM = 3, SlowestMS = 1.2 * Track.SlowestMS;

    /// <summary>The typical lap of a trace.</summary>
    /// <param name="trace">Speeds.</param>
    /// <param name="lapS">About how long a lap takes, s; null: not known.</param>
    /// <exception cref="LapException">There is none; the message says where, and what would be right.</exception>
    public static TracedLap Of(SpeedTrace trace, double? lapS)
    {
        FoundLap found = LapFinder.Of(trace, lapS);
        int[] within = [.. Enumerable.Range(0, trace.AtS.Count).Where(i => trace.AtS[i] >= found.FromS && trace.AtS[i] <= found.ToS)];
        SpeedLines lines = SpeedLines.Of([.. within.Select(i => trace.AtS[i])], [.. within.Select(i => trace.SpeedMS[i])], found.FromS, found.ToS);
        Line[] stretches = [.. Enumerable.Range(0, lines.Count).Select(i => new Line(lines.AtS[i + 1] - lines.AtS[i], Math.Max(lines.SpeedMS[i], SlowestMS), Math.Max(lines.SpeedMS[i + 1], SlowestMS)))];
        bool[] open = new bool[stretches.Length];
        for (int i = 0; i < open.Length; i++)
            open[i] = IsOpen(stretches[i], stretches, i > 0 && open[i - 1]);
        if (!open.Contains(true))
            throw new LapException($"from {found.FromS:0.0} to {found.ToS:0.0} s nothing looks like open throttle: give the trace of laps at full pace.");
        List<TrackPart> parts = [];
        List<SeenPeak> peaks = [];
        for (int i = 0; i < stretches.Length; i++)
        {
            if (!open[i])
            {
                parts.AddRange(Seen(stretches[i]));
                continue;
            }
            int first = i;
            while (i + 1 < stretches.Length && open[i + 1])
                i++;
            Line[] run = stretches[first..(i + 1)];
            double length = run.Sum(one => one.LengthM), peak = run.Max(one => one.ToMS);
            if (length >= PeakFromM && peak > PeakGain * run[0].FromMS)
                peaks.Add(new(parts.Count, peak));
            parts.Add(TrackPart.Straight(length));
        }
        return Track.Refusal(parts) is { } refused
            ? throw new LapException($"from {found.FromS:0.0} to {found.ToS:0.0} s: {refused}")
            : new(new(parts), peaks, found, stretches.Zip(open).Sum(one => one.Second ? one.First.Seconds : 0) / found.Seconds);
    }

    private static bool IsOpen(Line line, Line[] all, bool openBefore)
    {
        double most = all.Where(one => one.ShownToMS >= line.MiddleMS && one.Seconds >= TellingS).Select(one => one.Gain).DefaultIfEmpty(line.Gain).Max();
        return line.Gain > -SlopeOffMS2 && line.Gain >= (openBefore ? OpenStill : OpenFrom) * most - SlopeOffMS2;
    }

    private static IEnumerable<TrackPart> Seen(Line line)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling(2 * Math.Abs(Math.Log(line.ToMS / line.FromMS)) / PartLogEnergy));
        for (int i = 0; i < pieces; i++)
        {
            double from = line.FromMS + i * line.Step(pieces), to = line.FromMS + (i + 1) * line.Step(pieces);
            yield return TrackPart.Seen(0.5 * (from + to) * line.Seconds / pieces, from, to);
        }
    }

    private readonly record struct Line(double Seconds, double FromMS, double ToMS)
    {
        public double MiddleMS => 0.5 * (FromMS + ToMS);
        // Up to here its mean gain tells what the car can do; beyond, a bent course may have less.
        public double ShownToMS => 0.25 * FromMS + 0.75 * ToMS;
        public double LengthM => MiddleMS * Seconds;
        public double Gain => (ToMS - FromMS) / Seconds;
        public double Step(int pieces) => (ToMS - FromMS) / pieces;
    }
}
