using NodaTime;

namespace Coolproof.Notebook.Tables;

/// <summary>A local date and time with the offset, where one was written.</summary>
internal sealed record StartTime(LocalDateTime Local, Offset? Offset);

/// <summary>One cell that was understood.</summary>
/// <param name="Field">What it says.</param>
/// <param name="Column">Its column, 0-based.</param>
/// <param name="Number">°C, s, the unit of the column's name, the place in the list of allowed words, or 1 for yes; 0 for text and times.</param>
/// <param name="Thing">The text, or a <see cref="StartTime"/>; null for numbers.</param>
/// <param name="Bare">Whether a number stood without a unit of its own.</param>
internal readonly record struct TableCell(Field Field, int Column, double Number, object? Thing, bool Bare);

/// <summary>One row under the header, its cells read; blank cells are absent.</summary>
/// <param name="Line">Line on which it begins.</param>
/// <param name="Cells">Understood cells, one for each field at most.</param>
/// <param name="Faulty">Fields, as bits, whose cell was not understood: nothing more is said about them.</param>
/// <param name="Unknown">Cells of unknown columns as "column: value" joined by "; "; null when there are none.</param>
internal sealed record TableRow(int Line, TableCell[] Cells, ulong Faulty, string? Unknown)
{
    /// <summary>A row whose form was at fault: nothing more is said about any of its cells.</summary>
    public static TableRow NotRead(int line) => new(line, [], ulong.MaxValue, null);

    public TableCell? Cell(Field field)
    {
        foreach (TableCell cell in Cells)
        {
            if (cell.Field == field) return cell;
        }

        return null;
    }

    public double? Number(Field field) => Cell(field)?.Number;

    public string? Text(Field field) => Cell(field)?.Thing as string;

    public StartTime? Start => Cell(Field.StartedAt)?.Thing as StartTime;

    public bool IsFaulty(Field field) => (Faulty & (1UL << (int)field)) != 0;

    public T Choice<T>(Field field, T ifBlank) where T : struct, Enum => Cell(field) is { } cell ? Choices<T>.All[(int)cell.Number] : ifBlank;
}
