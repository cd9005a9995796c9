using Coolproof.Notebook;

namespace Coolproof.Evidence.Model;

/// <summary>Charge put back as evidence of a run's heat.</summary>
internal static class ChargeTerms
{
    /// <summary>Adds the parameters of the charge relation where any run has its charge noted; else null.</summary>
    public static ChargeEntry? Attach(IReadOnlyList<ModelRun> runs, ReadingsTable table, Func<string, PriorKind, DoubtSource, double, double, int> add)
    {
        List<(ModelRun Run, double LogRate, string Pack)> noted = [.. runs
            .Select(r => (Run: r, table.Runs[r.TableRun].Pack))
            .Where(x => x.Pack.ChargeBackMah is > 0)
            .Select(x => (x.Run, Math.Log(x.Pack.ChargeBackMah!.Value / x.Run.DriveS) - x.Run.LogDriven, x.Pack.Name?.Trim().ToLowerInvariant() ?? ""))];
        if (noted.Count < 2)
            return null;
        double mean = noted.Average(n => n.LogRate);
        List<string> packs = [.. noted.Select(n => n.Pack).Distinct().Order(StringComparer.Ordinal)];
        foreach ((ModelRun run, double rate, string pack) in noted)
            (run.ChargeRate, run.Pack) = (rate - mean, packs.IndexOf(pack));
        return new(
            add("heat against charge", PriorKind.Unit, DoubtSource.Load, 0, 1),
            add("spread of charge", PriorKind.HalfNormal, DoubtSource.Load, Priors.ChargeSpread, 1),
            [.. packs.Select(p => add($"charge of pack {p}", PriorKind.Unit, DoubtSource.Load, 0, 1))]);
    }
}
