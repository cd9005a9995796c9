using Coolproof.Advice.Instruments;

namespace Coolproof.Advice.Tests.Instruments;

public class WindingByResistanceTests
{
    static readonly ResistanceMeter meter = new();

    // Source: winding-resistance-cases.csv: 0.05 Ω at 23 °C, 0.0612 Ω, k 235: 80.792 °C.
    [Fact]
    public void A_worked_case_is_met_and_both_ways_of_propagating_agree()
    {
        WindingByResistance hot = WindingByResistance.Of(new(61.2, 10), 50, 23, 0.5, meter);
        Assert.Equal(80.792, hot.C, 9);
        Assert.Equal(hot.C, hot.ByChance.Means[0], 0.01);
        Assert.Equal(hot.StandardUncertaintyK, hot.ByChance.StandardUncertainty(), 0.01);
        // By hand (JCGM 100, 5.1.2): ∂/∂R2 (k + T1)/R1 = 5.16 K/mΩ, ∂/∂R1 −6.31584 K/mΩ, ∂/∂T1 1.224, ∂/∂k 0.224.
        double u2 = Math.Sqrt(0.01 / 12 + 0.0612 * 0.0612), u1 = Math.Sqrt(0.01 / 12 + 0.05 * 0.05);
        double byHand = Math.Sqrt(Math.Pow(5.16 * u2, 2) + Math.Pow(6.31584 * u1, 2) + Math.Pow(1.224 * 0.5, 2) + Math.Pow(0.224 * 0.5 / Math.Sqrt(3), 2));
        Assert.Equal(byHand, hot.StandardUncertaintyK, 1e-6);
        Assert.Equal(5.16 * u2, hot.OwnK, 1e-6);
    }

    [Fact]
    public void Brushes_two_wires_and_coarse_meters_are_refused_with_the_reason()
    {
        Assert.Null(meter.Refusal(brushed: false, fourWire: true));
        Assert.Contains("brushes and commutator", meter.Refusal(true, true));
        Assert.Contains("two-wire", meter.Refusal(false, false));
        Assert.Contains("0.1 mΩ", new ResistanceMeter(1).Refusal(false, true));
    }
}
