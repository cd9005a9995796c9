using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Earlier;

/// <summary>A can read before a run, beside what it should have been.</summary>
/// <param name="Gun">The gun.</param>
/// <param name="Day">The day; names of days are those of the tables joined.</param>
/// <param name="IsNew">Whether it is of the new table.</param>
/// <param name="Kind">What it goes on from: nothing (the first run of a day), or the option of the run before; what the model gets wrong about one it gets wrong each day.</param>
/// <param name="OverK">Reading less the temperature that air, warmth of the runs before and rest would leave, K.</param>
internal sealed record ColdCan(string Gun, string Day, bool IsNew, string Kind, double OverK)
{
    private const string Stood = "";

    /// <summary>All cans read before runs, on days with one gun: with several nobody wrote down which of them it was.</summary>
    /// <param name="table">The new day, or days.</param>
    /// <param name="before">Earlier ones.</param>
    public static IReadOnlyList<ColdCan> Of(ReadingsTable table, IReadOnlyList<ReadingsTable> before)
    {
        ReadingsTable joined = EarlierTables.Joined(table, before);
        HashSet<string> fresh = [.. table.Runs.Select(r => r.Day)];
        Dictionary<string, string?> guns = joined.Runs.GroupBy(r => r.Day).ToDictionary(day => day.Key, GunOf);
        // What the cans were read to be must not tell what they should have been.
        DayFit fit = DayFit.Of(DayModelBuilder.Build(joined with { Runs = [.. joined.Runs.Select(r => r with { StartC = null })] }));
        DayDensity density = new(fit.Model);
        density.Visit(fit.Typical);
        List<ColdCan> cans = [];
        for (int i = 0; i < fit.Model.Runs.Length; i++)
        {
            ModelRun at = fit.Model.Runs[i];
            Run run = joined.Runs[at.TableRun];
            if (run.StartC is not { } startC || guns[run.Day] is not { } gun || at.Start == StartMode.Unclocked)
                continue;
            string kind = at.Start == StartMode.Chained ? joined.Runs[fit.Model.Runs[i - 1].TableRun].Option : Stood;
            cans.Add(new(gun, run.Day, fresh.Contains(run.Day), kind, startC - density.States[i].Air - density.States[i].Start2));
        }
        return cans;
    }

    /// <summary>The gun that read the cans of a day; null where there were several.</summary>
    public static string? GunOf(IEnumerable<Run> day) =>
        day.SelectMany(r => r.Readings).Where(x => x.Spot == Spot.Can).Select(x => x.Instrument).Distinct(StringComparer.OrdinalIgnoreCase).ToArray() is [var only] ? only : null;
}
