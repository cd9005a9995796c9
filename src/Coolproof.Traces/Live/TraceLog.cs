namespace Coolproof.Traces.Live;

/// <summary>The samples of one channel on one day, in a file that is only ever added to.</summary>
/// <remarks>
/// What was appended outlives the death of the program at once, and the death of the machine from the next <see cref="Sync"/> on. A record that was torn
/// as either died is dropped when the log is opened again. Not safe for several threads; one writer at a time.
/// </remarks>
public sealed class TraceLog : IDisposable
{
    readonly FileStream file;
    readonly Dictionary<long, long> sessions;
    long end;
    bool unsynced;

    TraceLog(FileStream file, TraceChannel channel, Dictionary<long, long> sessions)
    {
        (this.file, Channel, this.sessions, end) = (file, channel, sessions, file.Length);
        file.Position = end;
    }

    /// <summary>The channel.</summary>
    public TraceChannel Channel { get; }

    /// <summary>Per session of a sender, the number of its last line that is kept.</summary>
    internal IReadOnlyDictionary<long, long> Sessions => sessions;

    /// <summary>Opens a log, makes it where there is none, and drops what was torn.</summary>
    /// <param name="path">Its file; the folder is there.</param>
    /// <param name="channel">Its channel.</param>
    /// <exception cref="IOException">It can't be opened or made, or is the log of another channel.</exception>
    public static TraceLog Open(string path, TraceChannel channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        var options = new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = FileShare.Read, BufferSize = 0 };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        var file = new FileStream(path, options);
        try
        {
            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            var content = TraceContent.Of(bytes);
            if (content is not null && content.Channel != channel) throw new IOException($"{path} is the log of {content.Channel}, not of {channel}. Move it away.");
            if (content is null && bytes.Contains((byte)'\n')) throw new IOException($"{path} is no trace log. Move it away.");
            if (content is null)
            {
                file.SetLength(0);
                file.Write(TraceContent.Header(channel));
            }
            else if (content.End != bytes.Length) file.SetLength(content.End);
            file.Flush(flushToDisk: true);
            return new TraceLog(file, channel, content?.Sessions.ToDictionary() ?? []);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Adds a sample.</summary>
    /// <exception cref="IOException">It can't be written; the log is as it was before.</exception>
    public void Append(Sample sample)
    {
        Span<byte> bytes = stackalloc byte[TraceRecord.Size];
        TraceRecord.Of(sample).Write(bytes);
        Write(bytes);
    }

    /// <summary>Adds a batch of a sender that numbers its lines: all of it or nothing, also where the machine dies meanwhile.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="session">The sender's session.</param>
    /// <param name="last">Number of the batch's last line.</param>
    /// <exception cref="IOException">It can't be written; the log is as it was before.</exception>
    public void Append(IReadOnlyList<Sample> samples, long session, long last)
    {
        ArgumentNullException.ThrowIfNull(samples);
        var bytes = new byte[(samples.Count + 1) * TraceRecord.Size];
        for (var i = 0; i < samples.Count; i++) TraceRecord.Of(samples[i], inBatch: true).Write(bytes.AsSpan(i * TraceRecord.Size));
        TraceRecord.Close(session, last).Write(bytes.AsSpan(samples.Count * TraceRecord.Size));
        Write(bytes);
        sessions[session] = Math.Max(last, sessions.GetValueOrDefault(session, long.MinValue));
    }

    /// <summary>Brings to the disk what was appended.</summary>
    /// <exception cref="IOException">The disk doesn't take it.</exception>
    public void Sync()
    {
        if (!unsynced) return;
        file.Flush(flushToDisk: true);
        unsynced = false;
    }

    /// <summary>Reads a log, also while it is written.</summary>
    /// <returns>Its samples in the order of time, without marks of gaps that late samples have filled; null where it holds none.</returns>
    /// <exception cref="IOException">It can't be read.</exception>
    public static (TraceChannel Channel, IReadOnlyList<Sample> Samples)? Read(string path) => Content(path) is { } content ? (content.Channel, Timeline.Of(content.Samples)) : null;

    /// <summary>What a log holds; null where it holds nothing.</summary>
    internal static TraceContent? Content(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        var bytes = new byte[file.Length];
        var read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return TraceContent.Of(bytes.AsSpan(0, read));
    }

    void Write(ReadOnlySpan<byte> bytes)
    {
        try
        {
            file.Write(bytes);
            end += bytes.Length;
            unsynced = true;
        }
        catch (IOException)
        {
            // A part of it may be there, as on a full disk; behind it a later record would not be found.
            file.SetLength(end);
            file.Position = end;
            throw;
        }
    }

    /// <summary>Brings it to the disk and closes it.</summary>
    public void Dispose()
    {
        try
        {
            Sync();
        }
        finally
        {
            file.Dispose();
        }
    }
}
