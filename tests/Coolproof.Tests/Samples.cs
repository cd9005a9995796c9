using Coolproof.Evidence;

namespace Coolproof.Tests;

/// <summary>Verdicts with invented numbers, in the made-up scenario of the demo.</summary>
static class Samples
{
    public static readonly string[] Names =
        ["bare can", "clip-on finned clamp", "clamp with 25 mm fan", "nose-scoop duct", "twin 30 mm fans in duct", "rear blower"];

    static readonly double[] CansC = [88.4, 81.2, 71.9, 79.6, 64.3, 73.8];

    public static Summary Around(double middle, double sd) =>
        new(middle, sd, middle - 1.645 * sd, middle - 0.674 * sd, middle, middle + 0.674 * sd, middle + 1.645 * sd);

    /// <summary>A verdict on the first options of the scenario, and on numbered ones beyond it.</summary>
    public static Verdict Of(int options, double sd = 2.4)
    {
        var all = Enumerable.Range(0, options).Select(i => Option(i, sd, options)).ToList();
        var pairs = new List<PairVerdict>();
        for (var a = 0; a < options; a++)
            for (var b = a + 1; b < options; b++)
            {
                pairs.Add(Pair(all[a], all[b], ComparedOn.Can, sd));
                pairs.Add(Pair(all[a], all[b], ComparedOn.Winding, sd * 1.6));
            }
        var ranked = all.OrderBy(option => option.PeakCanC.Q50).ToList();
        var main = options < 2 ? null : pairs.First(pair =>
            pair.On == ComparedOn.Can && new[] { pair.A, pair.B }.Order().SequenceEqual(new[] { ranked[0].Name, ranked[1].Name }.Order()));
        return new Verdict(
            new FairConditions(30, 360), 2, 1, Sentence(ranked), all, pairs, main,
            options < 2 ? [] :
            [
                new("delay", 0.41), new("load run to run", 0.22), new("mounting and day", 0.14), new("reading scatter and aim", 0.1),
                new("warmth brought along", 0.06), new("gun", 0.04), new("air", 0.02), new("motor constants and priors", 0.01),
            ],
            new SamplerRecord(4, 2000, 1.0021, 1630.4, 0), [.. all.Select((option, i) => Curve(option, i))],
            options < 2 ? null : new SecondOpinion(
                "straight-line model on corrected readings, options and days as factors",
                [new(ranked[0].Name, ranked[1].Name, -8.8, 2.9, true)], "A plain straight-line model on the corrected readings agrees."),
            ["The delay was not noted for 4 of 18 runs; a wide guess stands in."],
            ["Two more runs each of rear blower and clamp with 25 mm fan would tell them apart."]);
    }

    static string Sentence(List<OptionVerdict> ranked) => ranked.Count < 2
        ? $"{ranked[0].Name} takes the can to 88 °C (84 to 92); there is nothing to compare it with yet."
        : $"{ranked[0].Name} keeps the can 8 °C cooler (2 to 13) than {ranked[1].Name}, its closest rival, 19 in 20 sure.";

    static OptionVerdict Option(int i, double sd, int of)
    {
        var can = i < CansC.Length ? CansC[i] : 66 + i * 0.6;
        return new OptionVerdict(
            i < Names.Length ? Names[i] : $"printed duct, trial {i - Names.Length + 1}", 3, 9, Around(can, sd), Around(can + 21, sd * 1.7),
            Around(i == 0 ? 1 : 58 / (can - 30), i == 0 ? 0 : 0.06), Around(0.62 * 58 / (can - 30), 0.11),
            of == 1 ? 1 : i == 4 || of < 5 && i == of - 1 ? 0.93 : 0.07 / (of - 1));
    }

    static PairVerdict Pair(OptionVerdict a, OptionVerdict b, ComparedOn on, double sd)
    {
        var difference = on == ComparedOn.Can ? a.PeakCanC.Mean - b.PeakCanC.Mean : a.PeakWindingC.Mean - b.PeakWindingC.Mean;
        var call = difference / sd < -1.96 ? PairCall.ACooler : difference / sd > 1.96 ? PairCall.BCooler : PairCall.Open;
        return new PairVerdict(a.Name, b.Name, on, Around(difference, sd * 1.4), Math.Clamp(0.5 - difference / sd / 6, 0, 1), call);
    }

    static RunCurve Curve(OptionVerdict option, int i)
    {
        var read = option.PeakCanC.Mean - 3.5;
        return new RunCurve(
            "first evening", $"{i + 1}", option.Name, Around(27.4, 0.5), [0, 15], [option.PeakCanC, option.PeakCanC], [option.PeakWindingC, option.PeakWindingC],
            [new CorrectedReading(i + 2, 14, i % 2 == 0, read, read + 3.9, 3.1, 0.5, 0.3, 2.6, -1.2, read + 5.3)],
            i == 1 ? "fits badly with the other runs: 9 K above what they say" : null);
    }
}
