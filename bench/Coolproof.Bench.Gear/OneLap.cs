using System.Diagnostics;
using System.Text.Json;
using Coolproof.Thermal;

namespace Coolproof.Bench.Gear;

/// <summary>One lap, timed on one thread, with all that it is made of.</summary>
internal static class OneLap
{
    private const double WindingC = 80, DrawnAh = 1, FineStepM = 0.02;
    private const int Laps = 500;

    /// <summary>The lap with what it takes to drive it elsewhere, in SI units (Ah where a name says so).</summary>
    public static string Json()
    {
        (Track track, Car car, GearTrain gears, BrushlessMotor motor, Pack pack) = (Track.OffRoad, Car.OffRoad, new GearTrain(24, 84, 2.6), BrushlessMotor.OfTurns(13.5), new Pack());
        DrivenLap Drive(double stepM) => DrivenLap.Of(track, car, gears, motor, motor.TimingDeg, pack, DrawnAh, WindingC, stepM);
        return JsonSerializer.Serialize(new
        {
            parts = track.Parts.Select(p => new double?[] { p.LengthM, p.IsStraight ? null : p.RadiusM }),
            car,
            gravity = PhysicalConstants.StandardGravity,
            ratio = gears.FinalDriveRatio,
            motor,
            windingC = WindingC,
            pack = new { openV = pack.OpenV(DrawnAh), pack.SourceOhm, pack.ControllerOhm, pack.IdleA, pack.CurrentLimitA, pack.BrakeLimitA },
            fine = Figures(Drive(FineStepM)),
            usual = Figures(Drive(DrivenLap.UsualStepM)),
            coarse = Figures(Drive(2 * DrivenLap.UsualStepM)),
            usualMs = Milliseconds(() => Drive(DrivenLap.UsualStepM)),
            coarseMs = Milliseconds(() => Drive(2 * DrivenLap.UsualStepM)),
        }, new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.CamelCase });
    }

    private static double[] Figures(DrivenLap lap) => [lap.Seconds, lap.ChargeAh, lap.CopperW, lap.IronW];

    // The fastest of many single laps: what other work on the machine cuts into is not counted.
    private static double Milliseconds(Func<DrivenLap> drive) => Enumerable.Range(0, Laps).Min(_ =>
    {
        long start = Stopwatch.GetTimestamp();
        drive();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    });
}
