using Coolproof.Evidence.Forecasts;

namespace Coolproof.Pictures.Tests;

/// <summary>Race days with made-up numbers: warming and cooling by plain exponentials, nothing measured.</summary>
internal static class Races
{
    private const double RaceS = 360, BreakS = 1200, AirC = 36;

    public static RaceScenario Day(int races) => new(AirC, RaceS) { Races = races, BreakS = BreakS };

    /// <summary>Odds about the day: between hardly and nearly sure.</summary>
    public static RaceMap Map() => new("Clamp with 25 mm fan", [31, 36, 41], [270, 360, 450], [[0.001, 0.05, 0.12], [0.12, 0.3, 0.4], [0.4, 0.95, 0.999]]);

    public static OptionForecast Of(int races, double canLimitC, double windingLimitC, string option = "Clamp with 25 mm fan")
    {
        const double period = RaceS + BreakS;
        double[] seconds = [.. Enumerable.Range(0, races * 52 + 1).Select(i => i * period / 52)];
        double Rise(double s) => s % period <= RaceS ? 1 - Math.Exp(-(s % period) / 250) : (1 - Math.Exp(-RaceS / 250)) * Math.Exp(-(s % period - RaceS) / 500);
        Evidence.Summary Part(double s, double most) => Samples.Normal(AirC + most * Rise(s), 0.4 + 4 * Rise(s));
        RaceStop Stop(int race) => new(race, Part(RaceS, 50), Part(RaceS, 78), Part(RaceS, 52), Part(RaceS, 79), Part(RaceS, 60));
        RaceLimit[] limits = [new(LimitedPart.Can, canLimitC, "your limit"), new(LimitedPart.Winding, windingLimitC, "class"), new(LimitedPart.Magnet, 100, "grade")];
        return new(option, seconds, [.. seconds.Select(s => Part(s, 50))], [.. seconds.Select(s => Part(s, 78))], [.. seconds.Select(s => Part(s, 60))],
            [.. Enumerable.Range(1, races).Select(Stop)], [.. limits.Select(l => new LimitOdds(l, 0.2, null))], 0.3, Samples.Normal(40, 5), null);
    }
}
