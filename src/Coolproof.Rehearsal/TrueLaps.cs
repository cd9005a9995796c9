using Coolproof.Thermal;

namespace Coolproof.Rehearsal;

/// <summary>
/// How the laps of a rehearsal truly go, and with which pinions its runs are driven: from round to round the next of them. Heats of the first are the rehearsal's own; others take the lap's ratios.
/// Peaks and floors of <see cref="Truth"/> hold for the first.
/// </summary>
/// <param name="Track">The lap.</param>
/// <param name="Car">The car.</param>
/// <param name="InternalRatio">Turns of the spur for one of the wheels.</param>
/// <param name="Motor">The motor.</param>
/// <param name="Pack">The pack.</param>
/// <param name="Spur">Teeth of the spur.</param>
/// <param name="TimingDeg">Timing in the runs, degrees.</param>
/// <param name="Pinions">Teeth of the pinions, at least one.</param>
public sealed record TrueLaps(Track Track, Car Car, double InternalRatio, BrushlessMotor Motor, Pack Pack, int Spur, double TimingDeg, IReadOnlyList<int> Pinions)
{
    /// <summary>Winding at mid-race that laps are driven with, °C.</summary>
    public double WindingC { get; init; } = 80;

    /// <summary>Power of the lap's heat ratios that the motor truly answers with: 1, as the lap has it.</summary>
    public double HeatExponent { get; init; } = 1;

    /// <summary>What a gearing and timing truly takes over that of the first pinion.</summary>
    /// <param name="pinion">Teeth.</param>
    /// <param name="timingDeg">Degrees.</param>
    /// <param name="raceS">Length of the race, s.</param>
    /// <exception cref="LapException">It can't be driven, or the pack doesn't last.</exception>
    public TrueGear Of(int pinion, double timingDeg, double raceS)
    {
        DrivenLap first = Driven(Pinions[0], TimingDeg, raceS), lap = Driven(pinion, timingDeg, raceS);
        double Ratio(double there, double here) => Math.Pow(there / here, HeatExponent);
        return new(pinion, Spur, timingDeg, lap.Seconds, lap.MeanBatteryA, Ratio(lap.Copper25W, first.Copper25W), Ratio(lap.IronW, first.IronW), first.Seconds / lap.Seconds);
    }

    private DrivenLap Driven(int pinion, double timingDeg, double raceS) => DrivenRace.Of(Track, Car, new(pinion, Spur, InternalRatio), Motor, timingDeg, Pack, raceS, WindingC).Lap;
}

/// <summary>What a gearing and timing truly takes.</summary>
/// <param name="Pinion">Teeth.</param>
/// <param name="Spur">Teeth.</param>
/// <param name="TimingDeg">Degrees.</param>
/// <param name="LapS">Lap time, s.</param>
/// <param name="BatteryA">Mean current of the pack, A.</param>
/// <param name="Copper">Copper heat over that of the rehearsal's first pinion.</param>
/// <param name="Iron">Iron heat over it.</param>
/// <param name="Pace">Speed over it: who drives faster cools a little better.</param>
public sealed record TrueGear(int Pinion, int Spur, double TimingDeg, double LapS, double BatteryA, double Copper, double Iron, double Pace)
{
    internal double LogHeat(double copperShare) => Math.Log(copperShare * Copper + (1 - copperShare) * Iron);

    internal World Of(World world) => world with { CopperShare = world.CopperShare * Copper / (world.CopperShare * Copper + (1 - world.CopperShare) * Iron) };
}
