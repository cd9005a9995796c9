using System.Text;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Tests;

public class LayoutGuessTests
{
    [Fact]
    public void Plain_csv_with_units_in_its_names_is_understood()
    {
        var got = Logged.Of("time (s),can [°C],current_a,speed km/h\n0.0,27.5,0,0\n0.1,27.6,12.25,36\n0.2,27.6,13,72\n");
        Assert.Equal(["can °C", "current A", "speed m/s"], got.Layout.Channels.Select(c => $"{c.Name} {c.Unit.Name}"));
        Assert.Equal([0, 100_000, 200_000], got.AtUs);
        Assert.Equal([27.5, 27.6, 27.6], got.Values[0]);
        Assert.Equal(10, got.Layout.Channels[2].Unit.Own(got.Values[2][1]), 12);
        Assert.Empty(got.Layout.Guessed);
        Assert.Equal(0, got.Read.Problems.Count);
    }

    [Fact]
    public void Semicolons_decimal_commas_and_a_row_of_units_are_understood()
    {
        var got = Logged.Of("\uFEFFZeit;Motor;Strom\r\n[ms];[°C];[mA]\r\n0;27,5;0\r\n100;27,6;12250\r\n200;27,75;13000\r\n");
        Assert.Equal((';', true, 3, 1), (got.Layout.Separator, got.Layout.DecimalComma, got.Layout.FirstLine, got.Layout.HeaderLine));
        Assert.Equal([0, 100_000, 200_000], got.AtUs);
        Assert.Equal(27.75, got.Values[0][2]);
        Assert.Equal(12.25, got.Layout.Channels[1].Unit.Own(got.Values[1][1]), 12);
    }

    [Fact]
    public void Lines_above_the_names_are_passed_over()
    {
        var got = Logged.Of("Logger export\nserial 4711, made up\n\nTime\tTemp (F)\tRPM\n00:00:00.0\t80\t0\n00:00:00.5\t80.6\t12000\n00:00:01.0\t81\t13000\n");
        Assert.Equal(('\t', 4, 5), (got.Layout.Separator, got.Layout.HeaderLine, got.Layout.FirstLine));
        Assert.Equal([0, 500_000, 1_000_000], got.AtUs);
        Assert.Equal(27, got.Layout.Channels[0].Unit.Own(got.Values[0][1]), 9);
        Assert.Equal(Measured.Turning, got.Layout.Channels[1].Unit.Measures);
    }

    [Theory]
    [InlineData("time_ms,t1 (C)\n1000,20\n1250,21\n", TimeForm.Milliseconds, 1_250_000)]
    [InlineData("time,t1 (C)\n1000,20\n1250,21\n", TimeForm.Milliseconds, 1_250_000)]
    [InlineData("time,t1 (C)\n1.5,20\n1.75,21\n", TimeForm.Seconds, 1_750_000)]
    [InlineData("timestamp,t1 (C)\n2026-06-09T16:05:00,20\n2026-06-09T16:05:00.250,21\n", TimeForm.DateAndTime, 1_781_021_100_250_000)]
    [InlineData("timestamp,t1 (C)\n2026-06-09T16:05:00+02:00,20\n2026-06-09T16:05:00.250+02:00,21\n", TimeForm.DateAndTime, 1_781_013_900_250_000)]
    [InlineData("timestamp,t1 (C)\n09.06.2026 16:05:00,20\n09.06.2026 16:05:01,21\n", TimeForm.DateAndTime, 1_781_021_101_000_000)]
    [InlineData("timestamp,t1 (C)\n6/19/2026 4:05:00 PM,20\n6/19/2026 4:05:01 PM,21\n", TimeForm.DateAndTime, 1_781_885_101_000_000)]
    [InlineData("time,t1 (C)\n1781021100.5,20\n1781021100.75,21\n", TimeForm.EpochSeconds, 1_781_021_100_750_000)]
    [InlineData("time,t1 (C)\n1781021100500,20\n1781021100750,21\n", TimeForm.EpochMilliseconds, 1_781_021_100_750_000)]
    [InlineData("time,t1 (C)\n46182.5,20\n46182.500011574074,21\n", TimeForm.SerialDays, 1_781_006_401_000_000)]
    [InlineData("time,t1 (C)\n16:05:00,20\n16:05:00.125,21\n", TimeForm.Clock, 57_900_125_000)]
    [InlineData("time,t1 (C)\n05:59.5,20\n06:00.5,21\n", TimeForm.Clock, 360_500_000)]
    [InlineData("time (d),t1 (C)\n0,20\n0.5,21\n", TimeForm.Days, 43_200_000_000)]
    public void Each_way_to_write_time_is_understood(string text, TimeForm form, long secondUs)
    {
        // Instants were worked out with GNU date, such as `date -u -d 2026-06-09T16:05:00 +%s`; serial 46182 is 2026-06-09 by ISO/IEC 29500-1's 25569 for 1970-01-01.
        var got = Logged.Of(text);
        Assert.Equal(form, got.Layout.TimeForm);
        Assert.InRange(got.AtUs[1] - secondUs, -1, 1);
    }

