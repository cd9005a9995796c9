using Coolproof.Advice.Gearing;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Tests.Forecasts;
using Coolproof.Rehearsal;
using Coolproof.Sampling;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Gearing;

/// <summary>Kinds of notebooks that gearing is asked of.</summary>
internal enum GearFrom
{
    /// <summary>Two evenings, the can read by the gun, one pinion or two.</summary>
    TwoEvenings,
    /// <summary>Six evenings, the winding's resistance noted beside each reading of the can, three pinions in turn.</summary>
    SixEvenings,
}

/// <summary>
/// A made-up notebook, judged, beside what is true of it. The truth is not of the sweep's making: six bodies; a lap whose parts are longer and shorter than the default
/// lap's; a winding of 60 to 110 °C; magnets that weaken; a pack that another pinion empties further by mid-race; more pace that cools more; a motor that answers with a power of the lap's heat ratios.
/// </summary>
/// <param name="Seed">Its number.</param>
/// <param name="From">Its kind.</param>
/// <param name="Day">Runs and truth.</param>
/// <param name="Rig">Car and motor as a person would give them: typical ones.</param>
/// <param name="Notes">What the runs noted of their laps.</param>
/// <param name="Evidence">What is believed of one option.</param>
internal sealed record GearNotebook(long Seed, GearFrom From, SimulatedDay Day, GearRig Rig, IReadOnlyList<LapNote> Notes, RaceEvidence Evidence)
{
    /// <summary>Length of runs and races, s.</summary>
    public const double RaceS = 360;

    private const int Options = 2, Rounds = 2, Readings = 2;
    private const double MotorKg = 0.165, PartLogSd = 0.15, ExponentSd = 0.15; // design

    private static readonly GearRig Typical = new(Track.OffRoad, false, Car.OffRoad, 2.6, BrushlessMotor.OfTurns(13.5), new(), new(24, 84, 30));

    /// <summary>How its laps truly go.</summary>
    public TrueLaps Laps => Day.Settings.Laps!;

    /// <summary>Evenings of the notebook.</summary>
    public int Evenings => Day.Settings.Evenings;

    /// <summary>Pinions near those driven, with which no run was driven.</summary>
    public IReadOnlyList<int> OtherPinions => From == GearFrom.TwoEvenings ? [20, 21, 27, 28] : [20, 21, 23, 25, 27, 28];

    /// <summary>The notebook of a number; null: its readings could not be judged.</summary>
    public static GearNotebook? Of(long seed, GearFrom from)
    {
        RandomStream chance = new(seed, 0x6ea5);
        TrueLaps laps = Drawn(chance, from);
        RehearsalSettings settings = DayGenerator.Settings(seed, sameOptionTwice: false);
        settings = settings with
        {
            Options = [.. settings.Options.Take(Options)],
            RunsPerOption = Rounds,
            ReadingsPerRun = Readings,
            Evenings = from == GearFrom.TwoEvenings ? 2 : 6,
            WindingMeasured = from == GearFrom.SixEvenings,
            MagnetsWeaken = true,
            DriveS = RaceS,
            MotorMassKg = MotorKg,
            ChargeNoted = true,
            VoidRuns = 0,
            Laps = laps,
        };
        SimulatedDay day = Rehearse.Day(settings);
        if (KeptEvidence.Of($"gear-{from}-{seed}", day.Table, () => Judge.Of(day.Table, new(Seed: seed, Threads: 1)) is Judged { Races: { } races } ? races.Value : null) is not { } all)
            return null;
        RaceEvidence one = all with { Options = [all.Options[0]], Draws = [.. all.Draws.Select(d => d with { Options = [d.Options[0]] })] };
        return new(seed, from, day, Typical, LapNotes.Of(day.Table, Typical.Driven), one);
    }

    /// <summary>The true gearing; null: it can't be driven, or the pack doesn't last.</summary>
    public TrueGear? Truly(GearChoice choice)
    {
        try
        {
            return Laps.Of(choice.Pinion, choice.TimingDeg, RaceS);
        }
        catch (LapException)
        {
            return null;
        }
    }

    /// <summary>A race that truly comes.</summary>
    /// <param name="gear">Its gearing.</param>
    /// <param name="scenario">The race.</param>
    /// <param name="chance">What differs from one race to the next.</param>
    /// <param name="ofDays">Factor on what differs from day to day.</param>
    /// <param name="truth">The truth; null: the notebook's own.</param>
    public TrueStop Come(TrueGear gear, RaceScenario scenario, RandomStream chance, double ofDays, Truth? truth = null)
    {
        truth ??= Day.Truth;
        Hyperparameters h = truth.Hyperparameters;
        double dayHeat = ofDays * h.DayHeatSd * chance.NextNormal(), conductance = ofDays * h.DayConductanceSd * chance.NextNormal() + h.MountingSd * chance.NextNormal();
        return truth.Races(Evidence.Options[0], new(scenario.AirC + 0.7 * chance.NextNormal(), scenario.RaceS, scenario.BreakS, dayHeat, [h.LoadSd * chance.NextNormal()], conductance, FanOn: false) { Gear = gear })[0];
    }

    // Drawn until a lap and its charge are those of a buggy that somebody races.
    private static TrueLaps Drawn(RandomStream chance, GearFrom from)
    {
        while (true)
        {
            double[] z = new double[LapUnknowns.Count];
            chance.FillNormal(z);
            GearRig truly = Typical.At(z);
            double other = 24 + (chance.NextUniform() < 0.5 ? -2 : 2);
            int[] few = chance.NextUniform() < 0.5 ? [24] : [24, (int)other], pinions = from == GearFrom.TwoEvenings ? few : [24, 22, 26];
            Track track = new([.. truly.Track.Parts.Select(p => p with { LengthM = p.LengthM * Math.Exp(PartLogSd * chance.NextNormal()) })]);
            TrueLaps laps = new(track, truly.Car, truly.InternalRatio, truly.Motor, truly.Pack, Typical.Driven.Spur, Typical.Driven.TimingDeg, pinions)
            {
                WindingC = 60 + 50 * chance.NextUniform(),
                HeatExponent = 1 + ExponentSd * chance.NextNormal(),
            };
            try
            {
                if (pinions.All(p => laps.Of(p, Typical.Driven.TimingDeg, RaceS) is { LapS: > 14 and < 45, BatteryA: > 9 and < 35 }))
                    return laps;
            }
            catch (LapException)
            {
            }
        }
    }
}
