using System.Globalization;
using Coolproof.Advice.Day;
using Coolproof.Advice.HowMany;
using Coolproof.Commands;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A plan for people.</summary>
internal static class PlanPage
{
    /// <summary>The plan in one sentence.</summary>
    public static string Finding(DayPlan plan, PlanRequest request) => string.Create(CultureInfo.InvariantCulture,
        $"{plan.Runs.Count} {(plan.Runs.Count == 1 ? "run" : "runs")} of {plan.Options.Count} {(plan.Options.Count == 1 ? "option" : "options")}, {request.Clock(0)} to {request.Clock(plan.Runs[^1].HaltS)}");

    /// <summary>All of it, line by line.</summary>
    public static IEnumerable<string> Lines(PlanRequest request, DayPlan plan, IReadOnlyList<RoundsPromise> rounds, int width)
    {
        DegreeWords degrees = new(request.Units);
        yield return Finding(plan, request);
        yield return "";
        string[][] rows = [["run", "go", "option", "round"], .. plan.Runs.Select((r, i) => new[] { $"{i + 1}", request.Clock(r.GoS), Cells.Clean(r.Option), $"{r.Round}" })];
        foreach (string line in TextColumns.Lines(rows, [true, true, false, true], width)) yield return line;
        yield return "";
        if (plan.Options.Count > 1)
            foreach (string line in Cells.Wrap($"Two options will be told apart within about {degrees.SayDifference(plan.Order.ExpectedWidthK / 2, 1)} either way (nine times in ten).", width)) yield return line;
        foreach (string line in plan.Advice.SelectMany(a => Cells.Wrap(Cells.Clean(a), width))) yield return line;
        for (int e = 0; plan.Evenings.Count > 1 && e < plan.Evenings.Count; e++)
            foreach (string line in Cells.Wrap($"Evening {e + 1}: {Cells.Clean(string.Join(", ", plan.Evenings[e]))}", width, "", "  ")) yield return line;
        if (plan.Dropped.Count > 0)
            foreach (string line in Cells.Wrap($"With this day only, leave out: {Cells.Clean(string.Join(", ", plan.Dropped))}", width, "", "  ")) yield return line;
        foreach (string line in HowMany(rounds, request, degrees, width)) yield return line;
        foreach (string line in Checks(request, width)) yield return line;
    }

    static IEnumerable<string> HowMany(IReadOnlyList<RoundsPromise> rounds, PlanRequest request, DegreeWords degrees, int width)
    {
        if (rounds.Count == 0) yield break;
        yield return "";
        yield return $"How many are enough, over {request.Days} simulated days:";
        double cycleH = (request.Limits.DriveS + request.Limits.ReadS + request.Limits.CoolS) / 3600;
        string[][] rows =
        [
            ["rounds", "runs", "hours", "packs", "right pick", "main difference", "told apart", "wrong of these", "rough days"],
            .. rounds.Select(r => new[]
            {
                $"{r.Rounds}", $"{r.Runs}", DegreeWords.Number(r.Runs * cycleH, 1), $"{r.Runs}", Share(r.RightPick), $"± {degrees.SayDifference(r.IntervalK / 2, 1)}", Share(r.FirmCalls),
                double.IsNaN(r.WrongFirmCalls) ? "none" : Share(r.WrongFirmCalls, 1), $"{r.RoughDays}",
            }),
        ];
        foreach (string line in TextColumns.Lines(rows, [true, true, true, true, true, true, true, true, true], width)) yield return line;
        foreach (string line in Cells.Wrap(
            "Right pick: the option named coolest truly is. Told apart: pairs called firmly. Packs: charges used. Rough days were judged only roughly: they count and call nothing firm.",
            width)) yield return line;
    }

    static IEnumerable<string> Checks(PlanRequest request, int width)
    {
        yield return "";
        foreach (string line in Cells.Wrap($"One spot for all readings, with matt tape and a photo: {Cells.Clean(request.Spot ?? CheckList.DefaultSpot)}", width, "", "  ")) yield return line;
        foreach (var (head, items) in new[]
        {
            ("Bring", CheckList.Bring), ("Measure", CheckList.Measure), ("Note", CheckList.Note), ("Leave alone", CheckList.LeaveAlone), ("Beware", CheckList.Cautions),
        })
        {
            yield return $"{head}:";
            foreach (string line in items.SelectMany(item => Cells.Wrap(item, width, "  [ ] ", "      "))) yield return line;
        }
    }

    static string Share(double share, int decimals = 0) => $"{DegreeWords.Number(100 * share, decimals)} %";
}
