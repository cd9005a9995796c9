using Coolproof.Notebook;

namespace Coolproof.Evidence.Model;

/// <summary>In which order the readings of a run are taken up.</summary>
internal static class ReadingOrder
{
    /// <summary>
    /// Places in the table: by time where every reading has one, readings of one instant in an order of their own, so that the order of rows makes no
    /// difference; else as the rows stand, which then are the order of time.
    /// </summary>
    public static IReadOnlyList<int> Of(IReadOnlyList<Reading> readings)
    {
        IEnumerable<int> rows = Enumerable.Range(0, readings.Count);
        return readings.Any(r => Time(r) is null) ? [.. rows] : [.. rows.OrderBy(i => Time(readings[i])).ThenBy(i => readings[i].Spot)
            .ThenBy(i => readings[i].Instrument, StringComparer.OrdinalIgnoreCase).ThenBy(i => readings[i].Surface).ThenBy(i => readings[i].Hold)
            .ThenBy(i => readings[i].ReadC).ThenBy(i => readings[i].Winding?.HotMilliohm)];
    }

    private static double? Time(Reading r) => r.StopToReadS ?? r.Winding?.AtS;
}
