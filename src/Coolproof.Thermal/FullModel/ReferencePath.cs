namespace Coolproof.Thermal.FullModel;

/// <summary>The full model by a step-controlled integrator that linearises nothing: the slow judge of <see cref="FastPath"/>.</summary>
public static class ReferencePath
{
    /// <summary>Brings a state forward through one phase.</summary>
    /// <param name="body">The motor.</param>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="phase">The conditions, constant throughout.</param>
    /// <param name="seconds">How long, s.</param>
    /// <param name="t">Six temperatures, °C; overwritten.</param>
    /// <param name="toleranceK">Error allowed in a step, K.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not a number.</exception>
    /// <exception cref="InvalidOperationException">No step is short enough, as after an overflow.</exception>
    public static void Advance(
        MotorBody body, CoolingOption cooling, Phase phase, double seconds, Span<double> t, double toleranceK = 1e-9)
    {
        DormandPrince integrator = new(HeatFlows.Nodes, (_, at, rates) => HeatFlows.Rates(body, cooling, phase, at, rates));
        integrator.Run(t, 0, seconds, new Tolerance(0, toleranceK));
    }
}
