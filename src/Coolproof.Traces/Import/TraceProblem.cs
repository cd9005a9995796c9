namespace Coolproof.Traces.Import;

/// <summary>A cell or line of a logger's file that could not be taken as it stands.</summary>
/// <param name="Line">Its line in the file, from 1; 0 when the file as a whole is meant.</param>
/// <param name="Column">Name of its column; empty when the line is meant.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What would be right.</param>
public sealed record TraceProblem(long Line, string Column, string Found, string Expected)
{
    /// <inheritdoc/>
    public override string ToString() =>
        (Line > 0 ? $"line {Line}" : "the file") + (Column.Length > 0 ? $", {Column}" : "") + $": found {Found}; expected {Expected}";
}

/// <summary>Problems of a file in the order of lines: the first 50, and how many there are.</summary>
public sealed class TraceProblems
{
    /// <summary>How many are listed.</summary>
    public const int Listed = 50;

    readonly List<TraceProblem> _first = [];

    /// <summary>The first of them.</summary>
    public IReadOnlyList<TraceProblem> First => _first;

    /// <summary>How many there are in all.</summary>
    public long Count { get; private set; }

    /// <summary>Notes one.</summary>
    public void Add(TraceProblem problem)
    {
        Count++;
        if (_first.Count < Listed) _first.Add(problem);
    }

    /// <summary>Notes more of which only the number is known.</summary>
    public void AddUnlisted(long count) => Count += count;
}

/// <summary>A file that can't be brought in at all.</summary>
public sealed class TraceRefusedException : Exception
{
    /// <summary>A refusal.</summary>
    /// <param name="problem">Why, and what would be right.</param>
    public TraceRefusedException(TraceProblem problem) : base(problem?.ToString()) => Problem = problem ?? throw new ArgumentNullException(nameof(problem));

    /// <summary>Why, and what would be right.</summary>
    public TraceProblem Problem { get; }
}
