using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Words;

namespace Coolproof.Reports;

/// <summary>A report's subject judged: as a whole, and its last day alone where there are several.</summary>
/// <param name="Whole">What came of the whole.</param>
/// <param name="Alone">What the last day says alone; null where there is but one, or no verdict on the whole.</param>
internal sealed record ReportJudging(Judgement Whole, DayAlone? Alone)
{
    /// <summary>Judges.</summary>
    /// <param name="subject">What the report is of.</param>
    /// <param name="judge">Judges a table.</param>
    public static ReportJudging Of(ReportSubject subject, Func<ReadingsTable, JudgeSettings, Judgement> judge)
    {
        var whole = judge(subject.Table, subject.Settings);
        if (whole is not Judged { Verdict: var judged }) return new(whole, null);
        var verdict = TableQuestions.Beside(judged, subject.Table);
        return new(new Judged(verdict), Report.DaysOf(verdict) is { Count: > 1 } days ? LastAlone(subject, verdict, days[^1], judge) : null);
    }

    static DayAlone LastAlone(ReportSubject subject, Verdict whole, string day, Func<ReadingsTable, JudgeSettings, Judgement> judge)
    {
        Run[] runs = [.. subject.Table.Runs.Where(run => string.Equals(run.Day, day, StringComparison.OrdinalIgnoreCase))];
        var table = new ReadingsTable(runs, [], [.. runs.Select(run => run.Option).Distinct(StringComparer.OrdinalIgnoreCase)]);
        // The same fair conditions, or the two could not stand beside each other.
        var settings = subject.Settings with { AmbientC = whole.Fair.AmbientC, DriveS = whole.Fair.DriveS };
        return judge(table, settings) switch
        {
            Judged { Verdict: var verdict } => new(day, verdict, ""),
            Refused refused => new(day, null, refused.Reason),
            NotConverged failed => new(day, null, $"{failed.Quantity}: {failed.Reason}"),
            var other => throw new InvalidOperationException($"An unknown judgement: {other.GetType().Name}."),
        };
    }
}
