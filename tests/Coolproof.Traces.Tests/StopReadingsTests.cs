using Coolproof.Traces.Thinning;

namespace Coolproof.Traces.Tests;

public class StopReadingsTests
{
    static double Can(double s) => 30 + (35 * Math.Exp(-s / 90));

    static (double[] At, double[] Read) Trace(double stepS, double noise, double keep, int seed)
    {
        Random chance = new(seed);
        double[] at = [.. Enumerable.Range(0, (int)(180 / stepS)).Select(i => (i * stepS) - 30)];
        double off = 0;
        return (at, [.. at.Select(s =>
        {
            off = (keep * off) + (Math.Sqrt(1 - (keep * keep)) * noise * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()));
            return (s < 0 ? 65 : Can(s)) + off;
        })]);
    }

    [Fact]
    public void A_trace_becomes_a_few_readings_closest_after_the_halt_each_near_the_curve()
    {
        var (at, read) = Trace(0.1, 0.2, 0, 1);
        var readings = StopReadings.Of(at, read, 60);
        Assert.Equal(StopReadings.Most, readings.Count);
        Assert.All(readings, reading => Assert.InRange(reading.Value - Can(reading.AfterHaltS), -0.15, 0.15));
        Assert.All(readings, reading => Assert.InRange(reading.AfterHaltS, 2.5, 60));
        double[] gaps = [.. readings.Zip(readings.Skip(1), (a, b) => b.AfterHaltS - a.AfterHaltS)];
        Assert.Equal(gaps, gaps.Order());
        Assert.True(gaps[0] >= 3.9);
    }

    [Fact]
    public void Noise_that_goes_with_itself_for_seconds_puts_them_further_apart()
    {
        var (at, white) = Trace(0.1, 0.3, 0, 2);
        var (_, slow) = Trace(0.1, 0.3, 0.985, 2);
        Assert.InRange(StopReadings.CorrelatedS(at[300..], white[300..]), 0.1, 0.2);
        Assert.InRange(StopReadings.CorrelatedS(at[300..], slow[300..]), 2, 12);
        static double First(IReadOnlyList<StopReading> readings) => readings[1].AfterHaltS - readings[0].AfterHaltS;
        Assert.True(First(StopReadings.Of(at, slow, 60)) > First(StopReadings.Of(at, white, 60)) + 0.5);
    }

    [Fact]
    public void The_autocorrelation_time_of_a_first_order_process_is_the_known_one()
    {
        // (1 + ρ)/(1 − ρ), Sokal 1997, "Monte Carlo methods in statistical mechanics", section 3 (from memory).
        Random chance = new(7);
        double[] values = new double[200_000];
        for (int i = 1; i < values.Length; i++) values[i] = (0.8 * values[i - 1]) + chance.NextDouble() - 0.5;
        Assert.InRange(Autocorrelation.TimeOf(values), 8.4, 9.6);
    }

    [Fact]
    public void Where_power_went_off_or_nothing_was_logged_readings_end()
    {
        var (at, read) = Trace(0.5, 0.1, 0, 3);
        Assert.All(StopReadings.Of(at, read, 12), reading => Assert.True(reading.AfterHaltS <= 12));
        Assert.Empty(StopReadings.Of(at[..50], read[..50], 60));
        Assert.Empty(StopReadings.Of([], [], 60));
    }

    [Fact]
    public void A_slow_logger_gives_its_own_samples()
    {
        double[] at = [0, 10, 20, 30, 40], read = [65, 61, 58, 55, 52];
        Assert.Equal([10, 20, 40], StopReadings.Of(at, read, 60).Select(reading => reading.AfterHaltS));
    }
}
