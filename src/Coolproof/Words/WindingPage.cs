using Coolproof.Advice.Instruments;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A winding by its resistance, for people.</summary>
internal static class WindingPage
{
    const double FewDraws = 50, Sds90 = 1.645;

    /// <summary>How to measure, so that the number is worth it.</summary>
    public static IReadOnlyList<string> HowTo { get; } =
    [
        "Pack unplugged, controller off, its leads left soldered to the tabs; clips of the four-wire meter on the same two tabs each time, current clips outside, voltage clips inside.",
        "The rotor still: turned, it drives a voltage into the meter. Cold value with the motor an hour beside the thermometer.",
        "The can is hot; no full throttle with wheels in the air to warm it.",
    ];

    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<WindingByResistance> read, BackToTheStop? stop, PageSettings page)
    {
        DegreeWords degrees = page.Degrees;
        string sentence = Sentence(read, stop, degrees);
        foreach (string line in Cells.Wrap(page.Ink.On ? page.Ink.Bold(sentence) : sentence, page.Width)) yield return line;
        yield return "";
        string[] head = ["resistance", "after", "winding", "standard uncertainty", "by JCGM 101"];
        foreach (string row in TextColumns.Lines([head, .. read.Select(r => Row(r, degrees))], [true, true, true, true, true], page.Width)) yield return row;
        yield return "";
        foreach (string line in Labelled.Items("Mind", [.. Cautions(stop, degrees), .. HowTo], int.MaxValue, page)) yield return line;
    }

    static string[] Row(WindingByResistance r, DegreeWords degrees) =>
        [$"{r.Hot.Milliohm:0.0##} mΩ", r.Hot.AtS is { } at ? $"{at:0.#} s" : "?", degrees.Say(r.C, 1), degrees.SayDifference(r.StandardUncertaintyK, 2), degrees.SayDifference(r.ByChance.StandardUncertainty(), 2)];

    /// <summary>The answer in a sentence.</summary>
    public static string Sentence(IReadOnlyList<WindingByResistance> read, BackToTheStop? stop, DegreeWords degrees) => stop is null
        ? $"The winding was at {degrees.Say(read[0].C, 1)}, give or take {degrees.SayDifference(Sds90 * read[0].StandardUncertaintyK, 1)}, when it was read; without the seconds from power off it can’t be brought back to the stop."
        : $"At the stop the winding was at {degrees.MiddleAndRange(stop.Temperature)} {degrees.Unit}; it fell by {degrees.DifferenceAndRange(stop.FellK)} until the first reading.";

    static IEnumerable<string> Cautions(BackToTheStop? stop, DegreeWords degrees)
    {
        if (stop is null) yield break;
        if (stop.EffectiveDraws < FewDraws) yield return "These readings fall as hardly any motor that is believed in would: look at the seconds and at the numbers, and take the range as too narrow.";
        yield return $"The copper falls to the iron about it within seconds: one reading in the first 5 s is worth more than five later ones. {Rule(stop, degrees)}";
    }

    static string Rule(BackToTheStop stop, DegreeWords degrees) => stop.Rule switch
    {
        ShutDownRule.FirstStands => $"By the shut-down rule of IEC 60034-1 (from memory; made for machines that cool far more slowly) the first reading would stand: {degrees.Say(stop.ByRuleC, 1)}.",
        ShutDownRule.HighestStands => $"Readings rise, so by the shut-down rule of IEC 60034-1 (from memory) the highest stands: {degrees.Say(stop.ByRuleC, 1)}.",
        ShutDownRule.TakenBack when !double.IsNaN(stop.ByRuleC) => $"By the shut-down rule of IEC 60034-1 (from memory), taken back to 30 s on a logarithmic plot: {degrees.Say(stop.ByRuleC, 1)}.",
        ShutDownRule.TakenBack => "By the shut-down rule of IEC 60034-1 (from memory) a first reading after 30 s needs further ones, to be taken back to 30 s.",
        _ => "The shut-down rule of IEC 60034-1 (from memory) doesn’t cover a first reading later than 60 s.",
    };
}
