using Coolproof.Evidence.Model;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Tests.Model;

public class ExpectedCurvatureTests
{
    /// <summary>Where readings scatter so widely that what they miss bends nothing, the second derivatives (central differences of the gradient) are what is expected.</summary>
    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void With_wide_scatter_it_is_the_second_derivatives(bool clock, bool delays)
    {
        DayModel model = DayModelBuilder.Build(InventedDays.Plain(3, 4, clock: clock, delays: delays));
        DayModel held = model.Holding(Enumerable.Range(0, model.Layout.Globals).Where(i => model.Parameters[i].Prior == PriorKind.HalfNormal)
            .ToDictionary(i => i, i => model.Instruments.Any(e => e.Scatter == i) ? 10.0 : 0.7));
        DayDensity density = new(held);
        ArrowMode mode = ArrowMode.Find(density.Evaluate, held.Layout, [.. held.Parameters.Select(p => double.IsNaN(p.Held) ? SpreadSearch.Start(p) : p.Held)]);
        ArrowHessian expected = new ExpectedCurvature(held).At(mode.Position);
        for (int i = 0; i < held.Dimension; i++)
        {
            if (!double.IsNaN(held.Parameters[i].Held))
                continue;
            Assert.InRange(expected.Diagonal(i) / mode.Hessian.Diagonal(i), 0.8, 1.25);
            foreach (((int column, double value), (_, double other)) in expected.Row(i).Zip(mode.Hessian.Row(i)))
                if (double.IsNaN(held.Parameters[column].Held))
                    Assert.InRange((value - other) / Math.Sqrt(mode.Hessian.Diagonal(i) * mode.Hessian.Diagonal(column)), -0.15, 0.15);
        }
    }

    [Fact]
    public void It_bends_upwards_nowhere()
    {
        DayModel model = DayModelBuilder.Build(InventedDays.Plain(4, 5, clock: true, delays: false));
        DayModel held = model.Holding(Enumerable.Range(0, model.Layout.Globals).Where(i => model.Parameters[i].Prior == PriorKind.HalfNormal).ToDictionary(i => i, _ => 0.3));
        Sampling.RandomStream chance = new(3);
        for (int trial = 0; trial < 20; trial++)
        {
            double[] at = [.. held.Parameters.Select(p => (double.IsNaN(p.Held) ? SpreadSearch.Start(p) : p.Held) + (double.IsNaN(p.Held) ? chance.NextNormal() : 0))];
            Assert.False(ArrowFactor.Of(new ExpectedCurvature(held).At(at)).Repaired);
        }
    }
}
