using MathNet.Numerics;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>The exact one-sided binomial test.</summary>
internal static class BinomialTest
{
    /// <summary>Chance of at least this many out of so many where each has a given chance: small when "at most p" is not so.</summary>
    public static double AtLeast(int found, int of, double chance) => found <= 0 ? 1 : SpecialFunctions.BetaRegularized(found, of - found + 1, chance);
}
