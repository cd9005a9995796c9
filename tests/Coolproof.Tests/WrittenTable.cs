using System.Globalization;
using System.Text;

namespace Coolproof.Tests;

/// <summary>A readings table as cells under column names, to be written in another way that says the same.</summary>
/// <param name="Columns">Names of the columns.</param>
/// <param name="Rows">Cells as typed; blank: nothing noted.</param>
sealed record WrittenTable(IReadOnlyList<string> Columns, IReadOnlyList<string[]> Rows)
{
    /// <summary>The table as CSV, every cell in quotes.</summary>
    public override string ToString() => string.Join('\n', Rows.Prepend([.. Columns]).Select(cells => string.Join(',', cells.Select(Quoted)))) + "\n";

    /// <summary>The bytes of the table.</summary>
    public Stream Bytes() => new MemoryStream(Encoding.UTF8.GetBytes(ToString()));

    /// <summary>Reads simple CSV without quotes or line ends within cells but for a last column, which is dropped.</summary>
    public static WrittenTable Of(string csv, params string[] dropped)
    {
        var lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var names = lines[0].Split(',');
        int[] kept = [.. Enumerable.Range(0, names.Length).Where(i => !dropped.Contains(names[i]))];
        return new([.. kept.Select(i => names[i])], [.. lines.Skip(1).Select(line => line.Split(',')).Select(cells => kept.Select(i => cells[i]).ToArray())]);
    }

    /// <summary>Another column, filled from the cells of each row.</summary>
    public WrittenTable With(string name, Func<int, string> cell) => new([.. Columns, name], [.. Rows.Select((row, i) => row.Append(cell(i)).ToArray())]);

    /// <summary>The same rows in another order.</summary>
    public WrittenTable InOrder(IEnumerable<int> places) => this with { Rows = [.. places.Select(place => Rows[place])] };

    /// <summary>A cell of a row; blank where there is no such column.</summary>
    public string Cell(int row, string column) => Columns.ToList().IndexOf(column) is >= 0 and var at ? Rows[row][at] : "";

    /// <summary>A column under a new name with its cells changed; blank ones stay blank.</summary>
    public WrittenTable Changed(string column, string name, Func<string, string> change)
    {
        var at = Columns.ToList().IndexOf(column);
        return at < 0 ? this : new(
            [.. Columns.Select((c, i) => i == at ? name : c)],
            [.. Rows.Select(row => row.Select((cell, i) => i == at && cell.Length > 0 ? change(cell) : cell).ToArray())]);
    }

    /// <summary>A decimal number as typed, worked on without rounding.</summary>
    public static Func<string, string> Number(Func<decimal, decimal> change) =>
        cell => change(decimal.Parse(cell, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture);

    static string Quoted(string cell) => '"' + cell.Replace("\"", "\"\"") + '"';
}
