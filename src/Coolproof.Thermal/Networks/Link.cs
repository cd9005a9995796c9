namespace Coolproof.Thermal;

/// <summary>A conductance between two nodes; heat flows either way.</summary>
/// <param name="A">Index of one node.</param>
/// <param name="B">Index of the other.</param>
/// <param name="WattsPerKelvin">Conductance, W/K, not negative.</param>
public readonly record struct Link(int A, int B, double WattsPerKelvin);
