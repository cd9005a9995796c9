using System.Globalization;

namespace Coolproof.Thermal.Tests;

/// <summary>A reference table beside the tests: rows of cells, quotes understood, header left off.</summary>
static class Table
{
    public static List<string[]> Rows(string file) =>
        [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", file)).Skip(1).Where(line => line.Length > 0).Select(Cells)];

    public static double Number(string cell) => double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);

    static string[] Cells(string line)
    {
        List<string> cells = [];
        string cell = "";
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"') quoted = !quoted;
            else if (c == ',' && !quoted)
            {
                cells.Add(cell);
                cell = "";
            }
            else cell += c;
        }
        return [.. cells, cell];
    }
}
