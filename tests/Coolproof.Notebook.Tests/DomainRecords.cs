namespace Coolproof.Notebook.Tests;

/// <summary>Records of the domain cannot be invalid.</summary>
public sealed class DomainRecords
{
    [Fact]
    public void An_option_sums_the_price_and_mass_of_its_parts()
    {
        CoolingOption option = new("clamp with fan", new CoolingPart("clamp", 9.90m, 22), new CoolingPart("25 mm fan", 6.50m, 8.5));
        Assert.Equal((16.40m, 30.5), (option.Price, option.MassG));
        Assert.Equal((0m, 0.0), (new CoolingOption("bare can").Price, new CoolingOption("bare can").MassG));
    }

    [Fact]
    public void What_cannot_be_is_not_made()
    {
        Assert.Throws<ArgumentException>(() => new CoolingOption(" "));
        Assert.Throws<ArgumentException>(() => new Motor(""));
        Assert.Throws<ArgumentException>(() => new Instrument("\t"));
        Assert.Throws<ArgumentException>(() => new TestDay(" "));
        Assert.Throws<ArgumentException>(() => new TemperatureLimit(LimitOn.Can, 100, " "));
        foreach (double mass in (double[])[0, -1, 19.9, 2001, double.NaN]) Assert.Throws<ArgumentOutOfRangeException>(() => new Motor("a", mass));
        foreach (double mass in (double[])[-0.1, 10_001, double.NaN]) Assert.Throws<ArgumentOutOfRangeException>(() => new CoolingPart("a", 1, mass));
        foreach (double celsius in (double[])[29, 351, double.NaN]) Assert.Throws<ArgumentOutOfRangeException>(() => new TemperatureLimit(LimitOn.Can, celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CoolingPart("a", -0.01m, 1));
    }
}
