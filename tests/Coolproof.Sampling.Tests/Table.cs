using System.Globalization;

namespace Coolproof.Sampling.Tests;

/// <summary>A small comma-separated table with a header, from the Data folder.</summary>
sealed class Table
{
    readonly string[] header;
    readonly string[][] rows;

    public Table(string name)
    {
        string[][] lines = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", name)).Select(line => line.Split(','))];
        (header, rows) = (lines[0], lines[1..]);
    }

    public IEnumerable<string[]> Where(string column, string value) => rows.Where(row => row[At(column)] == value);

    public string[] Single(string column, string value) => Where(column, value).Single();

    public double Number(string[] row, string column) => double.Parse(row[At(column)], CultureInfo.InvariantCulture);

    public string Text(string[] row, string column) => row[At(column)];

    int At(string column) => Array.IndexOf(header, column);
}
