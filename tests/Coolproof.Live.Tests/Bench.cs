using Coolproof.Traces.Live;

namespace Coolproof.Live.Tests;

/// <summary>A board with a folder of its own, which goes with it.</summary>
sealed class Bench : IDisposable
{
    readonly string place = Directory.CreateTempSubdirectory("coolproof-live-").FullName;

    public Bench(TimeProvider? clock = null)
    {
        Clock = clock ?? TimeProvider.System;
        (Folder, Board) = Open();
    }

    public TimeProvider Clock { get; }

    public TraceFolder Folder { get; private set; }

    public SensorBoard Board { get; private set; }

    /// <summary>Path of a file of this test.</summary>
    public string File(string name) => Path.Combine(place, name);

    /// <summary>As after a new start of the program.</summary>
    public void StartAnew()
    {
        Board.Dispose();
        Folder.Dispose();
        (Folder, Board) = Open();
    }

    /// <summary>What is kept of a channel, of all time.</summary>
    public IReadOnlyList<Traces.Sample> Kept(string name) => Folder.Channels(0, long.MaxValue / 100_000).Where(one => one.Name == name).SelectMany(one => Folder.Read(one, 0, long.MaxValue / 100_000)).ToList();

    /// <summary>Waits until something holds.</summary>
    public static async Task UntilAsync(Func<bool> holds, string what, double seconds = 30)
    {
        for (var end = DateTime.UtcNow.AddSeconds(seconds); DateTime.UtcNow < end; await Task.Delay(20, TestContext.Current.CancellationToken))
            if (holds()) return;
        Assert.Fail($"It did not come to pass within {seconds} s: {what}");
    }

    (TraceFolder, SensorBoard) Open()
    {
        var folder = new TraceFolder(Path.Combine(place, "n.traces"));
        return (folder, new SensorBoard(folder, Clock));
    }

    public void Dispose()
    {
        Board.Dispose();
        Folder.Dispose();
        Directory.Delete(place, recursive: true);
    }
}
