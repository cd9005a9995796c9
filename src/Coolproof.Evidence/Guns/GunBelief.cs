using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Thermal;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Evidence.Guns;

/// <summary>
/// What is believed of a gun before a day's readings: offset and gains of the reading model, by its checks where there are any (docs/instruments.md). The check readings
/// are linear in both, so belief stays normal: offset = Offset + OffsetSd u, log gain = mean + sd v + tilt u, for independent standard normal u and v.
/// </summary>
/// <param name="Checks">The checks that count; none: as guns are at all.</param>
/// <param name="OffsetK">Middle of the offset, K.</param>
/// <param name="OffsetSdK">Its sd, K.</param>
/// <param name="Tape">Log gain on tape or paint, apart from what goes with the offset.</param>
/// <param name="TapeTilt">What the log gain on tape or paint moves by for one sd of the offset.</param>
/// <param name="Bare">The same for bare metal or an unknown surface.</param>
/// <param name="BareTilt">Its tilt.</param>
/// <param name="Contradiction">Whether its checks can't all be right, so that none was used.</param>
internal sealed record GunBelief(
    IReadOnlyList<GunCheck> Checks, double OffsetK, double OffsetSdK, NormalPrior Tape, double TapeTilt, NormalPrior Bare, double BareTilt, bool Contradiction)
{
    /// <summary>Offset of a gun that somebody checked, before its check, K: wide, since a check tells far more, and guns far off are what checks are for.</summary>
    private const double CheckedOffsetSd = 5;

    /// <summary>Part of the log gain's sd that is the gun's own and not the surface's. Common practice, no source: makers state some 2 %.</summary>
    private const double OwnGainSd = 0.02;

    /// <summary>What a gun moves between its check and the track, K. Common practice, no source.</summary>
    private const double DriftK = 0.5;

    /// <summary>Air of a check, °C: what it was is not noted, and five degrees change a gain by 0.1 K.</summary>
    public const double CheckAirC = 22;

    /// <summary>Checks this unlikely to fit together are not used.</summary>
    private const double LeastChance = 0.002;

    /// <summary>A gun without a check.</summary>
    public static GunBelief Unchecked { get; } = new([], 0, Priors.OffsetSd, Priors.GainTape, 0, Priors.GainBare, 0, false);

    /// <summary>Setting of its checks, for readings that note none: a setting that is missing on one side is taken to be that of the other; null: not noted.</summary>
    public double? Setting => Checks.Select(c => c.EmissivitySet).LastOrDefault(s => s is not null);

    /// <summary>What is believed of a gun.</summary>
    /// <param name="gun">Its name.</param>
    /// <param name="table">The table with its readings and the checks.</param>
    public static GunBelief Of(string gun, ReadingsTable table)
    {
        GunCheck[] own = [.. table.GunChecks.Where(c => Is(c.Gun))];
        if (own.Length == 0)
            return Unchecked;
        IGrouping<double, double>? most = table.Runs.SelectMany(r => r.Readings).Where(r => Is(r.Instrument) && r.EmissivitySet is not null).Select(r => r.EmissivitySet!.Value).GroupBy(s => s).MaxBy(g => g.Count());
        return Told(own, most?.Key);

        bool Is(string name) => string.Equals(name, gun, StringComparison.OrdinalIgnoreCase);
    }

    // Offset, own gain, gain of the tape: a normal belief, told by each check.
    private static GunBelief Told(GunCheck[] checks, double? setting)
    {
        double tapeVariance = Priors.GainTape.Sd * Priors.GainTape.Sd - OwnGainSd * OwnGainSd, bareVariance = Priors.GainBare.Sd * Priors.GainBare.Sd - OwnGainSd * OwnGainSd;
        Matrix<double> prior = Matrix<double>.Build.DenseOfDiagonalArray([CheckedOffsetSd * CheckedOffsetSd, OwnGainSd * OwnGainSd, tapeVariance]);
        // Quick shots at the same thing share its doubt.
        GunCheck[][] steps = [.. checks.GroupBy(c => (c.Against, c.TrueC)).Select(g => g.ToArray())];
        Matrix<double> seen = Matrix<double>.Build.Dense(steps.Length, 3), noise = Matrix<double>.Build.Dense(steps.Length, steps.Length);
        Vector<double> off = Vector<double>.Build.Dense(steps.Length);
        for (int i = 0; i < steps.Length; i++)
        {
            (GunCheck check, CheckTarget target) = (steps[i][0], CheckTarget.Of(steps[i][0].Against));
            double rise = check.TrueC - CheckAirC, surface = check.Against == CheckedAgainst.BesideTape ? 0 : target.LogEmissivitySd;
            off[i] = steps[i].Average(c => GunSetting.Undo(c.ReadC, c.EmissivitySet ?? setting, CheckAirC)) - Right(check, target);
            (seen[i, 0], seen[i, 1], seen[i, 2]) = (1, rise, check.Against == CheckedAgainst.BesideTape ? rise : 0);
            noise[i, i] = CheckTarget.ShotK * CheckTarget.ShotK / steps[i].Length + target.StandardUncertaintyK * target.StandardUncertaintyK + rise * surface * (rise * surface);
        }
        Matrix<double> predicted = seen * prior * seen.Transpose() + noise, toBelief = prior * seen.Transpose() * predicted.Inverse();
        double miss = off.DotProduct(predicted.Inverse() * off);
        if (1 - ChiSquared.CDF(steps.Length, miss) < LeastChance)
            return Unchecked with { Checks = checks, Contradiction = true };
        Vector<double> mean = toBelief * off;
        Matrix<double> left = prior - toBelief * seen * prior;
        double sd = Math.Sqrt(left[0, 0] + DriftK * DriftK);
        double tape = (left[0, 1] + left[0, 2]) / sd, bare = left[0, 1] / sd;
        return new(checks, mean[0], sd,
            new(Priors.GainTape.Mean + mean[1] + mean[2], Math.Sqrt(left[1, 1] + 2 * left[1, 2] + left[2, 2] - tape * tape)), tape,
            new(Priors.GainBare.Mean + mean[1], Math.Sqrt(left[1, 1] + bareVariance - bare * bare)), bare, false);
    }

    // What a gun without fault shows at the usual setting; tape is what the reading model calls a gain of one.
    private static double Right(GunCheck check, CheckTarget target) => check.Against == CheckedAgainst.BesideTape
        ? check.TrueC
        : Gun.Usual.ReadingC(check.TrueC, GunSetting.Usual, target.Surface.Middle, CheckAirC);

    /// <summary>What a gun shows too much on tape at a temperature, K, with its sd.</summary>
    /// <param name="celsius">True temperature, °C.</param>
    public (double K, double SdK) TooMuchAt(double celsius)
    {
        double rise = celsius - CheckAirC, along = OffsetSdK + rise * TapeTilt;
        return (OffsetK + rise * (Math.Exp(Tape.Mean) - 1), Math.Sqrt(along * along + rise * Tape.Sd * (rise * Tape.Sd)));
    }
}
