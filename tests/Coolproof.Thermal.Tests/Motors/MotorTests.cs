namespace Coolproof.Thermal.Tests;

public class MotorTests
{
    // Source: winding-resistance-cases.csv (resistance method of IEC 60034-1, k from memory).
    [Fact]
    public void Winding_temperature_by_resistance_agrees_with_the_worked_cases()
    {
        List<string[]> rows = Table.Rows("winding-resistance-cases.csv");
        Assert.Equal(7, rows.Count);
        foreach (string[] row in rows)
        {
            double[] v = [.. row.Select(Table.Number)];
            Close.Within(v[4], Winding.TemperatureC(v[2], v[0], v[1], v[3]), 1e-9);
            Close.Relative(v[2], Winding.Resistance(v[4], v[0], v[1], v[3]), 1e-11);
        }
        Assert.Throws<ArgumentOutOfRangeException>(() => Winding.TemperatureC(0, 1, 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => Winding.TemperatureC(1, -1, 20));
    }

    // Source: IEC 60034-1 k = 235 gives 0.003846 /K at 25 °C (arithmetic); 100 °C: 30 W become 30 × 335/260.
    [Fact]
    public void Copper_heat_grows_with_resistance()
    {
        Assert.Equal(0.003846, Winding.AlphaAt25, 6);
        double atHundred = Winding.CopperHeatAtZeroW(30) + Winding.FeedbackWK(30) * 100;
        Close.Relative(30 * 335.0 / 260, atHundred, 1e-14);
        Close.Relative(30 * Winding.Resistance(100, 1, 25), atHundred, 1e-14);
    }

    // The figures that the working model's priors stand on, for 165 g.
    [Fact]
    public void A_motor_of_165_grams_holds_about_fifty_joules_per_kelvin_in_core_and_winding_and_forty_in_the_can()
    {
        MotorMass motor = new(MotorMass.ReferenceKg);
        Assert.InRange(motor.CoreAndWindingJK, 49, 53);
        Assert.InRange(motor.CanJK, 39, 43);
        Assert.Equal(1, motor.Scale);
        double massKg = motor.CopperKg + motor.LaminationsKg + motor.RotorKg + motor.CanJK / SpecificHeat.Aluminium;
        Assert.InRange(massKg / motor.Kg, 0.95, 1);
        Close.Relative(motor.CoreAndWindingJK, motor.WindingJK + motor.CoreJK, 1e-14);
    }

    [Fact]
    public void Every_heat_capacity_goes_with_the_motors_mass()
    {
        MotorMass small = new(0.1), large = new(0.25);
        foreach (Func<MotorMass, double> part in new Func<MotorMass, double>[]
            { m => m.WindingJK, m => m.LaminationsJK, m => m.RotorJK, m => m.CanAloneJK, m => m.EndbellJK, m => m.Scale })
            Close.Relative(2.5 * part(small), part(large), 1e-14);
        Assert.Throws<ArgumentOutOfRangeException>(() => new MotorMass(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MotorMass(double.NaN));
    }

    // Source: thermal-classes.csv (IEC 60085; secondary pages, 90 and 250 from memory).
    [Fact]
    public void Thermal_classes_are_those_of_the_standard()
    {
        List<string[]> rows = Table.Rows("thermal-classes.csv");
        Assert.Equal(rows.Select(row => Table.Number(row[2])), ThermalClass.All.Select(c => c.LimitC));
        foreach (string[] row in rows.Where(row => row[1] != "(none)")) Assert.Equal(Table.Number(row[2]), ThermalClass.Find(row[1].ToLowerInvariant())!.LimitC);
        Assert.Null(ThermalClass.Find(""));
        Assert.Null(ThermalClass.Find("Q"));
    }

    // Source: insulation-life rule, 25 K cooler → 5.65685 times the life (secondary pages).
    [Fact]
    public void Ten_kelvin_halve_the_life_of_an_insulation()
    {
        ThermalClass h = ThermalClass.Find("H")!;
        Assert.Equal(5.65685, h.RelativeLife(155), 5);
        Assert.Equal(0.5, h.RelativeLife(190), 12);
    }

    // Source: ndfeb-magnets.csv (grade tables, per row read or from memory); α = −0.12 %/K from 20 to 100 °C leaves 0.904.
    [Fact]
    public void Magnet_grades_are_those_of_the_tables()
    {
        List<string[]> rows = Table.Rows("ndfeb-magnets.csv");
        Assert.Equal(rows.Count, MagnetGrade.All.Count);
        foreach ((string[] row, MagnetGrade grade) in rows.Zip(MagnetGrade.All))
        {
            Assert.Equal(Table.Number(row[1]), grade.LimitC);
            Close.Relative(Table.Number(row[2]) / 100, grade.PerKelvin, 1e-12);
        }
        Assert.Equal(150, MagnetGrade.Find("sh")!.LimitC);
        Assert.Equal(0.904, MagnetGrade.Find("M")!.RelativeStrength(100), 12);
    }

    // Source: ISO 13732-1 (from memory); burn-institute data on a secondary page: 68 °C about 1 s, 57 °C about 10 s.
    [Fact]
    public void Bare_metal_burns_the_sooner_the_hotter()
    {
        Assert.InRange(BurnThreshold.MetalOneSecondC, 65, 68);
        Assert.InRange(BurnThreshold.MetalTenSecondsC, 55, 57);
        Assert.Equal(51, BurnThreshold.MetalOneMinuteC);
    }
}
