using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Tests.Curves;

/// <summary>Posteriors for tests that need no gate: a short real run of the sampler, or points chosen by hand.</summary>
internal static class FewDraws
{
    private static readonly FairConditions Fair = new(30, 360);

    /// <summary>4 chains of 100 draws after 200 of warm-up.</summary>
    public static Posterior Sampled(ReadingsTable table, long seed = 1)
    {
        DayFit fit = DayFit.Of(DayModelBuilder.Build(table));
        int n = fit.Model.Dimension;
        NutsResult result = Nuts.Sample(n, fit.Whitened(), (_, stream) =>
        {
            double[] z = new double[n];
            stream.FillNormal(z);
            return [.. z.Select(x => 0.5 * x)];
        }, new(WarmUp: 200, Draws: 100, Metric: MetricKind.LeadingBlock, LeadingBlock: fit.Model.Layout.Globals), seed, threads: 2);
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        return With(table, fit, [.. result.Chains.SelectMany(c => Enumerable.Range(0, c.Draws).Select(d =>
        {
            double[] position = new double[n];
            whitening.ToPosition(c.Draw(d), position);
            return position;
        }))]);
    }

    /// <summary>Points of the plain model chosen by hand: each sets some parameters by name, the rest are at their prior's middle.</summary>
    public static Posterior ByHand(ReadingsTable table, params Dictionary<string, double>[] draws)
    {
        DayModel model = DayModelBuilder.Build(table);
        double[][] points = [.. draws.Select(set => model.Parameters.Select(p => set.TryGetValue(p.Name, out double u) ? u : Middle(p)).ToArray())];
        return With(table, new(model, [], null!, 0), points);
    }

    private static Posterior With(ReadingsTable table, DayFit fit, double[][] draws) =>
        new(table, fit, draws, Fair, [.. Enumerable.Range(0, table.Options.Count)], [], [], []);

    private static double Middle(Parameter p) => p.Prior == PriorKind.LogGamma ? Math.Log(p.B) : p.Prior == PriorKind.Known ? p.A : 0;
}
