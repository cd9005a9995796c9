using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A race day for people.</summary>
internal static class ForecastPage
{
    /// <summary>Line by line.</summary>
    /// <param name="evidence">The tests' draws.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="demand">Limits and accepted odds.</param>
    /// <param name="forecasts">Each option.</param>
    /// <param name="earlier">What is said of earlier days; empty: none are in it.</param>
    /// <param name="degrees">Degrees of the person.</param>
    /// <param name="width">Cells of a line.</param>
    public static IEnumerable<string> Lines(
        RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, IReadOnlyList<OptionForecast> forecasts, IReadOnlyList<string> earlier, DegreeWords degrees, int width)
    {
        List<string> said = [Sentence(scenario, demand, forecasts, degrees), .. earlier];
        said.AddRange(Wider(evidence, scenario));
        foreach (string line in said.SelectMany(s => Cells.Wrap(s, width))) yield return line;
        yield return "";
        RaceLimit[] limits = [.. demand.Limits];
        OptionForecast[] order = [.. SafestFirst(forecasts)];
        string[][] warmth =
        [
            ["", $"can {degrees.Unit}", $"winding {degrees.Unit}", $"magnet {degrees.Unit}", "cooled after"],
            .. order.Select(f => new[]
            {
                Cells.Clean(f.Option), degrees.MiddleAndRange(f.Stops[^1].HighestCanC), degrees.MiddleAndRange(f.Stops[^1].HighestWindingC), degrees.MiddleAndRange(f.Stops[^1].HighestMagnetC), Cooled(f.CoolMin),
            }),
        ];
        foreach (string line in TextColumns.Lines(warmth, [false, true, true, true, true], width)) yield return line;
        yield return "";
        string[][] odds =
        [
            ["odds of passing", .. limits.Select(l => $"{l.PartName} {degrees.Say(l.LimitC)}"), "any"],
            .. order.Select(f => f.Limits.Select(Odds).Prepend(Cells.Clean(f.Option)).Append(InHundred(f.OddsOfAny)).ToArray()),
        ];
        foreach (string line in TextColumns.Lines(odds, [false, .. limits.Select(_ => true), true], width)) yield return line;
        yield return "";
        if (order.Any(f => f.ToBeSafe is not null))
        {
            string[][] changes =
            [
                [$"to come down to {100 * demand.AcceptedOdds:0} in 100", "a race of", "or air of", "or heat of"],
                .. order.Where(f => f.ToBeSafe is not null).Select(f => Change(f, degrees)),
            ];
            foreach (string line in TextColumns.Lines(changes, [false, true, true, true], width)) yield return line;
            yield return "";
        }
        string last = $"Highest value from the start{(scenario.Races > 1 ? $" of race {scenario.Races}" : "")} on with the soak after the stop, and the range that holds it 9 times in 10; minutes are from the first start. Heat is against the tests', as by gearing, timing or pace. "
            + $"{string.Join("; ", limits.Select(l => $"{l.PartName}: {l.Reason}"))}. The maker's figures go first. What the speed controller does is not forecast: read it and keep to its own limit.";
        foreach (string line in Cells.Wrap(last, width)) yield return line;
        foreach (string line in Cells.Wrap("Hot can, fingers off; what is proposed must be within the class rules: check the rule book.", width)) yield return line;
    }

    /// <summary>The answer in a sentence or two.</summary>
    public static string Sentence(RaceScenario scenario, RaceDemand demand, IReadOnlyList<OptionForecast> forecasts, DegreeWords degrees)
    {
        string day = $"{(scenario.Races > 1 ? $"After {scenario.Races} races of {Minutes(scenario.RaceS)} with {Minutes(scenario.BreakS)} between" : $"In a race of {Minutes(scenario.RaceS)}")} at {degrees.Say(scenario.AirC, 0)}";
        OptionForecast safest = SafestFirst(forecasts).First();
        string[] good = [.. forecasts.Where(f => f.OddsOfAny <= demand.AcceptedOdds).OrderBy(f => f.Stops[^1].HighestCanC.Q50).Select(f => Cells.Clean(f.Option))];
        return good.Length switch
        {
            0 => $"{day} no option stays under every limit with the odds that you accept ({100 * demand.AcceptedOdds:0} in 100): the {Cells.Clean(safest.Option)} comes nearest, {InHundred(safest.OddsOfAny)} to pass one.",
            1 => $"{day} only the {good[0]} stays under every limit with the odds that you accept ({InHundred(safest.OddsOfAny)} to pass one).",
            _ when good.Length == forecasts.Count => $"{day} every option stays under every limit with the odds that you accept ({100 * demand.AcceptedOdds:0} in 100).",
            _ => $"{day} these stay under every limit with the odds that you accept ({100 * demand.AcceptedOdds:0} in 100), coolest first: {string.Join(", ", good)}.",
        };
    }

