using System.Numerics.Tensors;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>
/// The curvature of a model's log density that is to be expected (Gauss-Newton): the priors' own, and of each observation the square of its slopes times its
/// precision. It never bends upwards, so that spreads may be widened about it, and costs forward passes only. What couples one block to another is left out.
/// </summary>
/// <param name="model">The model in the coordinates it was built in, its spreads held.</param>
internal sealed class ExpectedCurvature(DayModel model)
{
    private const double Step = 1e-5;
    private readonly DayDensity _density = new(model);
    private readonly int[] _blockOfRun = BlocksOfRuns(model);

    /// <summary>At a position.</summary>
    public ArrowHessian At(double[] position)
    {
        ArrowLayout layout = model.Layout;
        int globals = layout.Globals;
        double[] moved = [.. position];
        Observed[] here = Observations(moved);
        int[] block = [.. here.Select(o => o.Run < 0 ? -1 : _blockOfRun[o.Run])];
        double[] slopes = new double[here.Length * globals], own = new double[here.Length * Math.Max(layout.LargestBlock, 1)];
        for (int g = 0; g < globals; g++)
            if (double.IsNaN(model.Parameters[g].Held))
                Differ([g], (i, slope) => slopes[i * globals + g] = slope);
        for (int s = 0; s < layout.LargestBlock; s++)
            for (int parity = 0; parity < 2; parity++)
                Differ([.. Enumerable.Range(0, layout.Blocks).Where(b => b % 2 == parity && s < layout.Size(b)).Select(b => globals + layout.Start(b) + s)],
                    (i, slope) => own[i * layout.LargestBlock + s] = block[i] >= 0 && block[i] % 2 == parity && s < layout.Size(block[i]) ? slope : own[i * layout.LargestBlock + s]);
        ArrowHessian hessian = new(layout);
        for (int i = 0; i < position.Length; i++)
            hessian.AddToDiagonal(i, PriorCurvature(i, position[i]));
        for (int i = 0; i < here.Length; i++)
            Add(hessian, here[i].Precision, slopes.AsSpan(i * globals, globals), block[i] < 0 ? [] : own.AsSpan(i * layout.LargestBlock, layout.Size(block[i])), block[i]);
        return hessian;

        void Differ(int[] coordinates, Action<int, double> put)
        {
            if (coordinates.Length == 0)
                return;
            foreach (int c in coordinates)
                moved[c] = position[c] + Step;
            Observed[] there = Observations(moved);
            foreach (int c in coordinates)
                moved[c] = position[c];
            for (int i = 0; i < there.Length; i++)
                put(i, (there[i].Value - here[i].Value) / Step);
        }
    }

    private Observed[] Observations(double[] u)
    {
        _density.Visit(u);
        return _density.Observations(u);
    }

    private static void Add(ArrowHessian hessian, double precision, ReadOnlySpan<double> globals, ReadOnlySpan<double> own, int block)
    {
        ArrowLayout layout = hessian.Layout;
        int g = globals.Length;
        for (int i = 0; i < g; i++)
        {
            if (globals[i] == 0)
                continue;
            Span<double> row = hessian.GlobalGlobal.AsSpan(i * g, g);
            TensorPrimitives.MultiplyAdd(globals, precision * globals[i], row, row);
            for (int l = 0; l < own.Length; l++)
                hessian.LocalGlobal[i * layout.Locals + layout.Start(block) + l] += precision * globals[i] * own[l];
        }
        for (int l = 0; l < own.Length; l++)
            for (int m = 0; m < own.Length; m++)
                hessian.BlockBlock[layout.EntryStart(block) + l * own.Length + m] += precision * own[l] * own[m];
    }

    private double PriorCurvature(int i, double u)
    {
        Parameter p = model.Parameters[i];
        if (!double.IsNaN(p.Held))
            return 1 / (Parameter.HeldSd * Parameter.HeldSd);
        // Mean heat and the packs' constants are told from what was driven: an observation of theirs stands for their priors.
        if (i == Global.Heat || model.Charge?.Packs.Contains(i) == true)
            return 0;
        return p.Prior switch
        {
            PriorKind.LogGamma => p.A * Math.Exp(u) / p.B,
            PriorKind.CutGamma => p.A,
            PriorKind.LogitBeta => 2 * p.A / Math.Pow(Math.Exp(u / 2) + Math.Exp(-u / 2), 2),
            PriorKind.Known => 1 / (p.B * p.B),
            _ => 1,
        };
    }

    private static int[] BlocksOfRuns(DayModel model)
    {
        int[] blockOf = new int[model.Layout.Locals];
        for (int b = 0; b < model.Layout.Blocks; b++)
            Array.Fill(blockOf, b, model.Layout.Start(b), model.Layout.Size(b));
        return [.. model.Runs.Select(r => blockOf[r.Heat - model.Layout.Globals])];
    }
}
