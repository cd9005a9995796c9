using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>A lap with one gearing and timing.</summary>
/// <param name="LapS">Lap time, s.</param>
/// <param name="Copper25W">Mean copper heat with the winding at 25 °C, W.</param>
/// <param name="IronW">Mean iron heat, W.</param>
/// <param name="BatteryA">Mean current of the pack, A.</param>
internal readonly record struct LapFigures(double LapS, double Copper25W, double IronW, double BatteryA)
{
    public static LapFigures Of(DrivenLap lap) => new(lap.Seconds, lap.Copper25W, lap.IronW, lap.MeanBatteryA);
}

/// <summary>
/// Lap time, heats and current of one gearing over what is believed of car, motor and lap: in their logarithms a parabola along each axis, through the most probable point
/// and one to either side. Draws are read off it; how near that comes to laps driven one by one is shown in the tests.
/// </summary>
internal sealed class LapSurface
{
    private const double SideSd = 1.3;

    private readonly double[] _centre;
    private readonly (double[] Slope, double[] Bend)[] _axes;

    private LapSurface(double[] centre, (double[], double[])[] axes) => (_centre, _axes) = (centre, axes);

    /// <summary>Drives the laps that a surface needs; null where one of them can't be driven.</summary>
    public static LapSurface? Of(LapBelief belief, GearChoice choice, double stepM = 1)
    {
        int n = belief.Axes.Count;
        try
        {
            double[] centre = Logs(new double[n]);
            (double[], double[])[] axes = new (double[], double[])[n];
            for (int i = 0; i < n; i++)
            {
                double[] z = new double[n];
                z[i] = SideSd;
                double[] up = Logs(z);
                z[i] = -SideSd;
                double[] down = Logs(z);
                axes[i] = ([.. centre.Select((_, q) => (up[q] - down[q]) / (2 * SideSd))], [.. centre.Select((c, q) => (up[q] + down[q] - 2 * c) / (2 * SideSd * SideSd))]);
            }
            return new(centre, axes);
        }
        catch (LapException)
        {
            return null;
        }

        double[] Logs(double[] z)
        {
            LapFigures f = LapFigures.Of(belief.At(z).Lap(choice, belief.DrawnAh, stepM));
            return [Math.Log(f.LapS), Math.Log(f.Copper25W), Math.Log(f.IronW), Math.Log(f.BatteryA)];
        }
    }

    /// <summary>The lap at a point of the axes.</summary>
    public LapFigures At(ReadOnlySpan<double> z)
    {
        Span<double> f = stackalloc double[4];
        _centre.CopyTo(f);
        for (int i = 0; i < _axes.Length; i++)
            for (int q = 0; q < 4; q++)
                f[q] += (_axes[i].Slope[q] + _axes[i].Bend[q] * z[i]) * z[i];
        return new(Math.Exp(f[0]), Math.Exp(f[1]), Math.Exp(f[2]), Math.Exp(f[3]));
    }
}
