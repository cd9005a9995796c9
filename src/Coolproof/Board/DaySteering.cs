using Coolproof.Advice.Day;
using Coolproof.Advice.Orders;
using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Home;
using NodaTime;

namespace Coolproof.Board;

/// <summary>Go on or stop on a day that is being driven, and which option next: the notebook, the clock and what is believed of the readings. Pure.</summary>
internal static class DaySteering
{
    // Readings and handling after a halt, and what is usual where the day says nothing (common practice, no source; as on the command line).
    const double ReadMin = 2, CoolMin = 20, DriveMin = 6, SameWithinK = 2;

    /// <summary>The advice.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="believed">What is believed of its readings; null: nothing was read yet.</param>
    /// <param name="now">The clock.</param>
    /// <param name="endsMin">When the day ends early, as by rain, min after its midnight; null: it doesn't.</param>
    public static DayAdvice Of(PitNotebook notebook, NotedDay day, QuickVerdict? believed, Instant now, double? endsMin = null)
    {
        var same = day.Question is { } question ? notebook.Find<NotedQuestion>(question)?.SameWithinK : null;
        var fitted = WhatNow.Driven(notebook, day) is [.., var last] ? notebook.Find<NotedOption>(last)?.Name : null;
        return Steering.After(believed, [.. Options(notebook, day).Select(option => option.Name)], RunsLeft(notebook, day, now, endsMin), new RunNoise(), same ?? SameWithinK, fitted);
    }

    /// <summary>Options of the day: of its plan, else of its question.</summary>
    public static IReadOnlyList<NotedOption> Options(PitNotebook notebook, NotedDay day)
    {
        IEnumerable<Guid> named = day.Plan.Count > 0 ? day.Plan.Distinct() : day.Question is { } question ? notebook.Find<NotedQuestion>(question)?.Options ?? [] : [];
        return [.. named.Select(option => notebook.Find<NotedOption>(option)).OfType<NotedOption>().Where(option => !option.Removed)];
    }

    /// <summary>Runs that still fit: until the day's end, or what is left of its plan where no end is said.</summary>
    public static int RunsLeft(PitNotebook notebook, NotedDay day, Instant now, double? endsMin)
    {
        double? end = day.ToMin is { } to ? Math.Min(to, endsMin ?? to) : endsMin;
        if (end is not { } until) return day.Plan.Count > 0 ? WhatNow.Left(notebook, day).Count : Options(notebook, day).Count;
        double drive = (day.DriveS / 60) ?? DriveMin, cycle = drive + ReadMin + (day.CoolMin ?? CoolMin);
        var latest = notebook.RunsOf(day.Id).Where(run => !run.Abandoned).Select(run => Halted(run, drive)).OfType<Instant>().OrderDescending().FirstOrDefault();
        // A day that is driven before its hour has no more room for it.
        double free = Math.Max(Minute(day, now), day.FromMin ?? 0), ready = latest == default ? free : Math.Max(free, Minute(day, latest) + cycle - drive);
        return ready + drive > until + 1e-6 ? 0 : 1 + (int)Math.Floor((until - ready - drive + 1e-6) / cycle);
    }

    /// <summary>The option whose next run would tell most; null where the readings say nothing yet, or nothing is open.</summary>
    public static NotedOption? Advised(PitNotebook notebook, NotedDay day, QuickVerdict? believed, Instant now) =>
        believed is not null && Of(notebook, day, believed, now) is { Call: GoOn.DriveOn or GoOn.NotToday, Next: [var first, ..] } ? Named(notebook, day, first.Option) : null;

    /// <summary>The option of the day that goes by a name.</summary>
    public static NotedOption? Named(PitNotebook notebook, NotedDay day, string name) =>
        Options(notebook, day).Concat(notebook.Options).FirstOrDefault(option => string.Equals(option.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The plan with another option next: what was driven, that one, then the rest as it was.</summary>
    public static IReadOnlyList<Guid> WithNext(PitNotebook notebook, NotedDay day, Guid option)
    {
        var rest = WhatNow.Left(notebook, day).ToList();
        rest.Remove(option);
        return [.. WhatNow.Driven(notebook, day), option, .. rest];
    }

    /// <summary>Minutes from the day's midnight.</summary>
    public static double Minute(NotedDay day, Instant at)
    {
        var local = at.WithOffset(day.UtcOffset);
        return Period.Between((day.Date ?? local.Date).AtMidnight(), local.LocalDateTime, PeriodUnits.Seconds).Seconds / 60.0;
    }

    static Instant? Halted(NotedRun run, double driveMin) => (run.Halt ?? run.Stop)?.At ?? run.Go?.At + Duration.FromMinutes(driveMin);
}
