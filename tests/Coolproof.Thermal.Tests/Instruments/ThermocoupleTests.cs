namespace Coolproof.Thermal.Tests;

public class ThermocoupleTests
{
    static Thermocouple Of(string type) => type == "K" ? Thermocouple.K : Thermocouple.T;

    // Source: thermocouple-check-points.csv (reference functions of ITS-90, NIST Monograph 175; rounded column from memory).
    [Fact]
    public void Voltages_agree_with_the_check_points_and_turn_back()
    {
        List<string[]> rows = Table.Rows("thermocouple-check-points.csv");
        Assert.Equal(34, rows.Count);
        foreach (string[] row in rows)
        {
            (Thermocouple couple, double celsius) = (Of(row[0]), Table.Number(row[1]));
            Close.Within(1000 * Table.Number(row[2]), couple.Microvolt(celsius), 1e-5, string.Join(',', row));
            Close.Within(1000 * Table.Number(row[3]), couple.Microvolt(celsius), 0.5 + 1e-9, "published to 1 µV");
            Close.Within(celsius, couple.TemperatureC(couple.Microvolt(celsius)), 1e-8);
        }
    }

    // Source: the published inverse polynomials are good to about ±0.05 K (NIST Monograph 175); ours solves the reference function itself.
    [Fact]
    public void The_way_back_agrees_with_the_published_inverse_polynomials()
    {
        foreach (var part in Table.Rows("thermocouple-coefficients.csv").Where(r => r[1].StartsWith("E(uV)", StringComparison.Ordinal)).GroupBy(r => (Type: r[0], Low: Table.Number(r[2]), High: Table.Number(r[3]))))
        {
            double[] terms = [.. part.OrderBy(r => int.Parse(r[4])).Select(r => Table.Number(r[5]))];
            for (double at = part.Key.Low; at <= part.Key.High; at += (part.Key.High - part.Key.Low) / 40)
            {
                double published = 0;
                for (int i = terms.Length - 1; i >= 0; i--) published = published * at + terms[i];
                if (double.IsNaN(Of(part.Key.Type).TemperatureC(at))) continue; // the polynomials' last microvolts lie beyond the range
                Close.Within(published, Of(part.Key.Type).TemperatureC(at), 0.06, $"{part.Key} {at} µV");
            }
        }
    }

    [Fact]
    public void A_warm_cold_junction_is_added_as_voltage_and_not_as_degrees()
    {
        foreach (Thermocouple couple in new[] { Thermocouple.K, Thermocouple.T })
        {
            Close.Within(70, couple.TemperatureC(couple.Microvolt(70) - couple.Microvolt(25), 25), 1e-8);
            Close.Within(25, couple.TemperatureC(0, 25), 1e-8);
        }
    }

    [Fact]
    public void What_lies_outside_the_range_is_refused_or_no_number()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermocouple.T.Microvolt(401));
        Assert.Throws<ArgumentOutOfRangeException>(() => Thermocouple.K.Microvolt(double.NaN));
        Assert.True(double.IsNaN(Thermocouple.T.TemperatureC(30_000)));
        Assert.True(double.IsNaN(Thermocouple.K.TemperatureC(-7_000)));
    }
}
