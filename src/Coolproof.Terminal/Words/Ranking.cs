using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Words;

/// <summary>The options of a verdict, coolest can first.</summary>
internal static class Ranking
{
    /// <summary>Options by the middle of their can temperature; options as cool as each other keep the order of the table.</summary>
    public static IReadOnlyList<OptionVerdict> Of(Verdict verdict) => [.. verdict.Options.OrderBy(option => option.PeakCanC.Q50)];

    /// <summary>How likely each option is the coolest, in the order of the options: hundredths that add up; "-" where there is but one.</summary>
    public static IReadOnlyList<string> Coolest(IReadOnlyList<OptionVerdict> options) => options.Count < 2 ? [.. options.Select(_ => "-")]
        : [.. Odds.OfHundred([.. options.Select(option => option.ProbabilityCoolest)]).Select(share => share switch { 0 => "under 1 in 100", 100 => "over 99 in 100", _ => $"{share} in 100" })];

    /// <summary>The pairs on the can that can't be told yet, those at the top of the ranking first, each with its likelier cooler side as A.</summary>
    public static IReadOnlyList<PairVerdict> Open(Verdict verdict)
    {
        var place = Of(verdict).Select((option, i) => (option.Name, i)).ToDictionary(p => p.Name, p => p.i);
        return [.. verdict.Pairs.Where(pair => pair.On == ComparedOn.Can && pair.Call == PairCall.Open).Select(CoolerFirst)
            .OrderBy(pair => Math.Min(place[pair.A], place[pair.B])).ThenBy(pair => Math.Max(place[pair.A], place[pair.B]))];
    }

    /// <summary>The pair turned so that A is the likelier cooler one: its difference is then at most 0.</summary>
    public static PairVerdict CoolerFirst(PairVerdict pair) => pair.DifferenceK.Q50 <= 0 ? pair : pair.Turned();
}
