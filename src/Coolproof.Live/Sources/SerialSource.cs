using System.IO.Ports;
using Coolproof.Traces.Live;

namespace Coolproof.Live.Sources;

/// <summary>Listens to a serial port for as long as it is asked to: opens it, reads lines, notices that it is unplugged, and opens it again once it is there.</summary>
/// <param name="place">The port.</param>
/// <param name="board">Who takes the lines.</param>
/// <param name="clock">The clock.</param>
public sealed class SerialSource(SerialPlace place, SensorBoard board, TimeProvider clock)
{
    static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(1);

    /// <summary>Listens until it is cancelled.</summary>
    public Task RunAsync(CancellationToken cancel) =>
        Listening.AgainAndAgainAsync(board, place.Name, SourceKind.Serial, clock, async backoff => await ListenAsync(backoff, cancel), cancel);

    /// <returns>Why it listens no more.</returns>
    async Task<string> ListenAsync(Backoff backoff, CancellationToken cancel)
    {
        var open = false;
        try
        {
            if (!There(place.Device)) return $"There is no {place.Device}. Plug it in; it is tried again and again.";
            using var port = new SerialPort(place.Device, place.Baud);
            port.Open();
            open = true;
            board.Tell(place.Name, SourceKind.Serial, null);
            await ReadAsync(port, backoff, cancel);
            return Unplugged();
        }
        catch (OperationCanceledException)
        {
            return "The pit table ends.";
        }
        catch (Exception cause) when (cause is UnauthorizedAccessException || (open && cause is IOException or InvalidOperationException))
        {
            return open ? Unplugged() : $"{place.Device} can't be opened: another program has it, or you may not. On Linux who is in the group dialout may. It is tried again and again.";
        }
        catch (Exception cause) when (cause is IOException or ArgumentException or PlatformNotSupportedException)
        {
            return $"{place.Device} can't be opened: {cause.Message} It is tried again and again.";
        }
    }

    string Unplugged() => $"{place.Device} was unplugged. Plug it in; it is tried again and again.";

    // A device, or a link to one that is there: links outlive what they lead to.
    static bool There(string device) => File.Exists(device) && (File.ResolveLinkTarget(device, returnFinalTarget: true)?.Exists ?? true);

    async Task ReadAsync(SerialPort port, Backoff backoff, CancellationToken cancel)
    {
        var splitter = new LineSplitter(skipFirst: true);
        var bytes = new byte[4096];
        var read = port.BaseStream.ReadAsync(bytes, cancel).AsTask();
        while (true)
        {
            // A port that is gone doesn't always end what is read from it.
            if (await Task.WhenAny(read, Task.Delay(LookEvery, clock, cancel)) != read)
            {
                cancel.ThrowIfCancellationRequested();
                if (!There(place.Device)) return;
                continue;
            }
            var count = await read;
            if (count == 0) return;
            backoff.Reset();
            foreach (var line in splitter.Add(bytes.AsSpan(0, count))) board.Hear(place.Name, SourceKind.Serial, line);
            read = port.BaseStream.ReadAsync(bytes, cancel).AsTask();
        }
    }
}
