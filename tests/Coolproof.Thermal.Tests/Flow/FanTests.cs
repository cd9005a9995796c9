using CsCheck;

namespace Coolproof.Thermal.Tests;

public class FanTests
{
    static readonly Gen<Fan> Fans = Gen.Select(Gen.Double[1e-4, 1e-2], Gen.Double[5, 200], (free, stall) => new Fan(free, stall));

    // By hand: stall 40 Pa, free 2e-3 m³/s, a hole of 2 cm² with K = 2.7: r = 2.7/(2 × 4e-8) = 3.375e7 1/m⁴, ρ r = 4.05e7; stall/free² = 1e7; Q = √(40/5.05e7) = 8.900e-4 m³/s.
    [Fact]
    public void The_operating_point_worked_by_hand()
    {
        double r = Openings.Of(Openings.SharpHole, 2e-4);
        Close.Relative(3.375e7, r, 1e-12, "resistance");
        Close.Relative(8.900e-4, Fan.FlowM3S([new(2e-3, 40)], 0, r, 1.2), 1e-4, "flow");
    }

    [Fact]
    public void At_the_operating_point_fans_and_ram_give_just_what_the_way_takes() =>
        Gen.Select(Fans.Array[0, 3], Gen.Double[0.1, 50], Gen.Double[1e5, 1e9], Gen.Double[0.8, 1.3]).Sample((fans, ram, r, density) =>
        {
            double flow = Fan.FlowM3S(fans, ram, r, density);
            Close.Relative(density * r * flow * flow, ram + fans.Sum(f => f.PressurePa(flow)), 1e-9, "pressure");
        });

    [Fact]
    public void Both_ends_of_the_curve_are_what_was_entered() => Fans.Sample(fan =>
    {
        Close.Relative(fan.FreeM3S, Fan.FlowM3S([fan], 0, 0, 1.2), 1e-12, "free flow");
        Close.Relative(fan.StallPa, fan.PressurePa(0), 1e-12, "stall");
        Assert.Equal(0, Fan.FlowM3S([fan], 0, double.PositiveInfinity, 1.2));
    });

    // Source: the fan laws (any handbook of ventilation): flow with speed, pressure with speed squared and with density; so on a fixed way the flow goes with speed, whatever the density.
    [Fact]
    public void On_a_fixed_way_flow_goes_with_speed_and_not_with_density() => Gen.Select(Fans, Gen.Double[1e5, 1e9], Gen.Double[0.5, 2], Gen.Double[0.8, 1.3]).Sample((fan, r, ratio, density) =>
    {
        double plain = Fan.FlowM3S([fan], 0, r, Fan.RatedDensity);
        Close.Relative(plain * ratio, Fan.FlowM3S([fan.AtSpeed(ratio)], 0, r, Fan.RatedDensity), 1e-9, "speed");
        Close.Relative(plain, Fan.FlowM3S([fan.In(density)], 0, r, density), 1e-9, "density");
    });

    [Fact]
    public void Two_fans_alike_side_by_side_move_twice_the_air_through_twice_the_way_and_in_a_row_bear_twice_the_pressure() => Gen.Select(Fans, Gen.Double[1e5, 1e9]).Sample((fan, r) =>
    {
        double one = Fan.FlowM3S([fan], 0, r, 1.2);
        Close.Relative(2 * one, Fan.FlowM3S([Fan.SideBySide([fan, fan])], 0, r / 4, 1.2), 1e-9, "beside");
        Close.Relative(one, Fan.FlowM3S([fan, fan], 0, 2 * r, 1.2), 1e-9, "in a row");
    });

    [Fact]
    public void Openings_side_by_side_share_the_flow_and_one_alone_is_itself()
    {
        double a = Openings.Of(1, 2e-4), b = Openings.Of(1, 3e-4);
        Close.Relative(Openings.Of(1, 5e-4), Openings.SideBySide(a, b), 1e-12, "areas add");
        Close.Relative(a, Openings.SideBySide(a, double.PositiveInfinity), 1e-12, "one closed");
        Close.Relative(0.4, Openings.ShareOfFirst(a, b), 1e-12, "share");
        Assert.Equal(1, Openings.ShareOfFirst(a, double.PositiveInfinity));
    }

    // Idelchik's thin grille at a free share of 0.5: (0.707 √0.5 + 0.5)²/0.25 = 4.00 (formula from memory; the arithmetic by hand).
    [Fact]
    public void A_grille_of_which_half_is_free_takes_four_velocity_heads()
    {
        Close.Relative(4.0, Openings.Grille(0.5), 1e-3, "half");
        Assert.Equal(0, Openings.Grille(1));
    }

    // A well-known mark of round jets: some 6 diameters on, the mean speed of a jet that keeps its momentum has fallen to about a quarter to a third (half-angle 11 to 14°, from memory).
    [Fact]
    public void A_jet_keeps_its_momentum_and_slows()
    {
        FreeJet jet = new(0.025, 0.025, 4e-4), far = jet.After(0.15);
        Close.Relative(jet.AreaM2, far.AreaM2 * jet.SpeedShare(far) * jet.SpeedShare(far), 1e-12, "momentum");
        Assert.InRange(jet.SpeedShare(far), 0.22, 0.35);
        Close.Relative(1, jet.SpeedShare(jet.After(0)), 1e-12, "at the opening");
    }

    [Theory]
    [InlineData(0.02, 0, 0.04, 0.5)]
    [InlineData(0.08, 0, 0.04, 1)]
    [InlineData(0.02, 0.02, 0.04, 0.25)]
    [InlineData(0.02, 0.05, 0.04, 0)]
    public void What_a_stream_covers_is_what_both_have_in_common(double width, double aside, double body, double covered) =>
        Assert.Equal(covered, FreeJet.Covered(width, aside, body), 12);
}
