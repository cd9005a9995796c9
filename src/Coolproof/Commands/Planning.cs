using Coolproof.Advice.Day;
using Coolproof.Advice.HowMany;
using Coolproof.Advice.Orders;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Json;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof plan` from the question to the exit code.</summary>
internal sealed class Planning(Terminal terminal)
{
    const int Draws = 400;

    /// <summary>Plans, or steers a day that has begun; prints; draws.</summary>
    /// <returns>The exit code.</returns>
    public int Run(PlanRequest request, CancellationToken cancel) => request.SoFar is null ? Plan(request, cancel) : Steer(request, request.SoFar);

    int Plan(PlanRequest request, CancellationToken cancel)
    {
        QuickVerdict? known = null;
        if (request.Known is { } file && (known = Judged(file, request)) is null) return Exit.BadInput;
        DayPlan plan = DayPlan.Of(request.Names, request.Limits, new RunNoise(), request.Seed);
        if (plan.Runs.Count == 0)
        {
            terminal.Error.WriteLine($"coolproof plan: no run fits: a drive of {request.Limits.DriveS / 60:0.#} min is longer than the day of {request.Limits.LengthS / 60:0.#} min. Give a longer --length or a shorter --drive.");
            return Exit.BadInput;
        }
        IReadOnlyList<RoundsPromise> rounds = request.Days == 0 || request.Options.Count < 2 ? [] : Rounds(request, known, cancel);
        terminal.Out.Write(request.Json
            ? PlanJson.Text(request, plan, rounds)
            : string.Join('\n', PlanPage.Lines(request, plan, rounds, terminal.Width)) + "\n");
        terminal.Out.Flush();
        return request.Picture is { } path ? Draw(request, plan, path) : Exit.Done;
    }

    IReadOnlyList<RoundsPromise> Rounds(PlanRequest request, QuickVerdict? known, CancellationToken cancel)
    {
        using var line = new ProgressLine(terminal.Error, terminal.ShowsProgress);
        var settings = RoundsTask.Of(request, known, Math.Min(4, Environment.ProcessorCount));
        return RoundsNeeded.Of(settings, line.For("simulating days"), cancel);
    }

    int Steer(PlanRequest request, string file)
    {
        if (new TableAsked(file, request.GunChecks).Read("plan", request.Limits.DriveS, terminal) is not { Table: var table }) return Exit.BadInput;
        QuickVerdict? verdict = QuickJudge.Of(table, new JudgeSettings(SameWithinK: request.SameWithinK, Seed: request.Seed), Draws);
        double cycle = request.Limits.DriveS + request.Limits.ReadS + request.Limits.CoolS, left = request.RainInS ?? Math.Max(request.Limits.LengthS - cycle * table.Runs.Count, 0);
        int runs = (int)Math.Floor((left + request.Limits.CoolS + 1e-6) / cycle);
        if (left < request.Limits.DriveS) runs = 0;
        DayAdvice advice = Steering.After(verdict, request.Options == RehearseCommand.Demo ? table.Options : request.Names, runs, new RunNoise(), request.SameWithinK, table.Runs.Count > 0 ? table.Runs[^1].Option : null);
        terminal.Out.Write(request.Json ? SteeringJson.Text(advice) : string.Join('\n', SteeringPage.Lines(advice, new DegreeWords(request.Units), terminal.Width)) + "\n");
        terminal.Out.Flush();
        return Exit.Done;
    }

    QuickVerdict? Judged(string file, PlanRequest request)
    {
        if (new TableAsked(file, request.GunChecks).Read("plan", request.Limits.DriveS, terminal) is not { Table: var table }) return null;
        if (QuickJudge.Of(table, new JudgeSettings(Seed: request.Seed), Draws) is { } verdict) return verdict;
        terminal.Error.WriteLine($"coolproof plan: {Cells.Clean(file)} holds no reading that counts. Plan without --known, or give a table with readings of the can.");
        return null;
    }

    int Draw(PlanRequest request, DayPlan plan, string path) => PictureFile.Drawn(
        () => PlanPicture.Of(
            plan.Options, [.. plan.Runs.Select(r => new PlannedBar(r.Option, r.GoS, r.HaltS, request.Clock(r.GoS)))], PlanPage.Finding(plan, request),
            $"Each run: {request.Limits.DriveS / 60:0.#} min of hard driving, then at least {request.Limits.CoolS / 60:0} min of cooling. First go at {request.Clock(0)}.").Save(path),
        terminal);
}
