using System.Globalization;
using Coolproof.Advice.Instruments;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Thermal;

namespace Coolproof.Words;

/// <summary>What a gun's number means, for people.</summary>
internal static class GunPage
{
    /// <summary>A gun further off than this wasn't shot at what was meant, K.</summary>
    public const double FarOffK = 15;

    const double Sds90 = 1.645;

    /// <summary>What to mind before and while a gun is used, gravest first (common practice, no source).</summary>
    public static IReadOnlyList<string> Habits { get; } =
    [
        "Before a day, and after a move from a warm car or a cold bag, let the gun lie 20 minutes in the shade where it is used; it reads off its own warmth. Fresh battery.",
        "Its emissivity setting stays where it was at the check: note it. Matt tape on the can, clear of fan and rotor, pressed down well.",
        "Close up the aiming dot lies beside the spot: it comes from beside the lens. Move the dot over the edge of the tape and look when the number falls.",
    ];

    /// <summary>How to shoot the things of a check.</summary>
    public static IReadOnlyList<(CheckedAgainst Against, string Words)> HowTo { get; } =
    [
        (CheckedAgainst.Ice, "Crushed ice with just enough water to fill the gaps, in a wide bowl; stir for a minute, shoot from a hand above between stirs. 0 °C."),
        (CheckedAgainst.Boiling, "A wide pan at a rolling boil, lid off, heat turned low at the last moment; shoot aslant from aside, steam blown off: steam fogs the lens and is what the gun would see. Boiling water and steam scald."),
        (CheckedAgainst.ProbeInWater, "A metal mug with matt tape on its outside, warm water stirred all the while, a probe in it; shoot the tape below the water line. Hot water scalds."),
        (CheckedAgainst.BesideTape, "A probe under a second piece of tape beside the matt one on the warm can, power off; wait till it stands still, then shoot. The can burns from about 65 °C."),
    ];

    /// <summary>What a check is against, in words.</summary>
    public static string What(CheckedAgainst against) => against switch
    {
        CheckedAgainst.Ice => "stirred ice and water",
        CheckedAgainst.Boiling => "boiling water",
        CheckedAgainst.ProbeInWater => "a probe in warm water",
        _ => "a probe beside the tape",
    };

    /// <summary>What to do with a surface.</summary>
    public static string Advice(GunTrust trust) => trust switch
    {
        GunTrust.Shoot => "shoot it as it is",
        GunTrust.Correct => "correct it, and don’t trust the last degrees; matt tape is better",
        _ => "put matt tape on it: it mirrors more than it glows",
    };

    /// <summary>A corrected shot.</summary>
    public static IEnumerable<string> Correction(ShotCorrection right, SurfaceEmissivity? known, PageSettings page)
    {
        foreach (string line in Cells.Wrap(Bold(page, Sentence(right, known, page.Degrees)), page.Width)) yield return line;
        yield return "";
        foreach (string line in Labelled.Items("Mind", [.. Cautions(right, known)], int.MaxValue, page)) yield return line;
    }

    /// <summary>A corrected shot in a sentence.</summary>
    public static string Sentence(ShotCorrection right, SurfaceEmissivity? known, DegreeWords degrees)
    {
        var (low, high) = right.Range;
        var trust = known?.Trust ?? GunJson.SurfaceTrust(right.Shot.EmissivityLow);
        var on = known is null ? $"an emissivity of {right.Shot.EmissivityLow.ToString("0.##", CultureInfo.InvariantCulture)}" : known.Words;
        var range = $"{DegreeWords.Number(degrees.Temperature(low))} to {degrees.Say(high)}, 9 times in 10";
        return trust == GunTrust.Tape
            ? $"{degrees.Say(right.Shot.ReadC, 1)} on {on} may be anything from {range}: put matt tape on it and shoot that."
            : $"{degrees.Say(right.Shot.ReadC, 1)} on {on} is {degrees.Say(right.SurfaceC, 1)} ({range}).";
    }

