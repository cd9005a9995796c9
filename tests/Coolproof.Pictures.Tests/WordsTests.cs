using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class WordsTests
{
    private static readonly Words Celsius = new(new(TemperatureUnitChoice.Celsius), 2);
    private static readonly Words Fahrenheit = new(new(TemperatureUnitChoice.Fahrenheit), 2);

    [Fact]
    public void Calls_are_said_from_the_side_of_the_hotter_option()
    {
        Assert.Equal(("9 °C hotter (6 to 12)", ", 39 in 40 sure"), Celsius.Call(PairCall.ACooler, Samples.Normal(9, 2), 0.98));
        Assert.Equal(("3 °C cooler (−1 to 6)", ", 39 in 40 sure"), Celsius.Call(PairCall.BCooler, Samples.Normal(-2.6, 2), 0.02));
        Assert.Equal(("can’t be told yet", ": 1 °C hotter (−2 to 4)"), Celsius.Call(PairCall.Open, Samples.Normal(1, 2), 0.7));
        Assert.Equal(("the same within 2 °C", ": 0.3 °C hotter (−0.5 to 1.1)"), Celsius.Call(PairCall.Same, Samples.Normal(0.3, 0.5), 0.7));
        Assert.Equal(("the same within 3.6 °F", ": 1 °F hotter (−1 to 2)"), Fahrenheit.Call(PairCall.Same, Samples.Normal(0.3, 0.5), 0.7));
    }

    [Fact]
    public void A_temperature_and_a_difference_turn_into_Fahrenheit_differently()
    {
        // 100 °C is 212 °F and 10 K are 18 °F: the boiling point of water and the size of the degree, NIST SP 811, appendix B.8.
        Assert.Equal("212 °F (212 to 212)".Replace("212", "212.0"), Fahrenheit.Temperature(Samples.Normal(100, 0)));
        Assert.Equal("18 °F", Fahrenheit.Span(10));
        Assert.Equal("18.0 °F hotter (18.0 to 18.0)", Fahrenheit.Hotter(Samples.Normal(10, 0)));
    }

    [Fact]
    public void Shares_are_whole_percents_and_a_trace_is_no_zero()
    {
        Assert.Equal("41 %", Words.Percent(0.412));
        Assert.Equal("under 1 %", Words.Percent(0.0004));
        Assert.Equal("0 %", Words.Percent(0));
    }

    [Fact]
    public void Numbers_below_zero_have_a_true_minus_and_zero_has_none()
    {
        Assert.Equal("−5 °C (−7 to −3)", Celsius.Temperature(Samples.Normal(-5, 1.4)));
        Assert.Equal("0 °C (−2 to 2)", Celsius.Temperature(Samples.Normal(-0.2, 1.2)));
    }
}
