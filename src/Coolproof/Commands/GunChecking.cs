using Coolproof.Advice.Instruments;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Thermal;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>What `coolproof gun check` was asked.</summary>
/// <param name="Typed">What was shot and what was typed of it; null: not shot.</param>
/// <param name="AltitudeM">Altitude of the boiling water, m; null: not given.</param>
/// <param name="PressurePa">Pressure there, Pa; null: not given.</param>
/// <param name="Setting">The gun's emissivity setting; null: the usual one, not noted.</param>
/// <param name="AirC">Air at the check, °C.</param>
/// <param name="Gun">Name of the gun.</param>
/// <param name="Keep">File to write the check to; null: none.</param>
/// <param name="Seed">Seed.</param>
internal sealed record GunCheckRequest(
    IReadOnlyList<(CheckedAgainst Against, string? Typed)> Typed, double? AltitudeM, double? PressurePa, double? Setting, double AirC, string Gun, string? Keep, long Seed);

/// <summary>`coolproof gun check` from the shots to the exit code.</summary>
internal sealed class GunChecking(Terminal terminal, TemperatureUnitChoice unit, bool json)
{
    const double UsualSetting = 0.95;

    /// <summary>Works the check out, prints it, writes it down where asked.</summary>
    /// <returns>The exit code.</returns>
    public int Run(GunCheckRequest request)
    {
        if (request.AltitudeM is not null && request.PressurePa is not null) return Refuse("--altitude and --pressure both say how hot water boils. Take one of them out.");
        var shot = request.Typed.Where(pair => pair.Typed is not null).ToList();
        if (shot.Count == 0) return Refuse("nothing was shot. Give --ice, --boiling, --mug or --beside-tape; ice and boiling water at home, the mug at the track.");
        var boiling = shot.Any(pair => pair.Against == CheckedAgainst.Boiling);
        if (boiling && (request.AltitudeM ?? request.PressurePa) is null) return Refuse("--boiling needs --altitude or --pressure: water boils 1 K lower for each 300 m.");
        if (!boiling && (request.AltitudeM ?? request.PressurePa) is not null) return Refuse("--altitude and --pressure say how hot water boils: give --boiling too, or take them out.");
        CheckPair[] pairs = [.. shot.Select(pair => Pair(pair.Against, TypedShots.Of(pair.Typed!), request))];
        if (pairs.FirstOrDefault(pair => Math.Abs(pair.ReadC - pair.TrueC) > GunPage.FarOffK) is { } far)
            return Refuse($"{GunPage.What(far.Against)}: shown {DegreeWords.Number(far.ReadC, 1)} °C where {DegreeWords.Number(far.TrueC, 1)} °C is true. That is no gun but a wrong number, shiny metal, or steam on the lens: shoot it again.");
        var line = GunCheckLine.Of(pairs, request.Setting ?? UsualSetting, request.AirC, request.Seed);
        if (request.Keep is { } path && !Kept(path, request, pairs)) return Exit.Failed;
        if (json) terminal.Out.Write(GunJson.Of(line, request.Gun, request.Setting ?? UsualSetting, request.AirC));
        else terminal.Out.Write(string.Join('\n', GunPage.Check(line, new PageSettings(new DegreeWords(unit), terminal.Width, terminal.Ink))) + "\n");
        return Exit.Done;
    }

    static CheckPair Pair(CheckedAgainst against, TypedShots shots, GunCheckRequest request) => new(against, shots.ShotsC, shots.TrueC ?? (against == CheckedAgainst.Ice ? 0
        : Water.BoilingPointC(request.PressurePa ?? Air.PressureAtPa(request.AltitudeM!.Value))));

    bool Kept(string path, GunCheckRequest request, CheckPair[] pairs)
    {
        try
        {
            WholeFile.Write(path, writer => writer.Write(GunChecksJson.Text([.. pairs.Select(p => new GunCheck(request.Gun, p.Against, Math.Round(p.ReadC, 2), Math.Round(p.TrueC, 2), request.Setting))])));
            return true;
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            terminal.Error.WriteLine($"coolproof gun check: {Cells.Clean(path)} can't be written: {(File.Exists(path) ? "there is a file of that name already; take another name." : Cells.Clean(cause.Message))}");
            return false;
        }
    }

    int Refuse(string words)
    {
        terminal.Error.WriteLine($"coolproof gun check: {Cells.Clean(words)}");
        return Exit.BadInput;
    }
}
