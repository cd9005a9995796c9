using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Words;

namespace Coolproof.Reports;

/// <summary>Judges a table, and a table together with earlier ones: <see cref="Judge.Of"/>, <see cref="Judge.Together"/>.</summary>
internal sealed record ReportJudges(Func<ReadingsTable, JudgeSettings, Judgement> Alone, Func<ReadingsTable, IReadOnlyList<ReadingsTable>, Verdict, JudgeSettings, Judgement> Together);

/// <summary>What was judged already of the very readings and settings of a subject; null: to be judged.</summary>
internal sealed record ReportKept(Judged? Own, Judged? Together)
{
    /// <summary>Nothing.</summary>
    public static ReportKept None { get; } = new(null, null);
}

/// <summary>A report's subject judged: as a whole, and its last day alone where there are several.</summary>
/// <param name="Whole">What came of the whole.</param>
/// <param name="Alone">What the last day says alone; null where there is but one, or no verdict on the whole.</param>
internal sealed record ReportJudging(Judgement Whole, DayAlone? Alone)
{
    /// <summary>The verdict together with earlier days, where the day's own is the whole.</summary>
    public Judged? Wider { get; init; }

    /// <summary>Why there is no verdict together with the earlier days; null where there is, or none was asked for.</summary>
    public string? NotTogether { get; init; }

    /// <summary>Judges.</summary>
    /// <param name="subject">What the report is of.</param>
    /// <param name="judges">Judge tables.</param>
    /// <param name="kept">What need not be judged again.</param>
    public static ReportJudging Of(ReportSubject subject, ReportJudges judges, ReportKept kept)
    {
        var own = kept.Own ?? judges.Alone(subject.Table, subject.Settings);
        if (own is not Judged { Verdict: var judged }) return new(own, null);
        var whole = new Judged(TableQuestions.Beside(judged, subject.Table));
        if (subject.Earlier.Count == 0) return new(whole, Report.DaysOf(judged) is { Count: > 1 } days ? LastAlone(subject, judged, days[^1], judges.Alone) : null);
        var all = kept.Together ?? judges.Together(subject.Table, [.. subject.Earlier.Select(one => one.Table)], judged, subject.Settings);
        if (all is not Judged together)
        {
            // The day's own answer stands, and says so.
            var why = all switch { Refused refused => refused.Reason, NotConverged failed => $"{failed.Quantity}: {failed.Reason}", _ => "" };
            return new(whole, null) { NotTogether = $"Together with the earlier days no ranking is given, and this answer is from the table alone ({why.TrimEnd('.')})." };
        }
        var wider = new Judged(TableQuestions.Beside(together.Verdict, subject.Table)) { Earlier = together.Earlier };
        return subject.EarlierFirst ? new(wider, new DayAlone(Report.DaysOf(judged)[^1], judged, "")) : new(whole, null) { Wider = wider };
    }

    static DayAlone LastAlone(ReportSubject subject, Verdict whole, string day, Func<ReadingsTable, JudgeSettings, Judgement> judge)
    {
        Run[] runs = [.. subject.Table.Runs.Where(run => string.Equals(run.Day, day, StringComparison.OrdinalIgnoreCase))];
        var table = new ReadingsTable(runs, [], [.. runs.Select(run => run.Option).Distinct(StringComparer.OrdinalIgnoreCase)]) { GunChecks = subject.Table.GunChecks };
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
