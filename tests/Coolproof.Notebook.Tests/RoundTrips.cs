using CsCheck;

namespace Coolproof.Notebook.Tests;

/// <summary>What is written is read back the same.</summary>
public sealed class RoundTrips
{
    [Fact]
    public void A_table_written_in_Celsius_is_read_back_to_the_last_bit() =>
        TableGen.Table.Sample(table => Check(table, TemperatureUnitChoice.Celsius, 0), iter: 2000);

    [Fact]
    public void A_table_written_in_Fahrenheit_is_read_back_within_a_billionth_of_a_kelvin() =>
        TableGen.Table.Sample(table => Check(table, TemperatureUnitChoice.Fahrenheit, 1e-9), iter: 2000);

    [Fact]
    public void Only_columns_that_say_something_are_written()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s,ambient_c,kind,fan,note\nbare,61.5,360,,test,unknown,\n");
        Assert.Equal("day,run,option,drive_s,read_c\nday,1,bare,360,61.5\n", TableText.Written(table));
        Assert.Equal("day,run,option,drive_s,read_f\nday,1,bare,360,142.7\n", TableText.Written(table, TemperatureUnitChoice.Fahrenheit));
    }

    [Fact]
    public void A_tiny_number_is_written_without_an_exponent_and_read_back()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s,stop_to_read_s\nbare,0.00001,360,0.000000123\n");
        string written = TableText.Written(table);
        Assert.DoesNotContain("E-", written, StringComparison.Ordinal);
        Assert.Null(SameTable.Difference(table, TableText.Understood(written)));
    }

    [Fact]
    public void A_test_run_without_a_reading_is_not_written()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s\nbare,61.5,360\n");
        ReadingsTable unread = table with { Runs = [table.Runs[0] with { Readings = [] }] };
        Assert.Throws<ArgumentException>(() => TableText.Written(unread));
    }

    private static void Check(ReadingsTable table, TemperatureUnitChoice unit, double toleranceK)
    {
        ReadingsTable back = TableText.Understood(TableText.Written(table, unit));
        string? difference = SameTable.Difference(table, back, toleranceK);
        Assert.True(difference is null, difference);
    }
}
