namespace Coolproof.Sampling.Classical;

/// <summary>Settings of the search.</summary>
/// <param name="MaxIterations">Limit of Jacobians. The default leaves room for the slowest NIST set (own measurement, see the NIST tests).</param>
/// <param name="RadiusFactor">First trust radius as a multiple of the scaled length of the start; Moré recommends 0.1 to 100.</param>
/// <param name="FunctionTolerance">Relative change of the sum of squares, predicted and seen, that counts as none.</param>
/// <param name="StepTolerance">Trust radius, relative to the scaled length of the parameters, that counts as none.</param>
/// <param name="GradientTolerance">Cosine between residuals and each Jacobian column that counts as a right angle.</param>
/// <param name="Scales">Size of a notable change for each parameter, for difference steps where a parameter is zero; 1 if null.</param>
public sealed record LevenbergMarquardtOptions(int MaxIterations = 2000, double RadiusFactor = 100, double FunctionTolerance = 1e-15,
    double StepTolerance = 1e-15, double GradientTolerance = 1e-15, IReadOnlyList<double>? Scales = null);
