using Coolproof.Advice.Spending;

namespace Coolproof.Json;

/// <summary>`spend --json`, version 1 (docs/formats/spend.schema.json): K and g.</summary>
internal sealed record SpendJson(
    int Version, SpendReferenceJson Reference, SpendChoiceJson Best, IReadOnlyList<SpendStepJson> Steps, IReadOnlyList<SpendPointJson> Front, SpendStepJson? BeyondMoney, SpendStepJson? BeyondGrams,
    IReadOnlyList<string> NotAllowed, IReadOnlyList<string> NothingKnown)
{
    /// <summary>As text.</summary>
    public static string Text(SpendAnswer answer) => AdviceJson.Text(new SpendJson(
        AdviceJson.CurrentVersion, new(R(answer.Fair.AmbientC), R(answer.Fair.DriveS, 1), answer.Sheet.Base, answer.Sheet.Currency, answer.Sheet.Money, answer.Sheet.Grams, R(answer.Sheet.Rules.FreeG)),
        Of(answer.Best), [.. answer.Steps.Select(Of)], [.. answer.Front.Select(p => new SpendPointJson(p.Parts, p.Money, R(p.CountedG), R(p.CanCoolerK)))],
        answer.BeyondMoney is { } money ? Of(money) : null, answer.BeyondGrams is { } grams ? Of(grams) : null, answer.NotAllowed, answer.Unknown));

    static SpendStepJson Of(SpendStep step) => new(Of(step.Choice), step.MoreMoney, step.MoreK is { } k ? QuantilesJson.Of(k) : null);

    static SpendChoiceJson Of(SpendChoice c) => new(
        c.Parts, c.Money, R(c.MassG), R(c.CountedG), QuantilesJson.Of(c.CanCoolerK), QuantilesJson.Of(c.WindingCoolerK),
        c.Basis switch { SpendBasis.Driven => "driven", SpendBasis.AddedUp => "added up", SpendBasis.Predicted => "predicted", _ => "guessed" }, R(c.FitMin, 1), c.Soldering, c.Cutting, c.LapS is { } lap ? R(lap, 3) : null);

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>Conditions and limits.</summary>
internal sealed record SpendReferenceJson(double AmbientC, double DriveS, string Base, string Currency, decimal? Money, double? Grams, double FreeG);

/// <summary>A choice.</summary>
internal sealed record SpendChoiceJson(
    IReadOnlyList<string> Parts, decimal Money, double MassG, double CountedG, QuantilesJson CanCoolerK, QuantilesJson WindingCoolerK, string Basis, double FitMin, bool Soldering, bool Cutting,
    double? LapS);

/// <summary>A choice and what it brings over the one before.</summary>
internal sealed record SpendStepJson(SpendChoiceJson Choice, decimal MoreMoney, QuantilesJson? MoreK);

/// <summary>A point of the front.</summary>
internal sealed record SpendPointJson(IReadOnlyList<string> Parts, decimal Money, double CountedG, double CanCoolerK);
