using CsCheck;

namespace Coolproof.Live.Tests;

/// <summary>Silence is told from an ordinary pause.</summary>
public class ChannelPulseTests
{
    [Theory]
    [InlineData(100, 3000)] // ten a second: the least silence that counts
    [InlineData(1000, 3000)]
    [InlineData(2000, 6000)]
    [InlineData(30_000, 90_000)]
    public void A_channel_may_be_silent_three_times_its_usual_interval_and_three_seconds_at_least(int interval, int limit)
    {
        var pulse = new ChannelPulse();
        for (var i = 0; i <= 30; i++) pulse.Hear(i * interval);
        Assert.Equal(limit, pulse.LimitMs);
        var last = 30 * interval;
        Assert.Null(pulse.Look(last + limit));
        Assert.False(pulse.Silent);
        Assert.Equal(last + limit, pulse.Look(last + limit + 250));
        Assert.True(pulse.Silent);
        Assert.Null(pulse.Look(last + limit + 500)); // told once
        pulse.Hear(last + (10 * limit));
        Assert.False(pulse.Silent);
    }

    [Fact]
    public void Of_two_states_exactly_one_silence_is_told_for_each_that_is_long_enough() => Gen.Long[1, 20_000].Array[2, 60].Sample(waits =>
    {
        var pulse = new ChannelPulse();
        var (now, told, due) = (0L, 0, 0);
        pulse.Hear(now);
        foreach (var wait in waits)
        {
            var limit = pulse.LimitMs;
            for (var step = 250; step < wait; step += 250)
                if (pulse.Look(now + step) is not null) told++;
            if (pulse.Look(now + wait) is not null) told++;
            if (wait > limit) due++;
            now += wait;
            pulse.Hear(now);
        }
        Assert.Equal(due, told);
    });

    [Fact]
    public void Lines_that_come_together_say_nothing_of_how_often_they_come()
    {
        var pulse = new ChannelPulse();
        for (var burst = 0; burst < 10; burst++)
            for (var line = 0; line < 8; line++) pulse.Hear((burst * 10_000) + line);
        Assert.Equal(10_000, pulse.UsualMs);
    }

    [Fact]
    public void What_was_heard_once_may_be_silent_for_ten_seconds()
    {
        var pulse = new ChannelPulse();
        Assert.Null(pulse.Look(99_999));
        pulse.Hear(0);
        Assert.Null(pulse.Look(10_000));
        Assert.Equal(10_000, pulse.Look(10_001));
    }
}
