using Coolproof.Advice.Gearing;
using Coolproof.Advice.Laps;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>Pinion and timing for people.</summary>
internal static class GearPage
{
    /// <summary>Line by line.</summary>
    /// <param name="question">The question.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="assumed">What was assumed.</param>
    /// <param name="traced">The lap that a logger's speed gave; null: none was given.</param>
    /// <param name="earlier">What is said of earlier days; empty: none are in it.</param>
    /// <param name="degrees">Degrees of the person.</param>
    /// <param name="width">Cells of a line.</param>
    public static IEnumerable<string> Lines(GearQuestion question, GearAnswer answer, IReadOnlyList<string> assumed, TracedLap? traced, IReadOnlyList<string> earlier, DegreeWords degrees, int width)
    {
        foreach (string line in earlier.Prepend(Sentence(question, answer, degrees)).SelectMany(said => Cells.Wrap(said, width))) yield return line;
        yield return "";
        double slowest = answer.Options.Where(o => o.Best is not null).Select(o => answer.Gears[o.Best!.Value].LapS.Q50).DefaultIfEmpty(0).Max();
        string[][] rows =
        [
            ["quickest in limits", "pinion", "lap s", "worth", $"can {degrees.Unit}", $"winding {degrees.Unit}", "odds", $"{degrees.SayDifference(question.HotterK)} more"],
            .. answer.Options.OrderBy(o => o.Best is { } b ? answer.Gears[b].LapS.Q50 : double.MaxValue).Select(o => Row(answer, o, slowest, degrees)),
        ];
        foreach (string line in TextColumns.Lines(rows, [false, true, true, true, true, true, true, true], width)) yield return line;
        yield return "";
        foreach (string line in Sweep(question, answer, degrees, width)) yield return line;
        yield return "";
        foreach (string line in Cells.Wrap(Driven(question, answer), width)) yield return line;
        if (traced is not null)
            foreach (string line in Cells.Wrap(Traced(traced), width)) yield return line;
        if (assumed.Count > 0)
            foreach (string line in Cells.Wrap($"Assumed: {string.Join(", ", assumed)}.", width)) yield return line;
        string last = $"Worth is lap time against the slowest of these choices; {degrees.SayDifference(question.HotterK)} more tells the teeth that a day so much hotter costs. Brackets hold the truth 9 times in 10; highest values with the soak after the stop. "
            + $"{string.Join("; ", question.Demand.Limits.Select(l => $"{l.PartName} {degrees.Say(l.LimitC)}: {l.Reason}"))}. The maker's figures go first.";
        foreach (string line in Cells.Wrap(last, width)) yield return line;
        foreach (string line in Cells.Wrap("Go up one tooth at a time and read the motor after two minutes. Hot can, fingers off the gears, power off first. Check the rule book before any change: the class rules go first.", width)) yield return line;
    }

    /// <summary>The answer in a sentence.</summary>
    public static string Sentence(GearQuestion question, GearAnswer answer, DegreeWords degrees)
    {
        string day = $"In a race of {question.Scenario.RaceS / 60:0.#} min at {degrees.Say(question.Scenario.AirC)}";
        OptionGears? first = answer.Options.Where(o => o.Best is not null).MinBy(o => answer.Gears[o.Best!.Value].LapS.Q50);
        if (first is null)
        {
            OptionGears coolest = answer.Options.MinBy(o => o.Gears.Min(g => g.OddsOfAny))!;
            int at = Enumerable.Range(0, answer.Gears.Count).MinBy(i => coolest.Gears[i].OddsOfAny);
            return $"{day} no pinion and timing asked about stays under every limit with the odds that you accept ({100 * question.Demand.AcceptedOdds:0} in 100). The {Cells.Clean(coolest.Option)} with {Said(answer.Gears[at].Choice)} comes "
                + $"nearest: {ForecastPage.InHundred(coolest.Gears[at].OddsOfAny)} to pass one. Ask for smaller pinions, or look at the limits.";
        }
        GearedLap best = answer.Gears[first.Best!.Value];
        return $"{day} the quickest that stays under every limit with the odds that you accept ({100 * question.Demand.AcceptedOdds:0} in 100) is {Said(best.Choice)} with the {Cells.Clean(first.Option)}: "
            + $"{DegreeWords.Signed(best.GainS.Q50, 2)} s a lap against the tests' gearing ({DegreeWords.Signed(best.GainS.Q05, 2)} to {DegreeWords.Signed(best.GainS.Q95, 2)}).";
    }

