namespace Coolproof.Rehearsal;

/// <summary>
/// Every range that truths of simulated days are drawn from. Frozen under <see cref="GeneratorVersion"/>: any change needs a new number.
/// "Design" marks a value set for this project, "common practice" one of the trade without a source.
/// </summary>
public static class TruthRanges
{
    /// <summary>Version of the generator: the same version, settings and seed give the same day.</summary>
    public const int GeneratorVersion = 1;

    // The motor.

    /// <summary>Mass of the motor, kg; capacities, conductances and heats go with it (design).</summary>
    public static readonly Between MotorMassKg = new(0.100, 0.250);

    /// <summary>Log-sd of the common scale of all heat capacities against the mass breakdown (design).</summary>
    public const double CapacityScaleLogSd = 0.15;

    /// <summary>Log-sd of each body's capacity about its share (design).</summary>
    public const double CapacityShareLogSd = 0.15;

    /// <summary>Log-sd of laminations to can about 3 W/K at 165 g (design).</summary>
    public const double CoreToCanLogSd = 0.35;

    /// <summary>Log-sd of winding to laminations about 2 W/K at 165 g (design).</summary>
    public const double SlotLogSd = 0.35;

    /// <summary>Log-sd of the lesser paths: air gap, can to endbell, end turns, shaft (design).</summary>
    public const double LesserPathLogSd = 0.30;

    // The load.

    /// <summary>Mean heat with the winding at 25 °C, W at 165 g: 1:10 cars (common practice).</summary>
    public static readonly Between HeatW = new(25, 60);

    /// <summary>Median and log-sd of the heat within that range, W at 165 g (design).</summary>
    public const double HeatMedianW = 40, HeatLogSd = 0.30;

    /// <summary>Copper's share of the heat is beta with both shapes 5 (design).</summary>
    public const double CopperShareShape = 5;

    /// <summary>Run-to-run sd of log heat: one of these a day (design).</summary>
    public static readonly double[] LoadSds = [0.03, 0.05, 0.08];

    /// <summary>Sd of log heat from day to day: drawn once, then the day's own deviation from it (design).</summary>
    public static readonly Between DayHeatSd = new(0.03, 0.12);

    /// <summary>Sd of the change of log heat from the first run of a day to the last (design).</summary>
    public const double TrendSd = 0.04;

    /// <summary>Sd of log conductance common to a day (design).</summary>
    public const double DayConductanceSd = 0.05;

    /// <summary>Sd of log heat between drivers (design).</summary>
    public const double DriverSd = 0.10;

    /// <summary>Sd of log heat between minutes of one run (design).</summary>
    public static readonly Between WithinRunSd = new(0.03, 0.08);

    /// <summary>Length of a stretch of even load within a run, s (design).</summary>
    public const double StretchS = 60;

    /// <summary>Mean speed over a lap, m/s; length of a lap, s; bursts in a lap (common practice).</summary>
    public static readonly Between LapSpeedMS = new(5, 8), LapS = new(16, 26), LapBursts = new(4, 8);

    /// <summary>Pace goes with load to this power: who drives harder drives faster, and cools a little better (design).</summary>
    public const double PaceExponent = 0.3;

    /// <summary>Seconds of hard driving over what was meant: a run ends at a lap's end (design).</summary>
    public static readonly Between DriveOverS = new(-8, 16);

    /// <summary>Mean and sd of the roll-in, s; gamma (design).</summary>
    public const double RollInMeanS = 8, RollInSdS = 4;

    /// <summary>Roll-in is kept within these, s (design).</summary>
    public static readonly Between RollInS = new(2, 25);

    /// <summary>Iron heat and speed while rolling in, over those while driving (design).</summary>
    public const double RollInIron = 0.25, RollInPace = 0.5;

    // Cooling.

    /// <summary>Watts shed per degree from can to free air while driving, W/K at 165 g, before options differ (design).</summary>
    public static readonly Between BaseWPerK = new(0.3, 1.5);

    /// <summary>Median and log-sd of the same (design).</summary>
    public const double BaseMedianWPerK = 0.8, BaseLogSd = 0.40;

    /// <summary>
    /// Rise of the can over the air after six fair minutes with the base conductance, K. Pairs of heat and conductance outside it are drawn
    /// again: nobody tests a car that cooks, or one that stays cold; they change its gearing (design).
    /// </summary>
    public static readonly Between BaseRiseK = new(22, 55);

    /// <summary>Sd of the fair can peaks of a day's options, K; log conductances are spread so (design).</summary>
    public const double OptionSdK = 8;

