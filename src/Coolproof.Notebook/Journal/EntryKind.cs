namespace Coolproof.Notebook.Journal;

/// <summary>Names of the kinds of entries. What each one's body holds: docs/formats/entries.md.</summary>
public static class EntryKind
{
    /// <summary>Sets fields of a class card.</summary>
    public const string ClassSet = "class.set";
    /// <summary>Sets fields of a vehicle.</summary>
    public const string VehicleSet = "vehicle.set";
    /// <summary>Sets fields of a motor.</summary>
    public const string MotorSet = "motor.set";
    /// <summary>Sets fields of a cooling option.</summary>
    public const string OptionSet = "option.set";
    /// <summary>Sets fields of a part of a cooling option.</summary>
    public const string PartSet = "part.set";
    /// <summary>Sets fields of an instrument.</summary>
    public const string InstrumentSet = "instrument.set";
    /// <summary>Sets fields of a check of a gun.</summary>
    public const string GunCheckSet = "gun-check.set";
    /// <summary>Sets fields of a pack.</summary>
    public const string PackSet = "pack.set";
    /// <summary>Sets fields of a charger.</summary>
    public const string ChargerSet = "charger.set";
    /// <summary>Sets fields of a question.</summary>
    public const string QuestionSet = "question.set";
    /// <summary>Sets fields of a day.</summary>
    public const string DaySet = "day.set";
    /// <summary>Sets fields of a run.</summary>
    public const string RunSet = "run.set";
    /// <summary>Sets fields of a shot.</summary>
    public const string ShotSet = "shot.set";
    /// <summary>Sets fields of a logger's trace.</summary>
    public const string TraceSet = "trace.set";
    /// <summary>Sets fields of a device.</summary>
    public const string DeviceSet = "device.set";
    /// <summary>Sets settings by name.</summary>
    public const string SettingSet = "setting.set";
    /// <summary>Takes a thing out of lists.</summary>
    public const string Remove = "remove";
    /// <summary>A run is begun: named, not yet driving.</summary>
    public const string RunBegin = "run.begin";
    /// <summary>The countdown to go begins.</summary>
    public const string RunCountdown = "run.countdown";
    /// <summary>Go.</summary>
    public const string RunGo = "run.go";
    /// <summary>The end of hard driving.</summary>
    public const string RunStop = "run.stop";
    /// <summary>The vehicle stands.</summary>
    public const string RunHalt = "run.halt";
    /// <summary>The vehicle lies or stands within the drive.</summary>
    public const string RunDown = "run.down";
    /// <summary>It drives again.</summary>
    public const string RunUp = "run.up";
    /// <summary>The fan was seen to have failed.</summary>
    public const string RunFanDead = "run.fan-dead";
    /// <summary>The run came to nothing.</summary>
    public const string RunAbandon = "run.abandon";
    /// <summary>A lap was finished.</summary>
    public const string RunLap = "run.lap";
    /// <summary>Whether the fan turned, before the run or after the stop.</summary>
    public const string RunFan = "run.fan";
    /// <summary>The power was switched off.</summary>
    public const string RunPowerOff = "run.power-off";
    /// <summary>A shot: its <see cref="Entry.At"/> is the trigger.</summary>
    public const string Shot = "shot";
    /// <summary>The number that a shot showed.</summary>
    public const string ShotRead = "shot.read";
    /// <summary>The photo that a shot's number can be read from.</summary>
    public const string ShotPhoto = "shot.photo";
    /// <summary>Air, sky, wind, track.</summary>
    public const string Weather = "weather";
    /// <summary>Cooling before a run begins.</summary>
    public const string CoolDownBegin = "cooldown.begin";
    /// <summary>Cooling ends.</summary>
    public const string CoolDownEnd = "cooldown.end";
    /// <summary>The charge that went back into a run's pack.</summary>
    public const string Charge = "charge";
    /// <summary>A reading after a real race.</summary>
    public const string RaceReading = "race.reading";
    /// <summary>A photo and what it shows.</summary>
    public const string Photo = "photo";
    /// <summary>Moves a stamp by seconds.</summary>
    public const string Nudge = "nudge";
    /// <summary>Takes an entry back; of an undo: brings it again.</summary>
    public const string Undo = "undo";
    /// <summary>Two runs are one.</summary>
    public const string RunSame = "run.same";
    /// <summary>Two runs are two.</summary>
    public const string RunTwo = "run.two";
    /// <summary>Which device's stamp counts.</summary>
    public const string ClockChoice = "clock.choice";
    /// <summary>By how much a device's clock is ahead of the server's.</summary>
    public const string ClockOffset = "clock.offset";
    /// <summary>A readings table was imported.</summary>
    public const string Import = "import";
}
