using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Model;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Forecasts;

public class RaceDayTests
{
    private static readonly Judged Day = (Judged)Judge.Of(DayGenerator.Day(7).Table, new());
    private static readonly RaceDemand Demand = RaceDemand.Of(75, "H", "SH", 0.1);

    /// <summary>A race like a test at the tests' air must end where the verdict has the fair peak, but for what a new day adds.</summary>
    [Fact]
    public void A_race_like_a_test_ends_where_the_verdict_says()
    {
        RaceEvidence evidence = Day.Races!.Value;
        IReadOnlyList<OptionForecast> forecasts = Forecast.Of(evidence, new(evidence.Fair.AmbientC, evidence.Fair.DriveS), Demand, 1);
        foreach (OptionForecast forecast in forecasts)
        {
            OptionVerdict said = Day.Verdict.Options.Single(o => o.Name == forecast.Option);
            // A new day spreads the heat, and a magnet warmer than half-way through a test asks for more current: both push the middle up a little.
            double air = evidence.Fair.AmbientC;
            Assert.Equal(said.PeakCanC.Q50, forecast.Stops[0].CanC.Q50, 0.04 * (said.PeakCanC.Q50 - air));
            Assert.Equal(said.PeakWindingC.Q50, forecast.Stops[0].WindingC.Q50, 0.05 * (said.PeakWindingC.Q50 - air));
            Assert.True(forecast.Stops[0].CanC.Sd > said.PeakCanC.Sd);
        }
    }

    [Fact]
    public void A_second_race_starts_warmer_and_a_long_break_takes_that_away()
    {
        RaceEvidence evidence = Day.Races!.Value;
        RaceScenario soon = new(25, 360) { Races = 2, BreakS = 240 };
        RaceStop[] after = [.. Forecast.Of(evidence, soon, Demand, 1)[0].Stops], rested = [.. Forecast.Of(evidence, soon with { BreakS = 3 * 3600 }, Demand, 1)[0].Stops];
        Assert.True(after[1].CanC.Q50 > after[0].CanC.Q50 + 1);
        Assert.Equal(rested[0].CanC.Q50, rested[1].CanC.Q50, 1.0);
    }

    [Fact]
    public void The_can_may_rise_after_the_stop_and_nothing_is_under_the_air()
    {
        OptionForecast forecast = Forecast.Of(Day.Races!.Value, new(30, 300), Demand, 1)[0];
        Assert.True(forecast.Stops[0].HighestCanC.Q50 >= forecast.Stops[0].CanC.Q50);
        Assert.All(forecast.MagnetC, m => Assert.True(m.Q50 >= 29));
    }

    [Fact]
    public void The_same_question_and_seed_give_the_same_answer()
    {
        RaceScenario scenario = new(33, 480) { Races = 3 };
        OptionForecast a = Forecast.Of(Day.Races!.Value, scenario, Demand, 5)[1], b = Forecast.Of(Day.Races.Value, scenario, Demand, 5)[1];
        Assert.Equal(a.OddsOfAny, b.OddsOfAny);
        Assert.Equal(a.CanC, b.CanC);
        Assert.NotEqual(a.CanC, Forecast.Of(Day.Races.Value, scenario, Demand, 6)[1].CanC);
    }

    /// <summary>Against scaling and squaring of a Taylor series.</summary>
    [Theory]
    [InlineData(-0.05, 30)]
    [InlineData(-0.05, 0.1)]
    [InlineData(0.02, 120)]
    public void A_step_of_two_nodes_is_that_of_the_matrix_exponential(double a11, double seconds)
    {
        double[] matrix = [a11, 0.06, 0.075, -0.09];
        PairStep step = PairStep.Of(matrix[0], matrix[1], matrix[2], matrix[3], seconds);
        // Forcing as a third state that stays 1: exp of the bordered matrix holds both parts (Van Loan 1978, IEEE Trans. Autom. Control 23:395).
        double[,] bordered = { { matrix[0], matrix[1], 0.8 }, { matrix[2], matrix[3], 0.1 }, { 0, 0, 0 } };
        double[,] exact = TaylorExponential(bordered, seconds);
        (double x1, double x2) = step.Next(20, 10, 0.8, 0.1);
        Assert.Equal(exact[0, 0] * 20 + exact[0, 1] * 10 + exact[0, 2], x1, 1e-9 * Math.Abs(x1));
        Assert.Equal(exact[1, 0] * 20 + exact[1, 1] * 10 + exact[1, 2], x2, 1e-9 * Math.Abs(x2));
    }

