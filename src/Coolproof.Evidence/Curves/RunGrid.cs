using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Curves;

/// <summary>
/// Instants at which a run is drawn, s from halt: from the end of hard driving (negative) through the halt and past the last reading, closer together at
/// first, where most happens.
/// </summary>
/// <param name="Seconds">Instants; the first is minus the roll-in, <see cref="Halt"/> is at 0.</param>
/// <param name="Halt">Place of the halt.</param>
internal sealed record RunGrid(double[] Seconds, int Halt)
{
    /// <summary>Instants of a grid.</summary>
    public const int Points = 24;

    private const int Rolling = 3;
    private const double LeastSpanS = 90, PastLastReading = 1.3, Closer = 1.4;

    /// <summary>A run's grid. Where the fan stops within it, one instant lies there, since the curve has a bend.</summary>
    /// <param name="run">The run.</param>
    /// <param name="rollInS">Its typical roll-in, s.</param>
    /// <param name="lastDelayS">Typical delay of its last reading, s.</param>
    public static RunGrid Of(ModelRun run, double rollInS, double lastDelayS)
    {
        double[] seconds = new double[Points];
        for (int i = 0; i < Rolling; i++)
            seconds[i] = -rollInS * ((double)(Rolling - i) / Rolling);
        double span = Math.Max(LeastSpanS, PastLastReading * lastDelayS);
        int last = Points - 1 - Rolling;
        for (int i = 0; i <= last; i++)
            seconds[Rolling + i] = span * Math.Pow((double)i / last, Closer);
        if (run.FanStopsS < span)
        {
            int nearest = Enumerable.Range(Rolling + 1, last - 1).MinBy(i => Math.Abs(seconds[i] - run.FanStopsS));
            seconds[nearest] = run.FanStopsS;
        }
        return new(seconds, Rolling);
    }

    /// <summary>Part of the roll-in that is over at an instant before the halt, 0 to 1.</summary>
    public double RolledPart(int point) => 1 - Seconds[point] / Seconds[0];
}