    /// <summary>A corrected shot in few words, to stay in sight.</summary>
    public static string InShort(ShotCorrection right, SurfaceEmissivity known, DegreeWords degrees)
    {
        var (low, high) = right.Range;
        var range = $"{DegreeWords.Number(degrees.Temperature(low))} to {DegreeWords.Number(degrees.Temperature(high))}";
        return known.Trust == GunTrust.Tape ? $"{range} {degrees.Unit}: matt tape on it first" : $"{degrees.Say(right.SurfaceC, 1)} ({range})";
    }

    static IEnumerable<string> Cautions(ShotCorrection right, SurfaceEmissivity? known)
    {
        if (known is not null) yield return $"{Capital(known.Words)}: emissivity {known.Low:0.00} to {known.High:0.00} ({known.Source}). {Capital(Advice(known.Trust))}.";
        yield return $"The gun set to {right.Shot.Setting:0.##}, taking off what its setting leaves to surroundings of its own warmth, as most do (common practice, no source).";
        yield return "A gun that reads off by itself is another matter: coolproof gun check.";
    }

    /// <summary>A check.</summary>
    public static IEnumerable<string> Check(GunCheckLine line, PageSettings page)
    {
        DegreeWords degrees = page.Degrees;
        foreach (string said in Cells.Wrap(Bold(page, Sentence(line, degrees)), page.Width)) yield return said;
        yield return "";
        string[] head = ["against", "shown", "true", "shots differ by"];
        foreach (string row in TextColumns.Lines([head, .. line.Pairs.Select(p => (string[])[What(p.Against), degrees.Say(p.ReadC, 1), degrees.Say(p.TrueC, 1), p.RepeatabilityK is { } s ? degrees.SayDifference(s, 1) : "–"])], [false, true, true, true], page.Width)) yield return row;
        yield return "";
        foreach (string row in TextColumns.Lines([["shown", "is", "give or take (9 in 10)"], .. new[] { 40.0, 60, 80, 100 }.Select(c => Row(line, c, degrees))], [true, true, true], page.Width)) yield return row;
        yield return "";
        foreach (string said in Cells.Wrap(Uncertainties(line, degrees), page.Width)) yield return said;
        foreach (string said in Labelled.Items("Mind", [.. Cautions(line), .. Habits], int.MaxValue, page)) yield return said;
    }

    static string[] Row(GunCheckLine line, double shownC, DegreeWords degrees)
    {
        var (c, u) = line.PutRight(shownC);
        return [degrees.Say(shownC), degrees.Say(c, 1), degrees.SayDifference(Sds90 * u, 1)];
    }

    /// <summary>A check in a sentence.</summary>
    public static string Sentence(GunCheckLine line, DegreeWords degrees)
    {
        var (k, u) = line.TooMuchAt(GunCheckLine.PivotC);
        string doubt = degrees.SayDifference(Sds90 * u, 1), at = degrees.Say(GunCheckLine.PivotC);
        string off = $"At {at} the gun shows {degrees.SayDifference(Math.Abs(k), 1)} too {(k > 0 ? "much" : "little")}, give or take {doubt}";
        return Math.Abs(k) < Sds90 * u ? $"{off}: it may be right." : $"{off}.";
    }

    static string Uncertainties(GunCheckLine line, DegreeWords degrees)
    {
        var law = line.ByLaw;
        return $"Gain {law.Values[0]:0.000}, standard uncertainty {law.StandardUncertainty(0):0.0000} by JCGM 100 and {line.ByChance.StandardUncertainty(0):0.0000} by JCGM 101; offset at {degrees.Say(GunCheckLine.PivotC)} "
            + $"{DegreeWords.Signed(degrees.Difference(law.Values[1]), 2)} {degrees.Unit}, {degrees.SayDifference(law.StandardUncertainty(1), 2)} and {degrees.SayDifference(line.ByChance.StandardUncertainty(1), 2)}; correlation {law.Correlation(0, 1):0.00}.";
    }

    /// <summary>What to mind of a check.</summary>
    public static IEnumerable<string> Cautions(GunCheckLine line)
    {
        if (line.Misfit is > 2) yield return "The pairs don’t lie on a line: one of them is wrong. Steam on the lens, ice that floats apart, a probe that hadn’t settled? Shoot them again.";
        if (!line.TellsGain) yield return "Checked at one temperature only: the farther from it, the wider. Ice and boiling water at home tell the rest.";
        if (line.Pairs.Any(p => p.RepeatabilityK is > 1.5)) yield return "Quick shots differ by more than 1.5 K: battery, distance, or a hand that moves.";
        if (line.Pairs.All(p => p.RepeatabilityK is null)) yield return "Three quick shots of each would tell how well the gun repeats itself.";
        if (line.Pairs.Any(p => p.Against != CheckedAgainst.BesideTape)) yield return "Hot water and steam scald.";
    }

