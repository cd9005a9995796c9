using Coolproof.Advice.Gearing;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Rehearsal;
using Coolproof.Sampling;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Gearing;

public class GearSweepTests(ITestOutputHelper output)
{
    private static readonly GearRig Buggy = new(Track.OffRoad, false, Car.OffRoad, 2.6, BrushlessMotor.OfTurns(13.5), new(), new(24, 84, 30));
    private static readonly LapNote Noted = new(Buggy.Driven, 26.2, 6, 19, 6);
    private static readonly RaceEvidence Evidence = ((Judged)Judge.Of(DayGenerator.Day(7).Table, new())).Races!.Value;
    private static readonly GearQuestion Question = new(Buggy, new(18, 30, 84, 30, 30), new(28, 360) { BreakS = 600 }, RaceDemand.Of(95, "H", "SH", 0.2)) { Draws = 200 };

    [Fact]
    public void What_the_runs_noted_is_met_and_what_they_cannot_tell_keeps_its_doubt()
    {
        LapBelief belief = LapBelief.Of(Buggy, [Noted], 360);
        LapSurface surface = LapSurface.Of(belief, Buggy.Driven)!;
        LapFigures[] draws = [.. Enumerable.Range(0, 400).Select(i => surface.At(Normals(i)))];
        double lap = draws.Average(d => Math.Log(d.LapS)), charge = draws.Average(d => Math.Log(d.BatteryA));
        Assert.Equal(Math.Log(26.2), lap, 0.03);
        Assert.Equal(Math.Log(19), charge, 0.06);
        Assert.InRange(Sd(draws.Select(d => Math.Log(d.LapS))), 0.005, 0.03);
        Assert.InRange(Sd(draws.Select(d => Math.Log(d.IronW))), 0.15, 0.6);
        LapSurface wide = LapSurface.Of(LapBelief.Of(Buggy, [], 360), Buggy.Driven)!;
        Assert.True(Sd(Enumerable.Range(0, 400).Select(i => Math.Log(wide.At(Normals(i)).LapS))) > 0.1);
    }

    // Laps driven one by one at draws of what is believed, against those read off.
    [Fact]
    public void Read_off_laps_agree_with_laps_driven_one_by_one()
    {
        LapBelief belief = LapBelief.Of(Buggy, [Noted], 360);
        List<double> laps = [], gains = [], heats = [];
        LapSurface driven = LapSurface.Of(belief, Buggy.Driven)!;
        foreach (GearChoice choice in new GearChoice[] { new(20, 84, 30), new(28, 84, 30), new(24, 84, 45) })
        {
            LapSurface surface = LapSurface.Of(belief, choice)!;
            for (int i = 0; i < 60; i++)
            {
                double[] z = Normals(i);
                LapFigures exact = LapFigures.Of(belief.At(z).Lap(choice, belief.DrawnAh, 0.5)), exactDriven = LapFigures.Of(belief.At(z).Lap(Buggy.Driven, belief.DrawnAh, 0.5));
                LapFigures read = surface.At(z), readDriven = driven.At(z);
                laps.Add(Math.Abs(read.LapS / exact.LapS - 1));
                gains.Add(Math.Abs(read.LapS - readDriven.LapS - exact.LapS + exactDriven.LapS));
                heats.Add(Math.Abs(Math.Log(read.Copper25W / readDriven.Copper25W * exactDriven.Copper25W / exact.Copper25W)));
                heats.Add(Math.Abs(Math.Log(read.IronW / readDriven.IronW * exactDriven.IronW / exact.IronW)));
            }
        }
        output.WriteLine($"lap median {Median(laps):P2}, gain median {Median(gains):0.0000} s of 0.5, heat ratio median {Median(heats):P2}, nine tenths {At(heats, 0.9):P2}");
        Assert.True(Median(laps) < 0.01, $"{Median(laps)}");
        Assert.True(Median(gains) < 0.03, $"{Median(gains)}");
        Assert.True(Median(heats) < 0.01 && At(heats, 0.9) < 0.04, $"{Median(heats)} {At(heats, 0.9)}");
    }

