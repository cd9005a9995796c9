namespace Coolproof.Sampling.Classical;

/// <summary>One line of an analysis of variance.</summary>
/// <param name="Term">Name of the term.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the term.</param>
/// <param name="SumOfSquares">Sum of squares of the term, after those above it.</param>
/// <param name="F">Mean square over residual mean square; NaN if there is no residual.</param>
/// <param name="P">Chance of an F at least as large if the term had no effect; NaN if F is.</param>
public sealed record AnovaLine(string Term, int DegreesOfFreedom, double SumOfSquares, double F, double P);
