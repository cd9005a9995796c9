using Coolproof.Notebook;

namespace Coolproof.Evidence.Causes;

/// <summary>A run or a day of a table by its name.</summary>
/// <param name="Name">In words, like "run 7" or "day one".</param>
/// <param name="Runs">Places of its runs that can be explained.</param>
public sealed record RunsNamed(string Name, IReadOnlyList<int> Runs)
{
    /// <summary>Finds what is meant: "DAY RUN", a day, or a run whose name stands once in the table; case makes no difference.</summary>
    /// <returns>What was found, or what is wrong and what would be right.</returns>
    public static (RunsNamed? Found, string? Problem) Find(ReadingsTable table, string text)
    {
        int[] whole = At(r => $"{r.Day} {r.Name}"), day = At(r => r.Day), run = At(r => r.Name);
        (string name, int[] found) = whole.Length > 0 ? ($"run {table.Runs[whole[0]].Name} of {table.Runs[whole[0]].Day}", whole)
            : day.Length > 0 ? (table.Runs[day[0]].Day, day) : ($"run {text}", run);
        if (found.Length == 0)
            return (null, $"{text}: no such run or day; expected one of the days {string.Join(", ", table.Runs.Select(r => r.Day).Distinct().Take(10))}, or a run as \"DAY RUN\".");
        if (whole.Length == 0 && day.Length == 0 && run.Length > 1)
            return (null, $"{text}: {run.Length} days have such a run; write the day before it, as \"{table.Runs[run[0]].Day} {text}\".");
        int[] explained = [.. found.Where(i => CauseEvidence.Explains(table.Runs[i]))];
        return explained.Length > 0 ? (new(name, explained), null)
            : (null, $"{text}: no test or race run with a reading of can or endbell that counts; name one that has a reading.");

        int[] At(Func<Run, string> nameOf) =>
            [.. Enumerable.Range(0, table.Runs.Count).Where(i => string.Equals(nameOf(table.Runs[i]), text.Trim(), StringComparison.OrdinalIgnoreCase))];
    }
}
