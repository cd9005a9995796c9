using System.Globalization;
using Coolproof.Advice.Gearing;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Rehearsal;
using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Gearing;

/// <summary>A sweep and a forecast for another pinion beside what is true. Numbers that don't exist (no choice, no other pinion) are NaN.</summary>
/// <param name="Seed">Number of the notebook.</param>
/// <param name="Question">Which question put to it.</param>
/// <param name="Evenings">Its evenings.</param>
/// <param name="Pinions">How many pinions it was driven with.</param>
/// <param name="Accepted">Odds of passing a limit that were accepted.</param>
/// <param name="Pick">Place of the quickest safe choice by the sweep.</param>
/// <param name="BrutePick">The same by brute force.</param>
/// <param name="PickLater">Brute force's lap time of the sweep's choice less that of its own, s.</param>
/// <param name="Told">Odds of the sweep's choice as it tells them.</param>
/// <param name="Brute">The same odds by brute force.</param>
/// <param name="True">Its true odds: races by the full model at the truth.</param>
/// <param name="OddsOff">Mean over all choices of the odds' difference from brute force.</param>
/// <param name="LapOff">The largest difference of median lap times over all choices, relative.</param>
/// <param name="Can05">Highest can with a pinion that no run was driven with, forecast, °C: 5 %.</param>
/// <param name="Can50">50 %.</param>
/// <param name="Can95">95 %.</param>
/// <param name="TrueCanC">As it came.</param>
/// <param name="Winding05">Likewise the highest winding, °C: 5 %.</param>
/// <param name="Winding50">50 %.</param>
/// <param name="Winding95">95 %.</param>
/// <param name="TrueWindingC">As it came.</param>
/// <param name="IdealCanK">
/// Width of the can's 90 % interval, K, to somebody who knows motor, option, gun, lap and how the motor answers to another pinion, but of the mean heat and conductance only what the notebook's evenings show.
/// </param>
/// <param name="IdealWindingK">Likewise of the winding.</param>
/// <param name="CanReaderWindingK">Of the winding, to somebody who knows all that but slot and copper's share of the heat.</param>
/// <param name="LogHeatOff">Log of the pinion's heat over the notebook's: middle of what is told less the truth.</param>
/// <param name="HeatSd">Its sd as told.</param>
/// <param name="OwnCanK">Width of the can's interval with the notebook's own pinion, K.</param>
internal sealed record GearCase(
    double Seed, double Question, double Evenings, double Pinions, double Accepted, double Pick, double BrutePick, double PickLater, double Told, double Brute, double True, double OddsOff, double LapOff,
    double Can05, double Can50, double Can95, double TrueCanC, double Winding05, double Winding50, double Winding95, double TrueWindingC,
    double IdealCanK, double IdealWindingK, double CanReaderWindingK, double LogHeatOff, double HeatSd, double OwnCanK)
{
    private const int TrueRaces = 400, IdealRaces = 160;

    /// <summary>Names of the columns.</summary>
    public static string Head => string.Join(',', typeof(GearCase).GetConstructors()[0].GetParameters().Select(p => p.Name));

    /// <summary>One row.</summary>
    public string Line => string.Join(',', Values.Select(v => v.ToString("G7", CultureInfo.InvariantCulture)));

    private double[] Values =>
    [
        Seed, Question, Evenings, Pinions, Accepted, Pick, BrutePick, PickLater, Told, Brute, True, OddsOff, LapOff, Can05, Can50, Can95, TrueCanC, Winding05, Winding50, Winding95, TrueWindingC,
        IdealCanK, IdealWindingK, CanReaderWindingK, LogHeatOff, HeatSd, OwnCanK,
    ];

    /// <summary>Sweeps a notebook and lets its races come.</summary>
    /// <param name="book">The notebook.</param>
    /// <param name="asked">Which question: another air, limit, odds accepted and other pinion.</param>
    /// <param name="draws">Draws of the sweep and of brute force.</param>
    /// <param name="laps">Laps that brute force drove for other questions to the notebook.</param>
    public static GearCase Of(GearNotebook book, int asked, int draws, Dictionary<GearChoice, LapFigures[]> laps)
    {
        RandomStream chance = new(book.Seed, 0x77 + asked);
        double accepted = new[] { 0.05, 0.1, 0.2 }[(int)(3 * chance.NextUniform())];
        RaceScenario scenario = new(15 + 23 * chance.NextUniform(), GearNotebook.RaceS) { BreakS = 600 };
        // A limit that is in question, placed by the forecast alone: one placed by the truth would give it away.
        Summary own = Forecast.Of(book.Evidence.Thinned(draws), scenario, new([], 1), book.Seed, coolDowns: false)[0].Stops[0].HighestCanC;
        RaceDemand demand = RaceDemand.Of(own.Q50 + 4 + 8 * chance.NextNormal(), "H", "SH", accepted);
        GearQuestion question = new(book.Rig, new(20, 29, 84, 25, 35), scenario, demand) { Draws = draws, Seed = book.Seed };
        GearAnswer answer = GearSweep.Of(question, book.Evidence, book.Notes);
        GearChoice[] choices = [.. answer.Gears.Select(g => g.Choice)];
        OptionGears option = answer.Options[0];
        GearLaps driven = GearLaps.Of(question.Rig, question.Card, book.Notes, scenario.RaceS);
        GearDraws taken = GearDraws.Of(book.Evidence, driven.Grid, draws, book.Seed);
        SweepOneByOne brute = SweepOneByOne.Of(question, taken, driven.Belief, taken.Contradicted ? (null, null) : GearDraws.Told(book.Evidence), driven.Grid.Span, choices, laps);
        int? pick = option.Best;
        GearCase shown = Shown(book, scenario, answer, chance);
        return shown with
        {
            Question = asked,
            Accepted = accepted,
            Pick = pick ?? double.NaN,
            BrutePick = brute.Best ?? double.NaN,
            PickLater = pick is { } p && brute.Best is { } b ? brute.LapS[p] - brute.LapS[b] : double.NaN,
            Told = pick is { } q ? option.Gears[q].OddsOfAny : double.NaN,
            Brute = pick is { } r ? brute.Odds[r] : double.NaN,
            True = pick is { } s && book.Truly(choices[s]) is { } gear ? TrueOdds(book, gear, scenario, demand, chance) : double.NaN,
            OddsOff = Enumerable.Range(0, choices.Length).Average(i => Math.Abs(option.Gears[i].OddsOfAny - brute.Odds[i])),
            LapOff = Enumerable.Range(0, choices.Length).Max(i => Math.Abs(answer.Gears[i].LapS.Q50 / brute.LapS[i] - 1)),
            OwnCanK = own.Q95 - own.Q05,
        };
    }

    // Temperatures with a pinion that no run was driven with, beside what came and what an ideal observer could have said.
    private static GearCase Shown(GearNotebook book, RaceScenario scenario, GearAnswer answer, RandomStream chance)
    {
        GearChoice other = book.Rig.Driven with { Pinion = book.OtherPinions[(int)(book.OtherPinions.Count * chance.NextUniform())] };
        GearCase none = new(book.Seed, 0, book.Evenings, book.Laps.Pinions.Count, 0, 0, 0, 0, 0, 0, 0, 0, 0, double.NaN, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);
        int at = answer.Gears.ToList().FindIndex(g => g.Choice == other);
        if (at < 0 || book.Truly(other) is not { } gear)
            return none;
        double ofDays = Math.Sqrt(1 + 1.0 / book.Evenings);
        TrueStop came = book.Come(gear, scenario, chance, 1);
        TrueStop[] ideal = [.. Enumerable.Range(0, IdealRaces).Select(_ => book.Come(gear, scenario, chance, ofDays))];
        TrueStop[] canReader = [.. Enumerable.Range(0, IdealRaces).Select(i => book.Come(gear, scenario, chance, ofDays, book.Day.Truth.WithOtherWinding(book.Seed * IdealRaces + i)))];
        (Summary can, Summary winding, Summary heat) = (answer.Options[0].Gears[at].PeakCanC, answer.Options[0].Gears[at].PeakWindingC, answer.Gears[at].Heat);
        double share = book.Day.Truth.Hyperparameters.CopperShare, trueHeat = share * gear.Copper + (1 - share) * gear.Iron;
        return none with
        {
            Can05 = can.Q05,
            Can50 = can.Q50,
            Can95 = can.Q95,
            TrueCanC = came.HighestCanC,
            Winding05 = winding.Q05,
            Winding50 = winding.Q50,
            Winding95 = winding.Q95,
            TrueWindingC = came.WindingC,
            IdealCanK = Width(ideal.Select(s => s.HighestCanC)),
            IdealWindingK = Width(ideal.Select(s => s.WindingC)),
            CanReaderWindingK = Width(canReader.Select(s => s.WindingC)),
            LogHeatOff = Math.Log(heat.Q50 / trueHeat),
            HeatSd = Math.Log(heat.Q95 / heat.Q05) / 3.29,
        };
    }

    private static double TrueOdds(GearNotebook book, TrueGear gear, RaceScenario scenario, RaceDemand demand, RandomStream chance) => Enumerable.Range(0, TrueRaces).Count(_ =>
    {
        TrueStop stop = book.Come(gear, scenario, chance, 1);
        return demand.Limits.Any(limit => limit.LimitC < limit.Part switch { LimitedPart.Can => stop.HighestCanC, LimitedPart.Winding => stop.WindingC, _ => stop.HighestRotorC });
    }) / (double)TrueRaces;

    private static double Width(IEnumerable<double> values) => Summaries.Of([.. values]) is var s ? s.Q95 - s.Q05 : 0;
}
