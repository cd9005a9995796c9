using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Hamiltonian;

public sealed class GatedSamplingTests
{
    // Gradients of a chain after its 500 draws of warm-up and before its 300 kept ones are over: nearly all draws take 3 or 7.
    const int Later = 3800;

    static GatedResult Run(int dimension, LogDensity density, NutsSettings settings, int mostDraws, long seed = 1, Func<int, double[]>? start = null) =>
        GatedSampling.Run(
            dimension,
            () => density,
            (chain, random) => start is null ? Targets.NormalStart(dimension, random) : start(chain),
            settings,
            [.. Enumerable.Range(0, dimension).Select(i => $"x{i}")],
            (position, values) => position.CopyTo(values),
            new GateLimits(),
            mostDraws,
            seed,
            2);

    [Fact]
    public void Too_short_a_run_is_extended_until_the_gate_passes()
    {
        GatedResult result = Run(10, Targets.StandardNormal, new NutsSettings(Draws: 30), 4000);
        Assert.True(result.Gate.Passed, result.Gate.Reason);
        Assert.True(result.Sample.Draws is > 30 and <= 4000);
        Assert.Equal(4 * result.Sample.Draws, result.Quantities[0].Length);
        Assert.Equal(0.8, result.TargetAcceptance);
    }

    [Fact]
    public void The_budget_ends_the_extension_and_the_gate_says_why()
    {
        GatedResult result = Run(10, Targets.StandardNormal, new NutsSettings(Draws: 30), 70);
        Assert.False(result.Gate.Passed);
        Assert.Equal(70, result.Sample.Draws);
        Assert.NotNull(result.Gate.Quantity);
    }

    [Fact]
    public void A_funnel_diverges_at_every_step_size_and_is_refused()
    {
        GatedResult result = Run(10, Targets.Funnel, new NutsSettings(), 1000);
        Assert.Equal(0.99, result.TargetAcceptance);
        Assert.False(result.Gate.Passed, $"{result.Sample.Divergences} divergences");
        Assert.True(result.Gradients > result.Sample.Gradients);
    }

    [Theory]
    [InlineData(2500, 0.8)]
    [InlineData(100, 0.9)]
    public void Early_divergences_are_counted_against_the_draws_that_are_wanted_anyhow(double sampleSize, double target)
    {
        // Two of the first 4 × 300 draws, which is more than one in a thousand, but not of as many draws as the larger sample size asks for.
        int made = 0;
        GatedResult result = GatedSampling.Run(
            4, Density, (_, _) => new double[4], new NutsSettings(Draws: 300), ["x0"], (position, values) => values[0] = position[0], new GateLimits(SampleSize: sampleSize), 4000, 1, 2);
        Assert.True(result.Gate.Passed, result.Gate.Reason);
        Assert.Equal(target, result.TargetAcceptance);
        Assert.Equal(target == 0.8 ? 2 : 0, result.Sample.Divergences);

        // Of the first four chains two lose their way once, after the warm-up.
        LogDensity Density()
        {
            int chain = made++, calls = 0;
            return (position, gradient) => Targets.StandardNormal(position, gradient) - (chain < 2 && calls++ == Later ? 1e6 : 0);
        }
    }

    [Fact]
    public void Two_far_modes_are_refused()
    {
        // Wells at ±20 with unit width; no chain crosses.
        static double Wells(ReadOnlySpan<double> position, Span<double> gradient)
        {
            double nearest = position[0] < 0 ? -20 : 20;
            gradient[0] = nearest - position[0];
            return -0.5 * gradient[0] * gradient[0];
        }

        GatedResult result = Run(1, Wells, new NutsSettings(), 1000, 1, chain => [chain == 3 ? -20 : 20]);
        Assert.False(result.Gate.Passed);
        Assert.Equal("x0", result.Gate.Quantity);
        Assert.Contains("R-hat", result.Gate.Reason);
    }
}
