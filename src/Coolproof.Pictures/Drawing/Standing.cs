using Coolproof.Evidence;

namespace Coolproof.Pictures.Drawing;

/// <summary>An option in its place, coolest first, beside the most probable coolest.</summary>
/// <param name="Option">The option.</param>
/// <param name="Look">Its colour and mark.</param>
/// <param name="HotterK">Its can minus the coolest's, K; null for the coolest itself and where the pair was not judged.</param>
/// <param name="Call">What is said of the two.</param>
/// <param name="ProbabilityHotter">Probability that it is hotter than the coolest.</param>
internal sealed record Standing(OptionVerdict Option, OptionLook Look, Summary? HotterK, PairCall Call, double ProbabilityHotter)
{
    /// <summary>The option most probably the coolest on the can; of equals the one with the lower middle; null without options.</summary>
    public static OptionVerdict? Coolest(Verdict verdict) =>
        verdict.Options.OrderByDescending(o => o.ProbabilityCoolest).ThenBy(o => o.PeakCanC.Q50).FirstOrDefault();

    /// <summary>All options by the middle of their can's temperature.</summary>
    /// <exception cref="ArgumentException">A quantile is not a finite number.</exception>
    public static IReadOnlyList<Standing> All(Verdict verdict, PictureStyle style)
    {
        string? coolest = Coolest(verdict)?.Name;
        return [.. verdict.Options.Select((o, place) => Of(verdict, o, LookOf(style, o.Name, place), coolest)).OrderBy(s => s.Option.PeakCanC.Q50)];
    }

    /// <summary>The look of an option as the style gives it, else by its place in the table; that of the first where a name is not in it.</summary>
    public static OptionLook LookOf(Verdict verdict, string option, PictureStyle style) =>
        LookOf(style, option, Math.Max(0, verdict.Options.ToList().FindIndex(o => o.Name == option)));

    private static OptionLook LookOf(PictureStyle style, string option, int place) => style.Looks?.GetValueOrDefault(option) ?? OptionLook.At(place);

    private static Standing Of(Verdict verdict, OptionVerdict option, OptionLook look, string? coolest)
    {
        Finite(option.PeakCanC, $"can of {option.Name}");
        Finite(option.PeakWindingC, $"winding of {option.Name}");
        PairVerdict? pair = verdict.Pairs.FirstOrDefault(p => p.On == ComparedOn.Can && p.A != p.B
            && ((p.A == option.Name && p.B == coolest) || (p.B == option.Name && p.A == coolest)));
        if (pair is null)
        {
            return new(option, look, null, PairCall.Open, 0.5);
        }

        Finite(pair.DifferenceK, $"difference of {pair.A} and {pair.B}");
        return pair.A == option.Name
            ? new(option, look, pair.DifferenceK, pair.Call, 1 - pair.ProbabilityACooler)
            : new(option, look, pair.DifferenceK.Turned(), pair.Call, pair.ProbabilityACooler);
    }

    private static void Finite(Summary s, string what)
    {
        foreach (double q in new[] { s.Q05, s.Q25, s.Q50, s.Q75, s.Q95 })
        {
            if (!double.IsFinite(q))
            {
                throw new ArgumentException($"The {what} has a quantile of {q}: it can't be drawn.", nameof(s));
            }
        }
    }
}
