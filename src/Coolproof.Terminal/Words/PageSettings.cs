using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>How a page for people is set.</summary>
/// <param name="Degrees">The unit of temperatures.</param>
/// <param name="Width">Columns, no line is longer.</param>
/// <param name="Ink">Weight and colour.</param>
internal sealed record PageSettings(DegreeWords Degrees, int Width, Ink Ink)
{
    /// <summary>Lines that fit one screen.</summary>
    public const int Height = 40;

    /// <summary>A sentence of the evidence in the unit shown.</summary>
    public string Put(string sentence) => Cells.Clean(Degrees.In == TemperatureUnitChoice.Fahrenheit ? FahrenheitWords.Of(sentence) : sentence);
}