    /// <summary>Where a lap was found in a logger's speed, and what of it the gearing decides.</summary>
    public static string Traced(TracedLap traced) =>
        $"The lap is that from {traced.Found.FromS:0.0} to {traced.Found.ToS:0.0} s of the speed trace: {traced.Found.Seconds:0.00} s, {traced.Track.LengthM:0} m, {(traced.Found.Alike > 1 ? $"the most typical of {traced.Found.Alike}" : "the whole of it")}. "
        + $"On {100 * traced.OpenShare:0} % of its time the car speeds up as hard as it can, and the gearing tells; elsewhere the speeds of the trace are kept with every pinion.";

    /// <summary>The lap as the tests were driven.</summary>
    public static string Driven(GearQuestion question, GearAnswer answer)
    {
        DrivenFigures d = answer.Driven;
        GearChoice as0 = question.Rig.Driven;
        return $"As the tests were driven ({as0.Pinion}/{as0.Spur}, {as0.TimingDeg:0.#}°): lap {d.LapS:0.0} s{Noted(d.NotedLapS, "s")} of {d.LapM:0} m, up to {d.HighestMS:0.0} m/s, throttle fully open {100 * d.FullThrottleShare:0} %, "
            + $"motor {d.RmsMotorA:0} A rms, pack {d.MeanBatteryA:0.0} A{Noted(d.NotedA, "A")}, copper about {d.CopperW:0} W, iron about {d.IronW:0} W (watts by the lap, not by the gun)."
            + (answer.Contradicted ? " The temperatures of the gearings driven contradict this lap on how heat goes with them, so its word is taken as if one gearing had been driven: look at the lap, the motor's figures and the pinions noted." : "");
    }

    static string Said(GearChoice c) => $"a pinion of {c.Pinion} at {c.TimingDeg:0.#}°";

    static string Noted(double? noted, string unit) => noted is { } value ? $" ({value:0.0} {unit} noted)" : "";

    static string[] Row(GearAnswer answer, OptionGears o, double slowest, DegreeWords degrees)
    {
        if (o.Best is not { } b) return [Cells.Clean(o.Option), "none", "", "", "", "", ForecastPage.InHundred(o.Gears.Min(g => g.OddsOfAny)), ""];
        GearedLap lap = answer.Gears[b];
        return
        [
            Cells.Clean(o.Option), $"{lap.Choice.Pinion} at {lap.Choice.TimingDeg:0.#}°", $"{lap.LapS.Q50:0.00}", $"{slowest - lap.LapS.Q50:0.00} s", degrees.MiddleAndRange(o.Gears[b].PeakCanC), degrees.MiddleAndRange(o.Gears[b].PeakWindingC),
            ForecastPage.InHundred(o.Gears[b].OddsOfAny),
            o.BestOnHotterDay is { } hot ? Teeth(lap.Choice.Pinion - answer.Gears[hot].Choice.Pinion) : "none",
        ];
    }

    /// <summary>How many teeth fewer a hotter day asks for.</summary>
    public static string Teeth(int fewer) => fewer switch { 0 => "same", 1 => "1 tooth", -1 => "+1 tooth", < 0 => $"+{-fewer} teeth", _ => $"{fewer} teeth" };

    // At the tests' timing, or the one nearest to it.
    static IEnumerable<string> Sweep(GearQuestion question, GearAnswer answer, DegreeWords degrees, int width)
    {
        double timing = answer.Gears.Select(g => g.Choice.TimingDeg).MinBy(t => Math.Abs(t - question.Rig.Driven.TimingDeg));
        int[] shown = [.. Enumerable.Range(0, answer.Gears.Count).Where(i => answer.Gears[i].Choice.TimingDeg == timing)];
        OptionGears o = answer.Options.OrderBy(one => one.Best is { } b ? answer.Gears[b].LapS.Q50 : double.MaxValue).ThenBy(one => one.Gears.Min(g => g.OddsOfAny)).First();
        string[][] rows =
        [
            [$"{Cells.Clean(o.Option)} at {timing:0.#}°", "ratio", "rollout mm", "lap s", "heat", "mAh", $"can {degrees.Unit}", $"winding {degrees.Unit}", "odds"],
            .. shown.Select(i => new[]
            {
                $"pinion {answer.Gears[i].Choice.Pinion}", $"{answer.Gears[i].FinalDriveRatio:0.00}", $"{1000 * answer.Gears[i].RolloutM:0.0}", $"{answer.Gears[i].LapS.Q50:0.00}", $"{100 * answer.Gears[i].Heat.Q50:0} %",
                $"{1000 * answer.Gears[i].ChargeAh.Q50:0}{(answer.Gears[i].PackLasts ? "" : " !")}", degrees.MiddleAndRange(o.Gears[i].PeakCanC), degrees.MiddleAndRange(o.Gears[i].PeakWindingC), ForecastPage.InHundred(o.Gears[i].OddsOfAny),
            }),
        ];
        return TextColumns.Lines(rows, [false, true, true, true, true, true, true, true, true], width);
    }
}