    [Fact]
    public void A_day_out_of_range_is_refused()
    {
        Assert.Contains("expected 1 to 12", Forecast.Refusal(new(30, 300) { Races = 13 }));
        Assert.Throws<ArgumentException>(() => Forecast.Of(Day.Races!.Value, new(80, 300), Demand, 1));
        Assert.Null(Forecast.Refusal(new(30, 300)));
    }

    [Fact]
    public void The_map_has_the_day_itself_in_its_middle_and_warmer_or_longer_is_no_safer()
    {
        RaceEvidence evidence = Day.Races!.Value with { Draws = [.. Day.Races.Value.Draws.Take(100)] };
        RaceScenario scenario = new(30, 360);
        RaceDemand close = Demand.With(new(LimitedPart.Can, Forecast.Of(evidence, scenario, Demand, 3)[0].Stops[0].HighestCanC.Q50, "drawn"));
        RaceMap[] maps = [.. evidence.Options.Select((_, option) => RaceMap.Of(evidence, scenario, close, option, 3))];
        Assert.Equal([15, 20, 25, 30, 35, 40, 45], maps[0].AirsC);
        Assert.Equal([180, 270, 360, 450, 540, 630, 720], maps[0].RacesS);
        IReadOnlyList<OptionForecast> forecasts = Forecast.Of(evidence, scenario, close, 3);
        for (int option = 0; option < forecasts.Count; option++)
        {
            IReadOnlyList<double[]> odds = maps[option].Odds;
            Assert.Equal(forecasts[option].Option, maps[option].Option);
            Assert.Equal(forecasts[option].OddsOfAny, odds[3][2]);
            // One draw in a hundred to each side: races of other lengths are driven in other steps.
            for (int air = 0; air < odds.Count; air++)
                Assert.All(Enumerable.Range(0, odds[air].Length), length =>
                {
                    Assert.True(air == 0 || odds[air][length] >= odds[air - 1][length] - 0.01);
                    Assert.True(length == 0 || odds[air][length] >= odds[air][length - 1] - 0.01);
                });
        }
        Assert.Contains(maps[0].Odds.SelectMany(row => row), odds => odds < 0.2);
        Assert.Contains(maps[0].Odds.SelectMany(row => row), odds => odds > 0.8);
    }

    [Fact]
    public void The_map_keeps_to_what_is_forecast_is_refused_like_the_day_and_can_be_stopped()
    {
        RaceEvidence evidence = Day.Races!.Value with { Draws = [.. Day.Races.Value.Draws.Take(10)] };
        RaceMap edge = RaceMap.Of(evidence, new(50, 2400), Demand, 0, 1);
        Assert.Equal([35, 40, 45, 50, 55], edge.AirsC);
        Assert.Equal([1200, 1800, 2400, 3000, 3600], edge.RacesS);
        Assert.Throws<ArgumentException>(() => RaceMap.Of(evidence, new(80, 300), Demand, 0, 1));
        Assert.ThrowsAny<OperationCanceledException>(() => RaceMap.Of(evidence, new(30, 300), Demand, 0, 1, new CancellationToken(true)));
    }

    [Fact]
    public void Minutes_of_cooling_are_left_out_where_nobody_asks_for_them() =>
        Assert.All(Forecast.Of(Day.Races!.Value, new(30, 300), Demand, 1, coolDowns: false), one => Assert.Null(one.CoolMin));

    private static double[,] TaylorExponential(double[,] a, double t)
    {
        const int Squarings = 12, Terms = 20;
        double[,] power = Unit(), sum = Unit();
        double h = t / (1 << Squarings);
        for (int k = 1; k <= Terms; k++)
        {
            power = Product(power, a, h / k);
            for (int i = 0; i < 9; i++)
                sum[i / 3, i % 3] += power[i / 3, i % 3];
        }
        for (int s = 0; s < Squarings; s++)
            sum = Product(sum, sum, 1);
        return sum;
    }

    private static double[,] Unit() => new double[,] { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };

    private static double[,] Product(double[,] a, double[,] b, double scale)
    {
        double[,] c = new double[3, 3];
        for (int i = 0; i < 27; i++)
            c[i / 9, i / 3 % 3] += scale * a[i / 9, i % 3] * b[i % 3, i / 3 % 3];
        return c;
    }
}
