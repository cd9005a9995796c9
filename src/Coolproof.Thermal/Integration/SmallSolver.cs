namespace Coolproof.Thermal;

/// <summary>(d 1 − J) x = r for a handful of unknowns, by elimination with row pivoting, in place and without allocation.</summary>
internal sealed class SmallSolver(int n)
{
    readonly double[] lu = new double[n * n];
    readonly int[] pivots = new int[n];

    internal bool Factor(ReadOnlySpan<double> jacobian, double diagonal)
    {
        for (int i = 0; i < n * n; i++) lu[i] = -jacobian[i];
        for (int i = 0; i < n; i++) lu[i * n + i] += diagonal;
        for (int p = 0; p < n; p++)
        {
            int best = p;
            for (int i = p + 1; i < n; i++)
                if (Math.Abs(lu[i * n + p]) > Math.Abs(lu[best * n + p])) best = i;
            pivots[p] = best;
            if (!(Math.Abs(lu[best * n + p]) > 0)) return false;
            if (best != p)
                for (int j = 0; j < n; j++) (lu[p * n + j], lu[best * n + j]) = (lu[best * n + j], lu[p * n + j]);
            for (int i = p + 1; i < n; i++)
            {
                double factor = lu[i * n + p] /= lu[p * n + p];
                for (int j = p + 1; j < n; j++) lu[i * n + j] -= factor * lu[p * n + j];
            }
        }
        return true;
    }

    internal void Solve(Span<double> x)
    {
        for (int p = 0; p < n; p++) (x[p], x[pivots[p]]) = (x[pivots[p]], x[p]);
        for (int i = 0; i < n; i++)
            for (int j = 0; j < i; j++) x[i] -= lu[i * n + j] * x[j];
        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++) x[i] -= lu[i * n + j] * x[j];
            x[i] /= lu[i * n + i];
        }
    }
}
