using Coolproof.Notebook;

namespace Coolproof.Advice.Gearing;

/// <summary>What the runs with one gearing tell of their laps.</summary>
/// <param name="Choice">Gearing and timing.</param>
/// <param name="LapS">Mean lap time, s; null: no run noted laps.</param>
/// <param name="LapRuns">Runs that noted laps.</param>
/// <param name="ChargeA">Mean current by the charge put back, A; null: no run noted it.</param>
/// <param name="ChargeRuns">Runs that noted it.</param>
public sealed record LapNote(GearChoice Choice, double? LapS, int LapRuns, double? ChargeA, int ChargeRuns)
{
    /// <summary>Whether it tells anything.</summary>
    public bool Tells => LapS is not null || ChargeA is not null;
}

/// <summary>Reads laps and charges out of a table.</summary>
public static class LapNotes
{
    // A run shorter than this has too much of its start in it, s.
    private const double ShortestS = 60;

    /// <summary>One note a gearing; the gearing of a run that noted none is the one that the rest were driven with.</summary>
    /// <param name="table">The table.</param>
    /// <param name="driven">That gearing.</param>
    public static IReadOnlyList<LapNote> Of(ReadingsTable table, GearChoice driven) =>
    [
        .. table.Runs.Where(r => r.Kind is RunKind.Test or RunKind.Race && r.CutShort == CutShort.No && r.DriveS - r.StoodS >= ShortestS)
            .GroupBy(r => new GearChoice(r.Load.PinionTeeth ?? driven.Pinion, r.Load.SpurTeeth ?? driven.Spur, r.Load.TimingDeg ?? driven.TimingDeg))
            .Select(Note).Where(note => note.Tells),
    ];

    /// <summary>Notes with a lap time for a gearing, s, in place of what was noted of it; lap times of other gearings go with it in proportion.</summary>
    /// <param name="notes">Notes.</param>
    /// <param name="choice">The gearing.</param>
    /// <param name="lapS">Its lap time, s.</param>
    /// <param name="laps">How many laps or runs it is known by.</param>
    public static IReadOnlyList<LapNote> With(IReadOnlyList<LapNote> notes, GearChoice choice, double lapS, int laps)
    {
        LapNote there = notes.FirstOrDefault(n => n.Choice == choice) ?? new(choice, null, 0, null, 0);
        double factor = lapS / (there.LapS ?? lapS);
        return [.. notes.Where(n => n.Choice != choice).Select(n => n with { LapS = n.LapS * factor }), there with { LapS = lapS, LapRuns = laps }];
    }

    /// <summary>Mean lap time of a run, s: as noted, else by its laps; null: it noted neither.</summary>
    public static double? LapS(Run run) => run.MeanLapS ?? (run.Laps is > 0 and { } laps ? (run.DriveS - run.StoodS) / laps : null);

    private static LapNote Note(IGrouping<GearChoice, Run> runs)
    {
        double[] laps = [.. runs.Select(LapS).OfType<double>()];
        double[] charges = [.. runs.Where(r => r.Pack.ChargeBackMah is > 0).Select(r => 3.6 * r.Pack.ChargeBackMah!.Value / (r.DriveS - r.StoodS))];
        return new(runs.Key, laps.Length == 0 ? null : laps.Average(), laps.Length, charges.Length == 0 ? null : charges.Average(), charges.Length);
    }
}
