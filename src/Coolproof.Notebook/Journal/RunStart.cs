using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal;

/// <summary>Local date and time of a run's go.</summary>
/// <param name="Local">Local date and time.</param>
/// <param name="Offset">Its offset from UTC; null when not known.</param>
public sealed record RunStart(LocalDateTime Local, Offset? Offset)
{
    /// <summary>The start as typed, else by the stamp in the day's local time; null when there is neither.</summary>
    /// <param name="run">The run.</param>
    /// <param name="day">Its day, which gives local time; null: typed starts only.</param>
    public static RunStart? Of(NotedRun run, NotedDay? day)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.Fields.Text("startedAt") is { } text && LocalDateTimePattern.ExtendedIso.Parse(text) is { Success: true } typed)
        {
            return new RunStart(typed.Value, run.Fields.Whole("startedOffsetS") is { } seconds and >= -64_800 and <= 64_800 ? NodaTime.Offset.FromSeconds(seconds) : null);
        }

        if (run.Go is not { } go || day is null) return null;
        return new RunStart(go.At.WithOffset(day.UtcOffset).LocalDateTime, day.UtcOffset);
    }
}
