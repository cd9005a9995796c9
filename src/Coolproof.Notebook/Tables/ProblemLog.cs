namespace Coolproof.Notebook.Tables;

/// <summary>Problems and questions as they are found; keeps the first of them by line and counts the rest.</summary>
internal sealed class ProblemLog
{
    private readonly List<(TableProblem Problem, int Index)> _problems = [];
    private readonly List<(TableProblem Problem, int Index)> _questions = [];
    private int _problemCount;
    private int _questionCount;

    public bool HasProblems => _problemCount > 0;

    // index: place of the column, 0-based, to order the problems of one line; −1 when the line is meant.

    /// <summary>Something wrong; the table is refused.</summary>
    public void Problem(int line, int index, string column, string found, string expected)
    {
        _problemCount++;
        Keep(_problems, new TableProblem(line, column, Short(found), expected), index);
    }

    /// <summary>Something odd; the table is kept and the question is said.</summary>
    public void Question(int line, int index, string column, string found, string expected)
    {
        _questionCount++;
        Keep(_questions, new TableProblem(line, column, Short(found), expected), index);
    }

    public IReadOnlyList<TableProblem> Problems() => Ordered(_problems);

    public int ProblemsNotListed => Math.Max(0, _problemCount - ReadingsTableLimits.ListedProblems);

    public IReadOnlyList<TableProblem> Questions()
    {
        IReadOnlyList<TableProblem> listed = Ordered(_questions);
        int more = _questionCount - listed.Count;
        return more == 0 ? listed : [.. listed, new TableProblem(0, "", $"{more} more questions of this kind", "a look at the table: so many odd values point to one cause")];
    }

    private static void Keep(List<(TableProblem, int)> list, TableProblem problem, int index)
    {
        list.Add((problem, index));
        // Trimmed now and then, so that a million problems cost no memory and the earliest lines are still the ones that are listed.
        if (list.Count < 4 * ReadingsTableLimits.ListedProblems) return;
        IReadOnlyList<(TableProblem, int)> first = [.. InOrder(list).Take(ReadingsTableLimits.ListedProblems)];
        list.Clear();
        list.AddRange(first);
    }

    private static IReadOnlyList<TableProblem> Ordered(List<(TableProblem Problem, int)> list) =>
        [.. InOrder(list).Take(ReadingsTableLimits.ListedProblems).Select(entry => entry.Item1)];

    private static IEnumerable<(TableProblem, int)> InOrder(List<(TableProblem Problem, int Index)> list) =>
        list.OrderBy(entry => entry.Problem.Line).ThenBy(entry => entry.Index);

    // What was found is shown, not repeated in full; control characters would spoil a terminal.
    private static string Short(string found)
    {
        string shown = found.Length <= 120 ? found : found[..117] + "...";
        return shown.Any(char.IsControl) ? string.Concat(shown.Replace("\r\n", "\n").Select(Printable)) : shown;
    }

    private static string Printable(char c) => c == '\n' ? " ⏎ " : char.IsControl(c) ? $"\\u{(int)c:x4}" : c.ToString();
}
