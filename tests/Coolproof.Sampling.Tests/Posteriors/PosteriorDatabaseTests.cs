using System.Diagnostics;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>Means, spreads and quantiles against the reference draws of posteriordb (Magnusson et al. 2025) and closed forms.</summary>
public sealed class PosteriorDatabaseTests
{
    public static TheoryData<string> Names => [
        "eight_schools-eight_schools_noncentered",
        "kidiq-kidscore_momiq",
        "kidiq-kidscore_momhsiq",
        "kidiq-kidscore_interaction",
        "kidiq_with_mom_work-kidscore_interaction_z",
        "earnings-earn_height",
        "earnings-logearn_height",
        "earnings-logearn_interaction",
        "mesquite-mesquite",
        "mesquite-logmesquite_logvas",
        "kilpisjarvi_mod-kilpisjarvi",
        "gp_pois_regr-gp_regr",
        "gp_pois_regr-gp_pois_regr",
        "low_dim_gauss_mix-low_dim_gauss_mix",
        "one_comp_mm_elim_abs-one_comp_mm_elim_abs",
        "hudson_lynx_hare-lotka_volterra",
    ];

    static Posterior Open(string name) => name.Split('-')[1] switch
    {
        "eight_schools_noncentered" => EightSchools.Of(),
        "kidscore_momiq" => RegressionPosteriors.KidScore("momiq"),
        "kidscore_momhsiq" => RegressionPosteriors.KidScore("momhsiq"),
        "kidscore_interaction" => RegressionPosteriors.KidScore("interaction"),
        "kidscore_interaction_z" => RegressionPosteriors.KidScoreStandardised(),
        "earn_height" or "logearn_height" or "logearn_interaction" => RegressionPosteriors.Earnings(name.Split('-')[1]),
        "mesquite" => RegressionPosteriors.Mesquite(false),
        "logmesquite_logvas" => RegressionPosteriors.Mesquite(true),
        "kilpisjarvi" => RegressionPosteriors.Kilpisjarvi(),
        "gp_regr" => GaussianProcesses.Regression(),
        "gp_pois_regr" => GaussianProcesses.Poisson(),
        "low_dim_gauss_mix" => GaussianMixture.Of(),
        "one_comp_mm_elim_abs" => Reactions.OneCompartment(),
        _ => Reactions.LotkaVolterra(),
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void The_gradient_is_that_of_the_density(string name)
    {
        Posterior posterior = Open(name);
        RandomStream random = new(3);
        for (int round = 0; round < 3; round++)
        {
            double[] at = posterior.Start(random), gradient = new double[at.Length], unused = new double[at.Length];
            posterior.Density(at, gradient);
            for (int i = 0; i < at.Length; i++)
            {
                double h = 1e-5 * (posterior.Metric is null ? 1 : Math.Sqrt(posterior.Metric.Variances()[i])), middle = at[i];
                at[i] = middle + h;
                double up = posterior.Density(at, unused);
                at[i] = middle - h;
                double down = posterior.Density(at, unused);
                at[i] = middle;
                // Relative to the largest a coordinate can matter; differences lose half the digits.
                Assert.Equal((up - down) / (2 * h) * h * 1e5, gradient[i] * h * 1e5, 1e-5 * (1 + Math.Abs(gradient[i] * h * 1e5)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Draws_agree_with_the_published_reference(string name)
    {
        Posterior posterior = Open(name);
        Stopwatch watch = Stopwatch.StartNew();
        GatedResult result = Sample(name, posterior, 1);
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{name}: {watch.Elapsed.TotalSeconds:f1} s, {result.Gradients} gradients, {result.Sample.Draws} draws, R-hat {result.Gate.LargestRHat:f4}, least ESS {result.Gate.SmallestSampleSize:f0}, divergences {result.Sample.Divergences}");
        Assert.True(result.Gate.Passed, result.Gate.Reason);
        Table reference = new("posteriordb/reference_draws_summary.csv"), exact = new("posteriordb/exact_flat_prior.csv");
        string[][] exactRows = [.. exact.Where("posterior", name)];
        bool byQuantiles = name.StartsWith("one_comp", StringComparison.Ordinal);
        double worst = 0;
        string[][] published = [.. reference.Where("posterior", name)];
        Assert.Equal(posterior.Names.Order(), published.Select(row => reference.Text(row, "parameter")).Order());
        foreach (string[] row in published)
        {
            int q = Array.IndexOf(posterior.Names, reference.Text(row, "parameter"));
            QuantityDiagnostics ours = result.Gate.Figures[q];
            string[]? closed = exactRows.SingleOrDefault(r => exact.Text(r, "parameter") == posterior.Names[q]);
            if (byQuantiles)
            {
                worst = Math.Max(worst, QuantileDistance(result.Quantities[q], reference, row));
                continue;
            }

            double mean = closed is null ? reference.Number(row, "mean") : exact.Number(closed, "exact_mean");
            double sd = closed is null ? reference.Number(row, "sd") : exact.Number(closed, "exact_sd");
            double meanError = closed is null ? reference.Number(row, "mcse_mean") : 0, sdError = closed is null ? reference.Number(row, "mcse_sd") : 0;
            worst = Math.Max(worst, Math.Abs(ours.Mean - mean) / Math.Sqrt(ours.MeanError * ours.MeanError + meanError * meanError));
            worst = Math.Max(worst, Math.Abs(ours.StandardDeviation - sd) / Math.Sqrt(ours.StandardDeviationError * ours.StandardDeviationError + sdError * sdError));
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{name}: worst of {published.Length} parameters lies {worst:f2} Monte Carlo errors away");
        Assert.True(worst <= 4, $"{worst:f2} Monte Carlo errors");
    }

    [Fact]
    public void Wide_random_starts_strand_a_chain_of_lynx_and_hare_and_the_gate_says_so()
    {
        (NutsResult sample, GateResult gate) = FromWideStarts();
        double[] height = [.. sample.Chains.Select(chain => chain.LogDensities.Average())];
        TestContext.Current.TestOutputHelper?.WriteLine($"{gate.Reason}; mean log densities {string.Join(", ", height.Select(h => h.ToString("f1")))}");
        // It truly is stranded: tens of log units below the others.
        Assert.True(height.Max() - height.Min() > 20);
        Assert.False(gate.Passed);
        Assert.NotNull(gate.Quantity);
        Assert.True(gate.LargestRHat > 1.4, gate.Reason);
    }

    /// <summary>Starts uniform on (−2, 2) in every log coordinate, as general-purpose tools use when told nothing.</summary>
    static (NutsResult Sample, GateResult Gate) FromWideStarts()
    {
        Posterior posterior = Reactions.LotkaVolterra();
        NutsResult sample = Nuts.Sample(
            8,
            () => posterior.Density,
            (_, random) => [.. Enumerable.Range(0, 8).Select(_ => 4 * random.NextUniform() - 2)],
            new NutsSettings(WarmUp: 300, Draws: 200),
            StrandingSeed,
            1);
        return (sample, ConvergenceGate.Check(posterior.Names, sample.Derive(8, posterior.Parameters), 4, sample.Divergences, new GateLimits()));
    }

    /// <summary>The first seed at which a chain strands without a single divergence to betray it; of seeds 1 to 40 about every third strands one.</summary>
    const long StrandingSeed = 2;

    static GatedResult Sample(string name, Posterior posterior, long seed, int mostDraws = 16000)
    {
        NutsSettings settings = new(WarmUp: 1000, Draws: posterior.Dimension > 5 ? 1000 : 2000, Metric: MetricKind.Dense, TargetAcceptance: name.Contains("eight") ? 0.9 : name.Contains("one_comp") ? 0.95 : 0.8);
        return GatedSampling.Run(
            posterior.Dimension,
            () => posterior.Density,
            (_, random) => posterior.Start(random),
            settings,
            posterior.Names,
            posterior.Parameters,
            new GateLimits(),
            mostDraws,
            seed,
            1,
            posterior.Metric);
    }

    static double QuantileDistance(double[] values, Table reference, string[] row)
    {
        double worst = 0, size = reference.Number(row, "ess_bulk_published");
        ConvergenceDiagnostics diagnostics = new(4, values.Length / 4);
        foreach ((string column, double p) in new[] { ("q05", 0.05), ("q25", 0.25), ("q50", 0.5), ("q75", 0.75), ("q95", 0.95) })
        {
            (double at, double error) = diagnostics.QuantileWithError(values, p);
            // The reference's own error: ours scaled to its effective draws.
            double theirs = error * Math.Sqrt(diagnostics.QuantileSampleSize(values, p) / size);
            worst = Math.Max(worst, Math.Abs(at - reference.Number(row, column)) / Math.Sqrt(error * error + theirs * theirs));
        }

        return worst;
    }
}
