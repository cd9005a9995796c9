namespace Coolproof.Notebook.Tables;

/// <summary>What a known column says. One field may stand in two columns (read_c and read_f).</summary>
internal enum Field
{
    Option, Read, Day, Run, StartedAt, Kind, Drive, RollIn, StopToRead, Stood, CutShort, Ambient, AirBy, Sky, Wind, Track, TrackTemperature,
    Start, Instrument, EmissivitySet, SurfaceOfSpot, Remounted, Spot, Hold, Fan, FanAfterStop, PowerOff, Driver, Surface, Venue, Vehicle, Motor,
    Tyres, ControllerProfile, Pinion, Spur, Timing, Pack, PackStartV, ChargeBack, Laps, MeanLap, WindingHot, WindingAt, WindingCold,
    WindingColdTemperature, WindingPair, Note, Exclude,
}

/// <summary>How the cells of a column are read.</summary>
internal enum Quantity { Text, Temperature, Duration, Number, Whole, Choice, YesNo, DateTime }

/// <summary>What a value belongs to: what belongs to the run is one value for all rows of the run.</summary>
internal enum BelongsTo { Run, Reading }
