namespace Coolproof.Notebook.Tables;

/// <summary>Makes the readings of a run out of its rows.</summary>
internal sealed class ReadingAssembly(Header header, ProblemLog log)
{
    // Copper: R is proportional to T + 235 °C (IEC 60034-1).
    private const double CopperC = 235;

    /// <summary>
    /// Readings in the order of time after the halt where every one is noted, else in row order; and the notes of rows without a reading.
    /// </summary>
    public (IReadOnlyList<Reading> Readings, string? Note) Assemble(RunDraft draft, RunKind kind)
    {
        List<Reading> readings = [];
        List<string> notes = [];
        ColdWindings cold = ColdWindings.Of(draft);
        // A warm-up, or a run that came to nothing, need not have been read: it is there for the warmth that it left.
        bool readingNeeded = kind is not (RunKind.WarmUp or RunKind.Void) && !draft.IsFaulty(Field.Kind);
        foreach (TableRow row in draft.Rows)
        {
            WindingResistance? winding = WindingOf(row, cold);
            string? note = NoteOf(row);
            if (row.Cell(Field.Read) is null && winding is null)
            {
                if (readingNeeded) CheckNothingRead(row);
                if (note is not null) notes.Add(note);
                continue;
            }

            readings.Add(ReadingOf(row, winding, note));
        }

        bool timed = readings.TrueForAll(reading => Time(reading) is not null);
        return (timed ? [.. readings.OrderBy(Time)] : readings, notes.Count == 0 ? null : string.Join("; ", notes));
    }

    private static double? Time(Reading reading) => reading.StopToReadS ?? reading.Winding?.AtS;

    private Reading ReadingOf(TableRow row, WindingResistance? winding, string? note) => new(
        row.Line, row.Number(Field.Read), row.Number(Field.StopToRead), row.Text(Field.Instrument) ?? "gun", row.Number(Field.EmissivitySet),
        row.Choice(Field.SurfaceOfSpot, SpotSurface.Unknown), row.Choice(Field.Spot, Spot.Can), row.Choice(Field.Hold, Hold.Single), winding, ExcludedBecause(row), note);

    private void CheckNothingRead(TableRow row)
    {
        if (row.IsFaulty(Field.Read) || row.IsFaulty(Field.WindingHot) || row.Cell(Field.WindingHot) is not null) return;
        log.Problem(row.Line, -1, header.NameOf(Field.Read), "blank", "a reading, or a winding resistance with its cold value (only a warm-up or void run may have none)");
    }

    private WindingResistance? WindingOf(TableRow row, ColdWindings colds)
    {
        if (row.Cell(Field.WindingHot) is not { } hot) return null;
        WindingPair? pair = row.Cell(Field.WindingPair) is null ? null : row.Choice(Field.WindingPair, default(WindingPair));
        double? cold = row.Number(Field.WindingCold) ?? colds.Milliohm(pair);
        double? coldC = row.Number(Field.WindingColdTemperature) ?? colds.Celsius(pair);
        if (cold is null || coldC is null)
        {
            if (row.IsFaulty(Field.WindingCold) || row.IsFaulty(Field.WindingColdTemperature)) return null;
            log.Problem(
                row.Line, hot.Column, header.Columns[hot.Column].Written, CellWords.Number(hot.Number) + " mΩ",
                "with it winding_cold_mohm and winding_cold_c: without the cold resistance and its temperature a hot one says nothing about warmth");
            return null;
        }

        double impliedC = (hot.Number / cold.Value * (CopperC + coldC.Value)) - CopperC;
        if (impliedC is < -40 or > 350)
        {
            log.Problem(
                row.Line, hot.Column, header.Columns[hot.Column].Written, $"{CellWords.Number(hot.Number)} mΩ hot, {CellWords.Number(cold.Value)} mΩ cold",
                $"resistances that give a winding between -40 °C and 350 °C; these give {CellWords.Number(impliedC)} °C for copper: is it the same pair, in mΩ?");
            return null;
        }

        double? at = row.Number(Field.WindingAt) ?? (row.Cell(Field.Read) is null ? row.Number(Field.StopToRead) : null);
        return new WindingResistance(hot.Number, at, cold.Value, coldC.Value, pair);
    }

    private static string? NoteOf(TableRow row) => (row.Text(Field.Note), row.Unknown) switch
    {
        (null, var unknown) => unknown,
        (var note, null) => note,
        var (note, unknown) => note + "; " + unknown,
    };

    private static string? ExcludedBecause(TableRow row) => row.Text(Field.Exclude) is { } reason && CellText.TryYes(reason) != false ? reason : null;
}