    [Fact]
    public void The_quickest_safe_pinion_is_the_one_that_is_safe_and_none_safe_is_quicker()
    {
        GearAnswer answer = GearSweep.Of(Question, Evidence, [Noted], cancel: TestContext.Current.CancellationToken);
        Assert.Equal(Evidence.Options, answer.Options.Select(o => o.Option));
        Assert.All(answer.Gears, g => Assert.InRange(g.Choice.Pinion, 18, 30));
        foreach (OptionGears option in answer.Options)
        {
            output.WriteLine($"{option.Option}: {(option.Best is { } p ? answer.Gears[p].Choice : null)} hot {option.BestOnHotterDay} odds {string.Join(" ", option.Gears.Select(g => $"{100 * g.OddsOfAny:0}"))}");
            for (int i = 0; i < answer.Gears.Count; i++)
                if (option.Gears[i].OddsOfAny <= 0.2 && answer.Gears[i].PackLasts)
                    Assert.True(option.Best is { } best && answer.Gears[best].LapS.Q50 <= answer.Gears[i].LapS.Q50);
            if (option.Best is { } chosen)
                Assert.True(option.Gears[chosen].OddsOfAny <= 0.2);
            Assert.NotNull(option.Best);
            if (option.BestOnHotterDay is { } hot)
                Assert.True(answer.Gears[hot].LapS.Q50 >= answer.Gears[option.Best!.Value].LapS.Q50);
        }
        GearedHeat few = answer.Options[0].Gears[0], many = answer.Options[0].Gears[^1];
        Assert.True(many.PeakWindingC.Q50 > few.PeakWindingC.Q50 + 5);
    }

    [Fact]
    public void The_notebook_s_own_gearing_has_the_forecast_s_temperatures()
    {
        GearAnswer answer = GearSweep.Of(Question with { Card = new(24, 24, 84, 30, 30) }, Evidence, [Noted], cancel: TestContext.Current.CancellationToken);
        IReadOnlyList<OptionForecast> forecasts = Forecast.Of(Evidence.Thinned(200), Question.Scenario, Question.Demand, 1, coolDowns: false, TestContext.Current.CancellationToken);
        foreach ((OptionGears geared, OptionForecast forecast) in answer.Options.Zip(forecasts))
        {
            Assert.Equal(forecast.Stops[0].HighestCanC.Q50, geared.Gears[0].PeakCanC.Q50, 0.2);
            Assert.Equal(forecast.OddsOfAny, geared.Gears[0].OddsOfAny, 0.011);
        }
        Assert.Equal(0, answer.Gears[0].GainS.Q50, 1e-9);
    }

    // What pages show, against the sweep that drives forty points an option and draw.
    [Theory]
    [InlineData(6, 0.25, 0.012)]
    [InlineData(3, 1.0, 0.04)]
    public void Points_along_the_pinions_come_near_the_whole_sweep(int nodes, double withinK, double withinOdds)
    {
        GearQuestion asked = Question with { Card = Question.Card with { MostTimingDeg = 40 }, Draws = 60 };
        GearAnswer whole = GearSweep.Of(asked, Evidence, [Noted], cancel: TestContext.Current.CancellationToken);
        GearLaps laps = GearLaps.Of(asked.Rig, asked.Card, [Noted], asked.Scenario.RaceS, cancel: TestContext.Current.CancellationToken);
        GearAnswer along = GearAlong.Of(asked, Evidence, laps, nodes, hotter: true, TestContext.Current.CancellationToken);
        Assert.Equal(whole.Gears, along.Gears);
        Assert.Equal(whole.Driven, along.Driven);
        List<double> off = [], odds = [];
        foreach ((OptionGears exact, OptionGears read) in whole.Options.Zip(along.Options))
            foreach ((GearedHeat a, GearedHeat b) in exact.Gears.Zip(read.Gears))
            {
                odds.Add(Math.Abs(a.OddsOfAny - b.OddsOfAny));
                if (a.PeakWindingC.Q50 < 160) off.AddRange([Math.Abs(a.PeakCanC.Q50 - b.PeakCanC.Q50), Math.Abs(a.PeakWindingC.Q50 - b.PeakWindingC.Q50)]);
            }
        output.WriteLine($"{nodes} points: median {Median(off):0.000} K, nine tenths {At(off, 0.9):0.000} K, worst {off.Max():0.00} K; odds mean {odds.Average():0.0000}, worst {odds.Max():0.000}");
        Assert.True(At(off, 0.9) < withinK, $"{At(off, 0.9)} K");
        Assert.True(odds.Average() < withinOdds, $"{odds.Average()}");
        Assert.True(off.Count > 100);
    }

