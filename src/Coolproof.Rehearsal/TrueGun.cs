using Coolproof.Notebook;

namespace Coolproof.Rehearsal;

/// <summary>The gun and the hand that holds it, as they truly are.</summary>
/// <param name="OffsetK">Offset, K.</param>
/// <param name="Gain">Gain on tape.</param>
/// <param name="AimLossMean">Mean part of the spot that misses the motor in one shot.</param>
/// <param name="ScatterK">σ of the scatter, K.</param>
/// <param name="HoldMax">Whether the display holds the maximum of a sweep.</param>
internal sealed record TrueGun(double OffsetK, double Gain, double AimLossMean, double ScatterK, bool HoldMax)
{
    internal static TrueGun Drawn(RehearsalSettings settings)
    {
        RandomStream chance = new(settings.Seed, "gun");
        bool good = settings.Hands == Hands.Good;
        return new(
            chance.Normal(TruthRanges.GunOffsetSdK),
            chance.About(1, TruthRanges.GunGainLogSd),
            chance.About(good ? TruthRanges.AimLossGood : TruthRanges.AimLossBad, TruthRanges.AimLossLogSd),
            chance.In(good ? TruthRanges.ScatterGoodK : TruthRanges.ScatterBadK),
            settings.HoldMax);
    }

    internal Hold Hold => HoldMax ? Hold.Max : Hold.Single;

    /// <summary>The number on the display, °C to a tenth, and the part of the spot that missed.</summary>
    internal (double ReadC, double AimLoss) Shot(double trueC, double airC, RandomStream chance)
    {
        double loss = chance.Exponential(AimLossMean / (HoldMax ? TruthRanges.HoldMaxShots : 1));
        double scatter = chance.Normal(ScatterK) * (chance.Chance(TruthRanges.WildChance) ? TruthRanges.WildFactor : 1);
        double read = airC + (Gain - loss) * (trueC - airC) + OffsetK + scatter;
        return (Math.Round(read, 1), loss);
    }
}
