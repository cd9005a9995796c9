using System.Buffers;
using Coolproof.Traces.Live;

namespace Coolproof.Live.Sources;

/// <summary>Lines out of an MQTT message: its text has lines as any source has, or only a value, whose name is then the last level of the topic.</summary>
internal static class TopicLines
{
    const int LargestMessage = 65_536;

    /// <summary>Hands the lines of a message to the board.</summary>
    public static void Hear(SensorBoard board, string source, SourceKind kind, string topic, ReadOnlySequence<byte> payload)
    {
        var name = NameOf(topic);
        foreach (var line in LineSplitter.All(payload.Slice(0, Math.Min(payload.Length, LargestMessage)).ToArray())) board.HearOf(source, kind, name, line);
    }

    // What a name may not hold is made a line; a level that begins with a digit gets a letter before it.
    static string NameOf(string topic)
    {
        var level = topic.TrimEnd('/').Split('/')[^1];
        var name = new string([.. level.Take(LiveLineReader.LongestName - 1).Select(letter => char.IsLetterOrDigit(letter) || letter is '_' or '-' or '.' ? letter : '_')]);
        return name.Length > 0 && char.IsLetter(name[0]) ? name : "t" + name;
    }
}