    [Fact]
    public void Nothing_outside_the_card_is_proposed()
    {
        GearCard card = new(16, 32, 84, 20, 43) { LeastRatio = 8, MostRatio = 9.5, Space = new(0.5, 26, 27.5) };
        Assert.Equal([20.0, 25, 30, 35, 40, 43], card.Timings());
        Assert.All(card.Pinions(2.6), p => Assert.InRange(2.6 * 84 / p, 8, 9.5));
        Assert.All(card.Pinions(2.6), p => Assert.InRange(0.25 * (84 + p), 25.9, 27.6));
        Assert.Null(card.Refusal(2.6));
        Assert.Contains("meshes with a spur of 84", (card with { Space = new(0.8, 26, 27.5) }).Refusal(2.6));
        Assert.Contains("rule book", (card with { LeastRatio = 20, MostRatio = null }).Refusal(2.6));
    }

    [Fact]
    public void Temperatures_of_several_gearings_meet_what_the_lap_says()
    {
        const int draws = 400;
        double[] lap = [.. Enumerable.Repeat(1.5, draws)];
        double[] plain = HeatTrust.Scales(null, null, lap, timing: false, 1);
        Assert.Equal(1, plain.Average(), 0.05);
        Assert.Equal(HeatTrust.GearingSd, Sd(plain), 0.03);
        double[] z = new double[draws];
        new RandomStream(3, 0).FillNormal(z);
        double[] met = Scales([.. z.Select(x => 2.25 + 0.15 * x)], lap); // temperatures say half as much again as the lap
        Assert.InRange(met.Average(), 1.25, 1.55);
        Assert.True(Sd(met) < 0.15);
        Assert.Equal(1, Scales([.. z.Select(x => 2.0 + 0.7 * x)], lap).Average(), 0.1); // they say nothing
    }

    [Fact]
    public void Where_temperatures_tell_the_slope_what_the_lap_leaves_open_of_it_does_not_matter()
    {
        const int draws = 400;
        double[] z = new double[draws], lapZ = new double[draws];
        new RandomStream(3, 0).FillNormal(z);
        new RandomStream(4, 0).FillNormal(lapZ);
        // The lap's slope is open to 0.4; temperatures know it to 0.05.
        double[] lap = [.. lapZ.Select(x => 1.8 + 0.4 * x)], slopes = [.. z.Select(x => 2.1 + 0.05 * x)];
        double[] whole = [.. Scales(slopes, lap).Zip(lap, (scale, l) => scale * l)];
        Assert.InRange(whole.Average(), 2.07, 2.11);
        Assert.InRange(Sd(whole), 0.04, 0.06);
        // A draw stays what it was among the draws: slope and heat at the notebook's gearing go together in the joint model.
        Assert.InRange(MathNet.Numerics.Statistics.Correlation.Pearson(whole, slopes), 0.95, 1);
    }

