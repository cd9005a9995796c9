using Coolproof.Advice.Mounts;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;

namespace Coolproof.Advice.Spending;

/// <summary>The best use of money and grams: all combinations that fit together and the class allows, exactly.</summary>
public static class BestUse
{
    private const int PriorDraws = 800;
    private const double UsualAirC = 25, UsualDriveS = 360, LeastMoreK = 0.3;

    /// <summary>What of a sheet has no place in a judged table, or needs one; empty: all is well.</summary>
    /// <param name="sheet">What is asked.</param>
    /// <param name="evidence">What a judged table says; null: no table.</param>
    /// <param name="mounts">Mounts; null: none.</param>
    public static IReadOnlyList<AskedProblem> Problems(SpendSheet sheet, RaceEvidence? evidence, MountSheet? mounts = null) => [.. OfTable(sheet, evidence), .. OfMounts(sheet, mounts)];

    private static IReadOnlyList<AskedProblem> OfTable(SpendSheet sheet, RaceEvidence? evidence)
    {
        if (evidence is null)
            return sheet.Driven.Count == 0 ? [] : [new("driven", "options that were driven", "a readings table that holds them", "Give it by --with TABLE.csv, or give each part a coolsK of your own instead.")];
        string there = string.Join(", ", evidence.Options.Select(o => $"\"{o}\""));
        return [.. new[] { ("base", sheet.Base) }.Concat(sheet.Driven.Select((d, i) => ($"driven[{i}].option", d.Option)))
            .Where(o => !evidence.Options.Contains(o.Item2, StringComparer.OrdinalIgnoreCase))
            .Select(o => new AskedProblem(o.Item1, $"\"{o.Item2}\"", $"an option of the readings table: {there}", "Spell it as in the table, or take it out."))];
    }

    private static IReadOnlyList<AskedProblem> OfMounts(SpendSheet sheet, MountSheet? mounts)
    {
        if (sheet.Predicted.Count == 0) return [];
        if (mounts is null) return [new("predicted", "mounts that were predicted", "a file of mounts that holds them", "Give it by --mounts FILE.json (docs/mount.md).")];
        string there = string.Join(", ", mounts.Mounts.Select(m => $"\"{m.Name}\""));
        return [.. new[] { ("base", sheet.Base) }.Concat(sheet.Predicted.Select((p, i) => ($"predicted[{i}].mount", p.Option))).Where(n => MountPlace(mounts, n.Item2) < 0)
            .Select(n => new AskedProblem(n.Item1, $"\"{n.Item2}\"", $"a mount of the file of mounts: {there}", n.Item1 == "base" ? "What is predicted is set against the base: describe it there too." : "Spell it as there."))];
    }

