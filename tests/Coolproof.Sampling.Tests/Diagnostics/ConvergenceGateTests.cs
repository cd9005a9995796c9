using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Tests.Diagnostics;

public sealed class ConvergenceGateTests
{
    static readonly GateLimits Limits = new();

    [Fact]
    public void Independent_draws_pass_without_a_word()
    {
        GateResult gate = Check(("a", Normal(1)), ("b", Normal(2)));
        Assert.True(gate.Passed, gate.Reason);
        Assert.Null(gate.Quantity);
        Assert.Equal("", gate.Reason);
        Assert.Equal(2, gate.Figures.Count);
        Assert.InRange(gate.LargestRHat, 0.99, 1.01);
        Assert.InRange(gate.SmallestSampleSize, 400, 4000);
    }

    [Fact]
    public void A_chain_apart_is_refused_by_name()
    {
        double[] apart = Normal(3);
        for (int i = 1500; i < 2000; i++)
            apart[i] += 2;
        GateResult gate = Check(("good", Normal(1)), ("apart", apart));
        AssertRefused(gate, "apart", "R-hat");
    }

    [Fact]
    public void Too_few_effective_draws_are_refused_by_name()
    {
        double[] slow = Normal(4);
        for (int i = 0; i < slow.Length; i++)
            slow[i] = i % 500 == 0 ? slow[i] : 0.9 * slow[i - 1] + Math.Sqrt(0.19) * slow[i];
        GateResult gate = Check(("slow", slow), ("good", Normal(1)));
        AssertRefused(gate, "slow", gate.LargestRHat >= 1.01 ? "R-hat" : "effective draws");
    }

    [Fact]
    public void A_draw_that_is_no_number_is_refused_by_name()
    {
        double[] broken = Normal(5);
        broken[10] = double.NaN;
        AssertRefused(Check(("good", Normal(1)), ("broken", broken)), "broken", "not finite");
    }

    [Fact]
    public void A_quantity_that_never_moves_is_refused_by_name() =>
        AssertRefused(Check(("still", Enumerable.Repeat(1.0, 2000).ToArray()), ("good", Normal(1))), "still", "never moves");

    [Fact]
    public void Two_divergences_in_two_thousand_pass_and_three_are_refused()
    {
        Assert.True(ConvergenceGate.Check(["a"], [Normal(1)], 4, 2, Limits).Passed);
        GateResult refused = ConvergenceGate.Check(["a"], [Normal(1)], 4, 3, Limits);
        Assert.False(refused.Passed);
        Assert.Null(refused.Quantity);
        Assert.Contains("3 of 2000 draws diverged", refused.Reason);
    }

    static GateResult Check(params (string Name, double[] Values)[] quantities) =>
        ConvergenceGate.Check([.. quantities.Select(q => q.Name)], [.. quantities.Select(q => q.Values)], 4, 0, Limits);

    static void AssertRefused(GateResult gate, string quantity, string why)
    {
        Assert.False(gate.Passed);
        Assert.Equal(quantity, gate.Quantity);
        Assert.Contains(why, gate.Reason);
        Assert.Contains(quantity, gate.Reason);
        Assert.NotEqual("", gate.Remedy);
    }

    static double[] Normal(int seed)
    {
        double[] values = new double[2000];
        new RandomStream(seed).FillNormal(values);
        return values;
    }
}
