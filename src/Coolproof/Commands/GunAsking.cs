using Coolproof.Advice.Instruments;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Thermal;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof gun correct` and `coolproof gun surfaces`.</summary>
internal sealed class GunAsking(Terminal terminal, TemperatureUnitChoice unit, bool json)
{
    /// <summary>Puts a shot right.</summary>
    /// <returns>The exit code.</returns>
    public int Correct(string read, string? key, double? emissivity, double setting, double surroundingsC, double off)
    {
        if (Typed.Body(read, out var readC) is { } wrong) return Refuse($"READING {read}: {wrong}.");
        if (key is not null && emissivity is not null) return Refuse("--surface and --emissivity both say what was shot. Take one of them out.");
        if (SurfaceEmissivity.Find(key ?? "tape") is not { } surface) return Refuse($"--surface {key}: there is no such surface. Take one of: {string.Join(", ", SurfaceEmissivity.All.Select(s => s.Key))}.");
        Shot shot = new(readC, setting, emissivity ?? surface.Low, emissivity ?? surface.High, surroundingsC, off);
        if (ShotCorrection.Of(shot) is not { } right)
            return Refuse($"no surface of that emissivity would show {read} in those surroundings: more would be mirrored than was seen. Look at --surroundings, and put matt tape on it.");
        var known = emissivity is null ? surface : null;
        if (json) terminal.Out.Write(GunJson.Of(right, known));
        else terminal.Out.Write(string.Join('\n', GunPage.Correction(right, known, Page())) + "\n");
        return Exit.Done;
    }

    /// <summary>Lists surfaces.</summary>
    /// <returns>The exit code.</returns>
    public int Surfaces()
    {
        terminal.Out.Write(json ? GunJson.Surfaces() : string.Join('\n', GunPage.Surfaces(Page())) + "\n");
        return Exit.Done;
    }

    PageSettings Page() => new(new DegreeWords(unit), terminal.Width, terminal.Ink);

    int Refuse(string words)
    {
        terminal.Error.WriteLine($"coolproof gun correct: {Cells.Clean(words)}");
        return Exit.BadInput;
    }
}
