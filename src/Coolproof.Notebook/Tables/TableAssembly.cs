namespace Coolproof.Notebook.Tables;

/// <summary>Makes the table out of its rows.</summary>
internal sealed class TableAssembly(Header header, ProblemLog log)
{
    /// <summary>The table; worth something only when no problem was noted.</summary>
    public ReadingsTable? Assemble(IReadOnlyList<TableRow> rows, double? givenDriveS)
    {
        IReadOnlyList<RunDraft> drafts = new RunGrouping(header, log).Group(rows);
        if (DriveOf(drafts, givenDriveS) is not { } drive) return null;
        RunAssembly assembly = new(header, log);
        List<DraftedRun> runs = [.. drafts.Select(draft => new DraftedRun(draft, assembly.Assemble(draft, drive)))];
        IReadOnlyList<DraftedRun> ordered = new RunOrder(header, log).Ordered(runs);
        if (log.HasProblems) return null;
        // By their first run, not their first row, so that with start times the order of rows makes no difference to anything.
        string[] options = [.. ordered.Select(run => run.Run.Option).Distinct()];
        Ask(rows, ordered, options);
        return new ReadingsTable([.. ordered.Select(run => run.Run)], log.Questions(), options);
    }

    // The median of the runs that note a drive; the one given where none does.
    private double? DriveOf(IReadOnlyList<RunDraft> drafts, double? givenDriveS)
    {
        double? median = Median.Of([.. drafts.Select(draft => draft.Number(Field.Drive)).OfType<double>()]);
        if ((median ?? givenDriveS) is { } drive) return drive;
        // A drive that was written and not understood is a problem already; the rest is still looked at.
        if (drafts.Any(draft => draft.IsFaulty(Field.Drive))) return ColumnRules.Of(Field.Drive).Max;
        log.Problem(header.Line, -1, "drive_s", header.Has(Field.Drive) ? "no run with a drive time" : "no such column", "how long at least one run drove, such as 360, or the drive given for all (--drive 360s)");
        return ColumnRules.Of(Field.Drive).Max;
    }

    private void Ask(IReadOnlyList<TableRow> rows, IReadOnlyList<DraftedRun> runs, IReadOnlyList<string> options)
    {
        TableQuestions table = new(header, log);
        table.AskColumns();
        table.AskOptions(options, runs);
        table.AskUnits(rows);
        RunQuestions questions = new(header, log);
        DraftedRun? before = null;
        foreach (DraftedRun run in runs)
        {
            questions.Ask(run);
            if (before is not null && before.Run.Day == run.Run.Day) questions.AskBeside(before, run);
            before = run;
        }
    }
}
