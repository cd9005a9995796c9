using Coolproof.Evidence;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>Every reading as read and as corrected, with the parts of the correction, run by run.</summary>
internal static class CorrectedReadings
{
    /// <summary>The lines, with a heading; none where the verdict has no runs.</summary>
    public static IEnumerable<string> Lines(Verdict verdict, PageSettings page)
    {
        if (verdict.Runs.Count == 0) yield break;
        yield return "";
        yield return page.Ink.Bold("Each reading: as read + delay + aim + gun = at the stop; + air + warmth = at fair conditions");
        foreach (var line in Cells.Wrap(
            $"All in {page.Degrees.Unit}. Delay: seconds from halt to the shot, ~ where it wasn't noted. Warmth: what was brought along from before.", page.Width))
            yield return page.Ink.Faint(line);
        string[] header = ["line", "day, run", "option", "after", "read", "delay", "aim", "gun", "stop", "air", "warmth", "fair"];
        var rows = verdict.Runs.SelectMany(run => run.Readings.Select(reading => Row(run, reading, page.Degrees)));
        bool[] right = [true, false, false, true, true, true, true, true, true, true, true, true];
        foreach (var line in TextColumns.Lines([header, .. rows], right, page.Width)) yield return line;
        foreach (var line in Windings(verdict, page)) yield return line;
        foreach (var run in verdict.Runs.Where(run => run.Outlier is not null))
            foreach (var line in Cells.Wrap($"{run.Day}, {run.Run}: {page.Put(run.Outlier!)}", page.Width, "", "  "))
                yield return line;
    }

    static IEnumerable<string> Windings(Verdict verdict, PageSettings page)
    {
        var rows = verdict.Runs.SelectMany(run => run.WindingReadings.Select(reading => Row(run, reading, page.Degrees))).ToList();
        if (rows.Count == 0) yield break;
        yield return "";
        yield return page.Ink.Bold("Each reading of the winding, and what it makes of the winding at the stop");
        string[] header = ["line", "day, run", "option", "after", "read", "stop", ""];
        foreach (var line in TextColumns.Lines([header, .. rows], [true, false, false, true, true, true, false], page.Width)) yield return line;
    }

    static string[] Row(RunCurve run, WindingReading reading, DegreeWords degrees) =>
    [
        $"{reading.Line}", Cells.Clean($"{run.Day}, {run.Run}"), Cells.Clean(run.Option), After(reading.DelayS, reading.DelayNoted),
        DegreeWords.Number(degrees.Temperature(reading.ReadC), 1), DegreeWords.Number(degrees.Temperature(reading.CorrectedC), 1),
        reading.ByResistance ? "by resistance" : "by gun",
    ];

    static string After(double delayS, bool noted) => $"{(noted ? "" : "~")}{DegreeWords.Number(delayS)} s";

    static string[] Row(RunCurve run, CorrectedReading reading, DegreeWords degrees) =>
    [
        $"{reading.Line}", Cells.Clean($"{run.Day}, {run.Run}"), Cells.Clean(run.Option), After(reading.DelayS, reading.DelayNoted),
        DegreeWords.Number(degrees.Temperature(reading.ReadC), 1), Part(reading.PartDelayK, degrees), Part(reading.PartAimK, degrees), Part(reading.PartGunK, degrees),
        DegreeWords.Number(degrees.Temperature(reading.CorrectedC), 1), Part(reading.PartAmbientK, degrees), Part(reading.PartWarmthK, degrees),
        DegreeWords.Number(degrees.Temperature(reading.FairC), 1),
    ];

    static string Part(double kelvin, DegreeWords degrees) => DegreeWords.Signed(degrees.Difference(kelvin), 1);
}
