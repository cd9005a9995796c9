namespace Coolproof.Sampling.Classical;

/// <summary>
/// Linear mixed models with nested or crossed random terms, by profiled deviance over the relative covariance factors: D. Bates, M. Mächler,
/// B. Bolker, S. Walker, Journal of Statistical Software 67(1) (2015).
/// </summary>
public static class MixedModel
{
    /// <summary>Fits response = design · fixed effects + random effects + error.</summary>
    /// <param name="design">n × p fixed-effects design; dependent columns are set aside as in <see cref="LinearLeastSquares"/>.</param>
    /// <param name="response">n readings.</param>
    /// <param name="terms">Random terms; none gives ordinary least squares. A term with as many levels as readings is confounded with the
    /// error and is refused.</param>
    /// <param name="criterion">Restricted maximum likelihood unless models with different fixed effects are to be compared.</param>
    /// <exception cref="ArgumentException">Lengths disagree, a number is not finite, or a term has a level for each reading.</exception>
    public static MixedModelFit Fit(double[,] design, ReadOnlySpan<double> response, IReadOnlyList<RandomTerm> terms,
        MixedModelCriterion criterion = MixedModelCriterion.Reml)
    {
        var ordinary = LinearLeastSquares.Fit(design, response);
        Check(terms, response.Length);
        if (ordinary.DegreesOfFreedom == 0) return Without(ordinary, terms, ContrastCaveat.NoResidualDegreesOfFreedom);
        if (ordinary.IsExact) return Without(ordinary, terms, ContrastCaveat.NoScatter);

        var (q, inverseR, logDetR) = Orthonormal(design);
        var problem = new PenalisedLeastSquares(q, [.. ordinary.Residuals], terms);
        var factors = new CovarianceFactors(problem.Terms);
        var (n, p, restricted) = (response.Length, q.Length, criterion == MixedModelCriterion.Reml);
        var df = restricted ? n - p : n;

        double Deviance(double[] theta) => problem.Solve(factors.Matrices(theta)) is not { } at ? double.NaN
            : at.LogDetL + (restricted ? at.FixedFactor.LogDeterminant + 2 * logDetR : 0)
                + df * (1 + Math.Log(2 * Math.PI * at.PenalisedSumOfSquares / df));

        var theta = factors.Count == 0 ? [] : DevianceSearch.Minimise(Deviance, factors);
        var solution = problem.Solve(factors.Matrices(theta));
        // Groups that explain every reading leave no scatter to measure them by: θ runs away.
        if (solution is null || theta.Any(t => Math.Abs(t) > DevianceSearch.LargestTheta / 10))
            return Without(ordinary, terms, ContrastCaveat.NoScatter);
        var sigma = Math.Sqrt(solution.PenalisedSumOfSquares / df);
        var covariance = new MixedModelCovariance(problem, factors, inverseR, theta, sigma, n, criterion);
        return new(ordinary, FixedEffects(ordinary, inverseR, solution.Shift), sigma, Components(terms, problem.Terms, factors.Matrices(theta), sigma),
            Deviance(theta), ContrastCaveat.None, covariance);
    }

    static void Check(IReadOnlyList<RandomTerm> terms, int readings)
    {
        foreach (var term in terms)
        {
            if (term.LevelOf.Length != readings)
                throw new ArgumentException($"Term {term.Name} has {term.LevelOf.Length} groups for {readings} readings.", nameof(terms));
            if (term.Levels.Count == readings)
                throw new ArgumentException($"Term {term.Name} has a level for each reading and cannot be told from their error.", nameof(terms));
            if (term.Columns.Any(column => !Array.TrueForAll(column, double.IsFinite)))
                throw new ArgumentException($"Term {term.Name} has a covariate value that is not finite.", nameof(terms));
        }
    }

    static MixedModelFit Without(LinearFit ordinary, IReadOnlyList<RandomTerm> terms, ContrastCaveat caveat)
    {
        VarianceComponent Unknown(RandomTerm term)
        {
            var covariance = new double[term.Width, term.Width];
            for (var i = 0; i < covariance.Length; i++) covariance[i / term.Width, i % term.Width] = double.NaN;
            return new(term.Name, covariance);
        }

        return new(ordinary, [.. ordinary.Coefficients], double.NaN, [.. terms.Select(Unknown)], double.NaN, caveat, null);
    }

    // Orthonormal columns that span the design, R⁻¹ over the kept columns and log |det R|.
    static (double[][] Q, double[][] InverseR, double LogDetR) Orthonormal(double[,] design)
    {
        var n = design.GetLength(0);
        var columns = Enumerable.Range(0, design.GetLength(1)).Select(j => Enumerable.Range(0, n).Select(i => (DoubleDouble)design[i, j]).ToArray());
        var qr = new HouseholderQr([.. columns], n);
        var q = new double[qr.Rank][];
        for (var k = 0; k < qr.Rank; k++)
        {
            var unit = new DoubleDouble[n];
            unit[k] = 1;
            qr.ApplyQ(unit);
            q[k] = Array.ConvertAll(unit, v => (double)v);
        }
        var logDet = Enumerable.Range(0, qr.Rank).Sum(k => Math.Log(Math.Abs(qr.R(k, qr.Kept[k]).Hi)));
        return (q, [.. qr.InverseR().Select(c => Array.ConvertAll(c, v => (double)v))], logDet);
    }

    static double[] FixedEffects(LinearFit ordinary, double[][] inverseR, double[] shift)
    {
        double[] effects = [.. ordinary.Coefficients];
        for (var k = 0; k < shift.Length; k++)
        {
            for (var l = 0; l <= k; l++) effects[ordinary.Kept[l]] += inverseR[k][l] * shift[k];
        }
        return effects;
    }

    static VarianceComponent[] Components(IReadOnlyList<RandomTerm> terms, IReadOnlyList<RandomTerm> inOrder, double[][,] factors, double sigma) =>
        [.. terms.Select(term =>
        {
            var factor = factors[inOrder.ToList().IndexOf(term)];
            var covariance = new double[term.Width, term.Width];
            for (var i = 0; i < term.Width; i++)
            {
                for (var j = 0; j < term.Width; j++)
                {
                    for (var k = 0; k < term.Width; k++) covariance[i, j] += factor[i, k] * factor[j, k] * sigma * sigma;
                }
            }
            return new VarianceComponent(term.Name, covariance);
        })];
}
