using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>Where, and on what, options were read.</summary>
internal static class Spots
{
    /// <summary>Readings of an option that count.</summary>
    public static IEnumerable<Reading> Counted(ReadingsTable table, string option) =>
        Place(table, option) is >= 0 and var place ? Judge.Counted(table, place).SelectMany(r => r.Readings).Where(DayModelBuilder.Counts) : [];

    /// <summary>Whether two options have readings on one and the same kind of spot.</summary>
    public static bool Common(ReadingsTable table, string a, string b) => VerdictBuilder.CommonSpot(table, Place(table, a), Place(table, b));

    /// <summary>Whether one option was read on tape or paint where another was read on bare metal or something that was not noted.</summary>
    public static bool SurfacesDiffer(ReadingsTable table, IReadOnlyList<OptionVerdict> options) =>
        options.Select(o => Matt(table, o.Name)).Where(m => m.Count > 0).Select(m => (m.Contains(true), m.Contains(false))).Distinct().Count() > 1;

    /// <summary>Whether an option was read on a matt spot, on another, or both; empty when by no gun.</summary>
    public static HashSet<bool> Matt(ReadingsTable table, string option) =>
        [.. Counted(table, option).Where(r => r.ReadC is not null).Select(r => r.Surface is SpotSurface.Tape or SpotSurface.Paint)];

    private static int Place(ReadingsTable table, string option) => table.Options.ToList().FindIndex(o => string.Equals(o, option, StringComparison.OrdinalIgnoreCase));
}
