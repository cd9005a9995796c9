using Coolproof.Live.Shown;
using Coolproof.Traces;

namespace Coolproof.Live.Tests;

/// <summary>What becomes of lines, whatever source they come from.</summary>
public sealed class SensorBoardTests : IDisposable
{
    readonly SetClock clock = new(new DateTimeOffset(2026, 6, 9, 16, 5, 0, TimeSpan.Zero));
    readonly Bench bench;

    public SensorBoardTests() => bench = new Bench(clock);

    [Fact]
    public void A_value_is_shown_and_kept()
    {
        Hear("can 64.3 °C");
        var channel = Assert.Single(bench.Board.View.Channels);
        Assert.Equal(("can", "°C", "serial a", 64.3, ChannelState.Live), (channel.Channel.Name, channel.Channel.Unit, channel.Channel.Source, channel.Value, channel.State));
        Assert.Equal([new Sample(clock.Ms, 64.3, SampleMark.Good)], bench.Kept("can"));
    }

    [Fact]
    public void Silence_is_marked_once_shown_and_kept_and_ends_with_the_next_value()
    {
        Every(1, 5, i => Hear($"can {60 + i} °C"));
        var last = clock.Ms - 1000;
        Every(0.25, 40, _ => bench.Board.Look());
        Assert.Equal(ChannelState.Silent, Shown("can").State);
        Assert.Equal(1, Shown("can").Picture.GapCount);
        Assert.Equal(64.0, Shown("can").Value);
        Hear("can 61 °C");
        Assert.Equal(ChannelState.Live, Shown("can").State);
        Assert.Equal([new Sample(last + 3000, double.NaN, SampleMark.Gap)], bench.Kept("can").Where(one => one.Mark == SampleMark.Gap));
        Assert.Equal(6, bench.Kept("can").Count(one => one.Mark == SampleMark.Good));
    }

    [Fact]
    public void What_can_not_be_right_is_kept_as_nonsense_and_the_last_value_stays()
    {
        Hear("can 64.3 °C");
        clock.Go(1);
        Hear("can -127 °C");
        Assert.Equal((ChannelState.Nonsense, 64.3), (Shown("can").State, Shown("can").Value));
        Assert.Contains("-127", Shown("can").Doubt, StringComparison.Ordinal);
        Assert.Equal([SampleMark.Good, SampleMark.Nonsense], bench.Kept("can").Select(one => one.Mark));
        Assert.Equal(1, Assert.Single(bench.Board.View.Sources).Nonsense);
    }

