using Coolproof.Advice.Instruments;
using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Json;

/// <summary>`gun correct --json`, version 1 (docs/formats/gun.schema.json): °C, K.</summary>
internal sealed record GunCorrectJson(int Version, string Asked, double ReadC, double Setting, EmissivityJson Emissivity, double SurroundingsC, double ShareOff, double SurfaceC, double StandardUncertaintyK, double Q05C, double Q95C, string Trust);

/// <summary>Emissivity of a surface: its key, null where it was typed, and its range.</summary>
internal sealed record EmissivityJson(string? Surface, double Low, double High);

/// <summary>`gun check --json`, version 1.</summary>
internal sealed record GunCheckedJson(int Version, string Asked, string Gun, double Setting, double AirC, IReadOnlyList<GunPairJson> Pairs, bool TellsGain, EstimateJson Gain, double OffsetAtC, EstimateJson OffsetK, double Correlation, double? Misfit, IReadOnlyList<GunRightJson> Right);

/// <summary>One step of a check.</summary>
internal sealed record GunPairJson(string Way, IReadOnlyList<double> ShotsC, double ReadC, double TrueC, double? RepeatabilityK, double StandardUncertaintyK);

/// <summary>An estimate with its standard uncertainty by JCGM 100 and by JCGM 101, and the 95 % interval of the latter.</summary>
internal sealed record EstimateJson(double Estimate, double StandardUncertainty, double StandardUncertaintyMonteCarlo, double Low95, double High95);

/// <summary>What a number of the gun means.</summary>
internal sealed record GunRightJson(double ShownC, double TrueC, double StandardUncertaintyK);

/// <summary>`gun spot --json`, version 1: mm, K.</summary>
internal sealed record GunSpotJson(int Version, string Asked, double DistanceMm, double Ratio, double SpotMm, double TargetMm, string Shape, double ShareOff, double LossK, double BestWithinMm, bool SmallEnough);

/// <summary>`gun surfaces --json`, version 1.</summary>
internal sealed record GunSurfacesJson(int Version, string Asked, IReadOnlyList<SurfaceJson> Surfaces);

/// <summary>A surface.</summary>
internal sealed record SurfaceJson(string Key, string Words, double Low, double High, string Trust, string Source);

/// <summary>`gun probe --json`, version 1: mV or Ω.</summary>
internal sealed record GunProbeJson(int Version, string Asked, string Kind, double TemperatureC, double? MilliVolt, double? Ohm, double? JunctionC);

/// <summary>Texts of `gun --json`.</summary>
internal static class GunJson
{
    /// <summary>Of a corrected shot.</summary>
    public static string Of(ShotCorrection right, SurfaceEmissivity? known) => AdviceJson.Text(new GunCorrectJson(
        AdviceJson.CurrentVersion, "correct", R(right.Shot.ReadC), right.Shot.Setting, new(known?.Key, right.Shot.EmissivityLow, right.Shot.EmissivityHigh), R(right.Shot.SurroundingsC), R(right.Shot.ShareOff, 3),
        R(right.SurfaceC), R(right.ByChance.StandardUncertainty()), R(right.Range.Low), R(right.Range.High), Trust(known?.Trust ?? SurfaceTrust(right.Shot.EmissivityLow))));

    /// <summary>Of a check.</summary>
    public static string Of(GunCheckLine line, string gun, double setting, double airC) => AdviceJson.Text(new GunCheckedJson(
        AdviceJson.CurrentVersion, "check", gun, setting, R(airC),
        [.. line.Pairs.Select(p => new GunPairJson(new GunCheck(gun, p.Against, 0, 0).Way, [.. p.ShotsC.Select(s => R(s))], R(p.ReadC), R(p.TrueC), p.RepeatabilityK is { } s ? R(s) : null, R(p.Read.StandardUncertainty, 3)))],
        line.TellsGain, Estimate(line, 0, 5), GunCheckLine.PivotC, Estimate(line, 1, 3), R(line.ByLaw.Correlation(0, 1), 3), line.Misfit is { } misfit ? R(misfit) : null,
        [.. new[] { 30.0, 40, 50, 60, 70, 80, 90, 100 }.Select(shown => Right(line, shown))]));

    /// <summary>Of a spot.</summary>
    public static string Of(SpotSize s) => AdviceJson.Text(new GunSpotJson(
        AdviceJson.CurrentVersion, "spot", R(1000 * s.DistanceM, 1), s.Ratio, R(1000 * s.SpotM, 1), R(1000 * s.TargetM, 1), s.IsBand ? "band" : "round", R(s.ShareOff, 3), R(s.LossK), R(1000 * s.BestWithinM, 1), s.IsSmallEnough));

    /// <summary>Of all surfaces.</summary>
    public static string Surfaces() => AdviceJson.Text(new GunSurfacesJson(AdviceJson.CurrentVersion, "surfaces", [.. SurfaceEmissivity.All.Select(s => new SurfaceJson(s.Key, s.Words, s.Low, s.High, Trust(s.Trust), s.Source))]));

    /// <summary>Of a probe.</summary>
    public static string Probe(string kind, double celsius, double electric, double? junctionC) => AdviceJson.Text(new GunProbeJson(
        AdviceJson.CurrentVersion, "probe", kind, R(celsius, 3), kind == "pt100" ? null : R(electric, 4), kind == "pt100" ? R(electric, 4) : null, junctionC));

    /// <summary>What a gun can be trusted with on a surface of an emissivity.</summary>
    public static GunTrust SurfaceTrust(double emissivity) => new SurfaceEmissivity("", "", emissivity, emissivity, "").Trust;

    static string Trust(GunTrust trust) => trust switch { GunTrust.Shoot => "shoot", GunTrust.Correct => "correct", _ => "tape" };

    static GunRightJson Right(GunCheckLine line, double shownC)
    {
        var (celsius, u) = line.PutRight(shownC);
        return new(shownC, R(celsius), R(u));
    }

    static EstimateJson Estimate(GunCheckLine line, int output, int decimals)
    {
        var (low, high) = line.ByChance.Symmetric(0.95, output);
        return new(R(line.ByLaw.Values[output], decimals), R(line.ByLaw.StandardUncertainty(output), decimals), R(line.ByChance.StandardUncertainty(output), decimals), R(low, decimals), R(high, decimals));
    }

    static double R(double value, int decimals = 2) => AdviceJson.Rounded(value, decimals) ?? 0;
}

/// <summary>Gun checks in a file, version 1 (docs/formats/gun-checks.schema.json): what `compare --gun-checks` reads.</summary>
internal sealed record GunChecksJson(int Version, IReadOnlyList<GunCheckJson> GunChecks)
{
    /// <summary>As text.</summary>
    public static string Text(IReadOnlyList<GunCheck> checks) => AdviceJson.Text(new GunChecksJson(AdviceJson.CurrentVersion, [.. checks.Select(c => new GunCheckJson(c.Gun, c.Way, c.ReadC, c.TrueC, c.EmissivitySet))]));
}
