using Coolproof.Advice.Mounts;

namespace Coolproof.Json;

/// <summary>`mount --json`, version 1 (docs/formats/mount.schema.json): °C, K, W/K, m³/s, m/s, Pa.</summary>
internal sealed record MountJson(int Version, MountReferenceJson Reference, IReadOnlyList<MountPredictionJson> Mounts, IReadOnlyList<MountDrivenJson> Driven)
{
    /// <summary>As text.</summary>
    public static string Text(MountAnswer answer) => AdviceJson.Text(new MountJson(
        AdviceJson.CurrentVersion, new(R(answer.Fair.AmbientC), R(answer.Fair.DriveS, 1), R(answer.Sheet.CarSpeedMS), answer.WithReadings, answer.Reference),
        [.. answer.Mounts.Select(Of)],
        [.. answer.Driven.Select(d => new MountDrivenJson(d.Name, QuantilesJson.Of(d.WattsPerKelvin, 4), QuantilesJson.Of(d.CanC), QuantilesJson.Of(d.WindingC), R(d.OddsCoolest, 4)))]));

    static MountPredictionJson Of(MountPrediction m) => new(
        m.Mount.Name, Rule(m.Middle.Rule), QuantilesJson.Of(m.WattsPerKelvin, 4), QuantilesJson.Of(m.CanC), QuantilesJson.Of(m.WindingC), m.Against is { } against ? QuantilesJson.Of(against) : null, R(m.OddsCoolest, 4),
        new(R(m.Middle.Flow.FlowM3S, 7), R(m.Middle.Flow.FreeM3S, 7), R(m.Middle.Flow.PressurePa, 3), R(m.Middle.Flow.ReachesCan, 4), R(m.Middle.Flow.AtCanMS, 3), R(m.Middle.Flow.Covered, 4)),
        new(R(m.Middle.Reynolds, 1), R(m.Middle.NusseltNumber, 3), R(m.Middle.StreamWPerK, 5), R(m.Middle.ElsewhereWPerK, 5), R(m.Middle.RadiatedWPerK, 5), R(m.Middle.PlateWPerK, 5)),
        [.. m.Costs.Select(c => new MountCostJson(Loss(c.Loss), R(c.WPerK, 5), R(c.CanK)))],
        m.Found is { } found ? new(QuantilesJson.Of(found.Predicted, 4), QuantilesJson.Of(found.Found, 4), found.Together is { } both ? QuantilesJson.Of(both, 4) : null, found.Contradicts, R(found.Odds, 4)) : null);

    static string Rule(MountRule rule) => rule switch { MountRule.Jet => "jet", MountRule.CrossFlow => "cross flow", MountRule.OutsideCorrelation => "outside correlation", _ => "no stream" };

    static string Loss(MountLoss loss) => loss switch
    {
        MountLoss.ShellOverInlet => "shell over inlet",
        MountLoss.Grille => "grille",
        MountLoss.Duct => "duct",
        MountLoss.DuctOutlet => "duct outlet",
        MountLoss.CanBeforeOutlet => "can before outlet",
        MountLoss.Shroud => "shroud",
        MountLoss.Leak => "leak",
        _ => "shell vents",
    };

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>Conditions, and what the mounts are set against.</summary>
internal sealed record MountReferenceJson(double AmbientC, double DriveS, double CarSpeedMS, bool WithReadings, string Against);

/// <summary>One mount.</summary>
internal sealed record MountPredictionJson(
    string Name, string Rule, QuantilesJson WattsPerKelvin, QuantilesJson CanC, QuantilesJson WindingC, QuantilesJson? DifferenceK, double OddsCoolest,
    MountFlowJson Flow, MountHeatJson Heat, IReadOnlyList<MountCostJson> InTheWay, MountFoundJson? Found);

/// <summary>The operating point at the middle of what is believed.</summary>
internal sealed record MountFlowJson(double FlowM3S, double FreeFlowM3S, double PressurePa, double ReachesCan, double SpeedAtCanMS, double CoveredShare);

/// <summary>The heat at the middle of what is believed.</summary>
internal sealed record MountHeatJson(double Reynolds, double Nusselt, double StreamWPerK, double ElsewhereWPerK, double RadiatedWPerK, double PlateWPerK);

/// <summary>What something in the way costs.</summary>
internal sealed record MountCostJson(string What, double WattsPerKelvin, double CanK);

/// <summary>Predicted against found.</summary>
internal sealed record MountFoundJson(QuantilesJson Predicted, QuantilesJson Found, QuantilesJson? Together, bool Contradicts, double Odds);

/// <summary>An option of the table.</summary>
internal sealed record MountDrivenJson(string Name, QuantilesJson WattsPerKelvin, QuantilesJson CanC, QuantilesJson WindingC, double OddsCoolest);
