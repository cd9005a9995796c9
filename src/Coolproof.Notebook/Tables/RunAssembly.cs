namespace Coolproof.Notebook.Tables;

/// <summary>Puts rows together to runs: one value for what belongs to the run, one reading a row.</summary>
internal sealed class RunAssembly(Header header, ProblemLog log)
{
    private static readonly ColumnRule[] OfTheRun =
        [.. ColumnRules.All.Where(rule => rule.BelongsTo == BelongsTo.Run && rule.Field is not (Field.Day or Field.Run))];

    private readonly ReadingAssembly _readings = new(header, log);
    private readonly Dictionary<string, string> _options = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>One run; its drive is <paramref name="drive"/> where it notes none.</summary>
    public Run Assemble(RunDraft draft, double drive)
    {
        CheckRepeats(draft);
        double? noted = draft.Number(Field.Drive);
        double stood = draft.Number(Field.Stood) ?? 0;
        CheckStood(draft, stood, noted, drive);
        RunKind kind = draft.Choice(Field.Kind, RunKind.Test);
        (IReadOnlyList<Reading> readings, string? note) = _readings.Assemble(draft, kind);
        return new Run(
            draft.Day, draft.Name, OptionOf(draft), draft.Start?.Local, draft.Start?.Offset, kind, noted ?? drive, noted is null,
            draft.Number(Field.RollIn), stood, draft.Choice(Field.CutShort, CutShort.No), draft.Number(Field.Ambient),
            draft.Choice(Field.AirBy, AirSource.Thermometer), draft.Number(Field.Start), draft.Number(Field.Remounted) is { } yes ? yes > 0 : null,
            draft.Choice(Field.Fan, FanInRun.Unknown), draft.Choice(Field.FanAfterStop, FanAfterStop.Unknown), draft.Number(Field.PowerOff),
            LoadOf(draft), new PackNotes(draft.Text(Field.Pack), draft.Number(Field.PackStartV), draft.Number(Field.ChargeBack)), readings)
        {
            Sky = draft.Choice<Sky>(Field.Sky),
            Wind = draft.Choice<Wind>(Field.Wind),
            Track = draft.Choice<TrackState>(Field.Track),
            TrackC = draft.Number(Field.TrackTemperature),
            Laps = (int?)draft.Number(Field.Laps),
            MeanLapS = draft.Number(Field.MeanLap),
            Note = note,
        };
    }

    private static LoadNotes LoadOf(RunDraft draft) => new(
        draft.Text(Field.Driver), draft.Text(Field.Surface), draft.Text(Field.Venue), draft.Text(Field.Vehicle), draft.Text(Field.Motor), draft.Text(Field.Tyres),
        draft.Text(Field.ControllerProfile), (int?)draft.Number(Field.Pinion), (int?)draft.Number(Field.Spur), draft.Number(Field.Timing));

    private string OptionOf(RunDraft draft)
    {
        string? written = draft.Text(Field.Option);
        if (written is null)
        {
            if (!draft.IsFaulty(Field.Option)) log.Problem(draft.Line, -1, header.NameOf(Field.Option), "blank", "the cooling option's name");
            return "";
        }

        return _options.TryGetValue(written, out string? known) ? known : _options[written] = written;
    }

    private void CheckRepeats(RunDraft draft)
    {
        if (draft.Rows.Count == 1) return;
        foreach (ColumnRule rule in OfTheRun)
        {
            TableRow? first = null;
            foreach (TableRow row in draft.Rows)
            {
                if (row.Cell(rule.Field) is not { } cell) continue;
                first ??= row;
                if (SameCells.Same(first.Cell(rule.Field)!.Value, cell, rule, SameCells.Repeated)) continue;
                log.Problem(
                    row.Line, cell.Column, header.Columns[cell.Column].Written, CellWords.Of(cell, rule),
                    $"{CellWords.Of(first.Cell(rule.Field)!.Value, rule)} as in line {first.Line}, or blank: both lines are run {draft.Name} of {draft.Day}; "
                    + "another run needs its own name, unique within the day");
                break;
            }
        }
    }

    private void CheckStood(RunDraft draft, double stood, double? noted, double drive)
    {
        if (stood <= (noted ?? drive)) return;
        TableCell cell = draft.Cell(Field.Stood)!.Value;
        log.Problem(
            draft.LineOf(Field.Stood), cell.Column, header.Columns[cell.Column].Written, CellWords.Of(cell, ColumnRules.Of(Field.Stood)),
            noted is { } s ? $"no more than the drive of {CellWords.Number(s)} s: the standstill is part of it" : "the run's own drive_s, since the standstill is longer than the drive taken for it");
    }
}
