using System.Globalization;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Pages.Shown;

/// <summary>Days, times and ages as they are said.</summary>
internal static class TimeWords
{
    /// <summary>Like "5 minutes ago".</summary>
    public static string Ago(Duration age) => age.TotalSeconds switch
    {
        < 45 => "just now",
        < 5400 => $"{Count(Math.Max(1, (int)Math.Round(age.TotalMinutes)), "minute")} ago",
        < 36 * 3600 => $"{Count((int)Math.Round(age.TotalHours), "hour")} ago",
        _ => $"{Count((int)Math.Round(age.TotalDays), "day")} ago",
    };

    /// <summary>Minutes and seconds like "6:05".</summary>
    public static string MinutesSeconds(double seconds) => string.Create(CultureInfo.InvariantCulture, $"{(seconds < 0 ? "−" : "")}{(int)Math.Abs(seconds) / 60}:{(int)Math.Abs(seconds) % 60:00}");

    /// <summary>A day's name, else its date. A readings table without a day column calls its one day "day", which names nothing.</summary>
    public static string Day(NotedDay day) => day.Name is { Length: > 0 } and not "day" ? day.Name : day.Date?.ToString("d MMMM uuuu", CultureInfo.InvariantCulture) ?? "a day without a name";

    /// <summary>A run like "run 5".</summary>
    public static string Run(NotedRun run) => run.Number is { } number ? $"run {number}" : run.Name.Length > 0 ? $"run {run.Name}" : "a run without a number";

    /// <summary>Like "1 run" and "3 runs".</summary>
    public static string Count(int count, string one) => $"{count} {one}{(count == 1 ? "" : "s")}";

    /// <summary>With a capital letter at the start.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Whether an instant is that of a readings table or the demo, whose entries stand before any tap: it says nothing.</summary>
    public static bool Imported(Instant at) => at < Instant.FromUtc(2001, 1, 1, 0, 0);

    /// <summary>The instant of a clock.</summary>
    public static Instant Now(this TimeProvider clock) => Instant.FromDateTimeOffset(clock.GetUtcNow());

    /// <summary>A field's word for people: "through-vent" as "through a vent", else the word.</summary>
    public static string Word(Enum? value) => value is null ? "" : string.Concat(value.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? " " + char.ToLowerInvariant(c) : char.ToLowerInvariant(c).ToString()));
}
