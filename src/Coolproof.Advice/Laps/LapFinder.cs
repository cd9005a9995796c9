using Coolproof.Thermal;

namespace Coolproof.Advice.Laps;

/// <summary>A lap within a trace.</summary>
/// <param name="FromS">Its begin, s of the trace.</param>
/// <param name="ToS">Its end, s.</param>
/// <param name="Alike">Laps of the trace that it is the most typical of; 1 where the whole trace is the lap.</param>
public readonly record struct FoundLap(double FromS, double ToS, int Alike)
{
    /// <summary>Lap time, s.</summary>
    public double Seconds => ToS - FromS;
}

/// <summary>
/// Finds one typical lap in a trace. Speed is looked at over the way, where a slow lap and a quick one line up and a stop takes no room: the way after which it repeats is the lap's length, the places
/// where half a lap's pattern comes again are its begins, and of the whole laps that one is taken which is least off the middle of all.
/// </summary>
internal sealed class LapFinder
{
    // Points along the way, m; laps that repeat at all; how much a shorter repeat may be the worse to be the lap; how far a lap's own length may be off.
    private const double StepM = 0.5, Repeats = 0.6, ShorterMay = 0.1, LengthOff = 0.08, SameSpot = 0.8, HintOff = 0.2, WholeOff = 0.15, EndsOff = 0.08;
    private const double ShortestS = 4, LongestS = 300, StandsMS = 0.5, AlikeOff = 0.35, TimeOff = 0.02;
    private const int Patterns = 8, ProfilePoints = 200;

    private readonly SpeedTrace _trace;
    private readonly double[] _speed;
    private readonly double _variance, _mean;

    private LapFinder(SpeedTrace trace)
    {
        _trace = trace;
        _speed = [.. Enumerable.Range(0, (int)(trace.WayM[^1] / StepM) + 1).Select(i => trace.SpeedAt(trace.TimeAt(i * StepM)))];
        _mean = _speed.Average();
        _variance = _speed.Average(v => (v - _mean) * (v - _mean));
    }

    /// <summary>The lap.</summary>
    /// <param name="trace">Speeds.</param>
    /// <param name="lapS">About how long a lap takes, s; null: not known.</param>
    /// <exception cref="LapException">None is found; the message says why, and what would be right.</exception>
    public static FoundLap Of(SpeedTrace trace, double? lapS)
    {
        LapFinder finder = new(trace);
        if (finder._variance < 0.01 * finder._mean * finder._mean)
            throw new LapException($"its speed stays about {finder._mean:0.0} m/s throughout: no straights and corners are seen. Give the trace of a few laps.");
        return finder.Length(lapS) is { } points ? finder.Typical(points, lapS) : finder.Whole(lapS);
    }

    // Length of a lap in points, by how well the speeds agree with those so far ahead; null where none does.
    private int? Length(double? lapS)
    {
        int n = _speed.Length, least = (int)(Track.ShortestM / StepM), most = Math.Min((int)(Track.LongestM / StepM), 2 * n / 3);
        if (lapS is { } hint)
        {
            double moving = Moving(), points = hint * (_trace.WayM[^1] / moving) / StepM;
            (least, most) = (Math.Max(least, (int)((1 - HintOff) * points)), Math.Min(most, (int)((1 + HintOff) * points)));
        }
        if (most - least < 2)
            return null;
        double[] agree = new double[most + 2];
        for (int lag = least - 1; lag <= most + 1 && lag < n - 1; lag++)
            agree[lag] = Agreement(lag);
        int[] peaks = [.. Enumerable.Range(least, most - least + 1).Where(l => agree[l] >= Repeats && agree[l] >= agree[l - 1] && agree[l] >= agree[l + 1])];
        if (peaks.Length == 0)
            return null;
        double best = peaks.Max(l => agree[l]);
        return lapS is null ? peaks.First(l => agree[l] >= best - ShorterMay) : peaks.MaxBy(l => agree[l]);
    }

    private double Agreement(int lag)
    {
        int n = _speed.Length - lag;
        double cross = 0, first = 0, second = 0;
        for (int i = 0; i < n; i++)
        {
            double a = _speed[i] - _mean, b = _speed[i + lag] - _mean;
            cross += a * b;
            first += a * a;
            second += b * b;
        }
        return first > 0 && second > 0 ? cross / Math.Sqrt(first * second) : 0;
    }

    private double Moving() => _trace.AtS.Zip(_trace.AtS.Skip(1), (a, b) => b - a).Where((_, i) => _trace.SpeedMS[i] > StandsMS).Sum();

