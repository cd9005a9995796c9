namespace Coolproof.Notebook.Tables;

/// <summary>Asks about what is odd in a run but happens; it is kept.</summary>
internal sealed class RunQuestions(Header header, ProblemLog log)
{
    // Thresholds: common practice, no source.
    private const double LateReadingS = 600;
    private const double LongRollInS = 60;
    private const double ShortDriveS = 30;
    private const double ReadingJumpK = 30;
    private const double AirJumpK = 10;

    /// <summary>Asks about one run.</summary>
    public void Ask(DraftedRun drafted)
    {
        (RunDraft draft, Run run) = (drafted.Draft, drafted.Run);
        if (run.StartC < run.AirC) Ask(draft, Field.Start, $"{Degrees(run.StartC)}, below the air of {Degrees(run.AirC)}", "a can no colder than the air, unless it was chilled");
        if (run.RollInS > LongRollInS) Ask(draft, Field.RollIn, Seconds(run.RollInS), "a roll-in of seconds: was it a cool-down lap?");
        if (!run.DriveAssumed && run.DriveS < ShortDriveS && run.CutShort == CutShort.No) Ask(draft, Field.Drive, Seconds(run.DriveS), "a drive of minutes: were minutes meant?");
        if (run is { DriveAssumed: true } && run.CutShort != CutShort.No) Ask(draft, Field.CutShort, "cut short, without its own drive time", $"how long it drove; it is taken as {Seconds(run.DriveS)}");
        if (run is { Fan: FanInRun.None, FanAfterStop: FanAfterStop.On or FanAfterStop.Off }) Ask(draft, Field.FanAfterStop, "a fan after the stop, none in the run", "none, or a fan in the run");
        AskReadings(run);
        AskUnusedCold(draft, run);
    }

    /// <summary>Asks about a run beside the one before it on the same day.</summary>
    public void AskBeside(DraftedRun before, DraftedRun run)
    {
        if (Math.Abs((run.Run.AirC - before.Run.AirC) ?? 0) > AirJumpK)
        {
            Ask(run.Draft, Field.Ambient, $"{Degrees(run.Run.AirC)}, after {Degrees(before.Run.AirC)} in line {before.Draft.LineOf(Field.Ambient)}", $"air within {AirJumpK} K from run to run");
        }

        if (run.Run.Remounted == false && run.Run.Option != before.Run.Option && string.Equals(run.Run.Load.Vehicle, before.Run.Load.Vehicle, StringComparison.OrdinalIgnoreCase))
        {
            Ask(run.Draft, Field.Remounted, $"no, while {run.Run.Option} follows {before.Run.Option}", "yes where the option changed");
        }

        // Where each row is a run, a row typed or pasted twice looks like a repeat.
        if (!header.Has(Field.Run) && run.Run.Readings.Count == 1 && before.Run.Readings.Count == 1 && SameRow(before.Run, run.Run))
        {
            log.Question(run.Draft.Line, -1, "", $"the same row as line {before.Draft.Line}", "each row once: if it was typed twice, take one out");
        }
    }

    private void AskReadings(Run run)
    {
        Reading? before = null;
        HashSet<Reading> seen = [];
        foreach (Reading reading in run.Readings)
        {
            if (reading.ReadC < run.AirC)
            {
                Ask(reading, Field.Read, $"{Degrees(reading.ReadC)}, below the air of {Degrees(run.AirC)}", "a motor no colder than the air, unless the metal is shiny under the sky or was chilled");
            }

            if (reading.StopToReadS > LateReadingS) Ask(reading, Field.StopToRead, Seconds(reading.StopToReadS), "a reading within 10 min of the halt: so late it says little");
            if (before is not null && before.Spot == reading.Spot && before.Instrument == reading.Instrument && Math.Abs((reading.ReadC - before.ReadC) ?? 0) > ReadingJumpK)
            {
                Ask(reading, Field.Read, $"{Degrees(reading.ReadC)}, beside {Degrees(before.ReadC)} in line {before.Line} of the same run", $"readings of one spot within {ReadingJumpK} K");
            }

            if (reading.StopToReadS is not null && !seen.Add(reading with { Line = 0 })) log.Question(reading.Line, -1, "", "the same reading at the same second of the same run as a row before", "each reading once: if it was typed twice, take one out");
            if (reading.ExcludedBecause is { } reason && CellText.TryYes(reason) == true) Ask(reading, Field.Exclude, reason, "the reason, which is shown beside the verdict");
            before = reading;
        }
    }

    private void AskUnusedCold(RunDraft draft, Run run)
    {
        if (draft.Cell(Field.WindingCold) is null || run.Readings.Any(reading => reading.Winding is not null)) return;
        Ask(draft, Field.WindingCold, "a cold winding resistance alone", "a hot one in the same run: without it the cold one is not used");
    }

    private static bool SameRow(Run a, Run b) =>
        a.Readings[0] with { Line = 0 } == b.Readings[0] with { Line = 0 }
        && a with { Name = "", Readings = Array.Empty<Reading>() } == b with { Name = "", Readings = Array.Empty<Reading>() };

    private void Ask(RunDraft draft, Field field, string found, string expected) =>
        log.Question(draft.LineOf(field), draft.Cell(field)?.Column ?? -1, header.NameOf(field), found, expected);

    private void Ask(Reading reading, Field field, string found, string expected) => log.Question(reading.Line, (int)field, header.NameOf(field), found, expected);

    private static string Degrees(double? celsius) => CellWords.Number(celsius ?? double.NaN) + " °C";

    private static string Seconds(double? seconds) => CellWords.Number(seconds ?? double.NaN) + " s";
}
