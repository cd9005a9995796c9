using System.Globalization;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Web;

namespace Coolproof.Pages.Forms;

/// <summary>In which unit a person types and reads a field: °C or °F, grams or ounces, minutes for the length of a race.</summary>
internal static class FieldUnits
{
    static readonly HashSet<string> Temperatures =
        ["airC", "limitC", "canLimitC", "windingLimitC", "magnetLimitC", "controllerLimitC", "readC", "trueC", "windingColdC", "trackC", "startC"];

    static readonly HashSet<string> Differences = ["sameWithinK", "resolutionC", "uncertaintyC"];

    static readonly HashSet<string> Masses = ["massG", "massMinG", "budgetG"];

    /// <summary>The unit to stand beside a field; empty where it has none.</summary>
    public static string Of(string kind, string field, DeviceLook look)
    {
        if (Temperatures.Contains(field) || Differences.Contains(field)) return Units.Symbol(look.Temperature);
        if (Masses.Contains(field)) return look.Ounces ? "oz" : "g";
        if (InMinutes(kind, field)) return "min";
        return field switch
        {
            _ when field.EndsWith("Deg", StringComparison.Ordinal) => "°",
            _ when field.EndsWith("Mm", StringComparison.Ordinal) => "mm",
            _ when field.EndsWith("Mohm", StringComparison.Ordinal) => "mΩ",
            "capacityMah" or "mah" or "chargeBackMah" => "mAh",
            "fanV" or "fanMaxV" or "packStartV" => "V",
            "chargeA" => "A",
            "fitMin" or "minutesAfter" or "coolMin" or "swapMin" or "chargeMin" => "min",
            "altitudeM" => "m",
            "driveS" or "rollInS" or "stoodS" or "powerOffS" or "stopToReadS" => "s",
            _ => "",
        };
    }

    /// <summary>A number as it is kept, in the person's unit.</summary>
    public static double Shown(string kind, string field, double kept, DeviceLook look) =>
        Temperatures.Contains(field) ? Units.FromCelsius(kept, look.Temperature)
        : Differences.Contains(field) ? Units.FromKelvins(kept, look.Temperature)
        : Masses.Contains(field) ? Units.FromGrams(kept, look.Ounces ? MassUnitChoice.Ounce : MassUnitChoice.Gram)
        : InMinutes(kind, field) ? kept / 60 : kept;

    /// <summary>A number as it was typed, as it is kept.</summary>
    public static double Kept(string kind, string field, double typed, DeviceLook look) =>
        Temperatures.Contains(field) ? Units.CelsiusFrom(typed, look.Temperature)
        : Differences.Contains(field) ? Units.KelvinsFrom(typed, look.Temperature)
        : Masses.Contains(field) ? Units.GramsFrom(typed, look.Ounces ? MassUnitChoice.Ounce : MassUnitChoice.Gram)
        : InMinutes(kind, field) ? typed * 60 : typed;

    /// <summary>A number as text for a field: no more digits than were worth typing.</summary>
    public static string Text(double shown) => Math.Round(shown, 4).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>What was typed, with minutes and seconds like 6:30 made into minutes.</summary>
    public static string Typed(string kind, string field, string text) =>
        InMinutes(kind, field) && text.Split(':') is [var minutes, { Length: 2 } seconds]
        && int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var m) && int.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out var s) && s < 60
            ? (m + s / 60.0).ToString("R", CultureInfo.InvariantCulture) : text;

    /// <summary>A number between two bounds keeps its value when it is only shown and sent back.</summary>
    static bool InMinutes(string kind, string field) =>
        (field is "raceS" && kind is EntryKind.ClassSet or EntryKind.RaceReading) || (field is "driveS" && kind is EntryKind.QuestionSet or EntryKind.DaySet);
}
