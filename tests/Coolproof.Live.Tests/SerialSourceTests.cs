using Coolproof.Live.Sources;
using Coolproof.Traces;

namespace Coolproof.Live.Tests;

/// <summary>A serial port, by a pair of connected pseudo-terminals.</summary>
public sealed class SerialSourceTests : IDisposable
{
    readonly Bench bench = new();

    [Fact]
    public async Task Lines_are_heard_an_unplugged_port_is_noticed_and_heard_again_when_it_is_back()
    {
        var (ours, theirs) = (bench.File("ours"), bench.File("theirs"));
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var source = new SerialSource(new SerialPlace(ours, 115_200), bench.Board, TimeProvider.System);
        var running = source.RunAsync(ending.Token);
        await Bench.UntilAsync(() => State()?.Trouble?.Contains("There is no", StringComparison.Ordinal) == true, "the missing port is told");

        using (Child.SerialPair(ours, theirs))
        {
            await Bench.UntilAsync(() => State()?.Alive == true, "the port is open");
            await using var port = new FileStream(theirs, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            await port.WriteAsync("an 99 C\n"u8.ToArray(), TestContext.Current.CancellationToken); // the end of a line that began before we listened
            for (var i = 0; i < 200; i++) await port.WriteAsync(System.Text.Encoding.UTF8.GetBytes($"can {i}.5 °C\r\n"), TestContext.Current.CancellationToken);
            await Bench.UntilAsync(() => bench.Kept("can").Count == 200, "all 200 lines are kept");
            Assert.Equal(Enumerable.Range(0, 200).Select(one => new { Value = one + 0.5, Mark = SampleMark.Good }), bench.Kept("can").Select(one => new { one.Value, one.Mark }));
        }
        await Bench.UntilAsync(() => State()?.Alive == false, "the unplugged port is noticed");
        Assert.Equal(1, State()!.Losses);
        Assert.Contains("Plug it in", State()!.Trouble, StringComparison.Ordinal);

        using (Child.SerialPair(ours, theirs))
        {
            await Bench.UntilAsync(() => State()?.Alive == true, "the port is open again");
            await using var port = new FileStream(theirs, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            await port.WriteAsync("\ncan 300 °C\n"u8.ToArray(), TestContext.Current.CancellationToken);
            await Bench.UntilAsync(() => bench.Kept("can").Any(one => one.Value == 300), "the first line after it is kept");
            Assert.Equal(0, State()!.NotUnderstood);
            await ending.CancelAsync();
            await running.WaitAsync(TimeSpan.FromSeconds(5), TestContext.Current.CancellationToken); // ends at once although a read is under way
        }
    }

    SourceState? State() => bench.Board.View.Sources is [var only] ? only : null;

    public void Dispose() => bench.Dispose();
}
