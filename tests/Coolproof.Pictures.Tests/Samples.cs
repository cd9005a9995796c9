using Coolproof.Evidence;

namespace Coolproof.Pictures.Tests;

/// <summary>Verdicts with made-up numbers in the invented scenario of the demo: no motor was ever measured.</summary>
internal static class Samples
{
    public static readonly string[] SixNames =
        ["Bare can", "Clip-on finned clamp", "Clamp with 25 mm fan", "Nose-scoop duct", "Twin 30 mm fans in a printed duct", "Rear blower"];

    private static readonly double[] SixCans = [93.4, 86.2, 74.8, 88.9, 72.1, 79.6];

    /// <summary>Quantiles of a normal distribution: 0.6745 and 1.6449 standard deviations (Abramowitz and Stegun, table 26.5).</summary>
    public static Summary Normal(double mean, double sd) =>
        new(mean, sd, mean - 1.6449 * sd, mean - 0.6745 * sd, mean, mean + 0.6745 * sd, mean + 1.6449 * sd);

    public static Verdict Six() => Of(SixNames, SixCans, sd: 1.9);

    public static Verdict Two() => Of(["Bare can", "Clip-on finned clamp"], [88.0, 86.4], sd: 2.6,
        sentence: "Clip-on finned clamp or bare can: can’t be told yet. Two more runs each may settle it.");

    public static Verdict One() => Of(["Rear blower"], [79.6], sd: 3.1, sentence: "Rear blower: the can ends at 80 °C. A second option is needed to compare.");

    public static Verdict None() => Of([], [], 1, sentence: "No reading counts yet.");

    public static Verdict Forty() => Of(
        [.. Enumerable.Range(1, 40).Select(i => $"{SixNames[i % 6]}, version {i}")], [.. Enumerable.Range(1, 40).Select(i => 70 + 0.8 * (i * 17 % 40))], sd: 1.4);

    public static Verdict Named(params string[] names) => Of(names, [.. names.Select((_, i) => 75.0 + 6 * i)], sd: 2);

    public static Verdict Of(IReadOnlyList<string> names, IReadOnlyList<double> cans, double sd, string? sentence = null)
    {
        OptionVerdict[] options = [.. names.Select((name, i) => new OptionVerdict(name, 3, 9, Normal(cans[i], sd * (1 + 0.25 * (i % 3))),
            Normal(cans[i] + 21 + i % 4, 3.4 * sd), Normal(1, 0.05), Normal(0.6, 0.1), names.Count == 1 ? 1 : Coolest(cans, i)))];
        PairVerdict[] pairs = [.. from a in Enumerable.Range(0, names.Count) from b in Enumerable.Range(a + 1, names.Count - a - 1) select Pair(names, cans, sd, a, b)];
        int best = names.Count == 0 ? -1 : Enumerable.Range(0, names.Count).MinBy(i => cans[i]);
        PairVerdict? main = pairs.Where(p => best >= 0 && (p.A == names[best] || p.B == names[best])).MinBy(p => Math.Abs(p.DifferenceK.Mean));
        return new(new(27, 360), 2, 7,
            sentence ?? $"{names[best]} is the coolest on this motor, and {names.Count - 1} others are not far from it: most of them are hotter for sure.",
            options, pairs, main, names.Count < 2 ? [] : Doubt, new(4, 1000, 1.002, 1630, 0), [.. names.Take(12).SelectMany((n, i) => Runs(n, i, cans[i]))],
            null, names.Count < 2 ? [] : ["In 3 runs the seconds from stop to reading were not noted."], ["Note the seconds from stop to reading."]);
    }

    public static readonly DoubtShare[] Doubt =
    [
        new("load run to run", 0.21), new("delay", 0.41), new("reading scatter and aim", 0.12), new("gun", 0.03), new("air", 0.06),
        new("warmth brought along", 0.124), new("mounting and day", 0.04), new("motor constants and priors", 0.006),
    ];

    public static RunCurve Run(string option, double can, string run, int readings, bool noted = true, string? outlier = null)
    {
        double[] grid = [.. Enumerable.Range(0, 28).Select(i => -8 + 5.0 * i)];
        double CanAt(double t) => 27 + (can - 27) * Math.Exp(-(t + 8) / 420) + 2.2 * (1 - Math.Exp(-(t + 8) / 25));
        double WindingAt(double t) => CanAt(t) + 22 * Math.Exp(-(t + 8) / 70);
        return new("Tuesday evening", run, option, Normal(27.3, 0.4), grid, [.. grid.Select(t => Normal(CanAt(t), 1.1 + (t + 8) / 140))],
            [.. grid.Select(t => Normal(WindingAt(t), 4.5))],
            [.. Enumerable.Range(0, readings).Select(i => Reading(i, 14 + 17 * i, CanAt(14 + 17 * i) - 1.4 + 0.8 * (i % 3), can + 0.6 * (i - 1), noted))], outlier);
    }

    /// <summary>A run whose winding was measured three times by its resistance, beside some readings of the can.</summary>
    public static RunCurve ReadOnTheWinding(int onCan)
    {
        RunCurve run = Run("Rear blower", 80, "3", onCan);
        return run with
        {
            WindingReadings =
            [
                new(11, true, 21, true, run.WindingC[6].Q50 - 1.2, run.WindingC[0].Q50 - 1), new(12, true, 40, true, run.WindingC[9].Q50 + 1.5, run.WindingC[0].Q50 + 1.6),
                new(13, false, 72, false, run.WindingC[16].Q50 + 0.4, run.WindingC[0].Q50 + 0.3),
            ],
        };
    }

    private static CorrectedReading Reading(int i, double delay, double read, double corrected, bool noted) =>
        new(i + 2, delay, noted, read, corrected, corrected - read - 0.5, 0.3, 0.2, -0.3, -0.4, corrected - 0.7);

    private static IEnumerable<RunCurve> Runs(string option, int place, double can) =>
        [Run(option, can - 1, $"{2 * place + 1}", 3), Run(option, can + 1.4, $"{2 * place + 2}", place % 3 + 1, place != 2, place == 4 ? "much hotter than the other runs of this option" : null)];

    private static double Coolest(IReadOnlyList<double> cans, int i) =>
        Math.Exp(-(cans[i] - cans.Min()) / 1.3) / cans.Sum(c => Math.Exp(-(c - cans.Min()) / 1.3));

    private static PairVerdict Pair(IReadOnlyList<string> names, IReadOnlyList<double> cans, double sd, int a, int b)
    {
        double difference = cans[a] - cans[b];
        double probability = 1 / (1 + Math.Exp(1.7 * difference / sd));
        PairCall call = probability >= 0.975 ? PairCall.ACooler : probability <= 0.025 ? PairCall.BCooler : Math.Abs(difference) < 0.9 && sd < 1.5 ? PairCall.Same : PairCall.Open;
        return new(names[a], names[b], ComparedOn.Can, Normal(difference, call == PairCall.Same ? 0.6 : sd), probability, call);
    }
}
