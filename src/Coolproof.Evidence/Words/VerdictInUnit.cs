using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>
/// The sentences of a verdict whose numbers stand beside tables, said in the unit that is shown: made from the numbers themselves, since a number
/// that was rounded in kelvins and then turned into °F would differ from the table.
/// </summary>
public static class VerdictInUnit
{
    /// <summary>The verdict's sentence.</summary>
    public static string SentenceIn(this Verdict verdict, TemperatureUnitChoice unit) => unit == TemperatureUnitChoice.Celsius
        ? verdict.Sentence
        : VerdictSentence.Of(verdict.Options, verdict.Pairs, verdict.MainPair, verdict.Fair, verdict.SameWithinK, unit);

    /// <summary>The second look's remark; empty without one.</summary>
    public static string RemarkIn(this Verdict verdict, TemperatureUnitChoice unit) => verdict.SecondOpinion switch
    {
        null => "",
        { Pairs.Count: > 0 } second when unit != TemperatureUnitChoice.Celsius => SecondOpinionRemark.Of(
            second.Pairs, [.. verdict.Pairs.Where(p => p.On == ComparedOn.Can)], verdict.Options.MaxBy(o => o.ProbabilityCoolest)!.Name, unit),
        { Remark: var remark } => remark,
    };
}
