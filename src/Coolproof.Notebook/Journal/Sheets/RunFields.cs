using Coolproof.Notebook.Tables;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal;

/// <summary>What a table says of a run, as fields of `run.set`; what says nothing is left out.</summary>
internal static class RunFields
{
    public static IEnumerable<(string, object?)> Of(Run run, ImportedThings things) => Said(
        ("kind", NotedWords.Word(Field.Kind, run.Kind)),
        ("startedAt", run.StartedAt is { } start ? LocalDateTimePattern.ExtendedIso.Format(start) : null),
        ("startedOffsetS", run.StartedOffset?.Seconds),
        ("driveS", run.DriveAssumed ? null : run.DriveS),
        ("rollInS", run.RollInS),
        ("stoodS", run.StoodS == 0 ? null : run.StoodS),
        ("cutShort", run.CutShort == CutShort.No ? null : NotedWords.Word(Field.CutShort, run.CutShort)),
        ("airC", run.AirC),
        ("airBy", run.AirBy == AirSource.Thermometer ? null : NotedWords.Word(Field.AirBy, run.AirBy)),
        ("startC", run.StartC),
        ("remounted", run.Remounted),
        ("fan", run.Fan == FanInRun.Unknown ? null : NotedWords.Word(Field.Fan, run.Fan)),
        ("fanAfterStop", run.FanAfterStop == FanAfterStop.Unknown ? null : NotedWords.Word(Field.FanAfterStop, run.FanAfterStop)),
        ("powerOffS", run.PowerOffS),
        ("driver", run.Load.Driver),
        ("surface", run.Load.Surface),
        ("venue", run.Load.Venue),
        ("vehicle", things.Vehicle(run.Load.Vehicle)),
        ("motor", things.Motor(run.Load.Motor)),
        ("tyres", run.Load.Tyres),
        ("controllerProfile", run.Load.ControllerProfile),
        ("pinion", run.Load.PinionTeeth),
        ("spur", run.Load.SpurTeeth),
        ("timingDeg", run.Load.TimingDeg),
        ("pack", things.Pack(run.Pack.Name)),
        ("packStartV", run.Pack.StartV),
        ("chargeBackMah", run.Pack.ChargeBackMah),
        ("sky", run.Sky is { } sky ? NotedWords.Word(Field.Sky, sky) : null),
        ("wind", run.Wind is { } wind ? NotedWords.Word(Field.Wind, wind) : null),
        ("track", run.Track is { } track ? NotedWords.Word(Field.Track, track) : null),
        ("trackC", run.TrackC),
        ("laps", run.Laps),
        ("meanLapS", run.MeanLapS),
        ("note", run.Note));

    public static IEnumerable<(string, object?)> Said(params (string Name, object? Value)[] fields) => fields.Where(field => field.Value is not null);
}

/// <summary>What a table says of a reading, as fields of `shot.set`; its number apart.</summary>
internal static class ReadingFields
{
    public static IEnumerable<(string, object?)> Of(Reading reading) => RunFields.Said(
        ("stopToReadS", reading.StopToReadS),
        ("emissivitySet", reading.EmissivitySet),
        ("surface", reading.Surface == SpotSurface.Unknown ? null : NotedWords.Word(Field.SurfaceOfSpot, reading.Surface)),
        ("spot", NotedWords.Word(Field.Spot, reading.Spot)),
        ("hold", NotedWords.Word(Field.Hold, reading.Hold)),
        ("windingHotMohm", reading.Winding?.HotMilliohm),
        ("windingAtS", reading.Winding?.AtS),
        ("windingColdMohm", reading.Winding?.ColdMilliohm),
        ("windingColdC", reading.Winding?.ColdC),
        ("windingPair", reading.Winding?.Pair is { } pair ? NotedWords.Word(Field.WindingPair, pair) : null),
        ("excludedBecause", reading.ExcludedBecause),
        ("note", reading.Note));
}
