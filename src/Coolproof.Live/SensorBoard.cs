using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Coolproof.Live.Shown;
using Coolproof.Traces;
using Coolproof.Traces.Live;

namespace Coolproof.Live;

/// <summary>All live sensors: takes the lines of all sources, keeps their values as traces, notices gaps, and shows how things stand.</summary>
/// <param name="folder">Where the traces are kept; stays the caller's to close.</param>
/// <param name="clock">The clock.</param>
public sealed class SensorBoard(TraceFolder folder, TimeProvider clock) : IDisposable
{
    /// <summary>Most channels at once.</summary>
    public const int MostChannels = 64;

    /// <summary>How often it looks for gaps.</summary>
    public static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(250);

    const long ShowEvery = 500; // ms
    const long SyncEvery = 1000; // ms
    const long RecentFor = 200; // ms

    static readonly LineProblem TooMany = new($"There are {MostChannels} channels already.", "Another name each time? A channel keeps its name.");

    readonly Lock turn = new();
    readonly Dictionary<TraceChannel, ChannelNow> channels = [];
    readonly SourceList sources = new();
    ITimer? timer;
    SensorView view = SensorView.None;
    string? notKept;
    long version, shown, synced;
    bool heard;

    /// <summary>Raised when there is something to show: twice a second while values come, once a second while pictures move. Whoever listens must be quick about it.</summary>
    public event Action? Changed;

    /// <summary>The traces.</summary>
    public TraceFolder Folder => folder;

    long Now => clock.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>Begins to look for gaps, and to bring to the disk each second what was kept.</summary>
    public void Start() => timer ??= clock.CreateTimer(_ => Look(), null, LookEvery, LookEvery);

    /// <summary>How all sensors do.</summary>
    public SensorView View
    {
        get
        {
            lock (turn)
            {
                if (view.Version == version && view.AtMs >= Now - ShowEvery) return view;
                var now = Now;
                return view = new SensorView(
                    now, version,
                    [.. channels.Values.OrderBy(one => one.Channel.Source, StringComparer.Ordinal).ThenBy(one => one.Channel.Name, StringComparer.Ordinal).Select(one => one.Show(now))],
                    sources.All, notKept);
            }
        }
    }

    /// <summary>How all sensors do, a fifth of a second old at most: for many who ask at once.</summary>
    public SensorView Recent
    {
        get
        {
            lock (turn) return view.AtMs > Now - RecentFor ? view : View;
        }
    }

    /// <summary>A source is connected, or could not be.</summary>
    /// <param name="source">Its name.</param>
    /// <param name="kind">How lines come from it.</param>
    /// <param name="trouble">Why it is not connected, and what helps; null where it is.</param>
    public void Tell(string source, SourceKind kind, string? trouble)
    {
        lock (turn)
        {
            if (!sources.Tell(source, kind, trouble, clock.GetUtcNow())) return;
            version++;
        }
        Changed?.Invoke();
    }

    /// <summary>Takes a line.</summary>
    public void Hear(string source, SourceKind kind, string line) => Take(source, kind, line, LiveLineReader.Read(line, Now));

    /// <summary>Takes what a channel of a known name sent.</summary>
    public void HearOf(string source, SourceKind kind, string name, string text) => Take(source, kind, $"{name}: {text}", LiveLineReader.ReadOf(name, text, Now));

    /// <summary>Counts a line that is not taken, and shows why.</summary>
    public void Refuse(string source, SourceKind kind, string line, LineProblem why) => Take(source, kind, line, new LineRead(null, why));