    /// <summary>No option sheds less or more than this, W/K at 165 g (design).</summary>
    public static readonly Between OptionWPerK = new(0.2, 2.2);

    /// <summary>Share of radiation and natural convection at 40 K of rise while driving (design).</summary>
    public static readonly Between PassiveShare = new(0.05, 0.20);

    /// <summary>Share of the car's motion with a fan fitted; the fan does the rest (design: standstill with the fan on sheds about 0.75).</summary>
    public static readonly Between MotionShareWithFan = new(0.30, 0.55);

    /// <summary>Log-sd by which an option's shares differ from the day's (design).</summary>
    public const double OptionShareLogSd = 0.10;

    /// <summary>Share of the cooling that acts on the endbell (design).</summary>
    public static readonly Between EndbellShare = new(0.10, 0.20);

    /// <summary>Exchange of the shell's air at standstill, W/K, and with the car's motion, W/K per m/s, at 165 g (design).</summary>
    public static readonly Between ShellStillWPerK = new(2, 4), ShellMotionWPerK = new(0.8, 1.6);

    /// <summary>Breeze at the motor of a car that stands, m/s (design: fan off sheds about 0.25 of driving).</summary>
    public static readonly Between BreezeMS = new(0.3, 1.2);

    /// <summary>How much of that breeze reaches a can without an opened mount (design).</summary>
    public const double BreezeReachesBareCan = 0.5;

    /// <summary>Sd of log conductance from one refit of an option to the next: drawn once a day (design).</summary>
    public static readonly Between MountingSd = new(0.01, 0.07);

    /// <summary>On this part of days one option, and not the first, has no fan (design).</summary>
    public const double FanlessOptionChance = 0.25;

    // Between the runs.

    /// <summary>From halt to the next go, min (design).</summary>
    public static readonly Between CoolDownMin = new(8, 25);

    /// <summary>Sd of that from run to run, min (design).</summary>
    public const double CoolDownSdMin = 2.5;

    /// <summary>
    /// Nobody drives a car that is still hot: a cool-down in the shade goes on until the can is within this of the air, K, or the longest
    /// cool-down is over (design).
    /// </summary>
    public const double StillHotK = 12;

    /// <summary>Shell lifted off after the halt, s; power off where the fan goes with it, s (design).</summary>
    public static readonly Between ShellOffS = new(2, 4.5), PowerOffS = new(1, 5);

    /// <summary>Where the fan keeps running, on this part of days it does so until the next run; else until the pack comes out (design).</summary>
    public const double FanAllRestChance = 0.5;

    /// <summary>The pack comes out, s after the last reading (design).</summary>
    public static readonly Between PackOutS = new(20, 90);

    /// <summary>Part of days on which the can is blown down at the end of each cool-down (design).</summary>
    public const double BlownChance = 0.35;

    /// <summary>For how long, s, and how hard, W/K at 165 g (design).</summary>
    public static readonly Between BlownS = new(60, 150), BlownWPerK = new(1.5, 4);

    /// <summary>Part of days with 0 to 2 warm-up laps before each run that nobody notes; their heat over a lap's in the run (design).</summary>
    public const double WarmUpLapsChance = 0.4, WarmUpHeat = 0.6;

    /// <summary>Wait between those laps, or switching on, and go, s (design).</summary>
    public static readonly Between WaitS = new(20, 60);

    /// <summary>Part of days with one run cut short by a crash and void (design).</summary>
    public const double VoidRunChance = 0.12;

    /// <summary>Seconds into a void run at which it ends (design).</summary>
    public static readonly Between VoidRunS = new(60, 200);

    /// <summary>Sd of the motor over the air at the start of a day, K, all bodies alike (design).</summary>
    public const double FirstStartSdK = 1.0;

    // The air.

    /// <summary>Air at the first run, °C (design).</summary>
    public static readonly Between AirC = new(16, 33);

    /// <summary>Sd of its drift over the day, K (design).</summary>
    public const double AirDriftSdK = 3;

    /// <summary>Wobble of the air, K, and its period, h (design).</summary>
    public static readonly Between AirWobbleK = new(0, 1), AirWobbleH = new(0.7, 2.5);

    /// <summary>Thermometer: sd of what it is off by all day, and from reading to reading, K; 0.7 K together (design).</summary>
    public const double ThermometerDaySdK = 0.5, ThermometerSdK = 0.5;

    /// <summary>Part of days noted in whole degrees; part of days with blanks; part of blanks on such days (design).</summary>
    public const double WholeDegreesChance = 0.3, AirBlanksChance = 0.4, AirBlankChance = 0.2;

    // The gun and the hand.

