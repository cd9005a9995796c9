using System.Buffers;
using Coolproof.Traces.Live;

namespace Coolproof.Live.Sources;

/// <summary>Lines out of an MQTT message: its text has lines as any source has, or only a value, whose name is then the last level of the topic.</summary>
internal static class TopicLines
{
    const int LargestMessage = 65_536;

    static readonly LineProblem Late = new("It came late, held by the broker while the connection was away, and says no time.", "Write how long ago or when it was measured: 64.3 °C @2026-06-09T16:05:07Z");

    /// <summary>Hands the lines of a message to the board.</summary>
    /// <param name="board">Who takes them.</param>
    /// <param name="source">The source's name.</param>
    /// <param name="kind">How they come.</param>
    /// <param name="topic">The message's topic.</param>
    /// <param name="payload">Its text.</param>
    /// <param name="late">Whether the broker may have held it for a while: then a line counts only if it says its time.</param>
    public static void Hear(SensorBoard board, string source, SourceKind kind, string topic, ReadOnlySequence<byte> payload, bool late = false)
    {
        var name = NameOf(topic);
        foreach (var line in LineSplitter.All(payload.Slice(0, Math.Min(payload.Length, LargestMessage)).ToArray()))
            if (late && !line.Contains('@', StringComparison.Ordinal)) board.Refuse(source, kind, $"{name}: {line}", Late);
            else board.HearOf(source, kind, name, line);
    }

    // What a name may not hold is made a line; a level that begins with a digit gets a letter before it.
    static string NameOf(string topic)
    {
        var level = topic.TrimEnd('/').Split('/')[^1];
        var name = new string([.. level.Take(LiveLineReader.LongestName - 1).Select(letter => char.IsLetterOrDigit(letter) || letter is '_' or '-' or '.' ? letter : '_')]);
        return name.Length > 0 && char.IsLetter(name[0]) ? name : "t" + name;
    }
}
