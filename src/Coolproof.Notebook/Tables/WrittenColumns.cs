using System.Globalization;
using NodaTime.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>One column as it is written.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Always">Whether it is written even when it says nothing.</param>
/// <param name="Of">Its cell for a run and a reading; null for blank. The reading is null in a row without one.</param>
internal sealed record WrittenColumn(string Name, bool Always, Func<Run, Reading?, string?> Of);

/// <summary>How each column of <see cref="ColumnRules"/> is written.</summary>
internal static class WrittenColumns
{
    /// <summary>All columns in the order in which they are written.</summary>
    public static IReadOnlyList<WrittenColumn> All(TemperatureUnitChoice unit) => [.. ColumnRules.All.Select(rule => Column(rule, unit))];

    private static WrittenColumn Column(ColumnRule rule, TemperatureUnitChoice unit)
    {
        bool fahrenheit = rule.Quantity == Quantity.Temperature && unit == TemperatureUnitChoice.Fahrenheit;
        bool always = rule.Field is Field.Day or Field.Run or Field.Option or Field.Read;
        return new WrittenColumn(
            rule.Names[fahrenheit ? 1 : 0], always, (run, reading) => rule.BelongsTo == BelongsTo.Run
                ? OfRun(rule, run, unit)
                : reading is not null ? OfReading(rule, reading, unit) : rule.Field == Field.Note ? run.Note : null);
    }

    private static string? OfRun(ColumnRule rule, Run run, TemperatureUnitChoice unit) => rule.Field switch
    {
        Field.Option => run.Option,
        Field.Day => run.Day,
        Field.Run => run.Name,
        Field.StartedAt => Start(run),
        Field.Kind => Word(rule, run.Kind, RunKind.Test),
        Field.Drive => run.DriveAssumed ? null : Number(run.DriveS),
        Field.RollIn => Number(run.RollInS),
        Field.Stood => run.StoodS == 0 ? null : Number(run.StoodS),
        Field.CutShort => Word(rule, run.CutShort, CutShort.No),
        Field.Ambient => Degrees(run.AirC, unit),
        Field.AirBy => Word(rule, run.AirBy, AirSource.Thermometer),
        Field.Sky => Word(rule, run.Sky),
        Field.Wind => Word(rule, run.Wind),
        Field.Track => Word(rule, run.Track),
        Field.TrackTemperature => Degrees(run.TrackC, unit),
        Field.Start => Degrees(run.StartC, unit),
        Field.Remounted => run.Remounted is { } remounted ? remounted ? "yes" : "no" : null,
        Field.Fan => Word(rule, run.Fan, FanInRun.Unknown),
        Field.FanAfterStop => Word(rule, run.FanAfterStop, FanAfterStop.Unknown),
        Field.PowerOff => Number(run.PowerOffS),
        Field.Pack => run.Pack.Name,
        Field.PackStartV => Number(run.Pack.StartV),
        Field.ChargeBack => Number(run.Pack.ChargeBackMah),
        Field.Laps => Number(run.Laps),
        Field.MeanLap => Number(run.MeanLapS),
        _ => OfLoad(rule.Field, run.Load),
    };

    private static string? OfLoad(Field field, LoadNotes load) => field switch
    {
        Field.Driver => load.Driver,
        Field.Surface => load.Surface,
        Field.Venue => load.Venue,
        Field.Vehicle => load.Vehicle,
        Field.Motor => load.Motor,
        Field.Tyres => load.Tyres,
        Field.ControllerProfile => load.ControllerProfile,
        Field.Pinion => Number(load.PinionTeeth),
        Field.Spur => Number(load.SpurTeeth),
        Field.Timing => Number(load.TimingDeg),
        _ => throw new ArgumentOutOfRangeException(nameof(field), field, "no column of a run"),
    };

    private static string? OfReading(ColumnRule rule, Reading reading, TemperatureUnitChoice unit) => rule.Field switch
    {
        Field.Read => Degrees(reading.ReadC, unit),
        Field.StopToRead => Number(reading.StopToReadS),
        Field.Instrument => reading.Instrument == "gun" ? null : reading.Instrument,
        Field.EmissivitySet => Number(reading.EmissivitySet),
        Field.SurfaceOfSpot => Word(rule, reading.Surface, SpotSurface.Unknown),
        Field.Spot => Word(rule, reading.Spot, Spot.Can),
        Field.Hold => Word(rule, reading.Hold, Hold.Single),
        Field.WindingHot => Number(reading.Winding?.HotMilliohm),
        Field.WindingAt => Number(reading.Winding?.AtS),
        Field.WindingCold => Number(reading.Winding?.ColdMilliohm),
        Field.WindingColdTemperature => Degrees(reading.Winding?.ColdC, unit),
        Field.WindingPair => Word(rule, reading.Winding?.Pair),
        Field.Note => reading.Note,
        Field.Exclude => reading.ExcludedBecause,
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule.Field, "no column of a reading"),
    };

    private static string? Start(Run run) => run.StartedAt is { } start
        ? LocalDateTimePattern.ExtendedIso.Format(start) + (run.StartedOffset is { } offset ? OffsetPattern.GeneralInvariantWithZ.Format(offset) : "")
        : null;

    private static string? Word<T>(ColumnRule rule, T value, T blank) where T : struct, Enum =>
        EqualityComparer<T>.Default.Equals(value, blank) ? null : Word<T>(rule, value);

    private static string? Word<T>(ColumnRule rule, T? value) where T : struct, Enum =>
        value is { } chosen ? rule.Allowed[Array.IndexOf(Choices<T>.All, chosen)] : null;

    private static string? Degrees(double? celsius, TemperatureUnitChoice unit) => celsius is { } value ? Number(Units.FromCelsius(value, unit)) : null;

    private static string? Number(double? value)
    {
        if (value is not { } number) return null;
        string shortest = number.ToString("R", CultureInfo.InvariantCulture);
        // Never an exponent: 1E-05 is a number to programs only.
        return shortest.Contains('E') ? number.ToString("F350", CultureInfo.InvariantCulture).TrimEnd('0').TrimEnd('.') : shortest;
    }
}
