using Coolproof.Notebook.Tables;
using static Coolproof.Notebook.Journal.Rules.FieldRules;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Kinds that describe things: what is owned, asked and planned. Ranges catch slips of the key (common practice, no source).</summary>
internal static class ThingKinds
{
    private static readonly FieldRule Name = Text("name", "its name");
    private static readonly FieldRule Note = Text("note", "free text");
    private static readonly FieldRule Order = Number("order", -1e6, 1e6, "place in lists; without one, by time of making");
    private static readonly FieldRule Tyres = Text("tyres", "tyres");
    private static readonly FieldRule Profile = Text("controllerProfile", "profile of the speed controller");
    private static readonly FieldRule Pinion = Column("pinion", Field.Pinion, "teeth of the pinion");
    private static readonly FieldRule Spur = Column("spur", Field.Spur, "teeth of the spur");
    private static readonly FieldRule Timing = Column("timingDeg", Field.Timing, "timing, degrees");

    public static readonly IReadOnlyList<KindRule> All =
    [
        Set(EntryKind.ClassSet, "class card", Name, Text("motorRule", "which motors are allowed, in the class's words"), Number("timingMinDeg", -30, 90, "least timing, degrees"),
            Number("timingMaxDeg", -30, 90, "most timing, degrees"), Number("ratioMin", 1, 40, "least final drive ratio"), Number("ratioMax", 1, 40, "most final drive ratio"),
            Text("packRule", "which packs are allowed"), Number("massMinG", 0, 20_000, "least mass of the vehicle, g"), Whole("fansMax", 0, 10, "most fans on the motor"),
            Number("fanMaxV", 0, 70, "highest fan voltage, V"), YesNo("openingsAllowed", "whether openings in the shell are allowed"),
            Number("raceS", 30, 7200, "length of a race, s"), Note, Order),
        Set(EntryKind.VehicleSet, "vehicle", Name, Text("scale", "scale, such as 1:10"), Text("drive", "driven wheels"), Spur, Pinion,
            Number("internalRatio", 0.5, 10, "ratio between spur and wheel"), Number("tyreDiameterMm", 20, 300, "tyre diameter, mm"), Number("massG", 100, 20_000, "mass ready to race, g"),
            Id("motor", "its motor"), Id("class", "its class card"), Tyres, Profile, Number("controllerLimitC", 30, 350, "limit of the speed controller, °C"), Note, Order),
        Set(EntryKind.MotorSet, "motor", Name, Number("massG", 20, 2000, "mass with leads, g"), YesNo("brushed", "whether it has brushes"), Number("turns", 1, 100, "turns"),
            Number("kv", 50, 20_000, "speed per volt, 1/min/V"), Whole("poles", 2, 24, "poles"), Number("canDiameterMm", 10, 100, "can diameter, mm"), Number("canLengthMm", 10, 200, "can length, mm"),
            Timing, Column("windingColdMohm", Field.WindingCold, "winding resistance, cold, mΩ"), Column("windingColdC", Field.WindingColdTemperature, "temperature of the winding then, °C"),
            Column("windingPair", Field.WindingPair, "terminal pair of that resistance"), Text("insulation", "insulation class"), Text("magnetGrade", "grade of the magnets by its letters, such as SH"), Number("canLimitC", 30, 350, "limit of the can, °C"),
            Number("windingLimitC", 30, 350, "limit of the winding, °C"), Number("magnetLimitC", 30, 350, "limit of the magnets, °C"), Column("surface", Field.SurfaceOfSpot, "surface of the spot"), Text("spotNote", "where the spot is"), Note, Order),
        Set(EntryKind.OptionSet, "cooling option", Name, Text("mount", "where the fan sits"), Number("fanSizeMm", 5, 120, "fan size, mm"), Whole("fans", 0, 10, "number of fans"),
            Number("fanV", 0, 70, "supply voltage of the fan, V"), Text("fanSupply", "what supplies the fan"), Text("inletBlockedBy", "what blocks its inlet"), YesNo("cantBeUndone", "whether fitting it can't be undone (a cut shell)"),
            Number("price", 0, 1e7, "price where no parts are listed, own currency"), Number("massG", 0, 10_000, "mass where no parts are listed, g"), YesNo("notOwned", "whether nobody owns it yet"),
            Text("fitNotes", "what had to be cut, re-soldered or moved to fit it"), Number("fitMin", 0, 1440, "time that fitting it takes, min"), Text("touchesShell", "what of it touches the shell"),
            Whole("colour", 0, 7, "its colour: place in the palette, from 0; without one, by time of making"), Word("mark", "its mark", "circle", "square", "triangle-up", "diamond", "triangle-down", "cross", "star", "hourglass"), Note, Order),
        Set(EntryKind.PartSet, "part", Id("option", "the option that takes it"), Name, Number("price", 0, 1e7, "price, own currency"), Number("massG", 0, 10_000, "mass, g"), YesNo("owned", "whether it is owned already"), Note, Order),
        Set(EntryKind.InstrumentSet, "instrument", Name, Word("type", "how it measures", "gun", "probe", "ohmmeter"), Column("emissivity", Field.EmissivitySet, "its emissivity setting"), YesNo("emissivityFixed", "whether the setting can't be changed"),
            Number("spotRatio", 0.5, 100, "distance to spot size"), Number("resolutionC", 0.001, 5, "step of the display, K"), Number("uncertaintyC", 0, 20, "stated uncertainty, K"), Word("unit", "unit of its display", "c", "f"), Note, Order),
        Set(EntryKind.GunCheckSet, "check of a gun", Id("instrument", "the gun"), Word("way", "against what", "ice", "boiling", "probe-in-water", "beside-tape"), Number("readC", -40, 350, "what the gun showed, °C"),
            Number("trueC", -40, 350, "what was true, °C"), Column("emissivitySet", Field.EmissivitySet, "its emissivity setting then"), Number("altitudeM", -430, 6000, "altitude of the boiling water, m"), Number("distanceMm", 1, 2000, "distance, mm"), Note),
        Set(EntryKind.PackSet, "pack", Name, Whole("cells", 1, 16, "cells in series"), Number("capacityMah", 50, 30_000, "capacity, mAh"), Text("chemistry", "chemistry"), Number("massG", 1, 5000, "mass, g"), Note, Order),
        Set(EntryKind.ChargerSet, "charger", Name, Number("chargeA", 0.05, 100, "charging current, A"), Whole("outputs", 1, 16, "packs at once"), Note, Order),
        Set(EntryKind.QuestionSet, "question", Text("text", "the question as asked"), Word("sort", "what is asked", "which", "pays", "gear", "limit", "why", "other"), Ids("options", "options that it is between"), Number("limitC", 30, 350, "limit, °C"),
            Word("limitOn", "what the limit holds for", "can", "winding", "magnet", "controller"), Number("budget", 0, 1e7, "budget, own currency"), Number("budgetG", 0, 20_000, "budget of mass, g"), Column("airC", Field.Ambient, "air of the race day, °C"),
            Column("driveS", Field.Drive, "length of the race or run, s"), Number("sameWithinK", 0, 50, "difference that makes none, K"), Number("altitudeM", -430, 6000, "altitude, m"), Id("class", "class card"), Id("vehicle", "vehicle"), Id("motor", "motor"), YesNo("answered", "whether it is put aside as answered"), Note, Order),
        Set(EntryKind.DaySet, "day", Name, Date("date", "local date"), Number("utcOffsetMin", -1080, 1080, "local time minus UTC, min"), Id("question", "question that it works on"), Text("venue", "venue"), Text("surface", "surface"), Text("driver", "driver"),
            Id("vehicle", "vehicle"), Id("motor", "motor"), Id("class", "class card"), Id("instrument", "gun"), Tyres, Profile, Pinion, Spur, Timing, Column("driveS", Field.Drive, "planned drive of a run, s"), Whole("shotsPerRun", 1, 20, "shots wanted after a run"),
            Ids("plan", "options in the order of runs"), Number("fromMin", 0, 1440, "first minute of the day at the track, local"), Number("toMin", 0, 2880, "last minute, local"),
            Number("coolMin", 0, 240, "planned cool-down between runs, min"), Number("swapMin", 0, 240, "planned change of the option where none takes longer, min"), Whole("packs", 1, 50, "charged packs at the start"),
            Whole("chargers", 0, 50, "chargers at the track"), Number("chargeMin", 0, 600, "to charge a pack, min"), Id("reference", "option to be driven first and last"), Text("spot", "the one spot of all readings"),
            Whole("planSeed", 0, int.MaxValue, "seed of the plan"), Note, Order),
        Set(EntryKind.TraceSet, "trace", Name, Id("day", "the day that it was logged on"), Text("sha256", "SHA-256 of its kept file, by which that is named"), Text("header", "hash of the header of its file: files alike are read alike"),
            Text("layout", "what the person said of the layout of its file, as JSON"), Whole("rows", 1, 1e12, "rows kept"), Whole("problems", 0, 1e12, "cells and lines that could not be taken as they stood"),
            Number("aheadMs", -1e13, 1e13, "its clock minus the notebook's, ms"), Text("channel", "the channel whose readings were taken into the runs"), YesNo("taken", "whether its readings were taken into the runs"), Note),
        Set(EntryKind.DeviceSet, "device", Name, Word("role", "what it does", "driver", "clock", "gun", "any"), Word("hand", "hand that holds it", "left", "right")),
        new(EntryKind.SettingSet, "the settings (any one UUID)", "settings by name; per name the latest counts", [
            OrNull(Word("temperatureUnit", "unit of temperatures", "c", "f")), OrNull(Word("massUnit", "unit of masses", "g", "oz")), OrNull(Text("currency", "sign of the currency"))]) { Open = true },
        new(EntryKind.Remove, "any thing", "takes the thing out of lists; the history keeps it", []),
    ];
}