    /// <summary>Sd of the gun's offset, K, and of its log gain on tape (design).</summary>
    public const double GunOffsetSdK = 1.5, GunGainLogSd = 0.03;

    /// <summary>Median of the mean aim loss with good and with bad hands, and log-sd of each: together log .02 ± .5 (design).</summary>
    public const double AimLossGood = 0.015, AimLossBad = 0.028, AimLossLogSd = 0.4;

    /// <summary>Scatter of a reading, K, with good and with bad hands (design).</summary>
    public static readonly Between ScatterGoodK = new(0.4, 1.2), ScatterBadK = new(1.2, 2.5);

    /// <summary>Part of readings that scatter five times as far (design).</summary>
    public const double WildChance = 0.05, WildFactor = 5;

    /// <summary>Halt to first reading, s, with good and with bad hands (design).</summary>
    public static readonly Between DelayGoodS = new(5, 20), DelayBadS = new(10, 45);

    /// <summary>Mean and sd of the gaps between readings of one run, s; gamma, at least 2 s (design).</summary>
    public const double GapMeanS = 6, GapSdS = 3;

    /// <summary>Least gap, s (design).</summary>
    public const double GapLeastS = 2;

    /// <summary>Sd of a noted delay before rounding to seconds, s, with good and with bad hands (design).</summary>
    public const double DelayNotedSdGoodS = 0.5, DelayNotedSdBadS = 1.5;

    /// <summary>A maximum over a sweep loses this much less to aim (design).</summary>
    public const double HoldMaxShots = 4;

    /// <summary>Days read with the gun's maximum (design).</summary>
    public const double HoldMaxChance = 0.15;

    /// <summary>Log-sd of a run's noted mean lap time about the true one, where laps are driven (design).</summary>
    public const double LapNotedLogSd = 0.007;

    // What else is noted.

    /// <summary>Days with the roll-in noted; with power-off noted (design).</summary>
    public const double RollInNotedChance = 0.3, PowerOffNotedChance = 0.6;

    /// <summary>Days with the can before each run noted: where it is blown down, and where not (design).</summary>
    public const double StartNotedIfBlownChance = 0.7, StartNotedChance = 0.4;

    /// <summary>Charge put back: log heat over log charge rate, mean and sd (design).</summary>
    public const double ChargeExponent = 1.4, ChargeExponentSd = 0.15;

    /// <summary>Ends of that exponent (design).</summary>
    public static readonly Between ChargeExponents = new(1.1, 1.8);

    /// <summary>Mean battery current while driving, A at 165 g (common practice).</summary>
    public static readonly Between BatteryA = new(12, 22);

    /// <summary>Sd of log charge: what the load doesn't explain; charger and start of charge (design).</summary>
    public const double ChargeRelationSd = 0.02, ChargerSd = 0.03;

    // The can probe of a logger. Drawn apart from all else: days without it are the same.

    /// <summary>Sd of the probe's offset, K, and what it misses of the can's rise: it is cooled by the air that it stands in, mean and sd (design).</summary>
    public const double ProbeOffsetSdK = 0.7, ProbeMissMean = 0.02, ProbeMissSd = 0.015;

    /// <summary>Lag of the probe, s, and its scatter from second to second, K (design).</summary>
    public static readonly Between ProbeLagS = new(1, 4), ProbeScatterK = new(0.05, 0.25);

    /// <summary>Steps of its numbers, K: one of these (common practice, no source).</summary>
    public static readonly double[] ProbeSteps = [0.0625, 0.1, 0.25];

    /// <summary>Sd of what the logger's clock is off by after it was set by the shape of the trace, s (design; docs/traces.md).</summary>
    public const double ProbeClockSdS = 1;

    // Magnets that weaken. Drawn apart from all else: days without them are the same.

    /// <summary>Part of their strength that warm magnets lose, 1/K: about the 0.0010 to 0.0012 of public grade tables (design).</summary>
    public static readonly Between MagnetLossPerK = new(0.0008, 0.0014);

    // The meter at the winding. Drawn apart from all else: days without it are the same.

    /// <summary>Resistance of a pair of tabs at 25 °C, mΩ (common practice, no source); where it lay when it was measured cold, °C (design).</summary>
    public static readonly Between WindingMilliohm = new(20, 60), WindingColdC = new(16, 28);

    /// <summary>Sd of log resistance from reading to reading, step of the meter's numbers, mΩ, and sd of the cold temperature as noted, K (design).</summary>
    public const double MeterLogSd = 0.001, MeterStepMilliohm = 0.1, WindingColdSdK = 0.5;
}
