using System.Text.Json.Serialization;
using Coolproof.Advice.Gearing;
using Coolproof.Commands;

namespace Coolproof.Json;

/// <summary>`gear --json`, version 1 (docs/formats/gear.schema.json): °C, s, m, Ah.</summary>
internal sealed record GearJson(int Version, GearDayJson Day, GearDrivenJson Driven, IReadOnlyList<GearLapJson> Gears, IReadOnlyList<GearOptionJson> Options, string Caution,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] EarlierDaysJson<GearAloneJson>? Earlier)
{
    /// <summary>As text.</summary>
    public static string Text(GearQuestion question, GearAnswer answer, EarlierInAnswer? earlier) => AdviceJson.Text(new GearJson(
        AdviceJson.CurrentVersion,
        new(R(question.Scenario.AirC), R(question.Scenario.RaceS), R(question.HotterK), question.Demand.AcceptedOdds, [.. question.Demand.Limits.Select(l => new ForecastLimitJson(l.PartName, l.LimitC, l.Reason))]),
        new(question.Rig.Driven.Pinion, question.Rig.Driven.Spur, question.Rig.Driven.TimingDeg, R(answer.Driven.LapS, 3), R(answer.Driven.FullThrottleShare, 3), R(answer.Driven.RmsMotorA), R(answer.Driven.MeanBatteryA), R(answer.Driven.CopperW), R(answer.Driven.IronW), answer.Contradicted),
        [.. answer.Gears.Select(g => new GearLapJson(
            g.Choice.Pinion, g.Choice.Spur, g.Choice.TimingDeg, R(g.FinalDriveRatio, 4), R(g.RolloutM, 5), QuantilesJson.Of(g.LapS, 3), QuantilesJson.Of(g.GainS, 3), QuantilesJson.Of(g.Heat, 4), QuantilesJson.Of(g.ChargeAh, 4), g.PackLasts))],
        [.. answer.Options.Select(o => new GearOptionJson(
            o.Option, o.Best, o.BestOnHotterDay,
            [.. o.Gears.Select(h => new GearHeatJson(QuantilesJson.Of(h.PeakCanC), QuantilesJson.Of(h.PeakWindingC), [.. h.Odds.Select(x => R(x, 4))], R(h.OddsOfAny, 4)))]))],
        "Check the rule book: class rules and the makers' limits go first.",
        earlier is null ? null : EarlierDaysJson.Of(earlier, new GearAloneJson(earlier.Added.Alone.Sentence))));

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>The race that was asked for.</summary>
internal sealed record GearDayJson(double AirC, double RaceS, double HotterK, double AcceptedOdds, IReadOnlyList<ForecastLimitJson> Limits);

/// <summary>The lap as the tests were driven.</summary>
internal sealed record GearDrivenJson(int Pinion, int Spur, double TimingDeg, double LapS, double FullThrottleShare, double RmsMotorA, double MeanBatteryA, double CopperW, double IronW, bool Contradicted);

/// <summary>A lap with one pinion and timing.</summary>
internal sealed record GearLapJson(
    int Pinion, int Spur, double TimingDeg, double FinalDriveRatio, double RolloutM, QuantilesJson LapS, QuantilesJson GainS, QuantilesJson Heat, QuantilesJson ChargeAh, bool PackLasts);

/// <summary>One option with each of them; the places of the best count from 0.</summary>
internal sealed record GearOptionJson(string Name, int? Best, int? BestOnHotterDay, IReadOnlyList<GearHeatJson> Gears);

/// <summary>One option with one pinion and timing.</summary>
internal sealed record GearHeatJson(QuantilesJson PeakCanC, QuantilesJson PeakWindingC, IReadOnlyList<double> Odds, double OddsOfAny);

/// <summary>What the new day says by itself.</summary>
internal sealed record GearAloneJson(string Sentence);
