namespace Coolproof.Thermal.Tests;

public class PlatinumProbeTests
{
    // Source: pt100-iec60751.csv (formula and tolerances of IEC 60751; from memory).
    [Fact]
    public void Resistances_and_tolerances_agree_with_the_table_and_turn_back()
    {
        List<string[]> rows = Table.Rows("pt100-iec60751.csv");
        Assert.Equal(19, rows.Count);
        foreach (string[] row in rows)
        {
            double[] v = [.. row.Select(Table.Number)];
            Close.Within(v[1], PlatinumProbe.Ohm(v[0]), 1e-7);
            Close.Within(v[2], PlatinumProbe.Ohm(v[0]), 0.005 + 1e-9);
            Close.Within(v[0], PlatinumProbe.TemperatureC(PlatinumProbe.Ohm(v[0])), 1e-9);
            Close.Within(v[3], PlatinumProbe.ClassAToleranceK(v[0]), 1e-12);
            Close.Within(v[4], PlatinumProbe.ClassBToleranceK(v[0]), 1e-12);
        }
    }

    // Source: IEC 60751, table ends from memory: 18.52 Ω at −200 °C, 390.48 Ω at 850 °C.
    [Fact]
    public void The_ends_of_the_table_are_met_both_ways_and_nothing_lies_beyond()
    {
        Close.Within(18.52, PlatinumProbe.Ohm(-200), 0.005);
        Close.Within(390.48, PlatinumProbe.Ohm(850), 0.005);
        for (double t = -200; t <= 850; t += 7) Close.Within(t, PlatinumProbe.TemperatureC(PlatinumProbe.Ohm(t)), 1e-8);
        Assert.Throws<ArgumentOutOfRangeException>(() => PlatinumProbe.Ohm(851));
        Assert.True(double.IsNaN(PlatinumProbe.TemperatureC(10)));
        Assert.True(double.IsNaN(PlatinumProbe.TemperatureC(400)));
    }
}
