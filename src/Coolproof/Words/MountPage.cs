using Coolproof.Advice.Mounts;
using Coolproof.Evidence;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>Predicted mounts for people.</summary>
internal static class MountPage
{
    const double LeastCostK = 0.3, OddHigh = 0.95, OddLow = 0.05;

    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(MountAnswer answer, PageSettings page)
    {
        foreach (string line in Cells.Wrap(page.Ink.On ? page.Ink.Bold(Sentence(answer, page.Degrees)) : Sentence(answer, page.Degrees), page.Width)) yield return line;
        yield return "";
        foreach (string line in Cells.Wrap(Conditions(answer, page.Degrees), page.Width)) yield return line;
        yield return "";
        foreach (string line in Table(answer, page)) yield return line;
        yield return "";
        foreach (MountPrediction mount in answer.Mounts)
            foreach (string line in Cells.Wrap($"{Cells.Clean(mount.Mount.Name)}: {Reckoned(mount, page.Degrees)}", page.Width, "", "  ")) yield return line;
        yield return "";
        foreach (string line in answer.Mounts.SelectMany(m => Beside(m, page.Degrees)).SelectMany(said => Cells.Wrap(said, page.Width, "", "  "))) yield return line;
        foreach (string line in Labelled.Items("Mind", [.. Cautions(answer)], int.MaxValue, page)) yield return line;
    }

    /// <summary>The answer in a sentence.</summary>
    public static string Sentence(MountAnswer answer, DegreeWords degrees)
    {
        if (answer.Mounts.Count == 1 && answer.Driven.Count == 0)
            return $"The {Cells.Clean(answer.Mounts[0].Mount.Name)} would shed {PerDegree(answer.Mounts[0].WattsPerKelvin, degrees)} while driving.";
        MountPrediction best = answer.Mounts.MaxBy(m => m.OddsCoolest)!;
        bool known = answer.WithReadings;
        string name = Cells.Clean(best.Mount.Name), of = known ? "of these and of what was driven" : $"of the {answer.Mounts.Count} mounts";
        if (answer.Driven.MaxBy(d => d.OddsCoolest) is { } driven && driven.OddsCoolest > best.OddsCoolest)
            return $"None of these is likelier than the {Cells.Clean(driven.Name)}, which was driven, to keep the can coolest ({ForecastPage.InHundred(driven.OddsCoolest)}); the {name} comes nearest ({ForecastPage.InHundred(best.OddsCoolest)}).";
        string by = best.Against is { } against ? $": {Difference(against, degrees)} than the {Cells.Clean(answer.Reference)}" : "";
        return $"The {name} is likeliest to keep the can coolest {of} ({ForecastPage.InHundred(best.OddsCoolest)}){by}.";
    }

    /// <summary>A mount in a line, as under its drawing.</summary>
    public static string InALine(MountPrediction mount, MountAnswer answer, DegreeWords degrees) =>
        $"{PerDegree(mount.WattsPerKelvin, degrees)}{(mount.Against is { } against ? $"; can {Difference(against, degrees)} than the {Cells.Clean(answer.Reference)}" : "")}";

