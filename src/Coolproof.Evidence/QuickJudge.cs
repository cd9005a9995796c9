using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;
using Coolproof.Sampling.Laplace;

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
    private const double Probe = 2, LeastFall = 1, MostFall = 4;

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
        DayFit fit = DayFit.Of(model, part?.Near);
        QuickVerdict drawn = Drawn(fit, options, Judge.Fair(table, settings), settings.Seed, draws, out double[][] whitened);
        return drawn with { Near = fit.Plain, Rough = drawn.Main() is { } main && !Normal(fit, whitened, drawn.Difference(main.Best, main.Rival)) };
    }

    private static QuickVerdict Drawn(DayFit fit, int[] options, FairConditions fair, long seed, int draws, out double[][] whitened)
    {
        DayModel model = fit.Model;
        int n = model.Dimension, count = options.Length;
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        FairPeaks peaks = new(model, options, fair);
        RandomStream chance = new(seed);
        double[] position = new double[n], row = new double[3 * count];
        double[][] can = [.. options.Select(_ => new double[draws])];
        MotorDraw[] motors = new MotorDraw[draws];
        whitened = [.. Enumerable.Range(0, draws).Select(_ => new double[n])];
        for (int i = 0; i < draws; i++)
        {
            // Every second draw is the mirror image of the one before: what is linear has the centre's mean, without chance.
            if (i % 2 == 0)
                chance.FillNormal(whitened[i]);
            else
                for (int j = 0; j < n; j++)
                    whitened[i][j] = -whitened[i - 1][j];
            whitening.ToPosition(whitened[i], position);
            peaks.Fill(position, row.AsSpan(0, count), row.AsSpan(count, count), row.AsSpan(2 * count));
            for (int k = 0; k < count; k++)
                can[k][i] = row[k];
            motors[i] = Motor(peaks.Motor, position, row[(2 * count)..]);
        }
        return new(fair, [.. options.Select(o => model.Options[o])], can, motors, Rough: false);
    }

    // The direction in which the difference moves with everything that goes with it: its regression on the whitened draws.
    private static bool Normal(DayFit fit, double[][] whitened, double[] difference)
    {
        int n = fit.Model.Dimension;
        double mean = difference.Average(), length = 0;
        double[] direction = new double[n], position = new double[n], gradient = new double[n];
        for (int i = 0; i < whitened.Length; i++)
            for (int j = 0; j < n; j++)
                direction[j] += (difference[i] - mean) * whitened[i][j];
        foreach (double d in direction)
            length += d * d;
        length = Math.Sqrt(length);
        DayDensity density = new(fit.Model);
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        double At(double sds)
        {
            whitening.ToPosition([.. direction.Select(d => length > 0 ? sds * d / length : 0)], position);
            return density.Evaluate(position, gradient);
        }
        double fall = At(0) - 0.5 * (At(Probe) + At(-Probe));
        return fall is >= LeastFall and <= MostFall;
    }

    private static MotorDraw Motor(in Constants c, double[] u, double[] conductance) => new(
        c.Rho, c.Kappa, c.Share, c.Slot, c.Copper, Math.Exp(c.LogHeat), Math.Exp(Priors.StoppedFanOn.Mean + Priors.StoppedFanOn.Sd * u[Global.StoppedFanOn]), conductance);
}
