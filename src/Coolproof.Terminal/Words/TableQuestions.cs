using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>What is wrong or odd in a readings table, in words.</summary>
internal static class TableQuestions
{
    /// <summary>One line of a problem or a question.</summary>
    public static string Sentence(TableProblem problem)
    {
        List<string> place = [];
        if (problem.Line > 0) place.Add($"line {problem.Line}");
        if (problem.Column.Length > 0) place.Add(problem.Column);
        var said = $"found {problem.Found}; expected {problem.Expected}";
        return Cells.Clean(place.Count > 0 ? $"{string.Join(", ", place)}: {said}" : said);
    }

    /// <summary>A verdict with what is odd in its table said before all else, since it may be a slip of the key, unless the evidence says it already.</summary>
    public static Verdict Beside(Verdict verdict, ReadingsTable table) => table.Questions.Count == 0 ? verdict : verdict with
    {
        Warnings = [.. table.Questions.Select(Sentence).Except(verdict.Warnings), .. verdict.Warnings],
    };
}