    /// <summary>Surfaces.</summary>
    public static IEnumerable<string> Surfaces(PageSettings page)
    {
        foreach (string row in TextColumns.Lines([["key", "surface", "emissivity", "with a gun"], .. SurfaceEmissivity.All.Select(s => (string[])[s.Key, s.Words, $"{s.Low.ToString("0.00", CultureInfo.InvariantCulture)} to {s.High.ToString("0.00", CultureInfo.InvariantCulture)}", Brief(s.Trust)])], [false, false, true, false], page.Width)) yield return row;
        yield return "";
        foreach (string line in Labelled.Text("Source", "handbook tables for 8 to 14 µm or the whole spectrum; coolproof gun surfaces --json names them row by row. A table is no measurement of your can: matt tape is.", page)) yield return line;
    }

    static string Brief(GunTrust trust) => trust switch { GunTrust.Shoot => "shoot it", GunTrust.Correct => "correct it; tape is better", _ => "matt tape on it first" };

    /// <summary>A spot.</summary>
    public static IEnumerable<string> Spot(SpotSize spot, PageSettings page)
    {
        foreach (string line in Cells.Wrap(Bold(page, Sentence(spot, page.Degrees)), page.Width)) yield return line;
        yield return "";
        foreach (string row in TextColumns.Lines([["from", "spot", "beside it", "a 70 °C can reads low by"], .. Distances(spot).Select(s => (string[])[$"{1000 * s.DistanceM:0} mm", $"{1000 * s.SpotM:0.0} mm", $"{100 * s.ShareOff:0} %", $"{s.LossK:0.0} °C"])], [true, true, true, true], page.Width)) yield return row;
        yield return "";
        foreach (string line in Labelled.Items("Mind", ["The spot printed on a gun holds nine tenths of what it sees; keep it to half of the target’s width (common practice, no source).", Habits[2], "Fingers off fan and gears; the laser never at eyes or the drivers’ stand."], int.MaxValue, page)) yield return line;
    }

    /// <summary>A spot in a sentence.</summary>
    public static string Sentence(SpotSize spot, DegreeWords degrees)
    {
        string size = $"From {1000 * spot.DistanceM:0} mm the spot is {1000 * spot.SpotM:0.#} mm wide";
        string closer = spot.BestWithinM > 0 ? $"go to {1000 * spot.BestWithinM:0} mm or nearer" : "this gun’s spot is too large for it at any distance: a larger piece of tape, or a probe";
        return spot.IsSmallEnough ? $"{size}: small enough for a target of {1000 * spot.TargetM:0.#} mm."
            : spot.ShareOff > 0 ? $"{size}, {100 * spot.ShareOff:0} % of it beside the target of {1000 * spot.TargetM:0.#} mm: a 70 °C can in 25 °C air reads {degrees.SayDifference(spot.LossK, 1)} too little; {closer}."
            : $"{size}: within the target of {1000 * spot.TargetM:0.#} mm only when the hand is steady; {closer}.";
    }

    /// <summary>A spot drawn, with half and twice its distance beside it.</summary>
    public static Picture Picture(SpotSize spot, PictureStyle? style = null) => SpotPicture.Of(
        [.. Distances(spot).Select(s => new SpotShown(s.DistanceM, s.SpotM, $"Spot {1000 * s.SpotM:0.#} mm, {100 * s.ShareOff:0} % beside it"))], spot.TargetM, spot.IsBand, style?.Title ?? Sentence(spot, new(style?.Units ?? TemperatureUnitChoice.Celsius)), style);

    static SpotSize[] Distances(SpotSize spot) => [spot.At(spot.DistanceM / 2), spot, spot.At(2 * spot.DistanceM)];

    static string Bold(PageSettings page, string text) => page.Ink.On ? page.Ink.Bold(text) : text;

    static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