    // The whole trace, where it is one lap.
    private FoundLap Whole(double? lapS)
    {
        double seconds = _trace.AtS[^1] - _trace.AtS[0], from = _trace.SpeedMS[0], to = _trace.SpeedMS[^1];
        const string Remedy = "Give a trace of three laps or more without stops, or one cut to a single flying lap";
        if (lapS is { } hint && Math.Abs(seconds - hint) > WholeOff * hint)
            throw new LapException($"no lap of about {hint:0.#} s repeats in its {seconds:0} s. {Remedy}, and look whether the lap time is right.");
        if (seconds is < ShortestS or > LongestS || _trace.WayM[^1] > Track.LongestM || Math.Abs(to - from) > Math.Max(0.5, EndsOff * _mean))
            throw new LapException($"no lap repeats in its {seconds:0} s, and it is no single lap, which would end as fast as it begins ({from:0.0} m/s at its begin, {to:0.0} m/s at its end). {Remedy}; --lap-time 26s helps to find it.");
        return _trace.Gap(_trace.AtS[0], _trace.AtS[^1]) is { } gap ? throw Gapped(gap) : new(_trace.AtS[0], _trace.AtS[^1], 1);
    }

    private static LapException Gapped((double AtS, double Seconds) gap) =>
        new($"no lap is whole: at {gap.AtS:0.0} s it says nothing for {gap.Seconds:0.0} s. Give a trace with one lap at least without a gap.");

    private FoundLap Typical(int length, double? lapS)
    {
        double[][] all = [.. Enumerable.Range(0, Patterns).Select(p => Begins((int)((p + 0.5) / Patterns * (_speed.Length - length / 2)), length))];
        (double From, double To)[] laps = [.. all.Select(begins => Laps(begins, length)).MaxBy(found => found.Length)!];
        if (laps.Length == 0)
            return Whole(lapS);
        FoundLap[] whole = [.. laps.Select(l => new FoundLap(_trace.TimeAt(l.From), _trace.TimeAt(l.To), laps.Length)).Where(l => _trace.Gap(l.FromS, l.ToS) is null)];
        if (whole.Length == 0)
            throw Gapped(_trace.Gap(_trace.TimeAt(laps[0].From), _trace.TimeAt(laps[0].To))!.Value);
        double middle = SpeedTrace.Middle([.. whole.Select(l => l.Seconds)]);
        if (middle is < ShortestS or > LongestS)
            throw new LapException($"the lap that repeats in it takes {middle:0.0} s: expected {ShortestS} to {LongestS} s. Say how long one takes with --lap-time 26s.");
        double[][] profiles = [.. whole.Select(Profile)];
        double[] typical = [.. Enumerable.Range(0, ProfilePoints).Select(i => SpeedTrace.Middle([.. profiles.Select(p => p[i])]))];
        // A lap whose time is not that of the rest is only taken where there is no other.
        int best = Enumerable.Range(0, whole.Length).OrderBy(k => Math.Abs(whole[k].Seconds / middle - 1) > TimeOff).ThenBy(k => Off(profiles[k])).First();
        return whole[best] with { Alike = whole.Length };

        double Off(double[] profile) => Math.Sqrt(profile.Zip(typical, (a, b) => (a - b) * (a - b)).Average());
    }

    // Places, m, where half a lap's pattern comes again: least differences, none within most of a lap of a better one.
    private double[] Begins(int pattern, int length)
    {
        int window = length / 2, n = _speed.Length - window;
        double[] off = new double[n];
        for (int x = 0; x < n; x++)
        {
            double sum = 0;
            for (int i = 0; i < window; i++)
            {
                double d = _speed[x + i] - _speed[pattern + i];
                sum += d * d;
            }
            off[x] = sum / window;
        }
        List<int> taken = [];
        foreach (int x in Enumerable.Range(0, n).Where(x => off[x] < AlikeOff * _variance).OrderBy(x => off[x]))
            if (taken.All(t => Math.Abs(t - x) >= SameSpot * length))
                taken.Add(x);
        return [.. taken.Order().Select(x => StepM * (x + Least(x)))];

        // Of the parabola through the least and its neighbours, in points.
        double Least(int x)
        {
            if (x == 0 || x == n - 1 || x == pattern)
                return 0;
            double bend = off[x - 1] - 2 * off[x] + off[x + 1];
            return bend > 0 ? Math.Clamp(0.5 * (off[x - 1] - off[x + 1]) / bend, -0.5, 0.5) : 0;
        }
    }

    private (double From, double To)[] Laps(double[] begins, int length) =>
        [.. begins.Zip(begins.Skip(1)).Where(pair => Math.Abs(pair.Second - pair.First - StepM * length) <= LengthOff * StepM * length && !Stands(pair.First, pair.Second))];

    private bool Stands(double fromM, double toM)
    {
        double from = _trace.TimeAt(fromM), to = _trace.TimeAt(toM);
        return Enumerable.Range(0, _trace.AtS.Count).Any(i => _trace.AtS[i] >= from && _trace.AtS[i] <= to && _trace.SpeedMS[i] < StandsMS);
    }

    private double[] Profile(FoundLap lap)
    {
        double from = _trace.WayAt(lap.FromS), length = _trace.WayAt(lap.ToS) - from;
        return [.. Enumerable.Range(0, ProfilePoints).Select(i => _trace.SpeedAt(_trace.TimeAt(from + (i + 0.5) / ProfilePoints * length)))];
    }
}
