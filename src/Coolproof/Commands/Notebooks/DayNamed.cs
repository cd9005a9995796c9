using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Screen;

namespace Coolproof.Commands.Notebooks;

/// <summary>The day of a notebook that a command line names.</summary>
internal static class DayNamed
{
    /// <summary>The one day of that name, date or UUID; null where there is none or more than one, which has then been said.</summary>
    public static NotedDay? Of(PitNotebook notebook, string asked, Terminal terminal)
    {
        var days = notebook.Days.Where(one => Means(one, asked)).ToArray();
        if (days.Length == 1) return days[0];
        var there = string.Join(", ", notebook.Days.TakeLast(20).Select(one => Cells.Clean(NameOf(one))));
        terminal.Error.WriteLine($"coolproof: --day {Cells.Clean(asked)}: {(days.Length == 0 ? "there is no such day" : $"{days.Length} days are called so; take the UUID")}. Days: {(there.Length > 0 ? there : "none")}. Nothing was written.");
        return null;
    }

    static bool Means(NotedDay day, string asked) =>
        string.Equals(day.Name, asked, StringComparison.OrdinalIgnoreCase) || day.Id.ToString() == asked.ToLowerInvariant() || day.Date?.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture) == asked;

    static string NameOf(NotedDay day) => day.Name.Length > 0 ? day.Name : day.Date?.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture) ?? day.Id.ToString();
}
