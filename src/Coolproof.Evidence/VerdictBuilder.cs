using Coolproof.Evidence.Curves;
using Coolproof.Evidence.Doubts;
using Coolproof.Evidence.Model;
using Coolproof.Evidence.Opinion;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Sampling;
using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Evidence;

/// <summary>Puts a verdict together from the draws.</summary>
internal static class VerdictBuilder
{
    private const double FirmAt = 0.975, SameAt = 0.95;

    // A stream of its own, far from the chains': the scale of the motor that no temperature tells of.
    private const int ScaleStream = 1000;

    /// <summary>The verdict.</summary>
    public static Verdict Of(Posterior posterior, GatedResult result, JudgeSettings settings)
    {
        // The curves take as long as all the rest: a second thread draws them meanwhile.
        Task<IReadOnlyList<RunCurve>> curves = settings.Threads > 1 ? Task.Run(() => RunCurves.Of(posterior)) : Task.FromResult(RunCurves.Of(posterior));
        OptionVerdict[] options = Options(posterior, settings.Seed);
        PairVerdict[] pairs = [.. Pairs(posterior, settings.SameWithinK)];
        PairVerdict? main = Main(options, pairs);
        SamplerRecord sampler = new(result.Sample.Chains.Count, result.Sample.Draws, result.Gate.LargestRHat, result.Gate.SmallestSampleSize, result.Sample.Divergences);
        IReadOnlyList<DoubtShare> doubt = main is null ? [] : DoubtShares.Of(posterior, Place(posterior, main.A), Place(posterior, main.B));
        IReadOnlyList<RunCurve> runs = curves.GetAwaiter().GetResult();
        SecondOpinion? second = main is null ? null : SecondOpinionFit.Of(posterior, runs, [.. pairs.Where(p => p.On == ComparedOn.Can)]);
        string sentence = VerdictSentence.Of(options, pairs, main, posterior.Fair, settings.SameWithinK);
        return new(posterior.Fair, settings.SameWithinK, settings.Seed, sentence, options, pairs, main, doubt, sampler, runs, second,
            Warnings.Of(posterior.Table, options), Advice.Of(posterior.Table, options, pairs, main, doubt, settings.SameWithinK));
    }

    private static int Place(Posterior posterior, string name) => posterior.Options.ToList().FindIndex(o => posterior.Table.Options[o] == name);

    private static OptionVerdict[] Options(Posterior p, long seed)
    {
        int draws = p.Draws.Count;
        int[] coolest = new int[p.Options.Count];
        for (int i = 0; i < draws; i++)
            coolest[Enumerable.Range(0, p.Options.Count).MinBy(k => p.CanC[k][i])]++;
        RandomStream chance = new(seed, ScaleStream);
        double[] scale = [.. Enumerable.Range(0, draws).Select(_ => Priors.CoreCapacity * Math.Exp(Priors.ScaleSd * chance.NextNormal()))];
        return [.. p.Options.Select((option, k) => new OptionVerdict(
            p.Table.Options[option],
            Judge.Counted(p.Table, option).Count(),
            Judge.Counted(p.Table, option).Sum(r => r.Readings.Count(DayModelBuilder.Counts)),
            Summaries.Of(p.CanC[k]),
            Summaries.Of(p.WindingC[k]),
            Summaries.Of(Zip(p.Conductance[k], p.Conductance[0], (a, b) => a / b)),
            Summaries.Of(Zip(p.Conductance[k], scale, (a, b) => a * b)),
            (double)coolest[k] / draws))];
    }

    private static IEnumerable<PairVerdict> Pairs(Posterior p, double sameWithinK)
    {
        for (int a = 0; a < p.Options.Count; a++)
        {
            for (int b = a + 1; b < p.Options.Count; b++)
            {
                bool comparable = CommonSpot(p.Table, p.Options[a], p.Options[b]);
                yield return Pair(p, a, b, ComparedOn.Can, p.CanC, comparable, sameWithinK);
                yield return Pair(p, a, b, ComparedOn.Winding, p.WindingC, comparable, sameWithinK);
            }
        }
    }

    private static PairVerdict Pair(Posterior p, int a, int b, ComparedOn on, double[][] peaks, bool comparable, double sameWithinK)
    {
        double[] difference = Zip(peaks[a], peaks[b], (x, y) => x - y);
        double cooler = (double)difference.Count(d => d < 0) / difference.Length, same = (double)difference.Count(d => Math.Abs(d) <= sameWithinK) / difference.Length;
        PairCall call = !comparable ? PairCall.Open
            : cooler >= FirmAt ? PairCall.ACooler
            : 1 - cooler >= FirmAt ? PairCall.BCooler
            : same >= SameAt ? PairCall.Same
            : PairCall.Open;
        return new(p.Table.Options[p.Options[a]], p.Table.Options[p.Options[b]], on, Summaries.Of(difference), cooler, call);
    }

    /// <summary>Whether two options have readings on one and the same kind of spot.</summary>
    internal static bool CommonSpot(ReadingsTable table, int a, int b) => Spots(table, a).Overlaps(Spots(table, b));

    private static HashSet<string> Spots(ReadingsTable table, int option) => [.. Judge.Counted(table, option).SelectMany(r => r.Readings).Where(DayModelBuilder.Counts)
        .SelectMany(r => new[] { r.ReadC is not null ? r.Spot.ToString() : "", r.Winding is not null ? "resistance" : "" }).Where(s => s.Length > 0)];

    // The most probable coolest and the rival closest to it.
    private static PairVerdict? Main(OptionVerdict[] options, PairVerdict[] pairs)
    {
        if (options.Length < 2)
            return null;
        string best = options.MaxBy(o => o.ProbabilityCoolest)!.Name;
        return pairs.Where(p => p.On == ComparedOn.Can && (p.A == best || p.B == best)).MinBy(p => Math.Abs(p.DifferenceK.Mean));
    }

    private static double[] Zip(double[] a, double[] b, Func<double, double, double> of)
    {
        double[] result = new double[a.Length];
        for (int i = 0; i < a.Length; i++)
            result[i] = of(a[i], b[i]);
        return result;
    }
}
