namespace Coolproof.Live;

/// <summary>What became of lines that were sent together.</summary>
/// <param name="Kept">How many were kept: values, and such as can't be right.</param>
/// <param name="Repeated">How many had been kept before.</param>
/// <param name="Bad">Those that were not understood.</param>
public sealed record LinesHeard(int Kept, int Repeated, IReadOnlyList<BadLine> Bad);

/// <summary>A line that was not understood.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Line">Its beginning.</param>
/// <param name="Reason">Why not.</param>
/// <param name="Remedy">What helps.</param>
public sealed record BadLine(long Number, string Line, string Reason, string Remedy);
