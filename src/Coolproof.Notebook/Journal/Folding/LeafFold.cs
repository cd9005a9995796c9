using NodaTime;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Folds things that are made of their own lines alone.</summary>
internal static class LeafFold
{
    /// <summary>Folds one type out of the lines of a thing; null where no live line makes it.</summary>
    /// <param name="type">Type; not a run, an option or an instrument.</param>
    /// <param name="id">The thing.</param>
    /// <param name="lines">All its lines in order.</param>
    /// <param name="offsetMs">For a device: its latest measured offset.</param>
    public static NotedThing? Of(ThingType type, Guid id, Line[] lines, double? offsetMs)
    {
        Line[] live = LiveOf(type, lines);
        if (live.Length == 0) return null;
        bool removed = Removed(lines);
        Instant since = live[0].Tapped;
        if (type == ThingType.Shot) return ShotOf(id, live, since, removed);
        if (type == ThingType.CoolDown) return CoolDownOf(id, live, since, removed);
        if (type == ThingType.Day) return DayOf(id, live, since, removed);
        EntryBody fields = FieldMerge.Of(live.Where(line => line.Kind != EntryKind.ClockOffset));
        return type switch
        {
            ThingType.Class => new NotedClass(id, fields, since, removed),
            ThingType.Vehicle => new NotedVehicle(id, fields, since, removed),
            ThingType.Motor => new NotedMotor(id, fields, since, removed),
            ThingType.Part => new NotedPart(id, fields, since, removed),
            ThingType.GunCheck => new NotedGunCheck(id, fields, since, removed),
            ThingType.Pack => new NotedPack(id, fields, since, removed),
            ThingType.Charger => new NotedCharger(id, fields, since, removed),
            ThingType.Question => new NotedQuestion(id, fields, since, removed),
            ThingType.RaceReading => RaceReadingOf(id, live[^1], since, removed),
            ThingType.Photo => new NotedPhoto(id, fields, since, removed),
            ThingType.Device => new NotedDevice(id, fields, since, removed, offsetMs),
            ThingType.Settings => new NotedSettings(id, fields, since, removed),
            ThingType.Import => new NotedImport(id, fields, since, removed),
            ThingType.Trace => new NotedTrace(id, fields, since, removed),
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "is folded elsewhere"),
        };
    }

    /// <summary>Live lines of a type, in order.</summary>
    public static Line[] LiveOf(ThingType type, Line[] lines) => Array.FindAll(lines, line => line.Live && line.Type == type);

    /// <summary>Whether a live line takes the thing out of lists.</summary>
    public static bool Removed(Line[] lines) => Array.Exists(lines, line => line is { Live: true, Kind: EntryKind.Remove });

    private static NotedShot? ShotOf(Guid id, Line[] live, Instant since, bool removed)
    {
        Line? trigger = live.FirstOrDefault(line => line.Kind == EntryKind.Shot);
        // A number or a photo of a shot that is not known (yet) makes no shot.
        if (trigger is null && !Array.Exists(live, line => line.Kind == EntryKind.ShotSet)) return null;
        EntryBody fields = FieldMerge.Of(live.Where(line => line.Kind == EntryKind.Shot), live.Where(line => line.Kind == EntryKind.ShotSet));
        Line? read = live.LastOrDefault(line => line.Kind == EntryKind.ShotRead);
        Guid? photo = live.LastOrDefault(line => line.Kind == EntryKind.ShotPhoto)?.Body.Id("photo");
        Instant? at = fields.YesNo("untimed") == true ? null : trigger?.At;
        return new NotedShot(id, fields, since, removed, at, read is null ? null : Celsius(read.Body), photo);
    }

    private static NotedCoolDown? CoolDownOf(Guid id, Line[] live, Instant since, bool removed)
    {
        if (live.FirstOrDefault(line => line.Kind == EntryKind.CoolDownBegin) is not { } begin) return null;
        Line? end = live.FirstOrDefault(line => line.Kind == EntryKind.CoolDownEnd);
        return new NotedCoolDown(id, begin.Body, since, removed, begin.At, end?.At);
    }

    private static NotedDay DayOf(Guid id, Line[] live, Instant since, bool removed)
    {
        Line[] weather = [.. live.Where(line => line.Kind == EntryKind.Weather)];
        Array.Sort(weather, Line.OrderAt);
        return new NotedDay(id, FieldMerge.Of(live.Where(line => line.Kind == EntryKind.DaySet)), since, removed, [.. weather.Select(WeatherOf)]);
    }

    private static NotedWeather WeatherOf(Line line) => new(
        line.Id, line.At, line.Body.Number("airC"), NotedWords.Choice<AirSource>(Tables.Field.AirBy, line.Body.Text("airBy")) ?? AirSource.Thermometer,
        NotedWords.Choice<Sky>(Tables.Field.Sky, line.Body.Text("sky")), NotedWords.Choice<Wind>(Tables.Field.Wind, line.Body.Text("wind")),
        NotedWords.Choice<TrackState>(Tables.Field.Track, line.Body.Text("track")), line.Body.Number("trackC"));

    private static NotedRaceReading? RaceReadingOf(Guid id, Line line, Instant since, bool removed) =>
        Celsius(line.Body) is { } readC ? new NotedRaceReading(id, line.Body, since, removed, line.At, readC) : null;

    private static double? Celsius(EntryBody body) =>
        body.Number("value") is { } value ? Units.CelsiusFrom(value, NotedWords.Unit(body.Text("unit")) ?? TemperatureUnitChoice.Celsius) : null;
}
