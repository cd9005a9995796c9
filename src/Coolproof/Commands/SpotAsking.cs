using Coolproof.Advice.Instruments;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof gun spot`.</summary>
internal sealed class SpotAsking(Terminal terminal, bool json)
{
    const double Mm = 1e-3;

    /// <summary>Says how large the spot is, and draws it where asked.</summary>
    /// <returns>The exit code.</returns>
    public int Run(double? ratio, double? distanceMm, double? targetMm, double smallestMm, bool isBand, string? picture)
    {
        string[] missing = [.. new[] { (ratio, "--ratio 12"), (distanceMm, "--distance 150mm"), (targetMm, "--target 12mm") }.Where(x => x.Item1 is null).Select(x => x.Item2)];
        if (missing.Length > 0)
        {
            terminal.Error.WriteLine($"coolproof gun spot: also needed: {string.Join(", ", missing)} (your own figures).");
            return Exit.BadInput;
        }
        SpotSize spot = new(distanceMm!.Value * Mm, ratio!.Value, smallestMm * Mm, targetMm!.Value * Mm, isBand);
        if (json) terminal.Out.Write(GunJson.Of(spot));
        else terminal.Out.Write(string.Join('\n', GunPage.Spot(spot, new PageSettings(new DegreeWords(TemperatureUnitChoice.Celsius), terminal.Width, terminal.Ink))) + "\n");
        terminal.Out.Flush();
        return picture is null ? Exit.Done : PictureFile.Drawn(() => GunPage.Picture(spot).Save(picture), terminal);
    }
}