    static string Conditions(MountAnswer answer, DegreeWords degrees) =>
        $"{degrees.Say(answer.Fair.AmbientC, 1)} air, {answer.Fair.DriveS:0} s of driving at {3.6 * answer.Sheet.CarSpeedMS:0} km/h on average, started at air, the same load for all. Brackets hold the truth 9 times in 10. "
        + (answer.WithReadings ? $"Driven: from the readings{(answer.Mounts.Any(m => m.Found?.Together is not null) ? ", with the ruler's word on how mounts of the file differ" : "")}. Predicted: from ruler and fan{(answer.Mounts.Any(m => m.Found is not null) ? ", put right by what was driven under the same name" : "; a mount in the file that was driven under the same name would put the others right")}." : "By ruler and fan alone: how warm the can gets depends on a load that nobody has measured, so only the differences are of use.");

    static IEnumerable<string> Table(MountAnswer answer, PageSettings page)
    {
        DegreeWords degrees = page.Degrees;
        List<(double OddsCoolest, double Can, string[] Cells)> rows =
        [
            .. answer.Mounts.Select(m => (m.OddsCoolest, m.CanC.Q50, Row(m.Mount.Name, m.Found is null ? "predicted" : "driven", m.WattsPerKelvin, m.CanC, m.Against))),
            .. answer.Driven.Select(d => (d.OddsCoolest, d.CanC.Q50, Row(d.Name, "driven", d.WattsPerKelvin, d.CanC, null))),
        ];
        string[] head = ["", "", $"watts per {degrees.Unit}", answer.WithReadings ? $"can {degrees.Unit}" : $"{degrees.Unit} against {Cells.Clean(answer.Reference)}", "coolest?"];
        return TextColumns.Lines([head, .. rows.OrderBy(r => r.Can).Select(r => (string[])[.. r.Cells, ForecastPage.InHundred(r.OddsCoolest)])], [false, false, true, true, true], page.Width);

        string[] Row(string name, string how, Summary w, Summary can, Summary? against) =>
            [Cells.Clean(name), how, Watts(w, degrees), answer.WithReadings ? degrees.MiddleAndRange(can) : against is { } a ? Signed(a, degrees) : "–"];
    }

    // How it was reckoned, and what stands in the air's way.
    static string Reckoned(MountPrediction mount, DegreeWords degrees)
    {
        MountHeat heat = mount.Middle;
        MountFlow flow = heat.Flow;
        if (heat.Rule == MountRule.NoStream) return flow.FlowM3S > 0 ? "its stream passes the can by; the car's wind and the can's own draught only." : "the car's wind and the can's own draught only.";
        string moved = $"{3600 * flow.FlowM3S:0.0} m³/h{(flow.FreeM3S > 0 ? $" of {3600 * flow.FreeM3S:0.0} free" : "")} against {flow.PressurePa:0} Pa, {flow.AtCanMS:0.0} m/s at the can, {100 * flow.Covered:0} % of its side in the stream";
        string leak = flow.ReachesCan < 0.995 ? $", {100 * (1 - flow.ReachesCan):0} % lost by leaks" : "";
        string[] costs = [.. mount.Costs.Where(c => c.CanK >= LeastCostK).Take(3).Select(c => $"{Name(c.Loss)} {degrees.SayDifference(c.CanK, 1)}")];
        return $"{moved}{leak}; {Rule(heat.Rule)}.{(costs.Length > 0 ? $" What is in the way costs the can: {string.Join(", ", costs)}." : "")}";
    }

    /// <summary>By what the stream's part was reckoned, in words.</summary>
    public static string Rule(MountRule rule) => rule switch
    {
        MountRule.Jet => "reckoned as a jet on a wall, within its published range",
        MountRule.CrossFlow => "reckoned as a cylinder across a stream, within its published range",
        _ => "outside correlation",
    };

    /// <summary>What was predicted of a mount that was driven, and what was found.</summary>
    public static IEnumerable<string> Beside(MountPrediction mount, DegreeWords degrees)
    {
        if (mount.Found is not { } found) yield break;
        string agree = found.Odds is > OddHigh or < OddLow ? "on its level they don't agree: look at what was entered, and at the motor's mass" : "they agree";
        if (found.Contradicts) agree = "on how the mounts differ they contradict each other, so the readings alone count: look at what was entered";
        if (found.Together is { } both) agree += $". Reckoned with, the ruler's word on how the mounts differ taken in: {Watts(both, degrees)}";
        yield return $"Predicted against found, {Cells.Clean(mount.Mount.Name)}: {Watts(found.Predicted, degrees)} by the ruler, {Watts(found.Found, degrees)} by the readings, in watts per {degrees.Unit}; {agree}.";
    }

    /// <summary>What to mind.</summary>
    public static IEnumerable<string> Cautions(MountAnswer answer)
    {
        yield return $"A prediction is no reading: drive it beside one that you know. Its range comes from what rulers, fans' boxes and laws of heat are off by; {PlateShare(answer)} of the heat goes by motor plate and endbell whatever is fitted (a guess, the same for all).";
        if (answer.Mounts.Any(m => m.Middle.Rule == MountRule.OutsideCorrelation)) yield return "Outside correlation: no published law of heat covers it, so a cylinder across a stream was taken for the share of the can in it, with a doubt of some 40 %.";
        if (answer.Mounts.Any(m => m.Mount.Fans.Any(f => f.StallPa is null))) yield return "A fan whose stall pressure isn’t given: four times its own velocity pressure was taken (common practice, no source).";
        if (answer.Mounts.Any(m => m.Mount.Fans.Any(f => f.SpeedRatio > 1))) yield return "A fan on more than its rated voltage wears sooner; the maker's limit comes first.";
        if (answer.Mounts.Any(m => m.Mount.ShellHoleM2 > 0)) yield return "A hole in the shell can't be undone, and a class may forbid it.";
        yield return "At the stop: power off first, hot can, fingers off fan and gears. Class rules, makers' limits and local codes come first.";
    }

    static string PlateShare(MountAnswer answer)
    {
        int[] shares = [.. answer.Mounts.Select(m => (int)Math.Round(100 * m.Middle.PlateWPerK / m.Middle.TotalWPerK))];
        return shares.Min() == shares.Max() ? $"{shares[0]} %" : $"{shares.Min()} to {shares.Max()} %";
    }

    /// <summary>What stands in the way, in words.</summary>
    public static string Name(MountLoss loss) => loss switch
    {
        MountLoss.ShellOverInlet => "the shell over the inlet",
        MountLoss.Grille => "the grille",
        MountLoss.Duct => "mouth, bends and walls of the duct",
        MountLoss.DuctOutlet => "the duct's outlet",
        MountLoss.CanBeforeOutlet => "the can close before the fan",
        MountLoss.Shroud => "the narrow shroud",
        MountLoss.Leak => "the leaks",
        MountLoss.ShellVents => "the shell's few vents",
        _ => throw new ArgumentOutOfRangeException(nameof(loss), loss, "No such loss."),
    };

    /// <summary>A difference of the can, as cooler or hotter.</summary>
    public static string Difference(Summary kelvin, DegreeWords degrees) => kelvin.Q50 <= 0
        ? degrees.DifferenceAndRange(kelvin.Turned()).Replace(" (", " cooler (", StringComparison.Ordinal)
        : degrees.DifferenceAndRange(kelvin).Replace(" (", " hotter (", StringComparison.Ordinal);

    static string Signed(Summary kelvin, DegreeWords degrees) =>
        $"{DegreeWords.Signed(degrees.Difference(kelvin.Q50), 0)} ({DegreeWords.Number(degrees.Difference(kelvin.Q05))} to {DegreeWords.Number(degrees.Difference(kelvin.Q95))})";

    /// <summary>Watts per degree with their unit.</summary>
    public static string PerDegree(Summary w, DegreeWords degrees) => $"{Watts(w, degrees).Replace(" (", $" watts per {degrees.Unit} (", StringComparison.Ordinal)}";

    /// <summary>Watts per degree; a degree Fahrenheit is a smaller step, so fewer watts go with it.</summary>
    public static string Watts(Summary w, DegreeWords degrees)
    {
        double per = degrees.Difference(1);
        return $"{DegreeWords.Number(w.Q50 / per, 2)} ({DegreeWords.Number(w.Q05 / per, 2)} to {DegreeWords.Number(w.Q95 / per, 2)})";
    }
}
