using Coolproof.Notebook;

namespace Coolproof.Pictures.Drawing;

/// <summary>The chosen unit with its two doors, one for temperatures and one for differences.</summary>
internal readonly record struct Degrees(TemperatureUnitChoice Choice)
{
    public string Symbol => Units.Symbol(Choice);

    public double Temperature(double celsius) => Units.FromCelsius(celsius, Choice);

    public double Difference(double kelvins) => Units.FromKelvins(kelvins, Choice);
}
