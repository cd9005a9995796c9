using Coolproof.Sampling;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Laps;

/// <summary>A drive as a logger writes it: some laps of a known lap, each a little slower or faster than the lap itself, from a stand and to a stand, with the logger's own scatter and steps.</summary>
/// <param name="Hertz">Speeds a second.</param>
/// <param name="ScatterMS">Standard deviation of a speed, m/s.</param>
/// <param name="StepMS">Steps in which it is written, m/s.</param>
internal sealed record Logger(double Hertz, double ScatterMS, double StepMS)
{
    private const double StandS = 8, RollS = 3;

    /// <summary>Relative standard deviation of a lap's time.</summary>
    public double LapScatter { get; init; } = 0.01;

    /// <summary>Number of laps.</summary>
    public int Laps { get; init; } = 8;

    /// <summary>Samples of the drive.</summary>
    public List<(double AtS, double SpeedMS)> Drive(Track track, Car car, GearTrain gears, BrushlessMotor motor, int seed)
    {
        (double[] at, double[] speed) = Truth(track, car, gears, motor);
        RandomStream chance = new(seed);
        List<(double, double)> drive = [];
        double begin = StandS, pace = 1, seconds = at[^1];
        double[] paces = [.. Enumerable.Range(0, Laps).Select(_ => 1 + LapScatter * chance.NextNormal())];
        int lap = 0;
        for (int i = 0; ; i++)
        {
            double now = i / Hertz, v;
            if (now < begin)
                v = 0;
            else
            {
                while (lap < Laps && now - begin >= seconds * (pace = paces[lap]))
                {
                    begin += seconds * pace;
                    lap++;
                }
                double into = now - begin;
                v = lap < Laps ? Between(at, speed, into / pace) / pace : Math.Max(0, speed[0] * (1 - into / RollS));
                if (lap == 0)
                    v = Math.Min(v, 6 * into);
                if (lap == Laps && into > RollS + StandS)
                    return drive;
            }
            double seen = v + (v > 0 ? ScatterMS * chance.NextNormal() : 0);
            drive.Add((now, Math.Max(0, StepMS > 0 ? StepMS * Math.Round(seen / StepMS) : seen)));
        }
    }

    /// <summary>Time and speed along the lap that the point mass drives.</summary>
    public static (double[] AtS, double[] SpeedMS) Truth(Track track, Car car, GearTrain gears, BrushlessMotor motor)
    {
        List<double> at = [0], speeds = [];
        double done = 0, was = 0;
        int part = 0;
        DrivenLap.Of(track, car, gears, motor, 30, new(), 1, 80, 0.05, (p, way, v) =>
        {
            if (p != part)
                (done, part) = (done + track.Parts[part].LengthM, p);
            if (speeds.Count > 0)
                at.Add(at[^1] + 2 * (done + way - was) / (v + speeds[^1]));
            speeds.Add(v);
            was = done + way;
        });
        return ([.. at], [.. speeds]);
    }

    private static double Between(double[] x, double[] y, double at)
    {
        int high = Array.BinarySearch(x, at) is var found && found < 0 ? Math.Clamp(~found, 1, x.Length - 1) : Math.Clamp(found, 1, x.Length - 1);
        double width = x[high] - x[high - 1];
        return width > 0 ? y[high - 1] + (at - x[high - 1]) / width * (y[high] - y[high - 1]) : y[high];
    }
}
