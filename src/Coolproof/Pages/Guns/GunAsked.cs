using Coolproof.Advice.Instruments;
using Coolproof.Notebook;
using Coolproof.Pages.Forms;
using Coolproof.Thermal;

namespace Coolproof.Pages.Guns;

/// <summary>A number of the gun's form.</summary>
/// <param name="Name">Name in the address.</param>
/// <param name="Label">What it is.</param>
/// <param name="Unit">Its unit; °C is shown and typed in the person's degrees.</param>
/// <param name="Least">Left end of its slider.</param>
/// <param name="Most">Right end.</param>
/// <param name="Step">From one value to the next.</param>
/// <param name="Usual">Where it starts.</param>
public sealed record GunField(string Name, string Label, string Unit, double Least, double Most, double Step, double Usual)
{
    /// <summary>All of them, in the form's order; a club's gun and a 1:10 motor (made up).</summary>
    public static IReadOnlyList<GunField> All { get; } =
    [
        new("read", "The gun shows", "°C", 0, 130, 0.5, 62), new("set", "Its emissivity setting", "", 0.5, 1, 0.01, 0.95), new("around", "What the surface mirrors", "°C", -10, 50, 1, 25),
        new("ratio", "Distance to spot, as printed", ":1", 1, 50, 0.5, 12), new("distance", "From gun to motor", "mm", 10, 600, 5, 100), new("target", "Width of tape or band", "mm", 3, 60, 1, 12),
    ];
}

/// <summary>A field with what stands in it, in the unit shown.</summary>
/// <param name="Field">The field.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Least">Left end.</param>
/// <param name="Most">Right end.</param>
/// <param name="Value">Its value.</param>
public sealed record GunEntry(GunField Field, string Unit, double Least, double Most, double Value)
{
    /// <summary>In words.</summary>
    public string Said => $"{FieldUnits.Text(Value)}{(Unit.Length > 0 ? " " : "")}{Unit}";
}

/// <summary>A shot and a spot as an address holds them; what isn't in it starts as usual. Temperatures are in the unit that the address names.</summary>
public sealed class GunAsked
{
    const string UsualSurface = "tape";
    const double Rounding = 0.06; // a slider's end in °F, put back into °C

    readonly List<string> faults = [];

    /// <summary>Reads an address.</summary>
    /// <param name="query">What was set.</param>
    /// <param name="unit">Degrees of the person.</param>
    public GunAsked(IQueryCollection query, TemperatureUnitChoice unit)
    {
        var typed = query["in"].ToString() switch { "f" => TemperatureUnitChoice.Fahrenheit, "c" => TemperatureUnitChoice.Celsius, _ => unit };
        Dictionary<string, double> inCelsius = [];
        Entries = [.. GunField.All.Select(Entry)];
        var key = query["surface"].ToString();
        Surface = SurfaceEmissivity.Find(key.Length > 0 ? key : UsualSurface) ?? SurfaceEmissivity.Find(UsualSurface)!;
        if (key.Length > 0 && SurfaceEmissivity.Find(key) is null) faults.Add("Surface: expected one of the list. Choose it anew.");
        IsBand = query["shape"].ToString() != "round";
        if (faults.Count > 0) return;
        Spot = new(inCelsius["distance"] / 1000, inCelsius["ratio"], 0, inCelsius["target"] / 1000, IsBand);
        Right = ShotCorrection.Of(new(inCelsius["read"], inCelsius["set"], Surface.Low, Surface.High, inCelsius["around"]));
        if (Right is null) faults.Add("No surface of that kind would show this in such surroundings: more would be mirrored than was seen. Put matt tape on it.");

        GunEntry Entry(GunField field)
        {
            var warm = field.Unit == "°C";
            double Shown(double celsius) => warm ? Math.Round(Units.FromCelsius(celsius, unit), 1) : celsius;
            var text = query[field.Name].ToString().Trim();
            double value = field.Usual;
            if (text.Length > 0)
            {
                if (TypedNumber.TryRead(text, out var number)) value = warm ? Units.CelsiusFrom(number, typed) : number;
                else faults.Add($"{field.Label}: expected a number. Write it with digits only.");
                if (value < field.Least - Rounding || value > field.Most + Rounding)
                    faults.Add($"{field.Label}: found {text}; expected {FieldUnits.Text(Shown(field.Least))} to {FieldUnits.Text(Shown(field.Most))}.");
                value = Math.Clamp(value, field.Least, field.Most);
            }
            inCelsius[field.Name] = value;
            return new(field, warm ? Units.Symbol(unit) : field.Unit, Shown(field.Least), Shown(field.Most), Shown(value));
        }
    }

    /// <summary>Its numbers, in the form's order.</summary>
    public IReadOnlyList<GunEntry> Entries { get; }

    /// <summary>What is shot.</summary>
    public SurfaceEmissivity Surface { get; }

    /// <summary>Whether the target is a band across the can; else a round piece of tape.</summary>
    public bool IsBand { get; }

    /// <summary>The spot; null where something can't be right.</summary>
    public SpotSize? Spot { get; }

    /// <summary>The shot put right; null where it can't be.</summary>
    public ShotCorrection? Right { get; }

    /// <summary>What can't be right, each with its remedy.</summary>
    public IReadOnlyList<string> Faults => faults;
}
