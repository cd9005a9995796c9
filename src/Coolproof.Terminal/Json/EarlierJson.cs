using Coolproof.Evidence.Earlier;

namespace Coolproof.Json;

/// <summary>What earlier days have added to a verdict of `compare --earlier`. °C, K.</summary>
internal sealed record EarlierJson(int Days, int Runs, AloneJson Alone, IReadOnlyList<ContradictionJson> Contradictions, int OptionsAsked, ChangedOptionJson? Changed, GunChangeJson? Gun)
{
    /// <summary>As it is printed.</summary>
    public static EarlierJson Of(EarlierEvidence earlier) => new(
        earlier.Days, earlier.Runs, new AloneJson(earlier.Alone.Sentence, [.. earlier.Alone.Options.Select(OptionJson.Of)], [.. earlier.Alone.Pairs.Select(PairJson.Of)]),
        [.. earlier.Contradictions.Select(c => new ContradictionJson(c.A, c.B, Round(c.NewK, 2), Round(c.EarlierK, 2), Round(c.Sds, 2)))], earlier.OptionsAsked,
        earlier.Changed is { } changed ? new ChangedOptionJson(changed.Option, changed.Days, Round(changed.Ratio, 4), Round(changed.Sds, 2), Round(changed.TimesAsLikely, 1)) : null,
        earlier.Gun is { } gun ? new GunChangeJson(gun.Gun, gun.Days, gun.Cans, Round(gun.NowK, 2), Round(gun.BeforeK, 2), Round(gun.Sds, 2)) : null);

    static double Round(double value, int decimals) => CompareJson.Round(value, decimals, "a number of the earlier days");
}

/// <summary>What the new day says by itself.</summary>
internal sealed record AloneJson(string Sentence, IReadOnlyList<OptionJson> Options, IReadOnlyList<PairJson> Pairs);

/// <summary>Two options whose difference on the new day is not what it was.</summary>
internal sealed record ContradictionJson(string A, string B, double NewK, double EarlierK, double Sds);

/// <summary>An option that cools otherwise than before.</summary>
internal sealed record ChangedOptionJson(string Option, int Days, double Ratio, double Sds, double TimesAsLikely);

/// <summary>A gun that reads a cold can otherwise than before.</summary>
internal sealed record GunChangeJson(string Gun, int Days, int Cans, double NowK, double BeforeK, double Sds);
