using Coolproof.Advice.Laps;
using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>Car, motor, pack and lap as asked, and how the runs of the notebook were driven.</summary>
/// <param name="Track">The lap.</param>
/// <param name="OwnLap">Whether its lengths are the person's own; else it is the default lap, whose size the notebook's lap times tell.</param>
/// <param name="Car">The car.</param>
/// <param name="InternalRatio">Turns of the spur for one of the wheels.</param>
/// <param name="Motor">The motor.</param>
/// <param name="Pack">The pack.</param>
/// <param name="Driven">Gearing and timing of the notebook's runs: most of them.</param>
public sealed record GearRig(Track Track, bool OwnLap, Car Car, double InternalRatio, BrushlessMotor Motor, Pack Pack, GearChoice Driven)
{
    /// <summary>Winding at mid-race that laps are driven with, °C: 10 K more take 3 % off the stall current and a thousandth off a lap time.</summary>
    public const double WindingC = 80;

    /// <summary>Highest speeds that a trace of the lap shows with the gearing of the notebook's runs; none where no trace was given.</summary>
    public IReadOnlyList<SeenPeak> Peaks { get; init; } = [];

    /// <summary>One lap.</summary>
    /// <param name="choice">Gearing and timing.</param>
    /// <param name="drawnAh">Charge drawn before, Ah.</param>
    /// <param name="stepM">Longest step, m.</param>
    /// <param name="seen">Told part, way within it (m) and speed (m/s) along the lap; null: nobody.</param>
    /// <exception cref="LapException">It can't be driven.</exception>
    public DrivenLap Lap(GearChoice choice, double drawnAh, double stepM, Action<int, double, double>? seen = null) =>
        DrivenLap.Of(Track, Car, new(choice.Pinion, choice.Spur, InternalRatio), Motor, choice.TimingDeg, Pack, drawnAh, WindingC, stepM, seen);

    /// <summary>The rig as a point of what is unknown of it has it.</summary>
    internal GearRig At(ReadOnlySpan<double> unknown)
    {
        double lossy = (1 / Car.GearEfficiency - 1) * Math.Exp(LapUnknowns.GearLossSd * unknown[3]), hysteresis = 1 / (1 + Math.Exp(-LapUnknowns.HysteresisSd * unknown[5]) * (1 - Motor.HysteresisShare) / Motor.HysteresisShare);
        double load = Math.Exp(LapUnknowns.LoadSd * unknown[2]), size = Math.Exp((OwnLap ? LapUnknowns.OwnSizeSd : LapUnknowns.SizeSd) * unknown[1]);
        return this with
        {
            Track = Track.Scaled(size),
            Peaks = Peaks.Count == 0 ? Peaks : [.. Peaks.Select(peak => peak with { SpeedMS = peak.SpeedMS * size })],
            Car = Car with { Grip = Car.Grip * Math.Exp(LapUnknowns.GripSd * unknown[0]), Rolling = Car.Rolling * load, Scrub = Car.Scrub * load, GearEfficiency = 1 / (1 + lossy) },
            Motor = Motor with
            {
                NoLoadA = Motor.NoLoadA * Math.Exp(LapUnknowns.NoLoadSd * unknown[4]),
                HysteresisShare = hysteresis,
                ColdOhm = Motor.ColdOhm * Math.Exp(LapUnknowns.OhmSd * unknown[6]),
                SpeedConstantRpm = Motor.SpeedConstantRpm * Math.Exp(LapUnknowns.SpeedSd * unknown[7]),
            },
        };
    }
}

/// <summary>
/// What is unknown of car, motor and lap before the notebook is looked at: log-sds, in this order. Common practice, no source.
/// </summary>
internal static class LapUnknowns
{
    /// <summary>Number of unknowns.</summary>
    public const int Count = 8;

    /// <summary>Grip.</summary>
    public const double GripSd = 0.25;

    /// <summary>Size of the default lap, and of one that was paced or measured; of a traced one its speeds go with it.</summary>
    public const double SizeSd = 0.35, OwnSizeSd = 0.03;

    /// <summary>Rolling and cornering resistance.</summary>
    public const double LoadSd = 0.5;

    /// <summary>Loss in gears and slipping tyres.</summary>
    public const double GearLossSd = 0.35;

    /// <summary>Current without load.</summary>
    public const double NoLoadSd = 0.25;

    /// <summary>Logit of hysteresis' share of it.</summary>
    public const double HysteresisSd = 0.8;

    /// <summary>Resistance of the winding.</summary>
    public const double OhmSd = 0.12;

    /// <summary>Speed constant; a tyre's wear and growth act alike and are in it.</summary>
    public const double SpeedSd = 0.06;
}
