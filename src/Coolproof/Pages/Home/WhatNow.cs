using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using NodaTime;

namespace Coolproof.Pages.Home;

/// <summary>What to do now at the pit table: a pure function of the notebook and the clock.</summary>
/// <param name="Sentence">It in one sentence.</param>
/// <param name="Reason">Why, or how; null where that needs no word.</param>
/// <param name="Button">The button that does it; null where a form below does.</param>
/// <param name="Address">Where the button leads.</param>
/// <param name="Day">The running day; null when there is none.</param>
internal sealed record WhatNow(string Sentence, string? Reason, string? Button, string? Address, NotedDay? Day)
{
    // Nobody is at the track for longer than that; later, the day is over unless its date says that it is today.
    static readonly Duration StillThere = Duration.FromHours(8);

    /// <summary>What is next.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="now">The clock.</param>
    /// <param name="made">Whether a thing is made up; null: nothing is.</param>
    /// <param name="advised">The option whose run would tell most, once the plan is driven; null: nobody says.</param>
    public static WhatNow Of(PitNotebook notebook, Instant now, Func<Guid, bool>? made = null, Func<NotedDay, NotedOption?>? advised = null)
    {
        var day = Running(notebook, now, made);
        if (day is null)
        {
            List<NotedQuestion> own = [.. notebook.Questions.Where(question => made?.Invoke(question.Id) != true)];
            if (own.Count == 0 && notebook.Questions is [var demo, ..]) return new("See what the demo’s readings say.", "All of it is made up. Then ask your own question.", "To its verdict", $"/verdict/{demo.Id}", null);
            if (own.Count == 0 && notebook.Days is [.., var last] && made?.Invoke(last.Id) == true) return new("See what the rehearsal’s readings say.", "All of it is made up. Then ask your own question.", "To its verdict", $"/verdict/{last.Id}", null);
            if (notebook.Days.Count == 0 && notebook.Questions.Count == 0) return new("Ask a question, and find out which cooling really works.", "Or look at the made-up demo first: it can be taken out again.", null, null, null);
            var open = own.FirstOrDefault(question => !question.Answered);
            return open is null ? new("No day is running.", "Ask the next question, or begin a day.", null, null, null)
                : open.Options.Count < 2 ? new("List the cooling options to be compared.", $"“{open.Text}” needs two at least; the bare can is one.", "To the question", $"/question/{open.Id}", null)
                : new("Begin a day at the track.", $"“{open.Text}” waits for readings.", null, null, null);
        }
        if (notebook.RunsOf(day.Id).LastOrDefault(run => Underway(RunNow.Of(run, now, day.ShotsPerRun))) is { } run) return AtRun(notebook, day, run, now);
        var waiting = notebook.RunsOf(day.Id).Sum(one => one.Shots.Count(shot => shot.OwesNumber));
        if (waiting > 0) return new($"Type {TimeWords.Count(waiting, "number")} that {(waiting == 1 ? "waits" : "wait")}.", "The shots were stamped; their numbers are still to be typed.", "Type them", "/loose-ends", day);
        return Next(notebook, day, advised?.Invoke(day)) is { } next
            ? new($"Next: run {notebook.NextNumber(day.Id)}, {next.Name}.", "Fit it, let the motor cool, then start the clock.", "Open the run clock", $"/clock/{day.Id}", day)
            : new($"Next: run {notebook.NextNumber(day.Id)}.", "Choose the option on the run clock.", "Open the run clock", $"/clock/{day.Id}", day);
    }

    /// <summary>The day that is running; null when none is. What was made up as a whole is over, whatever its date, until somebody drives in it.</summary>
    public static NotedDay? Running(PitNotebook notebook, Instant now, Func<Guid, bool>? made = null) => notebook.Days.Reverse().FirstOrDefault(day =>
        !(made?.Invoke(day.Id) == true && notebook.RunsOf(day.Id).All(run => made(run.Id))) && (day.Date == now.WithOffset(day.UtcOffset).Date
        || notebook.RunsOf(day.Id).Any(run => (run.Halt ?? run.Stop ?? run.Go)?.At is { } at && at <= now && now - at < StillThere)
        || (day.Date is null && notebook.RunsOf(day.Id).Count == 0 && now - day.Since < StillThere)));

