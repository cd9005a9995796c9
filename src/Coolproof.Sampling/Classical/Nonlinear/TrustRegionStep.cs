namespace Coolproof.Sampling.Classical;

/// <summary>
/// The Levenberg-Marquardt parameter λ and step p that minimise ‖J p + r‖² + λ‖D p‖², with ‖D p‖ within a tenth of the trust radius or λ = 0.
/// After J. J. Moré, "The Levenberg-Marquardt algorithm: implementation and theory", Lecture Notes in Mathematics 630 (1978) 105-116, section 5.
/// </summary>
internal static class TrustRegionStep
{
    /// <param name="qr">Factors of J with Qᵀr.</param>
    /// <param name="scales">Diagonal of D, positive.</param>
    /// <param name="radius">Trust radius Δ.</param>
    /// <param name="lambda">A first guess at λ, 0 or more.</param>
    /// <returns>λ and the step p (in the order of the parameters), as a minimiser of the linear model.</returns>
    public static (double Lambda, double[] Step) Find(PivotedQr qr, double[] scales, double radius, double lambda)
    {
        var p = scales.Length;
        var step = GaussNewton(qr);
        var length = ScaledNorm(step, scales);
        var excess = length - radius;
        if (excess <= 0.1 * radius) return (0, step);

        var fullRank = Enumerable.Range(0, p).All(k => qr.R[k, k] != 0);
        var lower = fullRank ? NewtonShare(qr.R, qr.Permutation, step, scales, length, excess / radius) : 0;
        var gradient = new double[p];
        for (var k = 0; k < p; k++)
        {
            for (var i = 0; i <= k; i++) gradient[k] += qr.R[i, k] * qr.QtVector[i];
            gradient[k] /= scales[qr.Permutation[k]];
        }
        var gradientNorm = PivotedQr.Norm(gradient);
        var upper = gradientNorm / radius;
        if (upper == 0) upper = double.Epsilon / Math.Min(radius, 0.1);
        lambda = Math.Clamp(lambda, lower, Math.Max(lower, upper));
        if (lambda == 0) lambda = gradientNorm / length;

        for (var iteration = 0; iteration < 12; iteration++)
        {
            if (lambda == 0) lambda = Math.Max(double.Epsilon, 0.001 * upper);
            var (damped, damping) = Damped(qr, scales, lambda);
            step = damped;
            length = ScaledNorm(step, scales);
            var previous = excess;
            excess = length - radius;
            if (Math.Abs(excess) <= 0.1 * radius || (lower == 0 && excess <= previous && previous < 0)) break;
            if (excess > 0) lower = Math.Max(lower, lambda);
            else upper = Math.Min(upper, lambda);
            lambda = Math.Max(lower, lambda + NewtonShare(damping, qr.Permutation, step, scales, length, excess / radius));
        }
        return (lambda, step);
    }

    public static double ScaledNorm(double[] step, double[] scales)
    {
        var scaled = new double[step.Length];
        for (var j = 0; j < step.Length; j++) scaled[j] = scales[j] * step[j];
        return PivotedQr.Norm(scaled);
    }

    // The undamped step; parameters beyond the rank of R stay where they are.
    static double[] GaussNewton(PivotedQr qr)
    {
        var p = qr.QtVector.Length;
        var rank = 0;
        while (rank < p && qr.R[rank, rank] != 0) rank++;
        var solved = new double[p];
        for (var k = rank - 1; k >= 0; k--)
        {
            var rest = -qr.QtVector[k];
            for (var l = k + 1; l < rank; l++) rest -= qr.R[k, l] * solved[l];
            solved[k] = rest / qr.R[k, k];
        }
        return Unpermute(solved, qr.Permutation);
    }

    // Newton's correction of λ for the root of 1/‖D p(λ)‖ = 1/Δ.
    static double NewtonShare(double[,] r, int[] permutation, double[] step, double[] scales, double length, double relativeExcess)
    {
        var p = step.Length;
        var solved = new double[p];
        for (var k = 0; k < p; k++)
        {
            var j = permutation[k];
            var rest = scales[j] * (scales[j] * step[j] / length);
            for (var i = 0; i < k; i++) rest -= r[i, k] * solved[i];
            solved[k] = rest / r[k, k];
        }
        var norm = PivotedQr.Norm(solved);
        return relativeExcess / norm / norm;
    }

    // Solves the damped problem by rotating √λ D into R, row by row; returns the step and the rotated triangle.
    static (double[] Step, double[,] Triangle) Damped(PivotedQr qr, double[] scales, double lambda)
    {
        var p = scales.Length;
        var triangle = (double[,])qr.R.Clone();
        var right = (double[])qr.QtVector.Clone();
        var row = new double[p];
        for (var k = 0; k < p; k++)
        {
            Array.Clear(row);
            row[k] = Math.Sqrt(lambda) * scales[qr.Permutation[k]];
            var extra = 0.0;
            for (var i = k; i < p; i++)
            {
                if (row[i] == 0) continue;
                var h = Math.Sqrt(triangle[i, i] * triangle[i, i] + row[i] * row[i]);
                var (c, s) = (triangle[i, i] / h, row[i] / h);
                for (var l = i; l < p; l++) (triangle[i, l], row[l]) = (c * triangle[i, l] + s * row[l], c * row[l] - s * triangle[i, l]);
                (right[i], extra) = (c * right[i] + s * extra, c * extra - s * right[i]);
            }
        }
        var solved = new double[p];
        for (var k = p - 1; k >= 0; k--)
        {
            var rest = -right[k];
            for (var l = k + 1; l < p; l++) rest -= triangle[k, l] * solved[l];
            solved[k] = triangle[k, k] == 0 ? 0 : rest / triangle[k, k];
        }
        return (Unpermute(solved, qr.Permutation), triangle);
    }

    static double[] Unpermute(double[] solved, int[] permutation)
    {
        var step = new double[solved.Length];
        for (var k = 0; k < solved.Length; k++) step[permutation[k]] = solved[k];
        return step;
    }
}
