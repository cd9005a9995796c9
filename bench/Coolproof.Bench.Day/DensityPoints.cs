using Coolproof.Evidence.Model;
using Coolproof.Sampling;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Bench.Day;

/// <summary>Log densities and gradients at points spread over the posterior, to be compared with a peer's.</summary>
internal static class DensityPoints
{
    private const int Points = 20;
    private const double Bar = 1e-8;

    /// <summary>
    /// Writes 20 points and, a row each, the log density and its gradient there. Points: the typical point plus a whitened standard normal in the program's
    /// coordinates; in plain ones the typical point plus 0.3 sd of the priors.
    /// </summary>
    public static void Write(DayTask task, string positions, string densities)
    {
        DayModel model = task.Model;
        int n = model.Dimension;
        DayDensity density = new(model);
        ArrowWhitening whitening = new(task.Fit.Centre, task.Fit.Factor);
        List<double[]> points = [], rows = [];
        for (int k = 0; k < Points; k++)
        {
            double[] z = new double[n], u = new double[n], gradient = new double[n];
            new RandomStream(7, k).FillNormal(z);
            if (ReferenceEquals(model, task.Fit.Model))
                whitening.ToPosition(z, u);
            else
                for (int i = 0; i < n; i++)
                    u[i] = (model.Parameters[i].Prior == PriorKind.LogGamma ? Math.Log(model.Parameters[i].B) : 0) + 0.3 * z[i];
            double log = density.Evaluate(u, gradient);
            points.Add(u);
            rows.Add([log, .. gradient]);
        }
        NumberFile.Write(positions, points);
        NumberFile.Write(densities, rows);
    }

    /// <summary>Compares two such files up to a constant of the log density; exit code 0 within 1e-8 (gradients: of their largest component).</summary>
    public static int Compare(string own, string peer)
    {
        double[][] a = NumberFile.Read(own), b = NumberFile.Read(peer);
        double[] offsets = [.. a.Zip(b, (x, y) => y[0] - x[0])];
        double constant = offsets.Order().ElementAt(offsets.Length / 2), density = 0, gradient = 0;
        for (int k = 0; k < a.Length; k++)
        {
            double largest = a[k].Skip(1).Max(Math.Abs);
            density = Math.Max(density, Math.Abs(offsets[k] - constant) / Math.Max(1, Math.Abs(a[k][0])));
            for (int i = 1; i < a[k].Length; i++)
                gradient = Math.Max(gradient, Math.Abs(a[k][i] - b[k][i]) / Math.Max(1, largest));
        }
        bool met = density <= Bar && gradient <= Bar && double.IsFinite(constant);
        Console.WriteLine(FormattableString.Invariant(
            $"{a.Length}\t{a[0].Length - 1}\t{density:R}\t{gradient:R}\t{constant:R}\t{(met ? "met" : "MISSED")}"));
        return met ? 0 : 1;
    }
}
