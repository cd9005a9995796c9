using System.Globalization;

namespace Coolproof.Traces.Live;

/// <summary>The folder of all trace logs: a folder per day (UTC) of the samples, a file per channel in it.</summary>
/// <remarks>Safe for several threads. One program writes at a time; any number read.</remarks>
/// <param name="path">The folder; it is made when something is kept.</param>
public sealed class TraceFolder(string path) : IDisposable
{
    const string Ending = ".trace";
    const string DayForm = "yyyy-MM-dd";
    const int MostOpen = 200;

    readonly Lock turn = new();
    readonly Dictionary<(TraceChannel Channel, DateOnly Day), TraceLog> open = [];
    readonly Dictionary<TraceChannel, Dictionary<long, long>> sessions = [];
    FileStream? writing;

    /// <summary>The folder.</summary>
    public string Path => path;

    /// <summary>Keeps a sample.</summary>
    /// <exception cref="IOException">It can't be kept.</exception>
    public void Keep(TraceChannel channel, Sample sample)
    {
        lock (turn) LogOf(channel, DayOf(sample.AtMs)).Append(sample);
    }

    /// <summary>Keeps a sender's numbered samples, those that are not yet kept.</summary>
    /// <param name="channel">Their channel.</param>
    /// <param name="samples">Numbers, rising, and samples.</param>
    /// <param name="session">The sender's session, in which numbers are told once.</param>
    /// <returns>The samples that were new.</returns>
    /// <exception cref="IOException">They can't be kept; the same may be sent again.</exception>
    public IReadOnlyList<Sample> Keep(TraceChannel channel, IReadOnlyList<(long Number, Sample Sample)> samples, long session)
    {
        ArgumentNullException.ThrowIfNull(samples);
        lock (turn)
        {
            var known = SessionsOf(channel);
            var last = known.GetValueOrDefault(session, long.MinValue);
            var fresh = samples.Where(one => one.Number > last).ToList();
            for (var from = 0; from < fresh.Count;)
            {
                var day = DayOf(fresh[from].Sample.AtMs);
                var part = fresh.Skip(from).TakeWhile(one => DayOf(one.Sample.AtMs) == day).ToList();
                LogOf(channel, day).Append([.. part.Select(one => one.Sample)], session, part[^1].Number);
                known[session] = part[^1].Number;
                from += part.Count;
            }
            return [.. fresh.Select(one => one.Sample)];
        }
    }

    /// <summary>Brings to the disk what was kept, and closes logs of days gone by.</summary>
    /// <exception cref="IOException">The disk doesn't take it.</exception>
    public void Sync()
    {
        lock (turn)
        {
            foreach (var log in open.Values) log.Sync();
            if (open.Count == 0) return;
            var newest = open.Keys.Max(key => key.Day);
            foreach (var key in open.Keys.Where(key => key.Day.AddDays(1) < newest || open.Count > MostOpen).ToList())
                if (open.Remove(key, out var log)) log.Dispose();
        }
    }

    /// <summary>Channels that have a log on any of the days (UTC) that a span of time touches.</summary>
    /// <param name="fromMs">First instant, ms since 1970-01-01 UTC.</param>
    /// <param name="toMs">Last instant.</param>
    /// <exception cref="IOException">The folder can't be read.</exception>
    public IReadOnlyList<TraceChannel> Channels(long fromMs, long toMs) =>
        [.. Days(fromMs, toMs).SelectMany(day => Directory.EnumerateFiles(day, "*" + Ending)).Select(ChannelIn).OfType<TraceChannel>().Distinct().OrderBy(channel => channel.Source, StringComparer.Ordinal).ThenBy(channel => channel.Name, StringComparer.Ordinal)];

    /// <summary>The samples of a channel within a span of time, in the order of time.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="fromMs">First instant, ms since 1970-01-01 UTC.</param>
    /// <param name="toMs">Last instant.</param>
    /// <exception cref="IOException">A log can't be read.</exception>
    public IReadOnlyList<Sample> Read(TraceChannel channel, long fromMs, long toMs)
    {
        ArgumentNullException.ThrowIfNull(channel);
        var all = new List<Sample>();
        foreach (var file in Days(fromMs, toMs).Select(day => FileIn(day, channel)).Where(File.Exists))
            if (TraceLog.Content(file) is { } content && content.Channel == channel) all.AddRange(content.Samples);
        return [.. Timeline.Of(all).Where(sample => sample.AtMs >= fromMs && sample.AtMs <= toMs)];
    }

    static DateOnly DayOf(long atMs) => DateOnly.FromDateTime(DateTime.UnixEpoch.AddMilliseconds(atMs));

    static string FileIn(string day, TraceChannel channel) => System.IO.Path.Combine(day, channel.Key + Ending);

    static TraceChannel? ChannelIn(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        Span<byte> start = stackalloc byte[4096];
        return TraceContent.ChannelOf(start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)], out _);
    }

    IEnumerable<string> Days(long fromMs, long toMs)
    {
        if (!Directory.Exists(path)) return [];
        var (from, to) = (DayOf(fromMs), DayOf(toMs));
        return Directory.EnumerateDirectories(path)
            .Where(folder => DateOnly.TryParseExact(System.IO.Path.GetFileName(folder), DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day >= from && day <= to)
            .Order(StringComparer.Ordinal);
    }

    TraceLog LogOf(TraceChannel channel, DateOnly day)
    {
        if (open.TryGetValue((channel, day), out var log)) return log;
        Lock();
        var folder = System.IO.Path.Combine(path, day.ToString(DayForm, CultureInfo.InvariantCulture));
        Private(folder);
        var known = SessionsOf(channel);
        var file = FileIn(folder, channel);
        var fresh = !File.Exists(file);
        log = TraceLog.Open(file, channel);
        open.Add((channel, day), log);
        // A day's first log carries on what the days before knew of senders, so that what they send again is not kept twice.
        if (fresh) foreach (var (session, last) in known) log.Append([], session, last);
        return log;
    }

    // The two newest days know all sessions, since each day begins with what the one before knew.
    Dictionary<long, long> SessionsOf(TraceChannel channel)
    {
        if (sessions.TryGetValue(channel, out var known)) return known;
        known = [];
        foreach (var file in Days(0, DateTimeOffset.MaxValue.ToUnixTimeMilliseconds()).Select(day => FileIn(day, channel)).Where(File.Exists).TakeLast(2))
        {
            if (TraceLog.Content(file) is not { } content || content.Channel != channel) continue;
            foreach (var (session, last) in content.Sessions) known[session] = Math.Max(last, known.GetValueOrDefault(session, long.MinValue));
        }
        return sessions[channel] = known;
    }

    void Lock()
    {
        if (writing is not null) return;
        Private(path);
        try
        {
            writing = new FileStream(System.IO.Path.Combine(path, "writing.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException cause)
        {
            throw new IOException($"Another pit table keeps traces in {path}, or it can't be written to: {cause.Message} Stop the other one, or make room.", cause);
        }
    }

    static void Private(string folder)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>Brings to the disk what was kept, and lets others write.</summary>
    public void Dispose()
    {
        lock (turn)
        {
            foreach (var log in open.Values) log.Dispose();
            open.Clear();
            writing?.Dispose();
            writing = null;
        }
    }
}
