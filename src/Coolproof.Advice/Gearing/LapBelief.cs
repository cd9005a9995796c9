using Coolproof.Thermal;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// What is believed of car, motor and lap: the unknowns' prior, met by lap times, charges and a trace's highest speeds as far as they are known (Gauss-Newton to the most probable point, normal about it).
/// What they can't tell keeps its prior doubt.
/// </summary>
/// <param name="Rig">The rig as asked.</param>
/// <param name="Centre">The most probable point.</param>
/// <param name="Axes">Independent axes of what is left open, each of one sd: unknown = centre + Σ axis × z.</param>
/// <param name="DrawnAh">Charge drawn by mid-race, Ah.</param>
public sealed record LapBelief(GearRig Rig, IReadOnlyList<double> Centre, IReadOnlyList<double[]> Axes, double DrawnAh)
{
    // Of a mean lap time (laps counted whole, traffic, a driver's pace) and of a charge (charger, start of charge), each with its part that more runs average out. Common practice, no source.
    private const double LapSd = 0.01, LapRunSd = 0.015, ChargeSd = 0.04, ChargeRunSd = 0.05;
    // Of a highest speed in a trace: sampling, smoothing by the logger, wheels that spin. Common practice, no source.
    private const double PeakSd = 0.03;
    private const double FitStepM = 1, Difference = 0.05, Settled = 1e-4;
    private const int MostSteps = 12;

    /// <summary>Meets the notes.</summary>
    /// <param name="rig">The rig as asked.</param>
    /// <param name="notes">What the notebook's runs tell.</param>
    /// <param name="raceS">Length of the race, s.</param>
    /// <exception cref="LapException">The lap can't be driven with the gearing that the notebook's runs were driven with.</exception>
    public static LapBelief Of(GearRig rig, IReadOnlyList<LapNote> notes, double raceS)
    {
        double drawn = rig.Pack.CapacityAh * 0.2, noted = notes.FirstOrDefault(n => n.ChargeA is not null)?.ChargeA ?? double.NaN;
        DrivenLap first = rig.Lap(rig.Driven, drawn, FitStepM); // says what is wrong where nothing can be driven
        drawn = Math.Min(0.5 * (double.IsNaN(noted) ? first.MeanBatteryA : noted) * raceS / 3600, 0.6 * rig.Pack.CapacityAh);
        (double Seen, double Sd, int Note, bool IsLap)[] seen =
        [
            .. notes.SelectMany((n, i) => n.LapS is { } s ? [(Math.Log(s), Math.Sqrt(LapSd * LapSd + LapRunSd * LapRunSd / n.LapRuns), i, true)] : Array.Empty<(double, double, int, bool)>()),
            .. notes.SelectMany((n, i) => n.ChargeA is { } a ? [(Math.Log(a), Math.Sqrt(ChargeSd * ChargeSd + ChargeRunSd * ChargeRunSd / n.ChargeRuns), i, false)] : Array.Empty<(double, double, int, bool)>()),
        ];
        Vector<double> at = Vector<double>.Build.Dense(LapUnknowns.Count);
        Vector<double>? off = Off(at);
        for (int step = 0; step < MostSteps && off is { Count: > 0 }; step++)
        {
            Matrix<double> slope = Slope(at, off);
            Vector<double> move = Information(slope).Solve(-(slope.TransposeThisAndMultiply(off) + at));
            double now = off.DotProduct(off) + at.DotProduct(at), share = 1;
            Vector<double>? next;
            while ((next = Off(at + share * move)) is null || next.DotProduct(next) + (at + share * move).DotProduct(at + share * move) > now + 1e-9)
                if ((share /= 2) < 0.01)
                    break;
            if (next is null || share < 0.01)
                break;
            (at, off) = (at + share * move, next);
            if (share * move.L2Norm() < Settled)
                break;
        }
        Matrix<double> information = off is { Count: > 0 } ? Information(Slope(at, off)) : Matrix<double>.Build.DenseIdentity(LapUnknowns.Count);
        var evd = information.Evd(Symmetricity.Symmetric);
        double[][] axes = [.. Enumerable.Range(0, LapUnknowns.Count).Select(i => (evd.EigenVectors.Column(i) / Math.Sqrt(evd.EigenValues[i].Real)).ToArray())];
        return new(rig, at.ToArray(), axes, drawn);

        Matrix<double> Information(Matrix<double> slope) => slope.TransposeThisAndMultiply(slope) + Matrix<double>.Build.DenseIdentity(LapUnknowns.Count);

        // Predicted less seen, over its sd; null where a lap can't be driven there.
        Vector<double>? Off(Vector<double> unknown)
        {
            GearRig there = rig.At(unknown.ToArray());
            try
            {
                DrivenLap[] laps = [.. notes.Select(n => there.Lap(n.Choice, drawn, FitStepM))];
                double[] highest = there.Peaks.Count > 0 ? Highest(there) : [];
                return Vector<double>.Build.Dense(
                [
                    .. seen.Select(s => (Math.Log(s.IsLap ? laps[s.Note].Seconds : laps[s.Note].MeanBatteryA) - s.Seen) / s.Sd),
                    .. there.Peaks.Select(peak => Math.Log(highest[peak.Part] / peak.SpeedMS) / PeakSd),
                ]);
            }
            catch (Exception cause) when (cause is LapException or ArgumentException)
            {
                return null;
            }
        }

        // Of each part of the lap, m/s.
        double[] Highest(GearRig there)
        {
            double[] highest = new double[there.Track.Parts.Count];
            there.Lap(there.Driven, drawn, FitStepM, (part, _, speed) => highest[part] = Math.Max(highest[part], speed));
            return highest;
        }

        Matrix<double> Slope(Vector<double> unknown, Vector<double> here) => Matrix<double>.Build.DenseOfColumnVectors(Enumerable.Range(0, LapUnknowns.Count).Select(i =>
        {
            Vector<double> moved = unknown.Clone();
            moved[i] += Difference;
            return Off(moved) is { } there ? (there - here) / Difference : Vector<double>.Build.Dense(here.Count);
        }));
    }

    /// <summary>The rig at a point of the axes.</summary>
    internal GearRig At(ReadOnlySpan<double> z)
    {
        double[] unknown = [.. Centre];
        for (int i = 0; i < unknown.Length; i++)
            for (int axis = 0; axis < Axes.Count; axis++)
                unknown[i] += Axes[axis][i] * z[axis];
        return Rig.At(unknown);
    }
}
