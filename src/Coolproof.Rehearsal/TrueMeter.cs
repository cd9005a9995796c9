using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Rehearsal;

/// <summary>The winding's resistance and its four-wire meter as they truly are. The meter's scale is in both resistances and cancels.</summary>
/// <param name="MilliohmAt25C">Resistance of the pair at 25 °C, mΩ.</param>
/// <param name="NotedColdMilliohm">As it was noted cold, mΩ.</param>
/// <param name="NotedColdC">Temperature that was noted with it, °C.</param>
internal sealed record TrueMeter(double MilliohmAt25C, double NotedColdMilliohm, double NotedColdC)
{
    /// <summary>Draws one, by a day's seed.</summary>
    internal static TrueMeter Drawn(long seed)
    {
        RandomStream chance = new(seed, "winding cold");
        double at25 = chance.In(TruthRanges.WindingMilliohm), coldC = chance.In(TruthRanges.WindingColdC);
        return new(at25, Shown(at25, coldC, chance), Math.Round(coldC + chance.Normal(TruthRanges.WindingColdSdK), 1));
    }

    /// <summary>What is noted of a warm winding.</summary>
    /// <param name="windingC">Its mean temperature, °C.</param>
    /// <param name="atS">Time after the halt as noted, s.</param>
    /// <param name="chance">Chance of this reading.</param>
    internal WindingResistance Noted(double windingC, double atS, RandomStream chance) => new(Shown(MilliohmAt25C, windingC, chance), atS, NotedColdMilliohm, NotedColdC, WindingPair.AB);

    static double Shown(double at25, double celsius, RandomStream chance)
    {
        double milliohm = at25 * (Winding.CopperK + celsius) / (Winding.CopperK + 25) * Math.Exp(chance.Normal(TruthRanges.MeterLogSd));
        return Math.Round(Math.Round(milliohm / TruthRanges.MeterStepMilliohm) * TruthRanges.MeterStepMilliohm, 2);
    }
}
