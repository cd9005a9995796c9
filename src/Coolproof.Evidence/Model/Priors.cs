namespace Coolproof.Evidence.Model;

/// <summary>A normal distribution by mean and standard deviation; for a positive quantity, of its logarithm.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="Sd">Standard deviation.</param>
internal readonly record struct NormalPrior(double Mean, double Sd);

/// <summary>
/// Every prior of the joint model, once. All are common practice, no source, for a motor of 165 g, unless a line says otherwise. Heat flows are divided by
/// the heat capacity of the core (50 J/K for 165 g), which no temperature depends on: see docs/decisions/0001-scale-of-the-motor.md.
/// </summary>
internal static class Priors
{
    /// <summary>Heat capacity of the core with its winding, J/K: copper 385, silicon steel 460 J/kgK.</summary>
    public const double CoreCapacity = 50;

    /// <summary>Log-sd of the scale common to all capacities, conductances and heats.</summary>
    public const double ScaleSd = 0.15;

    /// <summary>Temperature coefficient of copper's resistance at 25 °C, 1/K: 1/(235 + 25), IEC 60034-1 (from memory).</summary>
    public const double Alpha25 = 1.0 / 260.0;

    /// <summary>
    /// Core over air, K, at which the copper feedback of a run's heat deviation is taken; the feedback of its expected heat is exact. Off by 20 K, a
    /// deviation of 5 % is off by 0.2 % of the heat.
    /// </summary>
    public const double TypicalCoreRise = 35;

    /// <summary>log of core capacity over can capacity.</summary>
    public static readonly NormalPrior CoreOverCan = new(Math.Log(50.0 / 40.0), 0.25);

    /// <summary>log of winding capacity over core capacity: 31 g of copper in 165 g.</summary>
    public static readonly NormalPrior WindingShare = new(Math.Log(12.0 / 50.0), 0.25);

    /// <summary>log of core-to-can conductance over core capacity, 1/s.</summary>
    public static readonly NormalPrior CoreToCan = new(Math.Log(3.0 / 50.0), 0.4);

    /// <summary>log of slot resistance times core capacity, s: 0.5 K/W.</summary>
    public static readonly NormalPrior Slot = new(Math.Log(0.5 * 50.0), 0.4);

    /// <summary>Both shape parameters of the Beta prior of the copper share of the heat.</summary>
    public const double CopperShareShape = 5;

    /// <summary>log of mean heat at 25 °C winding over core capacity, K/s.</summary>
    public static readonly NormalPrior Heat = new(Math.Log(40.0 / 50.0), 0.4);

    /// <summary>log of the options' mean can-to-air conductance while driving over core capacity, 1/s.</summary>
    public static readonly NormalPrior Conductance = new(Math.Log(0.8 / 50.0), 0.5);

    /// <summary>log of stopped over driving conductance, fan on.</summary>
    public static readonly NormalPrior StoppedFanOn = new(Math.Log(0.75), 0.25);

    /// <summary>log of stopped over driving conductance, fan off or none.</summary>
    public static readonly NormalPrior StoppedFanOff = new(Math.Log(0.25), 0.3);

    /// <summary>log of stopped over driving conductance where the fan was not noted: both cases within about one sd.</summary>
    public static readonly NormalPrior StoppedUnknown = new(Math.Log(0.43), 0.5);

    /// <summary>Log-sd of an option's own stopped ratio about the common one: fan and driving wind share differently on each.</summary>
    public const double StoppedOptionSd = 0.12;

    /// <summary>log of resting over driving conductance between runs: shade, own fan or blown.</summary>
    public static readonly NormalPrior Resting = new(Math.Log(0.45), 0.6);

    /// <summary>
    /// Scale of the half-normal of the options' log-sd, beside <see cref="OptionFloor"/>: together a median of 0.23 and a long tail. Options that somebody takes an
    /// evening to compare differ by some 5 to 15 K on a can that is 40 K over the air (common practice, no source).
    /// </summary>
    public const double OptionSpread = 0.25;

    /// <summary>Least log-sd of options, added in squares: with two or three of them alone the readings could not tell it from nothing, and would draw all together.</summary>
    public const double OptionFloor = 0.15;

    /// <summary>Scale of the half-normal of the mountings' log-sd.</summary>
    public const double MountingSpread = 0.04;

    /// <summary>
    /// Scale of the half-normal of the run-to-run log-sd of heat, as far as the can shows it: 0.08 of the heat itself, of which a fifth is carried off again, because
    /// who drives harder drives faster and sheds more (speed to the power 0.6).
    /// </summary>
    public const double RunHeatSpread = 0.065;

    /// <summary>
    /// Least run-to-run log-sd of heat, added in squares: laps, line and pack never repeat within a percent or two. It also keeps the chains out of a corner where
    /// every run would have to be met to a tenth of a degree.
    /// </summary>
    public const double RunHeatFloor = 0.015;

    /// <summary>Floor of a group's spread, a log-sd added in squares.</summary>
    public static double FloorOf(int spread) => spread switch
    {
        Global.RunHeatSpread => RunHeatFloor,
        Global.OptionSpread => OptionFloor,
        _ => 0,
    };

    /// <summary>A race's heat varies this many times as much as a test run's: weak evidence.</summary>
    public const double RaceSpreadFactor = 3;