    [Fact]
    public void A_line_that_is_not_understood_is_counted_and_shown_with_its_reason()
    {
        Hear("can 64.3 °C");
        Hear("can 64,3 °C\u0007<b>");
        Hear("# remark");
        Hear("can 64,3 °C <b>");
        var source = Assert.Single(bench.Board.View.Sources);
        Assert.Equal((3, 2, "can 64,3 °C <b>"), (source.Lines, source.NotUnderstood, source.LastBad));
        Assert.Contains("comma", source.LastProblem!.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_that_is_sent_again_is_kept_once_also_by_the_next_program()
    {
        string[] lines = ["can 64.3 °C @-2s", "", "pack 7.4 V", "can 64.5 °C", "nothing"];
        var heard = bench.Board.HearAll("http a", lines, "s1", 10);
        Assert.Equal((3, 0), (heard.Kept, heard.Repeated));
        Assert.Equal(14, Assert.Single(heard.Bad).Number);
        Assert.Equal((0, 3), Repeat("s1", 10));
        bench.StartAnew();
        Assert.Equal((0, 3), Repeat("s1", 10));
        Assert.Equal((3, 0), Repeat("s2", 10)); // another session of the sender
        Assert.Equal((3, 0), Repeat("s1", 15)); // lines that come after

        (int, int) Repeat(string session, long first)
        {
            var again = bench.Board.HearAll("http a", lines, session, first);
            return (again.Kept, again.Repeated);
        }
    }

    [Fact]
    public void Lines_without_numbers_are_kept_as_often_as_they_come()
    {
        bench.Board.HearAll("http a", ["can 64.3 °C"], null, 0);
        bench.Board.HearAll("http a", ["can 64.3 °C"], null, 0);
        Assert.Equal(2, bench.Kept("can").Count);
    }

    [Fact]
    public void The_sixty_fifth_channel_is_refused_and_the_others_go_on()
    {
        bench.Board.HearAll("http a", [.. Enumerable.Range(0, 63).Select(one => $"c{one} 1 V")], null, 0);
        var heard = bench.Board.HearAll("http a", ["x 1 V", "y 1 V", "c3 2 V"], "s", 0);
        Assert.Equal((2, "There are 64 channels already."), (heard.Kept, Assert.Single(heard.Bad).Reason));
        Hear("z 1 V");
        Assert.Equal("There are 64 channels already.", bench.Board.View.Sources.Single(one => one.Name == "serial a").LastProblem?.Reason);
        Assert.Equal(64, bench.Board.View.Channels.Count);
    }

    [Fact]
    public void A_new_start_goes_on_with_the_picture_and_knows_the_time_between_as_a_gap()
    {
        Every(1, 20, i => Hear($"can {60 + i} °C"));
        bench.StartAnew();
        clock.Go(30);
        Hear("can 90 °C");
        Assert.Equal(1, Shown("can").Picture.GapCount);
        Assert.Equal(60.0, Shown("can").Picture.Low);
        Assert.Equal(21, bench.Kept("can").Count(one => one.Mark == SampleMark.Good));
        Assert.Single(bench.Kept("can"), one => one.Mark == SampleMark.Gap);
    }

    [Fact]
    public void What_comes_late_with_its_time_fills_the_gap()
    {
        Every(1, 10, i => bench.Board.HearAll("http a", [$"can {60 + i} °C"], "s", i));
        Every(1, 8, _ => bench.Board.Look());
        Assert.Equal(1, Shown("can").Picture.GapCount);
        bench.Board.HearAll("http a", [.. Enumerable.Range(0, 9).Select(i => $"can {70 + i} °C @-{8 - i}s")], "s", 10);
        Assert.Equal(0, Shown("can").Picture.GapCount);
        Assert.Equal([.. Enumerable.Range(60, 19).Select(one => (double)one)], bench.Kept("can").Select(one => one.Value));
    }

    [Fact]
    public void A_sender_that_posts_no_more_is_said_to_be_away()
    {
        bench.Board.HearAll("http a", ["can 64.3 °C"], null, 0);
        Assert.True(Assert.Single(bench.Board.View.Sources).Alive);
        clock.Go(11);
        bench.Board.Look();
        var source = Assert.Single(bench.Board.View.Sources);
        Assert.False(source.Alive);
        Assert.NotNull(source.Trouble);
        bench.Board.HearAll("http a", ["can 64.3 °C"], null, 0);
        Assert.True(Assert.Single(bench.Board.View.Sources).Alive);
    }

    [Fact]
    public void Where_nothing_can_be_kept_values_are_shown_and_said_not_to_be_kept_and_a_batch_is_refused()
    {
        File.WriteAllText(bench.Folder.Path, "a file where the folder should be");
        Hear("can 64.3 °C");
        Assert.Equal(64.3, Shown("can").Value);
        Assert.NotNull(bench.Board.View.NotKept);
        Assert.ThrowsAny<IOException>(() => bench.Board.HearAll("http a", ["can 64.3 °C"], "s", 0));
        File.Delete(bench.Folder.Path);
        Hear("can 64.4 °C");
        Assert.Null(bench.Board.View.NotKept);
        Assert.Equal(1, bench.Board.HearAll("http a", ["can 64.3 °C"], "s", 0).Kept);
    }

    [Fact]
    public void The_picture_is_told_of_twice_a_second_while_values_come_and_once_while_it_only_moves()
    {
        var told = 0;
        bench.Board.Changed += () => told++;
        Hear("can 64.3 °C");
        Every(0.25, 40, i =>
        {
            Hear($"can {60 + i} °C");
            bench.Board.Look();
        });
        Assert.InRange(told, 19, 22);
        told = 0;
        Every(0.25, 40, _ => bench.Board.Look());
        Assert.InRange(told, 9, 11);
    }

    void Hear(string line) => bench.Board.Hear("serial a", SourceKind.Serial, line);

    ShownChannel Shown(string name) => bench.Board.View.Channels.Single(one => one.Channel.Name == name);

    void Every(double seconds, int times, Action<int> what)
    {
        for (var i = 0; i < times; i++)
        {
            what(i);
            clock.Go(seconds);
        }
    }

    public void Dispose() => bench.Dispose();
}