    private static int MountPlace(MountSheet mounts, string name) => mounts.Mounts.ToList().FindIndex(m => string.Equals(m.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The answer.</summary>
    /// <param name="sheet">What is asked, without <see cref="Problems"/>.</param>
    /// <param name="evidence">What a judged table says; null: guesses alone, on motors as they are believed to be.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="mounts">Mounts that the sheet's predicted ones are among; null: none.</param>
    /// <param name="cancel">Stops the work.</param>
    public static SpendAnswer Of(SpendSheet sheet, RaceEvidence? evidence, long seed, MountSheet? mounts = null, CancellationToken cancel = default)
    {
        FairConditions fair = evidence?.Fair ?? new(UsualAirC, UsualDriveS);
        double[][] added = mounts is null || sheet.Predicted.Count == 0 ? [] : MountPredictions.SharesAdded(mounts, evidence, MountPlace(mounts, sheet.Base), seed);
        double[][] predicted = [.. sheet.Predicted.Select(p => added[MountPlace(mounts!, p.Option)])];
        PartEffects effects = new(sheet, evidence is null ? PriorMotors.Draws(PriorDraws, seed) : FairPeak.Motors(evidence), evidence?.Options ?? [sheet.Base], fair, predicted, seed);
        int[] allowed = [.. Enumerable.Range(0, sheet.Parts.Count).Where(i => Allowed(sheet, sheet.Parts[i]))];
        PartChoices choices = Choices(sheet, effects, allowed);
        SpendLimits limits = new(sheet.Money is { } money ? Cents(money) : SpendLimits.None.Cents, Math.Max(0, sheet.Rules.FreeG), sheet.Grams ?? double.PositiveInfinity, sheet.Rules.FansMax ?? int.MaxValue);
        IReadOnlyList<PartChoice> front = ChoiceSearch.Front(choices, limits, cancel);
        PartChoice[] steps = [.. Stairs(front)];
        PartChoice best = steps[^1];
        return new(sheet, fair, Steps(sheet, effects, choices, steps),
            [.. front.Select(c => new SpendPoint(Names(sheet, c.Parts), c.Cents / 100m, c.CountedGrams, effects.MiddleK(c.Worth)))],
            sheet.Money is null ? null : Beyond(sheet, effects, choices, best, ChoiceSearch.Front(choices, limits with { Cents = MostUseful(choices, limits) }, cancel).Where(c => c.Cents > limits.Cents).OrderBy(c => c.Cents).ThenByDescending(c => c.Worth)),
            sheet.Grams is null ? null : Beyond(sheet, effects, choices, best, ChoiceSearch.Front(choices, limits with { Grams = double.PositiveInfinity }, cancel).Where(c => c.CountedGrams > limits.Grams + 1e-9).OrderBy(c => c.CountedGrams).ThenByDescending(c => c.Worth)),
            [.. sheet.Parts.Where(p => !Allowed(sheet, p)).Select(p => p.Part.Name)],
            [.. allowed.Where(i => !effects.IsKnown(i) && !Serves(sheet, sheet.Parts[i].Part.Name)).Select(i => sheet.Parts[i].Part.Name)]);
    }

    // Whether a part need not do anything by itself: others need it, or a driven option or a predicted mount has it.
    private static bool Serves(SpendSheet sheet, string part) => sheet.Parts.SelectMany(p => p.Needs).Concat(sheet.Driven.Concat(sheet.Predicted).SelectMany(d => d.Parts)).Contains(part, StringComparer.OrdinalIgnoreCase);

    private static bool Allowed(SpendSheet sheet, SpendPart part) => (sheet.Rules.OpeningsAllowed || !part.OpensShell) && part.Fans <= (sheet.Rules.FansMax ?? int.MaxValue);

    // Parts that aren't allowed stay in their places, so that bits keep their meaning.
    private static PartChoices Choices(SpendSheet sheet, PartEffects effects, int[] allowed)
    {
        int n = sheet.Parts.Count;
        ulong[] apart = new ulong[n];
        for (int i = 0; i < n; i++)
        {
            apart[i] |= PartEffects.Bits(sheet, sheet.Parts[i].Excludes);
            for (int j = 0; j < n; j++)
                if (i != j && sheet.Parts[i].Places.Intersect(sheet.Parts[j].Places, StringComparer.OrdinalIgnoreCase).Any()) apart[i] |= 1UL << j;
        }
        for (int i = 0; i < n; i++)
            foreach (int j in PartEffects.Of(apart[i])) apart[j] |= 1UL << i;
        ulong barred = Enumerable.Range(0, n).Except(allowed).Aggregate(0UL, (bits, i) => bits | 1UL << i);
        return new([.. sheet.Parts.Select(p => Cents(p.Price))], [.. sheet.Parts.Select(p => p.Part.MassG)], [.. Enumerable.Range(0, n).Select(effects.Worth)],
            [.. sheet.Parts.Select(p => p.Fans)], apart, [.. sheet.Parts.Select(p => PartEffects.Bits(sheet, p.Needs))], effects.Known)
        { Barred = barred };
    }

    // For each sum of money the best, whatever its grams.
    private static IEnumerable<PartChoice> Stairs(IReadOnlyList<PartChoice> front)
    {
        double most = double.NegativeInfinity;
        foreach (IGrouping<long, PartChoice> same in front.OrderBy(c => c.Cents).GroupBy(c => c.Cents))
        {
            PartChoice best = same.OrderByDescending(c => c.Worth).ThenBy(c => c.CountedGrams).First();
            if (best.Worth <= most) continue;
            most = best.Worth;
            yield return best;
        }
    }

    private static SpendStep[] Steps(SpendSheet sheet, PartEffects effects, PartChoices choices, PartChoice[] stairs)
    {
        double[][] can = [.. stairs.Select(s => effects.Cooler(s.Parts, Core(choices, s.Parts)).CanK)];
        return [.. stairs.Select((s, i) => new SpendStep(Choice(sheet, effects, choices, s), i == 0 ? 0 : (s.Cents - stairs[i - 1].Cents) / 100m, i == 0 ? null : Less(can[i], can[i - 1])))];
    }

    private static SpendStep? Beyond(SpendSheet sheet, PartEffects effects, PartChoices choices, PartChoice best, IEnumerable<PartChoice> further)
    {
        double now = effects.MiddleK(best.Worth);
        foreach (PartChoice choice in further)
            if (effects.MiddleK(choice.Worth) >= now + LeastMoreK)
                return new(Choice(sheet, effects, choices, choice), (choice.Cents - best.Cents) / 100m,
                    Less(effects.Cooler(choice.Parts, Core(choices, choice.Parts)).CanK, effects.Cooler(best.Parts, Core(choices, best.Parts)).CanK));
        return null;
    }

    private static SpendChoice Choice(SpendSheet sheet, PartEffects effects, PartChoices choices, PartChoice choice)
    {
        SpendPart[] parts = [.. PartEffects.Of(choice.Parts).Select(i => sheet.Parts[i])];
        ulong core = Core(choices, choice.Parts);
        (double[] can, double[] winding) = effects.Cooler(choice.Parts, core);
        bool laps = sheet.LapSPer100G is not null || sheet.Parts.Any(p => p.LapS != 0);
        return new(
            Names(sheet, choice.Parts), choice.Cents / 100m, choice.Grams, choice.CountedGrams, Summary.Of(can), Summary.Of(winding), effects.Basis(choice.Parts, core), parts.Sum(p => p.FitMin),
            parts.Any(p => p.Soldering), parts.Any(p => p.Cutting), laps ? parts.Sum(p => p.LapS) + (sheet.LapSPer100G ?? 0) * choice.CountedGrams / 100 : null);
    }

    private static ulong Core(PartChoices choices, ulong parts) => choices.CoreOf(parts) is { } core ? choices.Known[core].Parts : 0;

    private static Summary Less(double[] a, double[] b) => Summary.Of([.. a.Zip(b, (x, y) => x - y)]);

    private static string[] Names(SpendSheet sheet, ulong parts) => [.. PartEffects.Of(parts).Select(i => sheet.Parts[i].Part.Name)];

    private static long Cents(decimal money) => (long)(money * 100);

    // Twice the budget and the dearest part: the next step worth telling lies within.
    private static long MostUseful(PartChoices choices, SpendLimits limits) => 2 * limits.Cents + choices.Cents.Max();
}
