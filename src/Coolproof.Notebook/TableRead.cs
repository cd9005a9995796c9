namespace Coolproof.Notebook;

/// <summary>What came of reading a readings table: either the table, or everything that is wrong with it; never half of both.</summary>
public sealed record TableRead
{
    private TableRead(ReadingsTable? table, IReadOnlyList<TableProblem> problems, int problemsNotListed)
    {
        Table = table;
        Problems = problems;
        ProblemsNotListed = problemsNotListed;
    }

    /// <summary>The table; null when there are problems.</summary>
    public ReadingsTable? Table { get; }

    /// <summary>Every problem in the order of lines, at most <see cref="ReadingsTableLimits.ListedProblems"/>; empty when the table was understood.</summary>
    public IReadOnlyList<TableProblem> Problems { get; }

    /// <summary>How many further problems were found and are not listed.</summary>
    public int ProblemsNotListed { get; }

    /// <summary>Whether there is a table.</summary>
    [System.Diagnostics.CodeAnalysis.MemberNotNullWhen(true, nameof(Table))]
    public bool Understood => Table is not null;

    internal static TableRead Of(ReadingsTable table) => new(table, [], 0);

    internal static TableRead Refused(IReadOnlyList<TableProblem> problems, int notListed) =>
        problems.Count > 0 ? new(null, problems, notListed) : throw new ArgumentException("A refused table names at least one problem.", nameof(problems));
}