    /// <summary>The option of the next run: the plan's next, else the one advised, else of the options of the question the one with the fewest runs; null where nothing tells.</summary>
    public static NotedOption? Next(PitNotebook notebook, NotedDay day, NotedOption? advised = null)
    {
        if (Left(notebook, day) is [var planned, ..]) return notebook.Find<NotedOption>(planned);
        if (advised is not null) return advised;
        var driven = Driven(notebook, day);
        var asked = day.Question is { } id ? notebook.Find<NotedQuestion>(id)?.Options ?? [] : [];
        return asked.Select(option => notebook.Find<NotedOption>(option)).OfType<NotedOption>().Where(option => !option.Removed)
            .OrderBy(option => driven.Count(one => one == option.Id)).FirstOrDefault();
    }

    /// <summary>Options of the test runs that were driven, in their order.</summary>
    public static IReadOnlyList<Guid> Driven(PitNotebook notebook, NotedDay day) =>
        [.. notebook.RunsOf(day.Id).Where(run => !run.Abandoned && run.Kind == Notebook.RunKind.Test && (run.Go is not null || run.Shots.Count > 0 || run.DriveS is not null)).Select(run => run.Option).OfType<Guid>()];

    /// <summary>What is left of the plan: runs that were driven are struck off, in whatever order they came.</summary>
    public static IReadOnlyList<Guid> Left(PitNotebook notebook, NotedDay day)
    {
        var left = day.Plan.ToList();
        foreach (var option in Driven(notebook, day)) left.Remove(option);
        return left;
    }

    /// <summary>Whether every option of the round was driven as often as every other; a round that has not begun is done.</summary>
    public static bool RoundDone(PitNotebook notebook, NotedDay day)
    {
        Guid[] driven = [.. notebook.RunsOf(day.Id).Where(run => !run.Abandoned && run.Kind == Notebook.RunKind.Test && run.Shots.Count > 0).Select(run => run.Option).OfType<Guid>()];
        var asked = day.Plan.Count > 0 ? day.Plan.Distinct() : day.Question is { } id && notebook.Find<NotedQuestion>(id) is { Options.Count: > 0 } question ? question.Options : driven.Distinct();
        int[] times = [.. asked.Select(option => driven.Count(one => one == option))];
        return times.Length == 0 || times.Min() == times.Max();
    }

    static bool Underway(RunNow now) => now.Step is RunStep.CountingDown or RunStep.Driving or RunStep.Down or RunStep.Rolling or RunStep.Halted || (now.Step == RunStep.Shooting && now.ShotsLeft > 0) || (now.Step == RunStep.Ready && now.SinceS < 3600);

    static WhatNow AtRun(PitNotebook notebook, NotedDay day, NotedRun run, Instant now)
    {
        var step = RunNow.Of(run, now, day.ShotsPerRun);
        var name = $"{TimeWords.Capital(TimeWords.Run(run))}{(run.Option is { } id && notebook.Find<NotedOption>(id) is { Name.Length: > 0 } option ? $", {option.Name}" : "")}";
        var doing = step.Step switch
        {
            RunStep.Ready => "is begun: start the clock",
            RunStep.CountingDown => "counts down to go",
            RunStep.Down => "lies on the track",
            RunStep.Rolling => "rolls in: power off, then shoot",
            RunStep.Halted => "stands: power off first, then shoot",
            RunStep.Shooting => $"wants {TimeWords.Count(step.ShotsLeft, "more shot")}",
            _ => step.LeftS is { } left ? left >= 0 ? $"drives, {TimeWords.MinutesSeconds(left)} left" : $"is {TimeWords.MinutesSeconds(-left)} past its end: was the stop forgotten?" : "drives",
        };
        return new($"{name} {doing}.", null, "Open the run clock", $"/clock/{day.Id}", day);
    }
}
