using System.Numerics;
using System.Security.Cryptography;
using System.Text;
using Coolproof.Traces;
using Coolproof.Traces.Live;

namespace Coolproof.Live.Shown;

/// <summary>How a channel does.</summary>
public enum ChannelState
{
    /// <summary>Values come.</summary>
    Live,

    /// <summary>Lines come, and the last one can't be right.</summary>
    Nonsense,

    /// <summary>Nothing comes.</summary>
    Silent,
}

/// <summary>A channel as it is shown.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="State">How it does.</param>
/// <param name="Value">Its last value; null before there was one.</param>
/// <param name="ValueAtMs">When that was measured, ms since 1970-01-01 UTC.</param>
/// <param name="Doubt">Why the last line is nonsense.</param>
/// <param name="Count">Values and nonsense since the program began.</param>
/// <param name="Picture">Its last ten minutes.</param>
public sealed record ShownChannel(TraceChannel Channel, ChannelState State, double? Value, long ValueAtMs, string? Doubt, long Count, MovingPicture Picture);

/// <summary>All sensors as they are at one moment.</summary>
/// <param name="AtMs">The moment, ms since 1970-01-01 UTC.</param>
/// <param name="Version">Rises with each change of what is shown.</param>
/// <param name="Channels">Channels by source and name.</param>
/// <param name="Sources">Sources in the order in which they came.</param>
/// <param name="NotKept">Why values can't be kept at the moment; null where they are.</param>
public sealed record SensorView(long AtMs, long Version, IReadOnlyList<ShownChannel> Channels, IReadOnlyList<SourceState> Sources, string? NotKept)
{
    /// <summary>Nothing is heard.</summary>
    public static SensorView None { get; } = new(0, 0, [], [], null);

    /// <summary>Which channels and sources there are and how these do, as one word: a page whose word is another one is made anew. It changes seldom, also where many lines are not understood.</summary>
    public string Shape
    {
        get
        {
            var word = string.Join('\n', Channels.Select(one => $"{one.Channel.Key} {one.State == ChannelState.Silent}")
                .Concat(Sources.Select(one => $"{one.Name} {one.Alive} {one.Trouble} {one.Lines > 0} {BitOperations.Log2((ulong)one.NotUnderstood + 1)}")).Append(NotKept ?? ""));
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(word)).AsSpan(0, 6));
        }
    }

    /// <summary>Least span of values that a picture's height stands for: 2 K for temperatures, else a fiftieth of the value.</summary>
    internal static double LeastSpan(TraceChannel channel, IReadOnlyList<Sample> samples)
    {
        if (channel.Unit == "°C") return 2;
        var most = 0.0;
        foreach (var sample in samples)
            if (sample.Mark == SampleMark.Good) most = Math.Max(most, Math.Abs(sample.Value));
        return most > 0 ? most / 50 : 1;
    }
}