    /// <summary>Log-sd of heat of a warm-up or a void run: they warm the motor and tell little else.</summary>
    public const double VoidHeatSd = 0.4;

    /// <summary>Scale of the half-normal of the day-to-day log-sd of heat.</summary>
    public const double DayHeatSpread = 0.1;

    /// <summary>Log-sd of a day's common conductance.</summary>
    public const double DayConductanceSd = 0.05;

    /// <summary>Sd of a day's air offset, K.</summary>
    public const double DayAirSd = 0.7;

    /// <summary>Sd of a day's air where none was noted, K, about <see cref="AirUnknownC"/>.</summary>
    public const double DayAirUnknownSd = 5;

    /// <summary>Air assumed where a day has none noted, °C.</summary>
    public const double AirUnknownC = 25;

    /// <summary>Sd of the trend of log heat over a day, first run to last.</summary>
    public const double TrendSd = 0.05;

    /// <summary>Log-sd of a driver's, a surface's or another level's heat.</summary>
    public const double LevelSd = 0.15;

    /// <summary>Heat against log of pinion over spur.</summary>
    public static readonly NormalPrior GearingSlope = new(2.0, 0.7);

    /// <summary>Log heat per degree of timing.</summary>
    public static readonly NormalPrior TimingSlope = new(0.01, 0.01);

    /// <summary>Log-sd of a pack's charge constant about the mean heat.</summary>
    public const double ChargeConstantSd = 0.4;

    /// <summary>Exponent of heat against mean current.</summary>
    public static readonly NormalPrior ChargeExponent = new(1.4, 0.3);

    /// <summary>Scale of the half-normal of the charge relation's log-sd.</summary>
    public const double ChargeSpread = 0.05;

    /// <summary>
    /// Least log-sd of the charge relation, added to the unknown one in squares: charger and start of charge are good to about 2 % at best, times the
    /// exponent; half of that in the log of the heat is the least that can be. Without it runs whose heat the charge could set exactly pull the spread to nothing.
    /// </summary>
    public const double ChargeFloor = 0.02;

    /// <summary>log of the gain of an instrument on tape or paint.</summary>
    public static readonly NormalPrior GainTape = new(0, 0.03);

    /// <summary>log of the gain on bare metal or an unknown surface.</summary>
    public static readonly NormalPrior GainBare = new(-0.1, 0.15);

    /// <summary>Sd of an instrument's offset, K.</summary>
    public const double OffsetSd = 1.5;

    /// <summary>log of the mean aim loss.</summary>
    public static readonly NormalPrior AimLoss = new(Math.Log(0.02), 0.5);

    /// <summary>Scale of the half-normal of the scatter, K.</summary>
    public const double ScatterSpread = 1.5;

    /// <summary>
    /// Least scatter of a reading, K, added to the unknown one in squares: displays resolve 0.1 K and no hand repeats better. Without it a run whose few
    /// readings can be met exactly would pull the scatter to nothing.
    /// </summary>
    public const double ScatterFloor = 0.2;

    /// <summary>A held maximum loses this many times less to aim.</summary>
    public const double MaxHoldFactor = 4;

    /// <summary>log of endbell excess over can excess, and of an option's own deviation from it.</summary>
    public static readonly NormalPrior Endbell = new(0, 0.15);

    /// <summary>Log-sd of one option's endbell about the common relation.</summary>
    public const double EndbellOptionSd = 0.08;

    /// <summary>Sd of a winding temperature by resistance, K.</summary>
    public const double WindingResistanceSd = 1.5;

    /// <summary>Sd of a reading aimed at the winding, K: it sees laminations too.</summary>
    public const double WindingGunSd = 5;

    /// <summary>Sd of an air temperature by thermometer, K.</summary>
    public const double AirThermometerSd = 0.7;

    /// <summary>Sd of an air temperature by forecast, K.</summary>
    public const double AirForecastSd = 2;

    /// <summary>Sd of an air temperature by gun, K.</summary>
    public const double AirGunSd = 4;

    /// <summary>Sd of a blank air temperature about the day's others, K.</summary>
    public const double AirBlankSd = 2;

    /// <summary>Sd of a noted can temperature before the run, K.</summary>
    public const double StartNotedSd = 1;

    /// <summary>Sd of the can over the air before a run without clock and note, K.</summary>
    public const double StartUnknownSd = 5;

    /// <summary>Scale of the half-normal of core over can before a run without clock, K.</summary>
    public const double CoreOverCanStart = 10;

    /// <summary>Sd of can and core over the air before the first run of a day with clock times, K.</summary>
    public const double FirstRunSd = 2;

    /// <summary>Gamma of an unknown roll-in: shape, and mean in s (8 ± 4 s).</summary>
    public static readonly (double Shape, double Mean) RollIn = (4, 8);

    /// <summary>Gamma of a first unknown delay: shape, and mean in s.</summary>
    public static readonly (double Shape, double Mean) FirstDelay = (2.25, 15);

    /// <summary>Gamma of the gap to a later unknown delay: shape, and mean in s (6 ± 4 s).</summary>
    public static readonly (double Shape, double Mean) LaterGap = (2.25, 6);

    /// <summary>Weight of the wide part of the scatter, which is <see cref="WideFactor"/> times as wide.</summary>
    public const double WideWeight = 0.05;

    /// <summary>Width of the wide part of the scatter over the narrow one.</summary>
    public const double WideFactor = 5;
}