    /// <summary>Takes lines that were sent together, and keeps them before it returns.</summary>
    /// <param name="source">Who sent them.</param>
    /// <param name="lines">The lines, also empty ones.</param>
    /// <param name="session">The sender's session, within which each line has a number of its own; null where lines have none.</param>
    /// <param name="first">Number of the first line.</param>
    /// <returns>What became of them.</returns>
    /// <exception cref="IOException">They can't be kept; with a session the same may be sent again.</exception>
    public LinesHeard HearAll(string source, IReadOnlyList<string> lines, string? session, long first)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var now = Now;
        var read = lines.Select((line, place) => (Text: line, Number: first + place, Read: LiveLineReader.Read(line, now))).Where(one => one.Read != LineRead.Nothing).ToList();
        var (kept, repeated, bad) = (0, 0, new List<BadLine>());
        lock (turn)
        {
            sources.Tell(source, SourceKind.Http, null, clock.GetUtcNow());
            void Bad(long number, string text, LineProblem problem) => bad.Add(new(number, sources.Bad(source, text, problem, clock.GetUtcNow()), problem.Reason, problem.Remedy));
            foreach (var (text, number, line) in read)
                if (line.Problem is { } problem) Bad(number, text, problem);
            foreach (var group in read.Where(one => one.Read.Line is not null).GroupBy(one => ChannelOf(source, one.Read.Line!)))
            {
                if (NowOf(group.Key) is not { } channel)
                {
                    foreach (var (text, number, _) in group) Bad(number, text, TooMany);
                    continue;
                }
                Mark(channel, now);
                var (fresh, again) = KeepAll(channel, [.. group.Select(one => (one.Number, one.Read.Line!))], session is null ? null : SessionOf(source, session), now);
                (kept, repeated) = (kept + fresh, repeated + again);
                foreach (var one in group) sources.Heard(source, one.Read.Line!.Sample.Mark == SampleMark.Nonsense, clock.GetUtcNow());
            }
            (heard, version) = (true, version + 1);
        }
        folder.Sync();
        return new LinesHeard(kept, repeated, bad);
    }

    void Take(string source, SourceKind kind, string text, LineRead read)
    {
        if (read == LineRead.Nothing) return;
        lock (turn)
        {
            var now = Now;
            sources.Tell(source, kind, null, clock.GetUtcNow());
            (heard, version) = (true, version + 1);
            var channel = read.Line is { } understood ? NowOf(ChannelOf(source, understood)) : null;
            if (channel is null)
            {
                sources.Bad(source, text, read.Problem ?? TooMany, clock.GetUtcNow());
                return;
            }
            var line = read.Line!;
            Mark(channel, now);
            Keep(channel.Channel, line.Sample);
            channel.Take(line.Sample, line.Doubt);
            channel.Pulse.Hear(now);
            sources.Heard(source, line.Sample.Mark == SampleMark.Nonsense, clock.GetUtcNow());
        }
    }

    (int Fresh, int Again) KeepAll(ChannelNow channel, List<(long Number, LiveLine Line)> lines, long? session, long now)
    {
        if (session is { } numbered)
        {
            var fresh = folder.Keep(channel.Channel, [.. lines.Select(one => (one.Number, one.Line.Sample))], numbered);
            foreach (var (_, line) in lines.TakeLast(fresh.Count)) channel.Take(line.Sample, line.Doubt);
            if (fresh.Count > 0) channel.Pulse.Hear(now);
            return (fresh.Count, lines.Count - fresh.Count);
        }
        foreach (var (_, line) in lines)
        {
            folder.Keep(channel.Channel, line.Sample);
            channel.Take(line.Sample, line.Doubt);
        }
        channel.Pulse.Hear(now);
        return (lines.Count, 0);
    }

    // Internal for tests with a clock of their own; else the timer calls it.
    internal void Look()
    {
        var (tell, sync) = (false, false);
        lock (turn)
        {
            var now = Now;
            foreach (var channel in channels.Values)
            {
                Mark(channel, now);
                channel.Forget(now);
            }
            if (sources.Quiet(clock.GetUtcNow())) version++;
            if (now - shown >= (heard ? ShowEvery : 2 * ShowEvery) && sources.Any) (tell, shown, heard) = (true, now, false);
            if (now - synced >= SyncEvery) (sync, synced) = (true, now);
        }
        if (sync) Sync();
        if (tell) Changed?.Invoke();
    }

    void Sync()
    {
        try
        {
            folder.Sync();
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            lock (turn) notKept = cause.Message;
        }
    }

    void Mark(ChannelNow channel, long now)
    {
        if (channel.Pulse.Look(now) is not { } at) return;
        var gap = new Sample(at, double.NaN, SampleMark.Gap);
        Keep(channel.Channel, gap);
        channel.Take(gap, null);
        version++;
    }

    // A full disk must not hide what is measured: it is shown all the same, and said not to be kept.
    void Keep(TraceChannel channel, Sample sample)
    {
        try
        {
            folder.Keep(channel, sample);
            notKept = null;
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            notKept = cause.Message;
        }
    }

    static TraceChannel ChannelOf(string source, LiveLine line) => new(source, line.Name, line.Unit.Name);

    // A channel that is new to this program goes on from what was kept of it; what it missed meanwhile is a gap.
    ChannelNow? NowOf(TraceChannel of)
    {
        if (channels.TryGetValue(of, out var channel)) return channel;
        if (channels.Count >= MostChannels) return null;
        var now = Now;
        channel = new ChannelNow(of, Kept(of, now));
        channels.Add(of, channel);
        if (channel.Last is { } last && last.Mark != SampleMark.Gap && now - last.AtMs > ChannelPulse.LeastMs)
        {
            var gap = new Sample(last.AtMs + ChannelPulse.LeastMs, double.NaN, SampleMark.Gap);
            Keep(of, gap);
            channel.Take(gap, null);
        }
        return channel;
    }

    IReadOnlyList<Sample> Kept(TraceChannel channel, long now)
    {
        try
        {
            return folder.Read(channel, now - MovingPicture.WindowMs, now + LiveLineReader.MostAheadMs);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException)
        {
            notKept = cause.Message;
            return [];
        }
    }

    static long SessionOf(string source, string session) => BinaryPrimitives.ReadInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes($"{source}\n{session}")));

    /// <summary>Looks no more. What was kept is brought to the disk by the folder's owner.</summary>
    public void Dispose() => timer?.Dispose();
}
