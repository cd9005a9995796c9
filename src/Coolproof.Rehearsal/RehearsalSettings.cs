using Coolproof.Notebook;
using NodaTime;

namespace Coolproof.Rehearsal;

/// <summary>How carefully readings are taken.</summary>
public enum Hands
{
    /// <summary>First reading 5 to 20 s after the halt, small scatter, spot well on the motor.</summary>
    Good,
    /// <summary>First reading 10 to 45 s after the halt, large scatter, spot often partly off the motor.</summary>
    Bad,
}

/// <summary>In which order the options are driven.</summary>
public enum RunOrder
{
    /// <summary>Every round in the same order, so that carried-over warmth always goes to the same option.</summary>
    Fixed,
    /// <summary>Each round in a new random order.</summary>
    Shuffled,
}

/// <summary>A cooling option of a rehearsal.</summary>
/// <param name="Name">Its name, unique within the rehearsal.</param>
/// <param name="WattsPerKelvin">Watts shed per degree from can to free air while driving, W/K; null: drawn.</param>
/// <param name="HasFan">Whether it has a fan of its own.</param>
/// <param name="SameAs">Name of an earlier option that this one is in truth, under another name; null: it is its own.</param>
public sealed record RehearsalOption(string Name, double? WattsPerKelvin = null, bool HasFan = true, string? SameAs = null);

/// <summary>What a rehearsal is made of. What is null is drawn from <see cref="TruthRanges"/>.</summary>
/// <param name="Seed">Random seed: same settings and seed, same day, byte for byte.</param>
/// <param name="Options">Cooling options in the order of a fixed round; at least one.</param>
/// <param name="RunsPerOption">Runs of each option an evening.</param>
public sealed record RehearsalSettings(long Seed, IReadOnlyList<RehearsalOption> Options, int RunsPerOption = 2)
{
    /// <summary>Order of the runs.</summary>
    public RunOrder Order { get; init; } = RunOrder.Shuffled;

    /// <summary>Options of an evening's runs, one after another, places in <see cref="Options"/>; null: rounds in the order stated.</summary>
    public IReadOnlyList<int>? Sequence { get; init; }

    /// <summary>Whose hands hold the gun.</summary>
    public Hands Hands { get; init; } = Hands.Good;

    /// <summary>Readings after each run, 1 or more.</summary>
    public int ReadingsPerRun { get; init; } = 3;

    /// <summary>Part of the runs whose last reading was not taken, 0 to 1, where there is more than one.</summary>
    public double LastReadingMissed { get; init; }

    /// <summary>Sd of log heat from run to run.</summary>
    public double LoadSd { get; init; } = 0.05;

    /// <summary>Seconds of hard driving meant.</summary>
    public double DriveS { get; init; } = 360;

    /// <summary>Whether an option's fan keeps running after the stop; else it goes with the power.</summary>
    public bool FanRunsOn { get; init; } = true;

    /// <summary>Part of the delays that are noted, 0 to 1.</summary>
    public double DelaysNoted { get; init; } = 1;

    /// <summary>Whether the clock time of each go is noted.</summary>
    public bool ClockNoted { get; init; } = true;

    /// <summary>Whether the charge put back is noted.</summary>
    public bool ChargeNoted { get; init; }

    /// <summary>Whether the can before each run is noted.</summary>
    public bool StartNoted { get; init; }

    /// <summary>Whether the roll-in is noted.</summary>
    public bool RollInNoted { get; init; }

    /// <summary>Whether power-off is noted.</summary>
    public bool PowerOffNoted { get; init; }

    /// <summary>Part of the runs whose air is not noted, 0 to 1; the first of an evening always is.</summary>
    public double AirBlanks { get; init; }

    /// <summary>Whether the thermometer is read to whole degrees.</summary>
    public bool AirInWholeDegrees { get; init; }

    /// <summary>Whether the gun holds its maximum.</summary>
    public bool HoldMax { get; init; }

    /// <summary>Whether the can is blown down at the end of each cool-down while the core stays warm.</summary>
    public bool BlownDown { get; init; }

    /// <summary>Whether some runs follow warm-up laps that nobody notes.</summary>
    public bool WarmUpLaps { get; init; }

    /// <summary>Runs of an evening that end in a crash, are void, and are driven again.</summary>
    public int VoidRuns { get; init; }

    /// <summary>Mean cool-down from halt to the next go, min; null: drawn.</summary>
    public double? CoolDownMin { get; init; }

    /// <summary>Air at the first run of an evening, °C, one for each; null: drawn.</summary>
    public IReadOnlyList<double>? AirFromC { get; init; }

    /// <summary>Drift of the air over the evening, K; null: drawn.</summary>
    public double? AirDriftK { get; init; }

    /// <summary>Mass of the motor, kg; null: drawn.</summary>
    public double? MotorMassKg { get; init; }

    /// <summary>Mean heat with the winding at 25 °C, W; null: drawn.</summary>
    public double? HeatW { get; init; }

    /// <summary>Evenings, one after another a week apart, 1 or more.</summary>
    public int Evenings { get; init; } = 1;

    /// <summary>Local time of the first go of the first evening.</summary>
    public LocalDateTime FirstGo { get; init; } = new(2026, 5, 12, 16, 0);

    /// <summary>Drivers; empty: one who isn't named.</summary>
    public IReadOnlyList<string> Drivers { get; init; } = [];

    /// <summary>Whether drivers take turns evening by evening; else run by run.</summary>
    public bool OneDriverAnEvening { get; init; }

    /// <summary>What else stands in every row about vehicle and track.</summary>
    public LoadNotes Notes { get; init; } = new();

    /// <summary>Names of the packs, taking turns; empty: not noted.</summary>
    public IReadOnlyList<string> Packs { get; init; } = [];

    /// <summary>How laps truly go and with which pinions; null: laps and gearing are not noted.</summary>
    public TrueLaps? Laps { get; init; }

    /// <summary>Whether the winding's resistance is noted beside each reading, always with its time: a four-wire meter on leads left soldered.</summary>
    public bool WindingMeasured { get; init; }

    /// <summary>Whether warm magnets weaken, so that the same driving takes more current.</summary>
    public bool MagnetsWeaken { get; init; }

    /// <summary>Whether the true can is traced second by second.</summary>
    public bool Traced { get; init; }

    /// <summary>Factor on all deviations of load, mounting, day and trend: 1 as in life, 0 for a world without any.</summary>
    public double Deviations { get; init; } = 1;
}