    /// <summary>Where the race day lies beyond what the tests tell, a sentence each.</summary>
    public static IEnumerable<string> Wider(RaceEvidence evidence, RaceScenario scenario)
    {
        if (scenario.RaceS > evidence.LongestDriveS * 1.05)
            yield return $"No test was as long: the longest drive took {Minutes(evidence.LongestDriveS)}, so the intervals are wider.";
        if (scenario.HeatFactor > 1) yield return "No test had as much heat, so the intervals are wider.";
        if (scenario.Wind is { } wind && !evidence.Winds.Contains(wind)) yield return "No test had this wind, so the intervals are wider.";
        if (scenario.Sky == Notebook.Sky.Sun && evidence.SunShare is null or 0) yield return "No test was noted as driven in the sun, so the sun's heat is only known roughly and the intervals are wider.";
    }

    /// <summary>What, changed alone, would do, in words.</summary>
    public static string Changes(OptionForecast f, DegreeWords degrees)
    {
        string[] ways =
        [
            .. f.ToBeSafe?.RaceS is { } seconds ? [$"a race of {Minutes(Math.Floor(seconds / 5) * 5)}"] : (string[])[],
            .. f.ToBeSafe?.AirC is { } air ? [$"air of {degrees.Say(Math.Floor(air))}"] : (string[])[],
            .. f.ToBeSafe?.HeatFactor is { } heat ? [$"{Math.Floor(100 * heat):0} % of the tests’ heat (gearing, pace, timing within the class rules)"] : (string[])[],
        ];
        return ways.Length == 0 ? "neither a shorter race nor cooler air nor less heat alone does, within reason." : $"{string.Join(", or ", ways)}.";
    }

    /// <summary>Odds in words.</summary>
    public static string InWords(double odds) => odds switch { < 0.02 => "hardly", <= 0.1 => "unlikely", <= 0.4 => "can happen", <= 0.6 => "about even", <= 0.9 => "likely", _ => "nearly sure" };

    /// <summary>Like "5 (4 to 7) min".</summary>
    public static string MiddleMinutes(Summary minutes) => $"{minutes.Q50:0} ({minutes.Q05:0} to {minutes.Q95:0}) min";

    /// <summary>Least likely to pass a limit first.</summary>
    public static IEnumerable<OptionForecast> SafestFirst(IReadOnlyList<OptionForecast> forecasts) => forecasts.OrderBy(f => f.OddsOfAny).ThenBy(f => f.Stops[^1].HighestCanC.Q50);

    static string[] Change(OptionForecast f, DegreeWords degrees) =>
    [
        Cells.Clean(f.Option),
        f.ToBeSafe?.RaceS is { } seconds ? Minutes(Math.Floor(seconds / 5) * 5) : "–",
        f.ToBeSafe?.AirC is { } air ? degrees.Say(Math.Floor(air)) : "–",
        f.ToBeSafe?.HeatFactor is { } heat ? $"{Math.Floor(100 * heat):0} %" : "–",
    ];

    static string Odds(LimitOdds odds) => odds.MinutesTo is { } minutes && odds.Odds >= 0.05 ? $"{InHundred(odds.Odds)} ({minutes.Q50:0} min)" : InHundred(odds.Odds);

    /// <summary>Minutes until it has cooled.</summary>
    public static string Cooled(Summary? minutes) => minutes is null ? "" : minutes.Q95 >= Forecast.LongestCoolMin ? $"{minutes.Q50:0} (over {minutes.Q05:0}) min" : $"{minutes.Q50:0} ({minutes.Q05:0} to {minutes.Q95:0}) min";

    /// <summary>Like "12 in 100".</summary>
    public static string InHundred(double odds) => odds < 0.005 ? "under 1 in 100" : odds > 0.995 ? "over 99 in 100" : $"{100 * odds:0} in 100";

    static string Minutes(double seconds) => seconds % 60 == 0 ? $"{seconds / 60:0} min" : $"{(int)(seconds / 60)}:{seconds % 60:00} min";
}
