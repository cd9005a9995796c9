using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Classical;

/// <summary>Covariance of the fixed effects of a fitted mixed model, as a function of its variance parameters.</summary>
internal sealed class MixedModelCovariance
{
    readonly PenalisedLeastSquares _problem;
    readonly CovarianceFactors _factors;
    readonly double[][] _inverseR;
    readonly double[] _theta;
    readonly int[] _free;
    readonly double _logSigma;
    readonly int _degreesOfFreedom;
    readonly int _residualDegreesOfFreedom;
    readonly bool _restricted;
    readonly Lazy<Matrix<double>> _curvature;

    /// <param name="problem">The penalised problem.</param>
    /// <param name="factors">Layout of θ.</param>
    /// <param name="inverseR">Inverse of the triangular factor of the fixed-effects design, as columns.</param>
    /// <param name="theta">θ at the minimum.</param>
    /// <param name="sigma">Residual standard deviation at the minimum.</param>
    /// <param name="readings">n.</param>
    /// <param name="criterion">Criterion that was minimised.</param>
    public MixedModelCovariance(PenalisedLeastSquares problem, CovarianceFactors factors, double[][] inverseR, double[] theta, double sigma,
        int readings, MixedModelCriterion criterion)
    {
        (_problem, _factors, _inverseR, _theta, _logSigma) = (problem, factors, inverseR, theta, Math.Log(sigma));
        _restricted = criterion == MixedModelCriterion.Reml;
        _residualDegreesOfFreedom = readings - inverseR.Length;
        _degreesOfFreedom = _restricted ? _residualDegreesOfFreedom : readings;
        _free = [.. Enumerable.Range(0, theta.Length).Where(k => theta[k] != 0)];
        _curvature = new(() => Matrix<double>.Build.DenseOfArray(SmoothDerivatives.Hessian(Deviance, Point())));
    }

    /// <summary>Variance of Σ weightₖ effectₖ over the kept columns.</summary>
    public double Variance(double[] weights) => Variance(weights, Point());

    /// <summary>Variance and Satterthwaite's degrees of freedom.</summary>
    public (double Variance, double DegreesOfFreedom) Of(double[] weights)
    {
        var point = Point();
        var variance = Variance(weights, point);
        if (variance == 0) return (0, _residualDegreesOfFreedom);
        var gradient = Vector<double>.Build.DenseOfArray(SmoothDerivatives.Gradient(at => Variance(weights, at), point));
        // The covariance of the variance parameters is twice the inverse curvature of −2 log likelihood.
        var spread = 2 * gradient.DotProduct(_curvature.Value.LU().Solve(gradient));
        var df = 2 * variance * variance / spread;
        // Where the curvature is no guide, no more than the readings can carry.
        return (variance, df > 0 && df <= _degreesOfFreedom ? df : _residualDegreesOfFreedom);
    }

    double[] Point() => [.. _free.Select(k => _theta[k]), _logSigma];

    // −2 log (restricted) likelihood at θ and log σ, but for a constant, with the fixed effects at their best.
    double Deviance(double[] point)
    {
        if (Solve(point) is not { } solved) return double.NaN;
        return solved.LogDetL + (_restricted ? solved.FixedFactor.LogDeterminant : 0) + 2 * _degreesOfFreedom * point[^1]
            + solved.PenalisedSumOfSquares * Math.Exp(-2 * point[^1]);
    }

    double Variance(double[] weights, double[] point)
    {
        if (Solve(point) is not { } solved) return double.NaN;
        var image = new double[weights.Length];
        for (var k = 0; k < image.Length; k++)
        {
            for (var l = 0; l <= k; l++) image[k] += weights[l] * _inverseR[k][l];
        }
        solved.FixedFactor.SolveLower(image);
        return image.Sum(v => v * v) * Math.Exp(2 * point[^1]);
    }

    PenalisedLeastSquares.Solution? Solve(double[] point)
    {
        var theta = (double[])_theta.Clone();
        for (var k = 0; k < _free.Length; k++) theta[_free[k]] = point[k];
        return _problem.Solve(_factors.Matrices(theta));
    }
}
