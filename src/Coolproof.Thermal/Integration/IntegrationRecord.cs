namespace Coolproof.Thermal;

/// <summary>What an integration took.</summary>
/// <param name="Steps">Steps that were kept.</param>
/// <param name="Rejected">Steps that were tried and thrown away because their error was too large.</param>
/// <param name="Evaluations">Calls of the heat flow.</param>
/// <param name="LooksStiff">
/// Whether stability rather than accuracy held the steps short; <see cref="Rosenbrock"/> is then the better choice.
/// </param>
public readonly record struct IntegrationRecord(int Steps, int Rejected, int Evaluations, bool LooksStiff);