    [Fact]
    public void A_date_apart_from_the_time_of_day_is_joined_with_it()
    {
        var got = Logged.Of("Date,Time,t1 (C)\n2026-06-09,23:59:59.5,20\n2026-06-10,00:00:00.5,21\n");
        Assert.Equal(TraceClock.LocalDate, got.Layout.Clock);
        Assert.Equal(1_000_000, got.AtUs[1] - got.AtUs[0]);
        Assert.Single(got.Layout.Channels);
    }

    [Fact]
    public void A_clock_goes_on_after_midnight()
    {
        var got = Logged.Of("time,t1 (C)\n23:59:59.5,20\n00:00:00.5,21\n00:00:01.5,21\n");
        Assert.Equal([0, 1_000_000, 2_000_000], got.AtUs.Select(us => us - got.AtUs[0]));
    }

    [Fact]
    public void A_file_without_time_takes_steps_that_are_said_and_is_refused_without()
    {
        const string text = "can,amp\n27,1\n26,2\n28,1\n";
        Assert.Contains("time", Logged.Refused(text).Expected);
        var got = Logged.Of(text, new LayoutWish(StepS: 0.1));
        Assert.Equal([0, 100_000, 200_000], got.AtUs);
        Assert.Equal(2, got.Layout.Channels.Count);
    }

    [Fact]
    public void What_is_known_better_goes_before_what_is_guessed()
    {
        var got = Logged.Of("count,clock,probe\n1,10,80\n2,20,81\n3,30,82\n",
            new LayoutWish("clock", TimeForm.Seconds, Units: new Dictionary<string, string> { ["probe"] = "F" }, Only: ["probe"]));
        Assert.Equal([10_000_000, 20_000_000, 30_000_000], got.AtUs);
        Assert.Equal("°C", Assert.Single(got.Layout.Channels).Unit.Name);
        Assert.Contains("count", Logged.Refused("count,probe\n1,2\n2,3\n", new LayoutWish("clock")).Expected);
    }

    [Fact]
    public void Utf16_letters_of_windows_and_lone_returns_are_understood()
    {
        foreach (Encoding wide in (Encoding[])[Encoding.Unicode, Encoding.BigEndianUnicode])
        {
            var got = Logged.Of([.. wide.GetPreamble(), .. wide.GetBytes("time (s),can (°C)\n0,20\n1,21\n")]);
            Assert.Equal("°C", got.Layout.Channels[0].Unit.Name);
            Assert.Equal([20.0, 21.0], got.Values[0]);
        }
        Assert.Equal("°C", Logged.Of(Encoding.Latin1.GetBytes("time (s);can (°C)\r0;20,5\r1;21\r")).Layout.Channels[0].Unit.Name);
    }

    [Fact]
    public void Quoted_cells_with_decimal_commas_between_commas_are_understood()
    {
        var got = Logged.Of("\"time (s)\",\"can (C)\"\n\"0,0\",\"27,5\"\n\"0,5\",\"27,75\"\n");
        Assert.True(got.Layout.DecimalComma);
        Assert.Equal([27.5, 27.75], got.Values[0]);
        Assert.Equal([0, 500_000], got.AtUs);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("only words\nand more\n", "no rows of numbers")]
    [InlineData("time (s)\n1\n2\n", "no column of numbers beside")]
    public void What_is_no_logger_s_file_is_refused_with_what_would_be_right(string text, string found)
    {
        var problem = Logged.Refused(text);
        Assert.Contains(found, problem.Found);
        Assert.NotEmpty(problem.Expected);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused() => Assert.Throws<TraceRefusedException>(() => Logged.Of([80, 75, 3, 4, 0, 0, 8, 0]));
}
