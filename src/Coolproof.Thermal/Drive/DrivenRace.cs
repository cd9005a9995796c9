namespace Coolproof.Thermal;

/// <summary>A race of one lap after another, by the lap in its middle: the pack's voltage at rest falls evenly with its charge, and so does the pace.</summary>
/// <param name="Lap">The lap in the middle.</param>
/// <param name="Laps">Laps, with a part of the last.</param>
/// <param name="ChargeAh">Charge drawn over the race, Ah.</param>
public sealed record DrivenRace(DrivenLap Lap, double Laps, double ChargeAh)
{
    private const int Passes = 3;

    /// <summary>Drives a race.</summary>
    /// <param name="track">The lap.</param>
    /// <param name="car">The car.</param>
    /// <param name="gears">Its gears.</param>
    /// <param name="motor">Its motor.</param>
    /// <param name="timingDeg">Timing, degrees.</param>
    /// <param name="pack">A full pack, leads, controller.</param>
    /// <param name="raceS">Length of the race, s.</param>
    /// <param name="windingC">Mean temperature of the winding in its middle, °C.</param>
    /// <exception cref="LapException">The car can't drive this lap, or the pack doesn't last.</exception>
    public static DrivenRace Of(Track track, Car car, GearTrain gears, BrushlessMotor motor, double timingDeg, Pack pack, double raceS, double windingC)
    {
        double drawn = 0.2 * pack.CapacityAh;
        DrivenRace race = null!;
        for (int pass = 0; pass < Passes; pass++)
        {
            DrivenLap lap = DrivenLap.Of(track, car, gears, motor, timingDeg, pack, drawn, windingC);
            double laps = raceS / lap.Seconds;
            race = new(lap, laps, laps * lap.ChargeAh);
            drawn = race.ChargeAh / 2;
        }
        return race.ChargeAh <= pack.CapacityAh
            ? race
            : throw new LapException($"the pack of {1000 * pack.CapacityAh:0} mAh is empty after {raceS / 60 * pack.CapacityAh / race.ChargeAh:0.0} of {raceS / 60:0.#} min: give a larger pack, a shorter race or a smaller pinion.");
    }
}
