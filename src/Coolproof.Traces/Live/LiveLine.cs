using Coolproof.Traces.Import;

namespace Coolproof.Traces.Live;

/// <summary>A line of a sensor as it was understood.</summary>
/// <param name="Name">Name of the channel.</param>
/// <param name="Unit">Its unit; values are converted to it.</param>
/// <param name="Sample">The value at its time; marked as nonsense where the sensor says that it has none, or where it is past what the unit allows.</param>
/// <param name="Doubt">Why it is marked as nonsense; null where it isn't.</param>
public sealed record LiveLine(string Name, ChannelUnit Unit, Sample Sample, string? Doubt);

/// <summary>Why a line can't be understood, and what helps.</summary>
/// <param name="Reason">What is wrong.</param>
/// <param name="Remedy">What would be right.</param>
public sealed record LineProblem(string Reason, string Remedy);

/// <summary>What became of a line: a value, a problem, or neither where it is empty or a remark.</summary>
/// <param name="Line">The value.</param>
/// <param name="Problem">The problem.</param>
public readonly record struct LineRead(LiveLine? Line, LineProblem? Problem)
{
    /// <summary>Nothing to be understood.</summary>
    public static LineRead Nothing { get; } = new(null, null);
}
