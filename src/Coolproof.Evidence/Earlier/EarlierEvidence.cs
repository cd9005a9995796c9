namespace Coolproof.Evidence.Earlier;

/// <summary>What earlier days have added to a verdict, beside what the new day says by itself.</summary>
/// <param name="Days">Earlier days in it.</param>
/// <param name="Runs">Their runs.</param>
/// <param name="Alone">The verdict from the new day by itself.</param>
/// <param name="Contradictions">Pairs on which the new day doesn't agree with the earlier ones, the strongest first.</param>
/// <param name="OptionsAsked">Options that were asked whether they are still what they were; 0 where there are too many runs to tell.</param>
/// <param name="Changed">The option that stands out most as cooling otherwise than before; null where none does.</param>
/// <param name="Gun">The gun that stands out most as reading otherwise than before; null where none does, or no day began with the can read cold.</param>
public sealed record EarlierEvidence(int Days, int Runs, Verdict Alone, IReadOnlyList<Contradiction> Contradictions, int OptionsAsked, ChangedOption? Changed,
    GunChange? Gun);

/// <summary>An option that sheds other heat per degree on the new day than before.</summary>
/// <param name="Option">Its name.</param>
/// <param name="Days">Earlier days on which it was driven.</param>
/// <param name="Ratio">Watts shed per degree on the new day over those before.</param>
/// <param name="Sds">Standard deviations from no change.</param>
/// <param name="TimesAsLikely">How many times as likely the readings are after a change of a fifth as after none.</param>
public sealed record ChangedOption(string Option, int Days, double Ratio, double Sds, double TimesAsLikely);
