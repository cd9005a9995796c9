using System.Globalization;
using Coolproof.Evidence.Earlier;

namespace Coolproof.Evidence.Words;

/// <summary>What earlier days have added to a verdict, and where the new day doesn't agree with them, in °C and K.</summary>
public static class EarlierWords
{
    // Limits are for all pairs, and for all guns, of a day together.
    private const string Chance = "chance alone does that on fewer than one day in twenty";

    /// <summary>The sentences: what stands out, and what the new day says by itself.</summary>
    public static IReadOnlyList<string> Of(EarlierEvidence earlier) =>
    [
        .. StandsOut(earlier),
        $"{InAnswer(earlier)}. {Alone(earlier.Alone.Sentence)}",
    ];

    /// <summary>How much of them is in an answer, without a full stop: like "2 earlier days with 24 runs are in this answer".</summary>
    public static string InAnswer(EarlierEvidence earlier) =>
        $"{(earlier.Days == 1 ? "An earlier day" : $"{earlier.Days} earlier days")} with {earlier.Runs} {(earlier.Runs == 1 ? "run" : "runs")} {(earlier.Days == 1 ? "is" : "are")} in this answer";

    /// <summary>The answer of the new day by itself, as such.</summary>
    /// <param name="sentence">That answer.</param>
    public static string Alone(string sentence) => $"From this day alone: {sentence}";

    /// <summary>Contradictions, the strongest first, then the option that cools and the gun that reads otherwise than before; none where all agrees.</summary>
    public static IReadOnlyList<string> StandsOut(EarlierEvidence earlier) => [.. earlier.Contradictions.Select(Said), .. earlier.Changed is { } changed ? [Said(changed)] : Array.Empty<string>(), .. earlier.Gun is { } gun ? [Said(gun)] : Array.Empty<string>()];

    // The option that stands out most: another one altered shows in all of them, turned round and weaker.
    private static string Said(ChangedOption c)
    {
        double percent = 100 * Math.Abs(c.Ratio - 1);
        return $"The {c.Option} shed {percent.ToString("0", CultureInfo.InvariantCulture)} % {(c.Ratio < 1 ? "less" : "more")} heat per degree on this day than on {(c.Days == 1 ? "the day" : $"the {c.Days} days")} before ({Times(c.TimesAsLikely)} as likely after a change of a fifth as after none): is it the same one, at the same voltage, in the same place? If not, give it a new name; all its runs count together in this answer.";
    }

    private static string Said(GunChange g) => g.Cans > 1 ? SaidOfCans(g) :
        $"The {g.Gun} read the can {Told(g.NowK)} than the air before the first run of this day{(g.Days == 0 ? "" : $", {Told(g.BeforeK)} on {(g.Days == 1 ? "the day" : $"the {g.Days} days")} before")} ({Chance}): a can that stood has the temperature of the air. Check the gun against something of known temperature, and its battery. If it is off, enter its readings of this day as those of another instrument.";

    private static string SaidOfCans(GunChange g) =>
        $"The {g.Gun} read the can before {g.Cans} runs of this day {Told(g.NowK - g.BeforeK)} than on {(g.Days == 1 ? "the day" : $"the {g.Days} days")} before, set beside what the air and the runs before leave of it ({Chance}). Check the gun against something of known temperature, and its battery. If it is off, enter its readings of this day as those of another instrument.";

    private static string Times(double times) => times >= 1000 ? "over 1000 times" : $"{times.ToString(times < 10 ? "0.0" : "0", CultureInfo.InvariantCulture)} times";

    private static string Said(Contradiction c) =>
        $"This day contradicts the earlier ones: the can with the {c.A} ran {Told(c.NewK)} than with the {c.B}, before it ran {Told(c.EarlierK)} ({Chance}). Was one of them altered or fitted otherwise? Then give it a new name.";

    private static string Told(double k) => $"{Math.Abs(k).ToString("0", CultureInfo.InvariantCulture)} K {(k < 0 ? "cooler" : "hotter")}";
}
