namespace Coolproof.Notebook.Tests;

/// <summary>Whether two tables say the same, lines and questions apart.</summary>
internal static class SameTable
{
    private static readonly Reading[] None = [];

    /// <summary>The first difference in words; null when there is none.</summary>
    /// <param name="a">One table.</param>
    /// <param name="b">The other.</param>
    /// <param name="toleranceK">How far temperatures may differ, K; 0 for the last bit.</param>
    public static string? Difference(ReadingsTable a, ReadingsTable b, double toleranceK = 0)
    {
        if (a.Runs.Count != b.Runs.Count) return $"{a.Runs.Count} and {b.Runs.Count} runs";
        // The order of options is that of rows, which start times may differ from.
        if (!a.Options.ToHashSet().SetEquals(b.Options)) return "options";
        foreach ((Run x, Run y) in a.Runs.Zip(b.Runs))
        {
            if (!Near(x.AirC, y.AirC, toleranceK) || !Near(x.StartC, y.StartC, toleranceK) || !Near(x.TrackC, y.TrackC, toleranceK)) return $"temperatures of {x} and {y}";
            if (Bare(x) != Bare(y)) return $"{Bare(x)} and {Bare(y)}";
            if (x.Readings.Count != y.Readings.Count) return $"{x.Readings.Count} and {y.Readings.Count} readings in {x.Name}";
            foreach ((Reading p, Reading q) in x.Readings.Zip(y.Readings))
            {
                if (!Near(p.ReadC, q.ReadC, toleranceK) || !Near(p.Winding?.ColdC, q.Winding?.ColdC, toleranceK)) return $"temperatures of {p} and {q}";
                if (Bare(p) != Bare(q)) return $"{p} and {q}";
            }
        }

        return null;
    }

    private static Run Bare(Run run) => run with { AirC = null, StartC = null, TrackC = null, Readings = None };

    private static Reading Bare(Reading reading) => reading with { Line = 0, ReadC = null, Winding = reading.Winding is { } winding ? winding with { ColdC = 0 } : null };

    private static bool Near(double? a, double? b, double tolerance) => a is null ? b is null : b is not null && Math.Abs(a.Value - b.Value) <= tolerance;
}
