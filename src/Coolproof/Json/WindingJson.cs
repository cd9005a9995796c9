using Coolproof.Advice.Instruments;

namespace Coolproof.Json;

/// <summary>`winding --json`, version 1 (docs/formats/winding.schema.json): mΩ, °C, K, s.</summary>
internal sealed record WindingJson(int Version, double ColdMilliohm, double ColdC, IReadOnlyList<WindingHotJson> Hot, WindingStopJson? AtTheStop)
{
    /// <summary>As text.</summary>
    public static string Text(double coldMilliohm, double coldC, IReadOnlyList<WindingByResistance> hot, BackToTheStop? stop) => AdviceJson.Text(new WindingJson(
        AdviceJson.CurrentVersion, coldMilliohm, R(coldC), [.. hot.Select(Of)],
        stop is null ? null : new(QuantilesJson.Of(stop.Temperature), QuantilesJson.Of(stop.FellK), R(stop.EffectiveDraws, 0), Rule(stop.Rule), AdviceJson.Rounded(stop.ByRuleC, 2))));

    static WindingHotJson Of(WindingByResistance hot)
    {
        var (low, high) = hot.ByChance.Symmetric(0.95);
        return new(hot.Hot.Milliohm, hot.Hot.AtS, new(R(hot.C), R(hot.StandardUncertaintyK, 3), R(hot.ByChance.StandardUncertainty(), 3), R(low), R(high)));
    }

    static string Rule(ShutDownRule rule) => rule switch { ShutDownRule.FirstStands => "first stands", ShutDownRule.TakenBack => "taken back to 30 s", ShutDownRule.HighestStands => "highest stands", _ => "too late" };

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>A hot value and what it means.</summary>
internal sealed record WindingHotJson(double Milliohm, double? AtS, EstimateJson TemperatureC);

/// <summary>The winding at the instant of the stop.</summary>
internal sealed record WindingStopJson(QuantilesJson TemperatureC, QuantilesJson FellK, double EffectiveDraws, string ShutDownRule, double? ByRuleC);
