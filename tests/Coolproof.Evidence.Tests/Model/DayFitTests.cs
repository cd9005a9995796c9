using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Model;

public class DayFitTests
{
    [Fact]
    public void Carrying_a_point_to_other_coordinates_changes_no_temperature_and_comes_back()
    {
        DayModel model = DayModelBuilder.Build(InventedDays.Rich());
        DayModel fitted = DayFit.Of(model).Model;
        DayDensity plain = new(model), other = new(fitted);
        Random random = new(3);
        double[] u = [.. model.Parameters.Select(p => (p.Prior == PriorKind.LogGamma ? Math.Log(p.B) : 0) + random.NextDouble() - 0.5)];
        double[] there = Coordinates.Carry(plain, u, other);
        plain.Visit(u);
        other.Visit(there);
        for (int i = 0; i < model.Readings.Length; i++)
            Assert.Equal(plain.Seen[i].Can, other.Seen[i].Can, 1e-9);
        double[] back = Coordinates.Carry(other, there, plain);
        for (int i = 0; i < u.Length; i++)
            Assert.Equal(u[i], back[i], 1e-9);
    }

    [Theory]
    [InlineData(false, 0.01)]
    [InlineData(true, 0.5)] // With clock times a run starts where the one before ended, which the arrow leaves out.
    public void At_the_centre_the_whitened_curvature_is_the_identity_but_for_what_was_repaired(bool clock, double tolerance)
    {
        DayFit fit = DayFit.Of(DayModelBuilder.Build(InventedDays.Plain(4, 3, clock: clock)));
        LogDensity density = fit.Whitened()();
        int n = fit.Model.Dimension;
        double[] z = new double[n], above = new double[n], below = new double[n];
        const double h = 1e-4;
        int off = 0;
        for (int i = 0; i < n; i++)
        {
            (z[i], double keep) = (h, z[i]);
            density(z, above);
            z[i] = -h;
            density(z, below);
            z[i] = keep;
            if (Math.Abs((below[i] - above[i]) / (2 * h) - 1) > tolerance)
                off++;
        }
        Assert.True(off <= (fit.Factor.Repaired ? 3 : 0), $"{off} of {n} curvatures are not 1.");
    }

    [Fact]
    public void A_reading_hundreds_of_degrees_off_leaves_every_spread_a_number()
    {
        ReadingsTable day = InventedDays.Plain(3, 4);
        Run first = day.Runs[0];
        Run wild = first with { Readings = [first.Readings[0] with { ReadC = 900 }, .. first.Readings.Skip(1)] };
        DayModel model = DayModelBuilder.Build(day with { Runs = [wild, .. day.Runs.Skip(1)] });
        double[] typical = SpreadSearch.Run(model).Position;
        Assert.All(typical, x => Assert.True(double.IsFinite(x)));
        DayDensity density = new(model);
        density.Visit(typical);
        Assert.InRange(density.Guns[0].Scatter, Priors.ScatterFloor, 50);
    }
}
