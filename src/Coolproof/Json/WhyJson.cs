using Coolproof.Evidence.Causes;
using Coolproof.Notebook;

namespace Coolproof.Json;

/// <summary>`why --json`, version 1 (docs/formats/why.schema.json): °C and K.</summary>
internal sealed record WhyJson(int Version, WhySideJson A, WhySideJson B, double ReadK, IReadOnlyList<WhyPartJson> Parts)
{
    // The parts' means must sum to the whole within 1e-9, so they are not cut short.
    const int WholeDecimals = 10, ShownDecimals = 3;

    /// <summary>As text.</summary>
    public static string Text(ReadingsTable table, RunsNamed a, RunsNamed b, RunDifference difference) => AdviceJson.Text(new WhyJson(
        AdviceJson.CurrentVersion, Side(table, a, difference.ReadA), Side(table, b, difference.ReadB), R(difference.ReadK, WholeDecimals),
        [.. difference.Parts.Select(p => new WhyPartJson(Word(p.Cause), R(p.DifferenceK.Mean, WholeDecimals), R(p.DifferenceK.Sd), R(p.DifferenceK.Q05), R(p.DifferenceK.Q50), R(p.DifferenceK.Q95)))]));

    static WhySideJson Side(ReadingsTable table, RunsNamed side, double readC) =>
        new(side.Name, R(readC), [.. side.Runs.Select(i => new WhyRunJson(table.Runs[i].Day, table.Runs[i].Name, table.Runs[i].Option))]);

    static string Word(Cause cause) => cause switch
    {
        Cause.Air => "air",
        Cause.Warmth => "warmth",
        Cause.Length => "length",
        Cause.Driver => "driver",
        Cause.Surface => "surface",
        Cause.Gearing => "gearing",
        Cause.Timing => "timing",
        Cause.Day => "day",
        Cause.Option => "option",
        Cause.Mounting => "mounting",
        Cause.Reading => "reading",
        Cause.Load => "load",
        _ => "rest",
    };

    static double R(double value, int decimals = ShownDecimals) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>A run, or the runs of a day.</summary>
internal sealed record WhySideJson(string Name, double ReadC, IReadOnlyList<WhyRunJson> Runs);

/// <summary>One run as the table names it.</summary>
internal sealed record WhyRunJson(string Day, string Run, string Option);

/// <summary>What one cause makes, first less second, K.</summary>
internal sealed record WhyPartJson(string Cause, double MeanK, double SdK, double Q05K, double Q50K, double Q95K);
