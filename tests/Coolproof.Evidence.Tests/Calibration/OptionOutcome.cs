namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>What was said of one option's fair peaks on one simulated day, beside the truth, °C.</summary>
/// <param name="Name">The option.</param>
/// <param name="Can">Posterior of the can's peak.</param>
/// <param name="TrueCanC">The can's true peak.</param>
/// <param name="Winding">Posterior of the winding's peak.</param>
/// <param name="TrueWindingC">The winding's true peak.</param>
internal sealed record OptionOutcome(string Name, Summary Can, double TrueCanC, Summary Winding, double TrueWindingC)
{
    public bool CanCovered => TrueCanC >= Can.Q05 && TrueCanC <= Can.Q95;

    public bool WindingCovered => TrueWindingC >= Winding.Q05 && TrueWindingC <= Winding.Q95;
}
