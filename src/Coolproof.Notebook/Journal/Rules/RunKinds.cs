using Coolproof.Notebook.Tables;
using static Coolproof.Notebook.Journal.Rules.FieldRules;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Kinds of the day at the track: runs, shots, weather, cooling, charge.</summary>
internal static class RunKinds
{
    private const string Run = "run";
    private const string Shot = "shot";
    private static readonly FieldRule Day = Id("day", "the day");
    private static readonly FieldRule Option = Id("option", "the cooling option");
    private static readonly FieldRule Kind = Column("kind", Field.Kind, "what the run is for");
    private static readonly FieldRule Number = Whole("number", 1, 100_000, "number of the run within its day");
    private static readonly FieldRule OfRun = Id("run", "the run");
    private static readonly FieldRule OfShot = Id("shot", "the shot");
    private static readonly FieldRule SecondsAgo = FieldRules.Number("secondsAgo", 0, 7200, "how long ago it was, s");
    private static readonly FieldRule Because = Text("because", "why");
    private static readonly FieldRule Instrument = Id("instrument", "the instrument");
    private static readonly FieldRule Spot = Column("spot", Field.Spot, "where the spot lay");
    private static readonly FieldRule Hold = Column("hold", Field.Hold, "what the number on the display is");
    private static readonly FieldRule Surface = Column("surface", Field.SurfaceOfSpot, "what the spot lay on");
    private static readonly FieldRule Value = FieldRules.Number("value", -459, 662, "the number on the display");
    private static readonly FieldRule Unit = Word("unit", "unit of the display", "c", "f");
    private static readonly FieldRule AirC = Column("airC", Field.Ambient, "air in the shade near the track, °C");
    private static readonly FieldRule AirBy = Column("airBy", Field.AirBy, "where the air temperature came from");
    private static readonly FieldRule Sky = Column("sky", Field.Sky, "sky");
    private static readonly FieldRule Wind = Column("wind", Field.Wind, "wind");
    private static readonly FieldRule Track = Column("track", Field.Track, "state of the track");
    private static readonly FieldRule TrackC = Column("trackC", Field.TrackTemperature, "surface of the track, °C");

