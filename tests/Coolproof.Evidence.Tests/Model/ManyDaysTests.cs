using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Model;

/// <summary>Notebooks of so many days that each day is a block of its own.</summary>
public class ManyDaysTests
{
    private const int Days = 13;

    private static DayModel Model(int rounds) => DayModelBuilder.Build(Rehearse.Day(new(3, [new("bare can"), new("clamp"), new("duct")], rounds) { Evenings = Days }).Table);

    [Fact]
    public void What_is_unknown_of_one_day_moves_nothing_of_another()
    {
        DayModel model = Model(1);
        Assert.True(model.DaysAreBlocks);
        DayDensity density = new(model);
        int n = model.Dimension, globals = model.Layout.Globals, first = model.Layout.Size(0);
        Random random = new(5);
        double[] u = [.. model.Parameters.Select(p => SpreadSearch.Start(p) + random.NextDouble() - 0.5)], before = new double[n], after = new double[n];
        density.Evaluate(u, before);
        for (int i = globals; i < globals + first; i++)
            u[i] += 0.1;
        density.Evaluate(u, after);
        Assert.NotEqual(before[globals], after[globals]);
        for (int i = globals + first; i < n; i++)
            Assert.Equal(before[i], after[i], 1e-9);
    }

    [Fact]
    public void The_typical_point_lies_in_the_bulk_and_not_at_the_mode_of_hundreds_of_unknowns()
    {
        DayModel model = Model(4);
        DayFit fit = DayFit.Of(model);
        for (int i = 0; i < model.Layout.Globals; i++)
            Assert.True(Math.Abs(fit.Typical[i]) < 2, $"{model.Parameters[i].Name}: {fit.Typical[i]}");
        double[] mode = SpreadSearch.Run(model).Position;
        Assert.Contains(Enumerable.Range(0, model.Layout.Globals), i => Math.Abs(mode[i]) > 2);
    }
}