    [Fact]
    public void A_steep_slope_in_the_temperatures_tells_of_much_copper()
    {
        // More teeth: more copper heat, less iron heat. What comes of it says which of the two there is more of.
        GearLaps laps = GearLaps.Of(Question.Rig, Question.Card, [Noted], Question.Scenario.RaceS);
        double[] z = new double[Evidence.Draws.Count];
        new RandomStream(5, 0).FillNormal(z);
        double Share(double slope) => GearDraws.Of(Evidence with { GearingSlopes = [.. z.Select(x => slope + 0.1 * x)] }, laps.Grid, 200, 1).Evidence.Draws.Average(d => d.CopperShare);
        double plain = GearDraws.Of(Evidence, laps.Grid, 200, 1).Evidence.Draws.Average(d => d.CopperShare);
        output.WriteLine($"copper's share: {plain:F3}; slope of 0.3: {Share(0.3):F3}, of 2.3: {Share(2.3):F3}");
        Assert.True(Share(0.3) < plain && plain < Share(2.3));
        Assert.True(Share(2.3) - Share(0.3) > 0.1);
    }

    [Fact]
    public void What_is_believed_of_the_motor_does_not_go_with_the_pinions_that_the_card_lists()
    {
        double[] z = new double[Evidence.Draws.Count];
        new RandomStream(5, 0).FillNormal(z);
        RaceEvidence told = Evidence with { GearingSlopes = [.. z.Select(x => 2.5 + 0.1 * x)] };
        double Share(int least, int most) => GearDraws.Of(told, GearLaps.Of(Question.Rig, new(least, most, 84, 30, 30), [Noted], Question.Scenario.RaceS).Grid, 200, 1).Evidence.Draws.Average(d => d.CopperShare);
        Assert.Equal(Share(20, 25), Share(23, 29), 1e-9);
    }

    [Fact]
    public void Temperatures_that_contradict_the_lap_are_not_met_with_a_handful_of_draws()
    {
        double[] z = new double[Evidence.Draws.Count];
        new RandomStream(5, 0).FillNormal(z);
        LapGrid grid = GearLaps.Of(Question.Rig, Question.Card, [Noted], Question.Scenario.RaceS).Grid;
        GearDraws Met(double slope) => GearDraws.Of(Evidence with { GearingSlopes = [.. z.Select(x => slope + 0.05 * x)] }, grid, 200, 1);
        Assert.True(Met(-6).Contradicted);
        Assert.False(Met(2).Contradicted);
        Assert.Equal(Evidence.Draws.Average(d => d.CopperShare), Met(-6).Evidence.Draws.Average(d => d.CopperShare), 0.03);
    }

    [Fact]
    public void Draws_of_all_chains_are_taken_when_few_are_asked_for()
    {
        double[] z = new double[Evidence.Draws.Count];
        new RandomStream(5, 0).FillNormal(z);
        RaceEvidence told = Evidence with { GearingSlopes = [.. z.Select(x => 2 + 0.3 * x)] };
        IReadOnlyList<RaceDraw> taken = GearDraws.Of(told, GearLaps.Of(Question.Rig, Question.Card, [Noted], Question.Scenario.RaceS).Grid, 40, 1).Evidence.Draws;
        List<RaceDraw> all = [.. told.Draws];
        Assert.InRange(taken.Average(d => (double)all.IndexOf(d) / all.Count), 0.35, 0.65);
    }

    private static double[] Scales(double[] slopes, double[] lap) => HeatTrust.Scales(SlopeTold.Of(slopes, timing: false), slopes, lap, timing: false, 1);

    [Fact]
    public void A_lap_that_cannot_be_driven_is_said_so() =>
        Assert.Contains("get away", Assert.Throws<LapException>(() => GearSweep.Of(Question with { Rig = Buggy with { Car = Car.OffRoad with { Rolling = 2 } } }, Evidence, [])).Message);

    private static double[] Normals(int i)
    {
        double[] z = new double[LapUnknowns.Count];
        new RandomStream(11, i).FillNormal(z);
        return z;
    }

    private static double Sd(IEnumerable<double> values)
    {
        double[] all = [.. values];
        return Math.Sqrt(all.Sum(v => (v - all.Average()) * (v - all.Average())) / (all.Length - 1));
    }

    private static double Median(List<double> values) => At(values, 0.5);

    private static double At(List<double> values, double share)
    {
        values.Sort();
        return values[(int)(share * (values.Count - 1))];
    }
}
