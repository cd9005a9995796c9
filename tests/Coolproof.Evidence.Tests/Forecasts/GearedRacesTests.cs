using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;
using Coolproof.Thermal;

namespace Coolproof.Evidence.Tests.Forecasts;

public class GearedRacesTests
{
    private static readonly RaceEvidence Evidence = ((Judged)Judge.Of(DayGenerator.Day(7).Table, new())).Races!.Value.Thinned(100);
    private static readonly RaceScenario Race = new(33, 480) { BreakS = 600 };

    private static IReadOnlyList<RaceHeat[]> Even(params RaceHeat[] heats) => [.. heats.Select(heat => Enumerable.Repeat(heat, Evidence.Draws.Count).ToArray())];

    [Fact]
    public void The_heat_of_the_tests_is_the_forecast_s()
    {
        RaceDemand demand = RaceDemand.Of(85, "B", "SH", 0.1);
        IReadOnlyList<GearedPeaks> geared = GearedRaces.Of(Evidence, Race, Even(RaceHeat.AsTested, new(1.7, 0.9)), 1);
        foreach ((GearedPeaks peaks, OptionForecast forecast) in geared.Zip(Forecast.Of(Evidence, Race, demand, 1, coolDowns: false)))
        {
            Assert.Equal(forecast.Option, peaks.Option);
            Assert.Equal(forecast.Stops[0].HighestCanC.Q50, peaks.Summary(LimitedPart.Can, 0).Q50, 0.1);
            Assert.Equal(forecast.Stops[0].HighestWindingC.Q95, peaks.Summary(LimitedPart.Winding, 0).Q95, 0.2);
            Assert.Equal(forecast.Stops[0].HighestMagnetC.Q05, peaks.Summary(LimitedPart.Magnet, 0).Q05, 0.1);
            Assert.Equal(forecast.OddsOfAny, peaks.OddsOfAny(demand, 0), 0.011);
        }
    }

    // Pinions and timings of a whole sweep: copper from half to three times the tests', iron from 0.7 to 1.4.
    [Fact]
    public void The_surface_agrees_with_races_driven_one_by_one()
    {
        RaceHeat[] heats = [.. Enumerable.Range(0, 40).Select(i => new RaceHeat(0.5 * Math.Pow(6, i % 8 / 7.0), 0.7 * Math.Pow(2, i / 8 / 4.0)))];
        IReadOnlyList<GearedPeaks> geared = GearedRaces.Of(Evidence, Race, Even(heats), 1);
        List<double> off = [];
        for (int draw = 0; draw < Evidence.Draws.Count; draw += 5)
            for (int heat = 0; heat < heats.Length; heat++)
                foreach (LimitedPart part in Enum.GetValues<LimitedPart>())
                {
                    double driven = GearedRaces.HighestC(Evidence, Race, heats[heat], part, 1, draw, 1);
                    if (driven < 160) // beyond, copper begins to run away, and every usual limit is passed
                        off.Add(Math.Abs(geared[1].Of(part, heat)[draw] - driven));
                }
        off.Sort();
        Assert.True(off[off.Count / 2] < 0.1, $"median {off[off.Count / 2]:0.000} K");
        Assert.True(off[(int)(0.99 * off.Count)] < 1, $"99 % {off[(int)(0.99 * off.Count)]:0.000} K, most {off[^1]:0.000} K");
    }

    [Fact]
    public void More_copper_warms_the_winding_above_all()
    {
        IReadOnlyList<GearedPeaks> geared = GearedRaces.Of(Evidence, Race, Even(RaceHeat.AsTested, new(1.3, 1), new(1, 1.3)), 1);
        foreach (GearedPeaks peaks in geared)
        {
            double winding = peaks.Summary(LimitedPart.Winding, 1).Q50 - peaks.Summary(LimitedPart.Winding, 0).Q50, can = peaks.Summary(LimitedPart.Can, 1).Q50 - peaks.Summary(LimitedPart.Can, 0).Q50;
            Assert.True(winding > can && can > 1);
            Assert.True(peaks.Summary(LimitedPart.Can, 2).Q50 > peaks.Summary(LimitedPart.Can, 0).Q50 + 1);
        }
    }

    [Fact]
    public void Heats_of_another_number_of_draws_are_refused()
    {
        Assert.Throws<ArgumentException>(() => GearedRaces.Of(Evidence, Race, [[RaceHeat.AsTested]], 1));
        Assert.Throws<ArgumentException>(() => GearedRaces.Of(Evidence, Race with { AirC = 80 }, Even(RaceHeat.AsTested), 1));
    }

    // Rule of thumb (common practice, no source): one tooth of the pinion more or less moves a 1:10 buggy's motor by 2 to 6 K. The demo buggy: 24 and 84 teeth, six minutes, a motor and its
    // cooling as the priors have them; its charge put back is some 1,900 mAh, and that is the load of the lap here.
    [Theory]
    [InlineData(23, 24)]
    [InlineData(24, 25)]
    [InlineData(25, 26)]
    public void One_tooth_moves_the_demo_buggy_s_motor_by_2_to_6_K(int fewer, int more)
    {
        Car buggy = Car.OffRoad with { Rolling = 0.24, Scrub = 0.35 };
        DrivenRace Driven(int pinion) => DrivenRace.Of(Track.OffRoad, buggy, new(pinion, 84, 2.6), BrushlessMotor.OfTurns(13.5), 30, new(), 360, 80);
        DrivenRace a = Driven(fewer), b = Driven(more), asTested = Driven(24);
        Assert.InRange(asTested.ChargeAh, 1.6, 2.1);
        double watts = asTested.Lap.Copper25W + asTested.Lap.IronW;
        Assert.InRange(watts, 25, 60);

        double CanC(DrivenRace race)
        {
            Constants motor = new()
            {
                Rho = Math.Exp(Priors.CoreOverCan.Mean),
                Kappa = Math.Exp(Priors.CoreToCan.Mean),
                Share = Math.Exp(Priors.WindingShare.Mean),
                Slot = Math.Exp(Priors.Slot.Mean),
                Copper = race.Lap.Copper25W / (race.Lap.Copper25W + race.Lap.IronW),
                LogHeat = Math.Log((race.Lap.Copper25W + race.Lap.IronW) / Priors.CoreCapacity),
            };
            return FairDrive.Peak(motor, Priors.Conductance.Mean, 28, 360).CanC;
        }
        Assert.InRange(CanC(b) - CanC(a), 2, 6); // as a gun sees it
    }
}
