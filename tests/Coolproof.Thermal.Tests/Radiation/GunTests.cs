using CsCheck;

namespace Coolproof.Thermal.Tests;

public class GunTests
{
    // Source: emissivity-correction-cases.csv: 10 cases × band or T⁴ × instrument that takes off the reflection or doesn't.
    [Fact]
    public void Emissivity_corrections_agree_with_the_reference_to_a_millionth_of_a_kelvin()
    {
        List<string[]> rows = Table.Rows("emissivity-correction-cases.csv");
        Assert.Equal(40, rows.Count);
        foreach (string[] row in rows)
        {
            Gun gun = new(row[0].StartsWith("band", StringComparison.Ordinal) ? Band.Gun : Band.All, row[1].Contains("compensates"));
            double[] v = [.. row.Skip(2).Select(Table.Number)];
            Close.Within(v[4], gun.SurfaceC(v[0], v[1], v[2], v[3]), 1e-6, string.Join(',', row));
            Close.Within(v[0], gun.ReadingC(v[4], v[1], v[2], v[3]), 1e-6, string.Join(',', row));
        }
    }

    static readonly Gen<(bool, double, double, double, double)> shots =
        Gen.Select(Gen.Bool, Gen.Double[20, 140], Gen.Double[0.5, 1], Gen.Double[0.2, 1], Gen.Double[0, 45]);

    [Fact]
    public void Reading_and_correcting_are_each_others_inverse() => shots.Sample((takesOff, surface, setting, emissivity, around) =>
    {
        Gun gun = new(Band.Gun, takesOff);
        Close.Within(surface, gun.SurfaceC(gun.ReadingC(surface, setting, emissivity, around), setting, emissivity, around), 1e-9);
    });

    [Fact]
    public void Another_setting_and_back_is_the_same_reading() => shots.Sample((takesOff, read, setting, other, around) =>
    {
        Gun gun = new(Band.Gun, takesOff);
        Close.Within(read, gun.AtSettingC(gun.AtSettingC(read, setting, other, around), other, setting, around), 1e-9);
    });

    [Fact]
    public void Undoing_the_setting_and_then_correcting_is_correcting_at_once() => shots.Sample((takesOff, read, setting, emissivity, around) =>
    {
        Gun gun = new(Band.Gun, takesOff);
        double black = gun.AtSettingC(read, setting, 1, around);
        double atOnce = gun.SurfaceC(read, setting, emissivity, around), inTwo = gun.SurfaceC(black, 1, emissivity, around);
        if (double.IsNaN(atOnce)) Assert.True(double.IsNaN(inTwo));
        else Close.Within(atOnce, inTwo, 1e-8);
    });

    [Fact]
    public void A_gun_set_to_the_surfaces_own_emissivity_reads_true_if_it_takes_off_the_reflection() =>
        shots.Sample((_, surface, _, emissivity, around) =>
            Close.Within(surface, Gun.Usual.ReadingC(surface, emissivity, emissivity, around), 1e-9));

    [Fact]
    public void A_surface_as_warm_as_its_surroundings_reads_true_whatever_its_emissivity()
    {
        foreach (double emissivity in new[] { 0.05, 0.3, 0.95 })
            Close.Within(25, Gun.Usual.ReadingC(25, 0.95, emissivity, 25), 1e-10);
    }

    [Fact]
    public void A_shot_that_no_temperature_explains_has_no_answer_and_emissivities_out_of_range_are_refused()
    {
        // Shiny metal read far below its surroundings: more was taken off than was seen.
        Assert.True(double.IsNaN(Gun.Usual.SurfaceC(-20, 1, 0.1, 40)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gun.Usual.SurfaceC(60, 0, 0.9, 25));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gun.Usual.SurfaceC(60, 0.95, 0, 25));
        Assert.Throws<ArgumentOutOfRangeException>(() => Gun.Usual.AtSettingC(60, 0.95, 1.2, 25));
    }

    [Fact]
    public void A_spot_half_off_the_can_reads_half_the_radiance_over_the_surroundings()
    {
        double reading = Gun.Usual.ReadingC(80, 1, 1, 25, 0.5);
        double half = 0.5 * (Radiance.Of(353.15, Band.Gun) + Radiance.Of(298.15, Band.Gun));
        Close.Within(half, Radiance.Of(reading + 273.15, Band.Gun), 1e-10);
        Assert.InRange(reading, 25 + 0.5 * 55, 25 + 0.6 * 55);
        Close.Within(25, Gun.Usual.ReadingC(80, 0.95, 0.9, 25, 1), 1e-10);
    }

    [Fact]
    public void The_gain_is_below_one_for_a_surface_that_is_shinier_than_the_guns_setting()
    {
        Assert.Equal(1, Gun.Usual.Gain(80, 0.95, 0.95, 25), 12);
        Assert.InRange(Gun.Usual.Gain(80, 0.95, 0.3, 25), 0.3, 0.5);
        Assert.True(Gun.Usual.Gain(80, 0.95, 0.9, 25) < 1);
    }

    [Fact]
    public void A_spots_share_off_its_target_is_that_of_plane_geometry()
    {
        Assert.Equal(0.02, MeasuringSpot.DiameterM(0.24, 12), 12);
        Assert.Equal(0.01, MeasuringSpot.DiameterM(0.05, 12, 0.01), 12);
        Assert.Equal(0, MeasuringSpot.ShareOffDisc(0.02, 0.03));
        Assert.Equal(0.75, MeasuringSpot.ShareOffDisc(0.04, 0.02), 12);
        Assert.Equal(0, MeasuringSpot.ShareOffBand(0.02, 0.02));
        // A band half as wide as the spot leaves two caps of 1/3 − √3/(4π) each (segment of 120°).
        Assert.Equal(2 * (1.0 / 3 - Math.Sqrt(3) / (4 * Math.PI)), MeasuringSpot.ShareOffBand(0.04, 0.02), 12);
    }
}
