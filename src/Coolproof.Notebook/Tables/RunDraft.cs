namespace Coolproof.Notebook.Tables;

/// <summary>The rows of one run, before they are put together.</summary>
/// <param name="day">Day it belongs to.</param>
/// <param name="name">Its name within the day.</param>
internal sealed class RunDraft(string day, string name)
{
    public string Day { get; } = day;

    public string Name { get; } = name;

    /// <summary>Rows in the order of the file.</summary>
    public List<TableRow> Rows { get; } = [];

    /// <summary>First row that stands apart from the others, rows of other runs between them; null when there is none.</summary>
    public TableRow? Apart { get; set; }

    public int Line => Rows[0].Line;

    /// <summary>Line where a field is noted first, else the first line of the run.</summary>
    public int LineOf(Field field) => Rows.Find(row => row.Cell(field) is not null)?.Line ?? Line;

    /// <summary>First noted value of what belongs to the run.</summary>
    public TableCell? Cell(Field field)
    {
        foreach (TableRow row in Rows)
        {
            if (row.Cell(field) is { } cell) return cell;
        }

        return null;
    }

    public double? Number(Field field) => Cell(field)?.Number;

    public string? Text(Field field) => Cell(field)?.Thing as string;

    public StartTime? Start => Cell(Field.StartedAt)?.Thing as StartTime;

    public bool IsFaulty(Field field) => Rows.Exists(row => row.IsFaulty(field));

    public T Choice<T>(Field field, T ifBlank) where T : struct, Enum => Cell(field) is { } cell ? Choices<T>.All[(int)cell.Number] : ifBlank;

    public T? Choice<T>(Field field) where T : struct, Enum => Cell(field) is { } cell ? Choices<T>.All[(int)cell.Number] : null;
}