    public static readonly IReadOnlyList<KindRule> All =
    [
        new(EntryKind.RunBegin, Run, "a run is begun", [Must(Day), OrNull(Option), Kind, OrNull(Number)]),
        new(EntryKind.RunCountdown, Run, "the countdown begins; go comes by itself after its seconds", [Must(FieldRules.Number("seconds", 0, 600, "until go, s")), Must(Column("driveS", Field.Drive, "planned drive, s"))]),
        new(EntryKind.RunGo, Run, "go", [SecondsAgo]),
        new(EntryKind.RunStop, Run, "the end of hard driving", [Word("by", "what ended it", "tap", "horn", "later"), SecondsAgo]),
        new(EntryKind.RunHalt, Run, "the vehicle stands; power off", [SecondsAgo]),
        new(EntryKind.RunDown, Run, "the vehicle lies or stands within the drive", []),
        new(EntryKind.RunUp, Run, "it drives again", []),
        new(EntryKind.RunFanDead, Run, "the fan was seen to have failed", []),
        new(EntryKind.RunAbandon, Run, "the run came to nothing; the warmth that it left is kept", [Because]),
        new(EntryKind.RunLap, Run, "a lap was finished", []),
        new(EntryKind.RunFan, Run, "whether the fan turned", [Must(Word("when", "before the run or after the stop", "before", "after")), Must(OrNull(YesNo("turning", "whether it turned; null: not seen")))]),
        new(EntryKind.RunPowerOff, Run, "the power was switched off", []),
        Set(EntryKind.RunSet, Run, Day, Option, Kind, Number, Text("name", "its name, where it is no number"), Text("driver", "driver"), Id("vehicle", "vehicle"), Id("motor", "motor"), Id("pack", "pack"),
            Column("packStartV", Field.PackStartV, "volts at the start"), Column("chargeBackMah", Field.ChargeBack, "charge put back, mAh"), Column("startC", Field.Start, "can before the run, °C"), YesNo("remounted", "whether the option was refitted before the run"),
            AirC, AirBy, Sky, Wind, Track, TrackC, Column("laps", Field.Laps, "laps driven"), Column("meanLapS", Field.MeanLap, "mean lap, s"), Column("driveS", Field.Drive, "from go to the end of hard driving, s; goes before the stamps"),
            Column("rollInS", Field.RollIn, "from the end of hard driving to halt, s; goes before the stamps"), Column("stoodS", Field.Stood, "stood still within the drive, s; goes before the stamps"), Column("cutShort", Field.CutShort, "why it ended early"),
            Column("fan", Field.Fan, "fan in the run"), Column("fanAfterStop", Field.FanAfterStop, "fan after the stop"), Column("powerOffS", Field.PowerOff, "from halt to power off, s"), Text("surface", "surface"), Text("venue", "venue"), Text("tyres", "tyres"),
            Text("controllerProfile", "profile of the speed controller"), Column("pinion", Field.Pinion, "teeth of the pinion"), Column("spur", Field.Spur, "teeth of the spur"), Column("timingDeg", Field.Timing, "timing, degrees"),
            YesNo("typed", "it was typed from a sheet after it was driven: no stamps will come"), DateTime("startedAt", "local date and time of go; goes before the stamp"), FieldRules.Number("startedOffsetS", -64_800, 64_800, "offset of that from UTC, s"), Text("note", "free text"), FieldRules.Number("order", -1e6, 1e6, "place within the day where no clock tells")),
        new(EntryKind.Shot, Shot, "a shot; its `at` is the trigger", [Must(OfRun), OrNull(Instrument), Spot, Hold, Surface]),
        new(EntryKind.ShotRead, Shot, "the number that the shot showed", [Must(OfShot), Must(Value), Must(Unit)]),
        new(EntryKind.ShotPhoto, Shot, "the photo that the number can be read from", [Must(OfShot), Must(Id("photo", "the photo"))]),
        Set(EntryKind.ShotSet, Shot, OfRun, Instrument, Spot, Hold, Surface, Column("emissivitySet", Field.EmissivitySet, "emissivity setting then"), Column("stopToReadS", Field.StopToRead, "from halt to the reading, s; goes before the stamps"),
            Column("windingHotMohm", Field.WindingHot, "winding resistance after the halt, mΩ"), Column("windingAtS", Field.WindingAt, "from halt to it, s"), Column("windingColdMohm", Field.WindingCold, "the same pair cold, mΩ"),
            Column("windingColdC", Field.WindingColdTemperature, "temperature of the winding then, °C"), Column("windingPair", Field.WindingPair, "terminal pair"), Text("excludedBecause", "why it is left out; null: it counts"), Text("note", "free text"), YesNo("untimed", "its time says nothing (typed from a sheet)"), Id("trace", "the trace that it was taken from"), FieldRules.Number("order", -1e6, 1e6, "place within the run where no clock tells")),
        new(EntryKind.Weather, "note of the weather", "air, sky, wind, track at `at`", [Must(Day), OrNull(AirC), AirBy, OrNull(Sky), OrNull(Wind), OrNull(Track), OrNull(TrackC)]),
        new(EntryKind.CoolDownBegin, "cooling", "cooling before a run begins", [Must(OfRun), Must(Word("way", "how", "shade", "own-fan", "pit-fan", "cooled-air"))]),
        new(EntryKind.CoolDownEnd, "cooling", "it ends", []),
        new(EntryKind.Charge, Run, "the charge that went back into the run's pack", [Must(OfRun), Must(Column("mah", Field.ChargeBack, "charge, mAh"))]),
        new(EntryKind.RaceReading, "reading after a race", "a late reading after a real race", [Must(Option), Must(Value), Must(Unit), Must(FieldRules.Number("minutesAfter", 0, 60, "from the end of the race to the reading, min")), OrNull(Day), OrNull(Id("vehicle", "vehicle")), OrNull(Id("motor", "motor")),
            OrNull(Text("driver", "driver")), OrNull(Instrument), Spot, Hold, Surface, OrNull(AirC), AirBy, OrNull(Column("raceS", Field.Drive, "length of the race, s")), OrNull(Word("fanAfterStop", "fan after the race", "on", "off", "none", "unknown")), OrNull(Text("note", "free text"))]),
        new(EntryKind.Photo, "photo", "a photo and the thing it shows; its bytes are kept apart", [Must(Id("about", "the thing that it shows")), Must(Word("type", "media type", "image/jpeg", "image/png", "image/webp")), Must(Whole("bytes", 1, 50_000_000, "size, bytes")),
            Must(Whole("width", 1, 30_000, "width, pixels")), Must(Whole("height", 1, 30_000, "height, pixels"))]),
    ];
}
