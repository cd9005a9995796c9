using System.Text.Json;

namespace Coolproof.Traces.Live;

/// <summary>What the bytes of a trace log say, read without regard to who may be writing it.</summary>
/// <param name="Channel">Its channel.</param>
/// <param name="Samples">Samples in the order in which they came.</param>
/// <param name="Sessions">Per session of a sender, the number of its last line that is kept.</param>
/// <param name="End">Bytes up to the end of the last record that counts: what comes after is torn.</param>
/// <param name="Damaged">Records in the middle that can't be read, and are left out.</param>
internal sealed record TraceContent(TraceChannel Channel, IReadOnlyList<Sample> Samples, IReadOnlyDictionary<long, long> Sessions, long End, int Damaged)
{
    /// <summary>How a log begins: this, the channel as JSON, a line feed, records.</summary>
    public const string Magic = "coolproof-trace 1 ";

    const int LongestHeader = 4096;

    /// <summary>The header of a channel's log.</summary>
    public static byte[] Header(TraceChannel channel) =>
        [.. System.Text.Encoding.ASCII.GetBytes(Magic), .. JsonSerializer.SerializeToUtf8Bytes(new TraceHeader(channel.Source, channel.Name, channel.Unit), TraceJson.Default.TraceHeader), (byte)'\n'];

    /// <summary>The channel that a log says it is of, from its first bytes.</summary>
    /// <returns>Null where there is no whole header.</returns>
    public static TraceChannel? ChannelOf(ReadOnlySpan<byte> bytes, out int length)
    {
        length = 0;
        var line = bytes[..Math.Min(bytes.Length, LongestHeader)].IndexOf((byte)'\n');
        if (line < Magic.Length || !bytes[..Magic.Length].SequenceEqual(System.Text.Encoding.ASCII.GetBytes(Magic))) return null;
        try
        {
            if (JsonSerializer.Deserialize(bytes[Magic.Length..line], TraceJson.Default.TraceHeader) is not { Source: not null, Name: not null, Unit: not null } header) return null;
            length = line + 1;
            return new TraceChannel(header.Source, header.Name, header.Unit);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Reads a log's bytes.</summary>
    /// <returns>Null where there is no whole header: then nothing was ever kept in it.</returns>
    public static TraceContent? Of(ReadOnlySpan<byte> bytes)
    {
        if (ChannelOf(bytes, out var place) is not { } channel) return null;
        var samples = new List<Sample>((bytes.Length - place) / TraceRecord.Size);
        var sessions = new Dictionary<long, long>();
        var (closed, end, damaged, unread) = (0, (long)place, 0, 0); // closed: samples that count
        for (; place + TraceRecord.Size <= bytes.Length; place += TraceRecord.Size)
        {
            if (!TraceRecord.TryRead(bytes.Slice(place, TraceRecord.Size), out var record))
            {
                unread++;
                continue;
            }
            damaged += unread;
            unread = 0;
            if (!record.Closes) samples.Add(record.Sample);
            else sessions[record.First] = Math.Max(record.Second, sessions.GetValueOrDefault(record.First, long.MinValue));
            if (!record.Waits) (closed, end) = (samples.Count, place + TraceRecord.Size);
        }
        samples.RemoveRange(closed, samples.Count - closed);
        return new TraceContent(channel, samples, sessions, end, damaged);
    }
}

/// <summary>The channel in a log's header.</summary>
internal sealed record TraceHeader(string Source, string Name, string Unit);

/// <summary>How headers are written as JSON.</summary>
[System.Text.Json.Serialization.JsonSerializable(typeof(TraceHeader))]
[System.Text.Json.Serialization.JsonSourceGenerationOptions(PropertyNamingPolicy = System.Text.Json.Serialization.JsonKnownNamingPolicy.CamelCase)]
internal sealed partial class TraceJson : System.Text.Json.Serialization.JsonSerializerContext;
