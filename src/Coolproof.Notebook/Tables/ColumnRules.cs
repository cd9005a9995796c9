using static Coolproof.Notebook.Tables.Quantity;

namespace Coolproof.Notebook.Tables;

/// <summary>All known columns, in the order in which they are written.</summary>
internal static class ColumnRules
{
    // Ranges are set wide of anything seen at a track (common practice, no source): they catch slips of the key and wrong units, not odd days.
    public static readonly IReadOnlyList<ColumnRule> All =
    [
        Words(Field.Day, "day", BelongsTo.Run),
        Words(Field.Run, "run", BelongsTo.Run),
        new(Field.StartedAt, "started_at", Quantity.DateTime, BelongsTo.Run) { Rule = "the local date and time of go, such as 2026-06-13T17:05 (ISO 8601, offset optional)" },
        Words(Field.Option, "option", BelongsTo.Run) with { Synonyms = ["cooling", "setup", "cooling_option"] },
        Chosen(Field.Kind, "kind", BelongsTo.Run, "test", "warm-up", "race", "void"),
        Time(Field.Drive, "drive", BelongsTo.Run, 7200, "more than 0 s and at most 2 h: the halt cannot come before go, and no pack lasts longer") with { Min = ShortestS },
        Time(Field.RollIn, "roll_in", BelongsTo.Run, 300, "0 s to 5 min: the halt cannot come before the end of hard driving"),
        Time(Field.Stood, "stood", BelongsTo.Run, 7200, "0 s or more, and no longer than the drive"),
        Chosen(Field.CutShort, "cut_short", BelongsTo.Run, "no", "crash", "pack", "rain", "controller", "other") with { Spellings = [("none", "no")] },
        Warmth(Field.Ambient, "ambient", BelongsTo.Run, -30, 60, "air between -30 °C and 60 °C (-22 °F and 140 °F)"),
        Chosen(Field.AirBy, "air_by", BelongsTo.Run, "thermometer", "forecast", "gun"),
        Chosen(Field.Sky, "sky", BelongsTo.Run, "sun", "cloud", "dusk", "indoor") with { Spellings = [("sunny", "sun"), ("cloudy", "cloud"), ("indoors", "indoor")] },
        Chosen(Field.Wind, "wind", BelongsTo.Run, "calm", "light", "strong"),
        Chosen(Field.Track, "track", BelongsTo.Run, "dry", "damp", "wet"),
        Warmth(Field.TrackTemperature, "track", BelongsTo.Run, -30, 90, "a track surface between -30 °C and 90 °C (-22 °F and 194 °F)"),
        Warmth(Field.Start, "start", BelongsTo.Run, -40, 200, "a can before the run between -40 °C and 200 °C (-40 °F and 392 °F)"),
        new(Field.Remounted, "remounted", YesNo, BelongsTo.Run),
        Chosen(Field.Fan, "fan", BelongsTo.Run, "unknown", "ok", "failed", "none"),
        Chosen(Field.FanAfterStop, "fan_after_stop", BelongsTo.Run, "unknown", "on", "off", "none"),
        Time(Field.PowerOff, "power_off", BelongsTo.Run, 3600, "0 s to 1 h after the halt"),
        Words(Field.Driver, "driver", BelongsTo.Run),
        Words(Field.Surface, "surface", BelongsTo.Run),
        Words(Field.Venue, "venue", BelongsTo.Run),
        Words(Field.Vehicle, "vehicle", BelongsTo.Run),
        Words(Field.Motor, "motor", BelongsTo.Run),
        Words(Field.Tyres, "tyres", BelongsTo.Run) with { Synonyms = ["tires"] },
        Words(Field.ControllerProfile, "controller_profile", BelongsTo.Run),
        Count(Field.Pinion, "pinion", 5, 80, "5 to 80 whole teeth", "t", "teeth"),
        Count(Field.Spur, "spur", 10, 250, "10 to 250 whole teeth", "t", "teeth"),
        Figure(Field.Timing, "timing_deg", BelongsTo.Run, -30, 90, "timing between -30 and 90 degrees", "°", "deg", "degrees") with { Synonyms = ["timing"] },
        Words(Field.Pack, "pack", BelongsTo.Run),
        Figure(Field.PackStartV, "pack_start_v", BelongsTo.Run, 1, 70, "a pack between 1 V and 70 V", "v", "volt", "volts"),
        Figure(Field.ChargeBack, "charge_back_mah", BelongsTo.Run, 10, 30000, "a charge between 10 mAh and 30000 mAh, without a thousands separator", "mah"),
        Count(Field.Laps, "laps", 0, 1000, "0 to 1000 whole laps", "laps"),
        Time(Field.MeanLap, "mean_lap", BelongsTo.Run, 600, "a mean lap of more than 0 s and at most 10 min") with { Min = ShortestS },

        Warmth(Field.Read, "read", BelongsTo.Reading, -40, 350, "a reading between -40 °C and 350 °C (-40 °F and 662 °F): magnets and solder do not live beyond"),
        Time(Field.StopToRead, "stop_to_read", BelongsTo.Reading, 3600, "0 s to 1 h after the halt: a delay cannot be negative"),
        Words(Field.Instrument, "instrument", BelongsTo.Reading),
        Figure(Field.EmissivitySet, "emissivity_set", BelongsTo.Reading, 0.05, 1, "an emissivity setting between 0.05 and 1", "%"),
        Chosen(Field.SurfaceOfSpot, "surface_of_spot", BelongsTo.Reading, "unknown", "tape", "paint", "bare"),
        Chosen(Field.Spot, "spot", BelongsTo.Reading, "can", "fin", "endbell", "through-vent", "winding", "esc"),
        Chosen(Field.Hold, "hold", BelongsTo.Reading, "single", "max", "average") with { Spellings = [("maximum", "max"), ("mean", "average"), ("avg", "average")] },
        Figure(Field.WindingHot, "winding_mohm", BelongsTo.Reading, 0.1, 5000, "a winding resistance between 0.1 mΩ and 5000 mΩ", "mohm"),
        Time(Field.WindingAt, "winding_at", BelongsTo.Reading, 3600, "0 s to 1 h after the halt: a delay cannot be negative"),
        Figure(Field.WindingCold, "winding_cold_mohm", BelongsTo.Reading, 0.1, 5000, "a winding resistance between 0.1 mΩ and 5000 mΩ", "mohm"),
        Warmth(Field.WindingColdTemperature, "winding_cold", BelongsTo.Reading, -30, 60, "a cold winding between -30 °C and 60 °C (-22 °F and 140 °F)"),
        Chosen(Field.WindingPair, "winding_pair", BelongsTo.Reading, "AB", "BC", "CA") with { Spellings = [("BA", "AB"), ("CB", "BC"), ("AC", "CA")] },
        Words(Field.Note, "note", BelongsTo.Reading) with { Synonyms = ["notes"] },
        Words(Field.Exclude, "exclude", BelongsTo.Reading),
    ];

