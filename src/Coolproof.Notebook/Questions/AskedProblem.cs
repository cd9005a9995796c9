namespace Coolproof.Notebook;

/// <summary>Something in an asked file that can't be right.</summary>
/// <param name="Field">Where: the field's path, like "mounts[0].fans[1].freeFlowM3H", or a line where the file is no JSON.</param>
/// <param name="Found">What stands there.</param>
/// <param name="Expected">What would be right.</param>
/// <param name="Remedy">What to do.</param>
public sealed record AskedProblem(string Field, string Found, string Expected, string Remedy)
{
    /// <summary>The problem in one line.</summary>
    public override string ToString() => $"{Field}: found {Found}; expected {Expected}.{(Remedy.Length > 0 ? " " + Remedy : "")}";
}

/// <summary>An asked file: either what it asks, or everything that is wrong with it.</summary>
/// <param name="Asked">What it asks; null where there are problems.</param>
/// <param name="Problems">Every problem, in the order of the file's fields.</param>
public sealed record AskedRead<T>(T? Asked, IReadOnlyList<AskedProblem> Problems) where T : class;
