namespace Coolproof.Thermal;

/// <summary>
/// Air that leaves one node at its temperature and enters another: <paramref name="To"/> gains W/K × (T_from − T_to), and
/// <paramref name="From"/> feels nothing of it. It makes the network's matrix unsymmetric.
/// </summary>
/// <param name="From">Index of the node that the air comes from.</param>
/// <param name="To">Index of the node that it enters.</param>
/// <param name="WattsPerKelvin">Mass flow × specific heat, W/K, not negative.</param>
public readonly record struct AirStream(int From, int To, double WattsPerKelvin);
