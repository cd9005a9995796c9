using NodaTime;

namespace Coolproof.Notebook;

/// <summary>What a run was for. Warm-ups and void runs warm the motor and stay out of the ranking.</summary>
public enum RunKind
{
    /// <summary>A test run.</summary>
    Test,
    /// <summary>A warm-up.</summary>
    WarmUp,
    /// <summary>A race; its readings are weak evidence.</summary>
    Race,
    /// <summary>A run that does not count.</summary>
    Void
}

/// <summary>Why a run ended early.</summary>
public enum CutShort
{
    /// <summary>It did not.</summary>
    No,
    /// <summary>A crash.</summary>
    Crash,
    /// <summary>The pack gave out.</summary>
    Pack,
    /// <summary>Rain.</summary>
    Rain,
    /// <summary>The controller shut down.</summary>
    Controller,
    /// <summary>Anything else.</summary>
    Other
}

/// <summary>Where the air temperature came from.</summary>
public enum AirSource
{
    /// <summary>A thermometer near the track (also when not noted).</summary>
    Thermometer,
    /// <summary>A forecast or an app.</summary>
    Forecast,
    /// <summary>The gun, pointed at something in the shade.</summary>
    Gun
}

/// <summary>State of the cooling fan during a run.</summary>
public enum FanInRun
{
    /// <summary>Not noted.</summary>
    Unknown,
    /// <summary>It ran.</summary>
    Ok,
    /// <summary>It failed during the run.</summary>
    Failed,
    /// <summary>This option has none.</summary>
    None
}

/// <summary>State of the cooling fan after the stop.</summary>
public enum FanAfterStop
{
    /// <summary>Not noted.</summary>
    Unknown,
    /// <summary>It kept running.</summary>
    On,
    /// <summary>It was off.</summary>
    Off,
    /// <summary>This option has none.</summary>
    None
}

/// <summary>Sky over the track.</summary>
public enum Sky
{
    /// <summary>Sun.</summary>
    Sun,
    /// <summary>Cloud.</summary>
    Cloud,
    /// <summary>Dusk.</summary>
    Dusk,
    /// <summary>Indoor.</summary>
    Indoor
}

/// <summary>Wind at the track.</summary>
public enum Wind
{
    /// <summary>Calm.</summary>
    Calm,
    /// <summary>Light.</summary>
    Light,
    /// <summary>Strong.</summary>
    Strong
}

/// <summary>State of the track surface.</summary>
public enum TrackState
{
    /// <summary>Dry.</summary>
    Dry,
    /// <summary>Damp.</summary>
    Damp,
    /// <summary>Wet.</summary>
    Wet
}

/// <summary>What the load of a run depends on, as far as it was noted. Names are compared without regard to case.</summary>
public sealed record LoadNotes(
    string? Driver = null, string? Surface = null, string? Venue = null, string? Vehicle = null, string? Motor = null,
    string? Tyres = null, string? ControllerProfile = null, int? PinionTeeth = null, int? SpurTeeth = null, double? TimingDeg = null);

/// <summary>The pack of a run, as far as it was noted.</summary>
/// <param name="Name">The pack's name.</param>
/// <param name="StartV">Volts at the start.</param>
/// <param name="ChargeBackMah">Charge that the charger put back afterwards, mAh.</param>
public sealed record PackNotes(string? Name = null, double? StartV = null, double? ChargeBackMah = null);

/// <summary>One run: go, drive, roll in, halt, readings.</summary>
/// <param name="Day">Name of the day it belongs to; "day" when the table has one day without a name.</param>
/// <param name="Name">Name of the run, unique within its day.</param>
/// <param name="Option">Name of the cooling option, as first written.</param>
/// <param name="StartedAt">Local date and time of go; null when not noted.</param>
/// <param name="StartedOffset">Offset from UTC of <paramref name="StartedAt"/>, when it was given.</param>
/// <param name="Kind">What the run was for.</param>
/// <param name="DriveS">Seconds from go to the end of hard driving.</param>
/// <param name="DriveAssumed">True when the run noted none and the seconds are the table's median, or those given where no run noted any.</param>
/// <param name="RollInS">Seconds from the end of hard driving to halt; null when not noted.</param>
/// <param name="StoodS">Seconds stood still within the drive.</param>
/// <param name="CutShort">Why the run ended early, if it did.</param>
/// <param name="AirC">Air near the track, °C; null when not noted.</param>
/// <param name="AirBy">Where the air temperature came from.</param>
/// <param name="StartC">Can before the run, °C; null when not noted.</param>
/// <param name="Remounted">Whether the option was taken off and refitted before the run; null when not noted.</param>
/// <param name="Fan">Fan during the run.</param>
/// <param name="FanAfterStop">Fan after the stop.</param>
/// <param name="PowerOffS">Seconds from halt to power off; null when not noted.</param>
/// <param name="Load">What the load depends on.</param>
/// <param name="Pack">The pack.</param>
/// <param name="Readings">Readings by seconds after halt where all are noted, else in row order; may be empty for a warm-up or void run.</param>
public sealed record Run(
    string Day,
    string Name,
    string Option,
    LocalDateTime? StartedAt,
    Offset? StartedOffset,
    RunKind Kind,
    double DriveS,
    bool DriveAssumed,
    double? RollInS,
    double StoodS,
    CutShort CutShort,
    double? AirC,
    AirSource AirBy,
    double? StartC,
    bool? Remounted,
    FanInRun Fan,
    FanAfterStop FanAfterStop,
    double? PowerOffS,
    LoadNotes Load,
    PackNotes Pack,
    IReadOnlyList<Reading> Readings)
{
    /// <summary>Sky, when noted.</summary>
    public Sky? Sky { get; init; }
    /// <summary>Wind, when noted.</summary>
    public Wind? Wind { get; init; }
    /// <summary>Track state, when noted.</summary>
    public TrackState? Track { get; init; }
    /// <summary>Track surface temperature, °C, when noted.</summary>
    public double? TrackC { get; init; }
    /// <summary>Laps driven, when noted.</summary>
    public int? Laps { get; init; }
    /// <summary>Mean lap time, s, when noted.</summary>
    public double? MeanLapS { get; init; }
    /// <summary>Notes of rows that hold no reading (a warm-up, a run that came to nothing).</summary>
    public string? Note { get; init; }
}
