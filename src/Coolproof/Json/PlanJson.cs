using System.Text.Json.Serialization;
using Coolproof.Advice.CoolDowns;
using Coolproof.Advice.Day;
using Coolproof.Advice.HowMany;
using Coolproof.Commands;

namespace Coolproof.Json;

/// <summary>What `plan --json` prints, version 1.</summary>
internal sealed record PlanJson(
    int Version, IReadOnlyList<PlannedRunJson> Runs, double ExpectedIntervalK, IReadOnlyList<double> IntervalAfterRoundK, double WaitedForPackS, IReadOnlyList<IReadOnlyList<string>> Evenings,
    IReadOnlyList<string> LeaveOut, IReadOnlyList<RoundsJson> Rounds, string Spot, CheckListJson CheckList, IReadOnlyList<string> Advice)
{
    /// <summary>As text, with a line end.</summary>
    public static string Text(PlanRequest request, DayPlan plan, IReadOnlyList<RoundsPromise> rounds) => AdviceJson.Text(new PlanJson(
        AdviceJson.CurrentVersion,
        [.. plan.Runs.Select((r, i) => new PlannedRunJson(i + 1, r.Option, r.Round, r.GoS, r.HaltS, request.Clock(r.GoS)))],
        Round(plan.Order.ExpectedWidthK), [.. plan.Order.WidthAfterRoundK.Select(w => Round(w))], Round(plan.Order.WaitedForPackS), plan.Evenings, plan.Dropped,
        [.. rounds.Select(r => new RoundsJson(
            r.Rounds, r.Runs, r.Runs, Round(r.Runs * (request.Limits.DriveS + request.Limits.ReadS + request.Limits.CoolS) / 3600), Round(r.RightPick, 4), Round(r.PredictedRightPick, 4), Round(r.IntervalK),
            Round(r.FirmCalls, 4), double.IsNaN(r.WrongFirmCalls) ? null : Round(r.WrongFirmCalls, 4), Round(r.LossK), r.RoughDays))],
        request.Spot ?? Coolproof.Advice.Day.CheckList.DefaultSpot,
        new(Coolproof.Advice.Day.CheckList.Bring, Coolproof.Advice.Day.CheckList.Measure, Coolproof.Advice.Day.CheckList.Note, Coolproof.Advice.Day.CheckList.LeaveAlone, Coolproof.Advice.Day.CheckList.Cautions),
        plan.Advice));

    static double Round(double value) => Round(value, 2);

    static double Round(double value, int decimals) => CompareJson.Round(value, decimals, "a figure of the plan");
}

/// <summary>One planned run.</summary>
internal sealed record PlannedRunJson(int Run, string Option, int Round, double GoS, double HaltS, string GoAt);

/// <summary>What a number of rounds promises.</summary>
internal sealed record RoundsJson(
    int Rounds, int Runs, int Packs, double Hours, double RightPick, double RightPickByJudging, double IntervalK, double FirmCalls, double? WrongFirmCalls, double LossK, int RoughDays);

/// <summary>The check list of the day.</summary>
internal sealed record CheckListJson(
    IReadOnlyList<string> Bring, IReadOnlyList<string> Measure, IReadOnlyList<string> Note, IReadOnlyList<string> LeaveAlone, IReadOnlyList<string> Cautions);

/// <summary>What `plan --so-far --json` prints, version 1.</summary>
internal sealed record SteeringJson(
    int Version, string Call, string? Best, string? Rival, double? DifferenceK, double? IntervalK, double? ProbabilityBestCooler, IReadOnlyList<NextRunJson> Next,
    int RunsLeft, double? IntervalThenK, double? ChanceSettled, bool Rough)
{
    /// <summary>As text, with a line end.</summary>
    public static string Text(DayAdvice a) => AdviceJson.Text(new SteeringJson(
        AdviceJson.CurrentVersion,
        a.Call switch { GoOn.Settled => "settled", GoOn.NotToday => "not-today", GoOn.DayOver => "day-over", _ => "drive-on" },
        a.Best, a.Rival, a.Best is null ? null : AdviceJson.Rounded(a.DifferenceK, 2), AdviceJson.Rounded(a.IntervalK, 2), AdviceJson.Rounded(a.ProbabilityBestCooler, 4),
        [.. a.Next.Select(n => new NextRunJson(n.Option, AdviceJson.Rounded(n.NarrowsK, 2)))], a.RunsLeft, AdviceJson.Rounded(a.IntervalThenK, 2), AdviceJson.Rounded(a.ChanceSettled, 4), a.Rough));
}

/// <summary>What one more run of an option would bring; null: it was not driven yet.</summary>
internal sealed record NextRunJson(string Option, double? NarrowsK);

/// <summary>What `cooldown --json` prints, version 1.</summary>
internal sealed record CooldownJson(int Version, double AirC, double WithinK, double WaitMin, IReadOnlyList<CoolingJson> Ways)
{
    /// <summary>As text, with a line end.</summary>
    public static string Text(CoolDownQuestion question, IReadOnlyList<CoolDownPromise> promises) => AdviceJson.Text(new CooldownJson(
        AdviceJson.CurrentVersion, question.AirC, question.WithinK, question.WaitMin,
        [.. promises.Select(p => new CoolingJson(
            p.By switch { CoolingBy.OwnFan => "own-fan", CoolingBy.PitFan => "pit-fan", CoolingBy.CooledAir => "cooled-air", _ => "shade" },
            AdviceJson.Rounded(p.SoonMin, 1), AdviceJson.Rounded(p.MiddleMin, 1), AdviceJson.Rounded(p.PromisedMin, 1), AdviceJson.Rounded(p.CanAloneMin, 1),
            CompareJson.Round(p.InheritsK, 2, "inheritsK"), CompareJson.Round(p.InheritsMostK, 2, "inheritsMostK"),
            [.. p.Path.Select(x => new CoolingPointJson(x.Minutes, CompareJson.Round(x.CanC, 1, "canC"), CompareJson.Round(x.CoreC, 1, "coreC"), CompareJson.Round(x.CoreHighC, 1, "coreHighC")))]))]));
}

/// <summary>One way of cooling; minutes are null where it takes longer than is reckoned.</summary>
internal sealed record CoolingJson(
    string By, double? SoonMin, double? MiddleMin, double? PromisedMin, double? CanAloneMin, double InheritsK, double InheritsMostK, IReadOnlyList<CoolingPointJson> Path);

/// <summary>Can and core at one time.</summary>
internal sealed record CoolingPointJson(double Minutes, [property: JsonPropertyName("canC")] double CanC, [property: JsonPropertyName("coreC")] double CoreC, [property: JsonPropertyName("coreHighC")] double CoreHighC);
