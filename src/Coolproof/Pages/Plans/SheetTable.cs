using System.Text;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;

namespace Coolproof.Pages.Plans;

/// <summary>The run sheet as a readings table with blanks: what was written on paper is typed into it, and brought like any other table.</summary>
internal static class SheetTable
{
    /// <summary>The table of a day's planned runs: as many rows a run as shots are wanted, the readings blank.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="fahrenheit">Whether temperatures are typed in °F.</param>
    public static string Blank(PitNotebook notebook, NotedDay day, bool fahrenheit)
    {
        var unit = fahrenheit ? 'f' : 'c';
        var text = new StringBuilder($"day,run,option,started_at,drive_min,ambient_{unit},start_{unit},fan_after_stop,charge_back_mah,stop_to_read_s,read_{unit}\n");
        var name = Cell(TimeWords.Day(day));
        for (var run = 0; run < day.Plan.Count; run++)
        {
            var option = Cell(notebook.Find<NotedOption>(day.Plan[run])?.Name ?? "");
            var drive = Forms.FieldUnits.Text((day.DriveS ?? 360) / 60);
            for (var shot = 0; shot < day.ShotsPerRun; shot++) text.Append($"{name},{run + 1},{option},,{(shot == 0 ? drive : "")},,,,,,\n");
        }
        return text.ToString();
    }

    /// <summary>The table without the rows whose reading, their last cell, was left blank: those runs were not driven, or not read so often.</summary>
    public static string Filled(string table) => string.Concat(table.Split('\n').Where((line, i) => i == 0 || (line.TrimEnd('\r', ' ', ',') is { Length: > 0 } said && !line.TrimEnd('\r', ' ').EndsWith(',') && said.Contains(','))).Select(line => line + "\n"));

    static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\n;") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
