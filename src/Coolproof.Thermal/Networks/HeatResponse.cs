namespace Coolproof.Thermal;

/// <summary>
/// Heat in one node that follows another node's temperature: as when warmer, weaker magnets draw more current through the winding. It makes
/// the network's matrix unsymmetric.
/// </summary>
/// <param name="Of">Index of the node whose heat changes.</param>
/// <param name="To">Index of the node whose temperature does it.</param>
/// <param name="WattsPerKelvin">Growth of the heat per kelvin, W/K, of either sign; its offset belongs to the node's power.</param>
public readonly record struct HeatResponse(int Of, int To, double WattsPerKelvin);
