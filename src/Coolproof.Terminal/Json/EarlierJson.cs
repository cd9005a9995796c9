using Coolproof.Evidence.Earlier;

namespace Coolproof.Json;

/// <summary>What earlier days have added to a verdict of `compare --earlier`. °C, K.</summary>
internal sealed record EarlierJson(int Days, int Runs, AloneJson Alone, IReadOnlyList<ContradictionJson> Contradictions, int OptionsAsked, ChangedOptionJson? Changed, GunChangeJson? Gun)
{
    /// <summary>As it is printed.</summary>
    public static EarlierJson Of(EarlierEvidence earlier) => new(
        earlier.Days, earlier.Runs, new AloneJson(earlier.Alone.Sentence, [.. earlier.Alone.Options.Select(OptionJson.Of)], [.. earlier.Alone.Pairs.Select(PairJson.Of)]),
        [.. earlier.Contradictions.Select(ContradictionJson.Of)], earlier.OptionsAsked, ChangedOptionJson.Of(earlier.Changed), GunChangeJson.Of(earlier.Gun));

    /// <summary>A number of the earlier days, rounded to decimals.</summary>
    public static double Round(double value, int decimals) => CompareJson.Round(value, decimals, "a number of the earlier days");
}

/// <summary>What the new day says by itself.</summary>
internal sealed record AloneJson(string Sentence, IReadOnlyList<OptionJson> Options, IReadOnlyList<PairJson> Pairs);

/// <summary>Two options whose difference on the new day is not what it was.</summary>
internal sealed record ContradictionJson(string A, string B, double NewK, double EarlierK, double Sds)
{
    /// <summary>As it is printed.</summary>
    public static ContradictionJson Of(Contradiction c) => new(c.A, c.B, EarlierJson.Round(c.NewK, 2), EarlierJson.Round(c.EarlierK, 2), EarlierJson.Round(c.Sds, 2));
}

/// <summary>An option that cools otherwise than before.</summary>
internal sealed record ChangedOptionJson(string Option, int Days, double Ratio, double Sds, double TimesAsLikely)
{
    /// <summary>As it is printed; null where none is told.</summary>
    public static ChangedOptionJson? Of(ChangedOption? c) => c is null ? null : new(c.Option, c.Days, EarlierJson.Round(c.Ratio, 4), EarlierJson.Round(c.Sds, 2), EarlierJson.Round(c.TimesAsLikely, 1));
}

/// <summary>A gun that reads a cold can otherwise than before.</summary>
internal sealed record GunChangeJson(string Gun, int Days, int Cans, double NowK, double BeforeK, double Sds)
{
    /// <summary>As it is printed; null where none is told.</summary>
    public static GunChangeJson? Of(GunChange? g) => g is null ? null : new(g.Gun, g.Days, g.Cans, EarlierJson.Round(g.NowK, 2), EarlierJson.Round(g.BeforeK, 2), EarlierJson.Round(g.Sds, 2));
}
