using System.Text.Json;
using System.Text.Json.Serialization;
using Coolproof.Evidence;
using Coolproof.Evidence.Earlier;

namespace Coolproof.Json;

/// <summary>What `compare --json` prints, version 1. °C, K, s and W/K, whatever is shown to people.</summary>
internal sealed record CompareJson(
    int Version, ReferenceJson Reference, IReadOnlyList<OptionJson> Options, IReadOnlyList<PairJson> Pairs, IReadOnlyList<DoubtJson> Doubt,
    SamplerJson Sampler, IReadOnlyList<string> Warnings, IReadOnlyList<string> Advice, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] EarlierJson? Earlier)
{
    /// <summary>The version of the contract.</summary>
    public const int CurrentVersion = 1;

    /// <summary>The verdict as text, with a line end. The same verdict gives the same text.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="earlier">What earlier days have added to it; null: it is from the table by itself.</param>
    /// <exception cref="ArgumentException">A number of the verdict is not finite: the message names it.</exception>
    public static string Text(Verdict verdict, EarlierEvidence? earlier = null) => JsonSerializer.Serialize(Of(verdict, earlier), CompareJsonContext.Printed.CompareJson) + "\n";

    static CompareJson Of(Verdict verdict, EarlierEvidence? earlier) => new(
        CurrentVersion,
        new ReferenceJson(Round(verdict.Fair.AmbientC, 2, "ambientC"), Round(verdict.Fair.DriveS, 1, "driveS"), verdict.Fair.Start),
        [.. verdict.Options.Select(OptionJson.Of)],
        [.. verdict.Pairs.Select(PairJson.Of)],
        DoubtJson.Of(verdict.Doubt),
        new SamplerJson(
            verdict.Sampler.Chains, verdict.Sampler.Draws, Round(verdict.Sampler.RHatMax, 4, "rHatMax"), Round(verdict.Sampler.EssMin, 0, "essMin"),
            verdict.Sampler.Divergences),
        verdict.Warnings, verdict.Advice, earlier is null ? null : EarlierJson.Of(earlier));

    /// <summary>A number rounded to decimals; zero never has a sign.</summary>
    internal static double Round(double value, int decimals, string what)
    {
        if (!double.IsFinite(value)) throw new ArgumentException($"{what} is {value}, and a verdict must hold finite numbers.", what);
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return rounded == 0 ? 0 : rounded;
    }
}

/// <summary>Fair conditions.</summary>
internal sealed record ReferenceJson(double AmbientC, double DriveS, string Start);

/// <summary>Mean, standard deviation and quantiles.</summary>
internal sealed record SummaryJson(double Mean, double Sd, double Q05, double Q25, double Q50, double Q75, double Q95)
{
    /// <summary>A summary rounded to decimals.</summary>
    public static SummaryJson Of(Summary s, int decimals, string what)
    {
        double Round(double value) => CompareJson.Round(value, decimals, what);
        return new SummaryJson(Round(s.Mean), Round(s.Sd), Round(s.Q05), Round(s.Q25), Round(s.Q50), Round(s.Q75), Round(s.Q95));
    }
}

/// <summary>One option.</summary>
internal sealed record OptionJson(
    string Name, int Runs, int Readings, [property: JsonPropertyName("peakCanC")] SummaryJson PeakCanC,
    [property: JsonPropertyName("peakWindingC")] SummaryJson PeakWindingC, SummaryJson RelativeConductance, SummaryJson WattsPerKelvin, double ProbabilityCoolest)
{
    /// <summary>One option of a verdict.</summary>
    public static OptionJson Of(OptionVerdict option) => new(
        option.Name, option.Runs, option.Readings,
        SummaryJson.Of(option.PeakCanC, 2, $"peakCanC of {option.Name}"), SummaryJson.Of(option.PeakWindingC, 2, $"peakWindingC of {option.Name}"),
        SummaryJson.Of(option.RelativeConductance, 4, $"relativeConductance of {option.Name}"),
        SummaryJson.Of(option.WattsPerKelvin, 4, $"wattsPerKelvin of {option.Name}"),
        CompareJson.Round(option.ProbabilityCoolest, 4, $"probabilityCoolest of {option.Name}"));
}

/// <summary>One pair on the can or on the winding.</summary>
internal sealed record PairJson(string A, string B, string On, SummaryJson DifferenceK, double ProbabilityACooler, string Call)
{
    /// <summary>One pair of a verdict.</summary>
    public static PairJson Of(PairVerdict pair) => new(
        pair.A, pair.B, pair.On == ComparedOn.Can ? "can" : "winding", SummaryJson.Of(pair.DifferenceK, 2, $"differenceK of {pair.A} and {pair.B}"),
        CompareJson.Round(pair.ProbabilityACooler, 4, $"probabilityACooler of {pair.A} and {pair.B}"),
        pair.Call switch
        {
            PairCall.Open => "open",
            PairCall.ACooler => "a-cooler",
            PairCall.BCooler => "b-cooler",
            PairCall.Same => "same",
            _ => throw new ArgumentOutOfRangeException(nameof(pair), pair.Call, "not a call"),
        });
}

/// <summary>A source of doubt and its share.</summary>
internal sealed record DoubtJson(string Source, double Share)
{
    /// <summary>Shares in ten-thousandths that still sum to 1: what rounding leaves over goes to the largest.</summary>
    public static IReadOnlyList<DoubtJson> Of(IReadOnlyList<DoubtShare> doubt)
    {
        if (doubt.Count == 0) return [];
        var parts = doubt.Select(share => (long)CompareJson.Round(share.Share * 10_000, 0, $"share of {share.Source}")).ToArray();
        var largest = Array.IndexOf(parts, parts.Max());
        parts[largest] += 10_000 - parts.Sum();
        return [.. doubt.Select((share, i) => new DoubtJson(share.Source, parts[i] / 10_000.0))];
    }
}

/// <summary>How the sampling went.</summary>
internal sealed record SamplerJson(int Chains, int Draws, [property: JsonPropertyName("rHatMax")] double RHatMax, double EssMin, int Divergences);
