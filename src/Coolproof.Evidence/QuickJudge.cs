using System.Numerics.Tensors;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Evidence;

/// <summary>
/// The same model judged in some milliseconds, for plans and while readings come in: draws from its normal approximation at the typical point
/// (docs/decisions/quick-judge.md). Verdicts never come from it.
/// </summary>
public static class QuickJudge
{
    /// <summary>Draws enough for odds to two or three points.</summary>
    public const int DefaultDraws = 400;

    // Along the main difference the log density should have fallen by 2 at two sds: by less than half of that or more than twice, sds are off by 1.4 or more.
    private const double Probe = 2, LeastFall = 1, MostFall = 4, SlopeStep = 1e-3;

    /// <summary>Judges a table quickly; null where <see cref="Judge"/> would refuse it.</summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="settings">Fair conditions and seed.</param>
    /// <param name="draws">Number of draws, an even number of 100 or more.</param>
    /// <param name="part">What came of a part of the same table: saves most of the work; null: nothing is known.</param>
    public static QuickVerdict? Of(ReadingsTable table, JudgeSettings settings, int draws = DefaultDraws, QuickVerdict? part = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 100);
        if (Judge.Refusal(table) is not null)
            return null;
        DayModel model = DayModelBuilder.Build(table, new KnownConstants());
        int[] options = [.. Enumerable.Range(0, table.Options.Count).Where(o => Judge.Counted(table, o).Any())];
        QuickFit fit = QuickFit.Of(model, part?.Near);
        FairConditions fair = Judge.Fair(table, settings);
        QuickVerdict drawn = Drawn(fit, options, fair, settings.Seed, draws);
        return drawn with { Near = fit.Near, Rough = drawn.Main() is { } main && !Normal(fit, [options[main.Best], options[main.Rival]], fair) };
    }

    private static QuickVerdict Drawn(QuickFit fit, int[] options, FairConditions fair, long seed, int draws)
    {
        DayModel model = fit.Model;
        int globals = model.Layout.Globals, count = options.Length;
        FairPeaks peaks = new(model, options, fair);
        RandomStream chance = new(seed);
        double[] position = [.. fit.Position], z = new double[globals], row = new double[3 * count];
        double[][] can = [.. options.Select(_ => new double[draws])];
        MotorDraw[] motors = new MotorDraw[draws];
        int[] nodes = NodeOfPair(fit.Nodes, draws / 2);
        for (int i = 0; i < draws; i++)
        {
            // Every second draw is the mirror image of the one before: what is linear has the centre's mean, without chance.
            if (i % 2 == 0)
                chance.FillNormal(z);
            else
                TensorPrimitives.Negate(z, z);
            fit.Nodes[nodes[i / 2]].Globals.Draw(z, position.AsSpan(0, globals));
            peaks.Fill(position, row.AsSpan(0, count), row.AsSpan(count, count), row.AsSpan(2 * count));
            for (int k = 0; k < count; k++)
                can[k][i] = row[k];
            motors[i] = Motor(peaks.Motor, position, row[(2 * count)..]);
        }
        return new(fair, [.. options.Select(o => model.Options[o])], can, motors, Rough: false);
    }

    // Each node has its share of the pairs of draws, without chance.
    private static int[] NodeOfPair(IReadOnlyList<SpreadNode> nodes, int pairs)
    {
        int[] node = new int[pairs];
        double reached = nodes[0].Weight;
        for (int i = 0, n = 0; i < pairs; i++)
        {
            while (n < nodes.Count - 1 && reached < (i + 0.5) / pairs)
                reached += nodes[++n].Weight;
            node[i] = n;
        }
        return node;
    }

    // Along the direction in which the difference moves, with everything that goes with it.
    private static bool Normal(QuickFit fit, int[] main, FairConditions fair)
    {
        int n = fit.Model.Dimension;
        double[] slope = new double[n], direction = new double[n], position = [.. fit.Position], gradient = new double[n], can = new double[2], winding = new double[2];
        FairPeaks peaks = new(fit.Model, main, fair);
        double Difference(int moved, double by)
        {
            position[moved] = fit.Position[moved] + by;
            peaks.Fill(position, can, winding, []);
            position[moved] = fit.Position[moved];
            return can[0] - can[1];
        }
        for (int g = 0; g < fit.Model.Layout.Globals; g++)
            slope[g] = (Difference(g, SlopeStep) - Difference(g, -SlopeStep)) / (2 * SlopeStep);
        fit.Factor.Solve(slope, direction);
        double length = Math.Sqrt(TensorPrimitives.Dot(slope, direction));
        DayDensity density = new(fit.Model);
        double At(double sds)
        {
            for (int i = 0; i < n; i++)
                position[i] = fit.Position[i] + (length > 0 ? sds * direction[i] / length : 0);
            return density.Evaluate(position, gradient);
        }
        double fall = At(0) - 0.5 * (At(Probe) + At(-Probe));
        return fall is >= LeastFall and <= MostFall;
    }

    private static MotorDraw Motor(in Constants c, double[] u, double[] conductance) => new(
        c.Rho, c.Kappa, c.Share, c.Slot, c.Copper, Math.Exp(c.LogHeat), Math.Exp(Priors.StoppedFanOn.Mean + Priors.StoppedFanOn.Sd * u[Global.StoppedFanOn]), conductance);
}
