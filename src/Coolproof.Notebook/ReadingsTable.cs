namespace Coolproof.Notebook;

/// <summary>Something wrong, or odd, in a readings table.</summary>
/// <param name="Line">Line in the file, 1-based, the header being line 1.</param>
/// <param name="Column">Column name as written; empty when the whole line is meant.</param>
/// <param name="Found">What was found there.</param>
/// <param name="Expected">What would be right, in plain words.</param>
public sealed record TableProblem(int Line, string Column, string Found, string Expected);

/// <summary>A readings table that was understood.</summary>
/// <param name="Runs">
/// Runs, days in the order of their first run. Within a day by <see cref="Run.StartedAt"/> where every run of the day has one, else in row order.
/// </param>
/// <param name="Questions">What is odd but happens: kept, and to be said beside the verdict.</param>
/// <param name="Options">Names of the options in the order of their first run.</param>
public sealed record ReadingsTable(IReadOnlyList<Run> Runs, IReadOnlyList<TableProblem> Questions, IReadOnlyList<string> Options)
{
    /// <summary>Checks of the guns that took the readings, in the order of time for each gun; those of other guns do nothing.</summary>
    public IReadOnlyList<GunCheck> GunChecks { get; init; } = [];

    /// <summary>Runs at the head of <see cref="Runs"/> that are of earlier days, put there as evidence: what is asked is asked of the others, with their driver, surface, car and gearing. 0: none.</summary>
    public int EarlierRuns { get; init; }
}
