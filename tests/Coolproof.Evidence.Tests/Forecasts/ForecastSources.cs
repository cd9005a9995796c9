using Coolproof.Evidence.Forecasts;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Forecasts;

/// <summary>What makes a forecast wide: each source of doubt turned off alone, on the same draws.</summary>
internal static class ForecastSources
{
    private const int Draws = 300;

    private sealed record Source(string Name, Func<RaceDraw, RaceDraw, Hyperparameters, RaceDraw> Draw, Func<RaceChance, RaceChance> Chance);

    private static readonly Source[] All =
    [
        new("nothing", (d, _, _) => d, c => c),
        new("doubt of the sds of days, runs and mountings", (d, _, h) => d with { DayHeatSd = h.DayHeatSd, RunHeatSd = h.LoadSd, MountingSd = h.MountingSd }, c => c),
        new("the day's heat", (d, _, _) => d, c => c with { DayHeat = 0 }),
        new("the runs' heat", (d, _, _) => d, c => c with { RunHeats = new double[c.RunHeats.Count] }),
        new("mounting", (d, _, _) => d, c => c with { Mounting = 0 }),
        new("the day's conductance", (d, _, _) => d, c => c with { DayConductance = 0 }),
        new("doubt of the slot", (d, m, _) => d with { SlotS = m.SlotS }, c => c),
        new("doubt of core to can", (d, m, _) => d with { CoreToCanPerS = m.CoreToCanPerS }, c => c),
        new("doubt of slot, copper's share and core to can", (d, m, _) => d with { SlotS = m.SlotS, CopperShare = m.CopperShare, CoreToCanPerS = m.CoreToCanPerS }, c => c),
        new("all that the notebook leaves open", (d, m, _) => m, c => c),
        new("all of another day", (d, _, _) => d, c => new(0, 0, 0, 0, 0, 0, 0.5, 0, 0, 0, 0, 0, 0, 0, new double[RaceScenario.MostRaces])),
    ];

    public static IReadOnlyList<string> Names => [.. All.Select(s => s.Name)];

    public static IReadOnlyList<(double CanK, double WindingK)> Widths(RaceEvidence evidence, RaceScenario scenario, int option, long seed, Hyperparameters told)
    {
        RaceDraw middle = Middle(evidence.Draws);
        evidence = evidence with { Draws = [.. evidence.Draws.Where((_, i) => i % (1 + evidence.Draws.Count / Draws) == 0)] };
        RaceChance[] chances = RaceChance.Of(evidence.Draws.Count, seed);
        return [.. All.Select(source =>
        {
            RaceEvidence without = evidence with { Draws = [.. evidence.Draws.Select(d => source.Draw(d, middle, told))] };
            RacePaths paths = RacePaths.Of(without, scenario, [.. chances.Select(source.Chance)], option);
            return (Width(paths.HighestsC(LimitedPart.Can, scenario.Races - 1)), Width(paths.AtStopC(LimitedPart.Winding, scenario.Races - 1)));
        })];
    }

    private static RaceDraw Middle(IReadOnlyList<RaceDraw> draws)
    {
        double Of(Func<RaceDraw, double> value) => Summaries.Of([.. draws.Select(value)]).Q50;
        return new(Of(d => d.CoreOverCan), Of(d => d.CoreToCanPerS), Of(d => d.WindingShare), Of(d => d.SlotS), Of(d => d.CopperShare), Of(d => d.LogHeat), Of(d => d.DayHeatSd),
            Of(d => d.RunHeatSd), Of(d => d.MountingSd),
            [.. draws[0].Options.Select((_, i) => new RaceOption(Of(d => d.Options[i].LogConductance), Of(d => d.Options[i].LogStoppedFanOn), Of(d => d.Options[i].LogStoppedFanOff)))]);
    }

    private static double Width(double[] values) => Summaries.Of(values) is var s ? s.Q95 - s.Q05 : 0;
}