    // What a stopwatch shows; stands for "more than nothing".
    private const double ShortestS = 0.01;

    private static readonly ColumnRule[] ByField = [.. All.OrderBy(rule => rule.Field)];

    public static ColumnRule Of(Field field) => ByField[(int)field];

    private static ColumnRule Words(Field field, string stem, BelongsTo belongsTo) => new(field, stem, Text, belongsTo);

    private static ColumnRule Chosen(Field field, string stem, BelongsTo belongsTo, params string[] allowed) =>
        new(field, stem, Choice, belongsTo) { Allowed = allowed, Rule = "one of: " + string.Join(", ", allowed) };

    private static ColumnRule Warmth(Field field, string stem, BelongsTo belongsTo, double min, double max, string rule) =>
        new(field, stem, Temperature, belongsTo) { Min = min, Max = max, Rule = rule };

    private static ColumnRule Time(Field field, string stem, BelongsTo belongsTo, double max, string rule) =>
        new(field, stem, Duration, belongsTo) { Min = 0, Max = max, Rule = rule };

    private static ColumnRule Count(Field field, string stem, double min, double max, string rule, params string[] units) =>
        new(field, stem, Whole, BelongsTo.Run) { Min = min, Max = max, Rule = rule, CellUnits = units };

    private static ColumnRule Figure(Field field, string stem, BelongsTo belongsTo, double min, double max, string rule, params string[] units) =>
        new(field, stem, Number, belongsTo) { Min = min, Max = max, Rule = rule, CellUnits = units };
}
