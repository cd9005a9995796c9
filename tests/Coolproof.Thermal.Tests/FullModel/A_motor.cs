using Coolproof.Thermal.FullModel;

namespace Coolproof.Thermal.Tests.FullModel;

/// <summary>An ordinary motor, option and lap to test on.</summary>
static class A_motor
{
    internal static readonly MotorBody Body = MotorBody.OfMass(0.165);

    /// <summary>The same with magnets that weaken as they warm.</summary>
    internal static readonly MotorBody Weakening = Body with { MagnetLossPerK = 0.0012 };

    internal static readonly CoolingOption FanOption = new(
        FanWPerK: 0.5, MotionWPerK: 0.1, NaturalWPerK125: 0.02, RadiatingAreaM2: 0.007, EndbellShare: 0.15, ShellStillWPerK: 3, ShellMotionWPerK: 1.2);

    internal static readonly LapPattern Lap = new(
    [
        new(3.0, 2.4, 9), new(2.0, 0.2, 5), new(2.5, 1.8, 8), new(3.5, 0.4, 4.5), new(4.0, 1.5, 8.5), new(2.5, 0.1, 4), new(3.5, 0.9, 6.5),
    ]);

    internal static double[] At(double airC) => [airC, airC, airC, airC, airC, airC];

    /// <summary>Six minutes, roll-in, two minutes stood, a pit fan for two minutes, ten minutes in the shade.</summary>
    internal static (Phase Phase, double Seconds)[] Run(double airC, bool fanAfterStop) =>
    [
        (Lap.Averaged(Body, airC, 18, 20, 1), 360),
        (Phase.Steady(airC, 0, 4, 3, 1), 8),
        (Phase.Steady(airC, 0, 0, 0.9, fanAfterStop ? 1 : 0), 120),
        (Phase.Steady(airC, 0, 0, 0.9, 0) with { PitFanWPerK = 2.5, ShellOff = true }, 120),
        (Phase.Steady(airC, 0, 0, 0.9, 0) with { ShellOff = true }, 600),
    ];
}
