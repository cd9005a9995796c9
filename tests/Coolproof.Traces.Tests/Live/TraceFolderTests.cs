using Coolproof.Traces.Live;

namespace Coolproof.Traces.Tests.Live;

/// <summary>Logs of many channels over days.</summary>
public sealed class TraceFolderTests : IDisposable
{
    static readonly TraceChannel Can = new("http bench", "can", "°C");
    static readonly TraceChannel Pack = new("http bench", "pack", "V");
    static readonly long Evening = new DateTimeOffset(2026, 6, 9, 23, 59, 58, TimeSpan.Zero).ToUnixTimeMilliseconds();

    readonly string place = Directory.CreateTempSubdirectory("coolproof-traces-").FullName;

    string Path => System.IO.Path.Combine(place, "n.traces");

    [Fact]
    public void Samples_are_found_by_channel_and_time_over_midnight()
    {
        using var folder = new TraceFolder(Path);
        for (var i = 0; i < 5; i++) folder.Keep(Can, Good(Evening + (1000 * i), i));
        folder.Keep(Pack, Good(Evening, 7.9));
        Assert.Equal(["can", "pack"], folder.Channels(Evening, Evening + 5000).Select(channel => channel.Name));
        Assert.Equal(["can"], folder.Channels(Evening + 3000, Evening + 5000).Select(channel => channel.Name));
        Assert.Equal([1.0, 2.0, 3.0], folder.Read(Can, Evening + 1000, Evening + 3000).Select(sample => sample.Value));
        Assert.Equal(2, Directory.GetDirectories(Path).Length);
    }

    [Fact]
    public void What_a_sender_sends_again_is_kept_once_also_after_a_new_start_and_on_another_day()
    {
        IReadOnlyList<(long, Sample)> Lines(int from, int count) => [.. Enumerable.Range(from, count).Select(one => ((long)one, Good(Evening + (1000 * one), one)))];
        using (var folder = new TraceFolder(Path))
        {
            Assert.Equal(2, folder.Keep(Can, Lines(0, 2), session: 5).Count);
            Assert.Equal(3, folder.Keep(Can, Lines(0, 5), session: 5).Count);
            Assert.Empty(folder.Keep(Can, Lines(0, 5), session: 5));
            Assert.Equal(5, folder.Keep(Pack, Lines(0, 5), session: 5).Count);
        }
        using (var folder = new TraceFolder(Path))
        {
            Assert.Single(folder.Keep(Can, Lines(3, 3), session: 5));
            var later = Lines(90_000_000 / 1000, 1);
            Assert.Single(folder.Keep(Can, later, session: 5));
            Assert.Equal(2, folder.Keep(Can, Lines(0, 2), session: 6).Count);
        }
        using (var folder = new TraceFolder(Path)) Assert.Empty(folder.Keep(Can, Lines(0, 6), session: 5));
    }

    [Fact]
    public void Two_writers_of_one_folder_are_told_of_each_other()
    {
        using var first = new TraceFolder(Path);
        first.Keep(Can, Good(Evening, 1));
        using var second = new TraceFolder(Path);
        Assert.Contains("Another pit table", Assert.Throws<IOException>(() => second.Keep(Pack, Good(Evening, 1))).Message, StringComparison.Ordinal);
        Assert.Single(second.Read(Can, 0, Evening));
    }

    static Sample Good(long at, double value) => new(at, value, SampleMark.Good);

    public void Dispose() => Directory.Delete(place, recursive: true);
}
