using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pictures.Tests;

/// <summary>Options over pinions with made-up numbers: nothing measured.</summary>
internal static class Gears
{
    public static RaceLimit Limit(double celsius) => new(LimitedPart.Can, celsius, "your limit");

    /// <summary>Six options, hotter with each tooth; the first ones pass 85 °C early, the last two nowhere.</summary>
    public static GearLine[] Six() => [.. new[] { 70.0, 66, 62, 58, 52, 51.5 }.Select((middle, i) => Of($"{(i == 4 ? "Twin 30 mm fans in a printed duct" : $"Option {i + 1}")}", middle, 85))];

    /// <summary>One pinion, two options, both too hot.</summary>
    public static GearLine[] Hot() => [new("Bare can", [new(24, 26.2, Samples.Normal(90, 4), false)], null), new("Blower", [new(24, 26.2, Samples.Normal(80, 4), false)], null)];

    public static GearLine Of(string name, double middle, double limit)
    {
        GearSpot[] spots = [.. Enumerable.Range(18, 13).Select(teeth => new GearSpot(teeth, 27 - 0.12 * (teeth - 18), Samples.Normal(middle + 3.5 * (teeth - 22), 4), middle + 3.5 * (teeth - 22) < limit - 5))];
        int best = Array.FindLastIndex(spots, s => s.Accepted);
        return new(name, spots, best < 0 ? null : best);
    }
}
