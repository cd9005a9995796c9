namespace Coolproof.Notebook.Tables;

/// <summary>Asks about what is odd in the table as a whole.</summary>
internal sealed class TableQuestions(Header header, ProblemLog log)
{
    // A pair of names within one change of each other is compared for so many options at most.
    private const int ComparedOptions = 100;

    /// <summary>Asks about columns that are kept as notes although their name is a slip away from a known one.</summary>
    public void AskColumns()
    {
        for (int i = 0; i < header.Columns.Count; i++)
        {
            HeaderColumn column = header.Columns[i];
            if (column is { Rule: null, Named: true } && Header.NearName(column.Written) is { } near)
            {
                log.Question(header.Line, i, column.Written, "a column that is not known and is kept as a note", $"{near}, if that was meant");
            }
        }
    }

    /// <summary>Asks about names of options that differ by one letter.</summary>
    public void AskOptions(IReadOnlyList<string> options, IReadOnlyList<DraftedRun> runs)
    {
        for (int i = 1; i < Math.Min(options.Count, ComparedOptions); i++)
        {
            string? near = options.Take(i).FirstOrDefault(other => Slip(other, options[i]));
            if (near is null) continue;
            RunDraft draft = runs.First(run => run.Run.Option == options[i]).Draft;
            log.Question(draft.LineOf(Field.Option), draft.Cell(Field.Option)?.Column ?? -1, header.NameOf(Field.Option), options[i], $"{near}, if that was meant; as written they are two options");
        }
    }

    /// <summary>Asks about single values of a °C column that look like °F among the others, and the other way round.</summary>
    public void AskUnits(IReadOnlyList<TableRow> rows)
    {
        for (int i = 0; i < header.Columns.Count; i++)
        {
            if (header.Columns[i] is { Rule: { Quantity: Quantity.Temperature } rule, Unit: not ColumnUnit.None } column) AskUnit(rows, i, column, rule.Field);
        }
    }

    private void AskUnit(IReadOnlyList<TableRow> rows, int index, HeaderColumn column, Field field)
    {
        TemperatureUnitChoice unit = column.Unit == ColumnUnit.Celsius ? TemperatureUnitChoice.Celsius : TemperatureUnitChoice.Fahrenheit;
        List<(int Line, double Number)> bare = [];
        foreach (TableRow row in rows)
        {
            if (row.Cell(field) is { Bare: true } cell && cell.Column == index) bare.Add((row.Line, Units.FromCelsius(cell.Number, unit)));
        }

        if (bare.Count < 3) return;
        double median = Median.Of([.. bare.Select(value => value.Number)])!.Value;
        double spread = unit == TemperatureUnitChoice.Celsius ? 15 : 27;
        double apart = unit == TemperatureUnitChoice.Celsius ? 45 : 50;
        foreach ((int line, double number) in bare)
        {
            double swapped = unit == TemperatureUnitChoice.Celsius ? Units.CelsiusFrom(number, TemperatureUnitChoice.Fahrenheit) : Units.FromCelsius(number, TemperatureUnitChoice.Fahrenheit);
            bool outlying = unit == TemperatureUnitChoice.Celsius ? number > median + apart : number < median - apart;
            if (!outlying || Math.Abs(swapped - median) > spread) continue;
            string other = unit == TemperatureUnitChoice.Celsius ? "°F" : "°C";
            log.Question(line, index, column.Written, CellWords.Number(number), $"{CellWords.Number(number)} {other} if that was meant: the others are about {CellWords.Number(median)}");
        }
    }

    // Names that differ in a digit only (mount 1, mount 2) are meant to differ.
    private static bool Slip(string a, string b) =>
        Math.Min(a.Length, b.Length) >= 5 && Math.Max(a.Length, b.Length) <= 60 && !a.Where(char.IsDigit).Concat(b.Where(char.IsDigit)).Any() && EditDistance.Within(a.ToUpperInvariant(), b.ToUpperInvariant(), 1);
}
