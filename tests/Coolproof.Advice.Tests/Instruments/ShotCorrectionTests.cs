using Coolproof.Advice.Instruments;

namespace Coolproof.Advice.Tests.Instruments;

public class ShotCorrectionTests
{
    // Source: emissivity-correction-cases.csv of the reference: read 60 °C at 0.95 on 0.8 against 23 °C: 65.9088025449 °C (8 to 14 µm, reflection taken off).
    [Fact]
    public void A_known_surface_is_put_right_as_the_reference_has_it()
    {
        ShotCorrection right = ShotCorrection.Of(new(60, 0.95, 0.8, 0.8, 23))!;
        Assert.Equal(65.9088025449, right.SurfaceC, 6);
        Assert.Equal(right.ByLaw.StandardUncertainty(), right.ByChance.StandardUncertainty(), 0.01);
        Assert.InRange(right.ByLaw.StandardUncertainty(), 0.5, 1);
    }

    [Fact]
    public void On_tape_it_is_sure_to_a_kelvin_and_on_polished_metal_it_says_nothing()
    {
        ShotCorrection tape = ShotCorrection.Of(new(70, 0.95, 0.94, 0.97, 25))!, polished = ShotCorrection.Of(new(35, 0.95, 0.02, 0.10, 25))!;
        Assert.InRange(tape.Range.High - tape.Range.Low, 1.5, 4);
        Assert.True(polished.Range.High - polished.Range.Low > 80);
    }

    [Fact]
    public void A_spot_half_on_the_chassis_hides_half_of_the_rise()
    {
        double read = Thermal.Gun.Usual.ReadingC(80, 0.95, 0.95, 25, 0.4);
        Assert.Equal(80, ShotCorrection.Of(new(read, 0.95, 0.95, 0.95, 25, 0.4))!.SurfaceC, 6);
    }

    [Fact]
    public void A_number_that_no_surface_would_give_has_no_answer() => Assert.Null(ShotCorrection.Of(new(-20, 1, 0.1, 0.1, 40)));
}
