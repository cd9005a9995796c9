using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Evidence.Forecasts;

/// <summary>
/// One draw driven through a race day: core and can exactly from step to step, winding over the core as its copper heat has it, the rotor following the core. A
/// weaker warm magnet asks for more current: copper heat goes with the inverse square of its strength.
/// </summary>
internal sealed class RaceDay
{
    private readonly RaceEvidence _evidence;
    private readonly RaceScenario _scenario;
    private readonly RaceGrid _grid;
    private readonly double _logDensity;

    public RaceDay(RaceEvidence evidence, RaceScenario scenario, RaceGrid grid)
    {
        (_evidence, _scenario, _grid) = (evidence, scenario, grid);
        double tested = new Air(evidence.Fair.AmbientC, Air.PressureAtPa(scenario.TestedAtM)).Density;
        _logDensity = Math.Log(new Air(scenario.AirC, Air.PressureAtPa(scenario.AltitudeM)).Density / tested);
    }

    /// <summary>Fills can, mean winding and magnet at the grid's times, °C.</summary>
    public void Drive(RaceDraw draw, int option, RaceChance chance, Span<double> canC, Span<double> windingC, Span<double> magnetC) =>
        Drive(draw, option, chance, RaceHeat.AsTested, canC, windingC, magnetC);

    /// <summary>The same with the heat of another gearing or timing.</summary>
    public void Drive(RaceDraw draw, int option, RaceChance chance, RaceHeat geared, Span<double> canC, Span<double> windingC, Span<double> magnetC)
    {
        RaceHeat heat = geared.Times(_scenario.HeatFactor);
        double beyondLoad = heat.Beyond(draw.CopperShare);
        double air = _scenario.AirC + Priors.DayAirSd * chance.Air, rho = draw.CoreOverCan;
        double rotorRate = RacePriors.RotorPerS * Math.Exp(RacePriors.RotorPathLogSd * chance.RotorPath) / (RacePriors.RotorShare * Math.Exp(CoolingPriors.RotorCapacityLogSd * chance.RotorCapacity));
        double logG = LogConductance(draw, option, chance, heat), testMagnet = TestMagnetC(draw, option, rotorRate), sun = SunKPerS(chance);
        double core = 0, can = 0, excess = 0, rotor = 0, warm = 1 + Priors.Alpha25 * (air - 25);
        Constants motor = heat.Of(Motor(draw, 0));
        (canC[0], windingC[0], magnetC[0]) = (air, air, air);
        int at = 0;
        foreach (RaceStretch stretch in _grid.Stretches)
        {
            double p = stretch.Phase == RacePhase.Race ? Heat(motor, draw, chance, stretch.Race) : 0;
            double stepS = stretch.Phase == RacePhase.RollIn ? stretch.StepS * Math.Exp(RacePriors.RollInLogSd * chance.RollIn) : stretch.StepS;
            double g = Conductance(draw, option, chance, logG + Beyond(stretch.Phase == RacePhase.Race ? 0 : _scenario.RaceS, beyondLoad) * chance.Length, stretch.Phase), driving = g, tau = draw.WindingShare * draw.SlotS, follow = 1 - Math.Exp(-rotorRate * stepS);
            PairStep step = default;
            for (int i = 0; i < stretch.Steps; i++)
            {
                double strength = MagnetStrength(air + rotor, testMagnet), fed = motor.CopperHeat(p / (strength * strength)), before = core;
                if (stretch.Phase == RacePhase.Race && (i + 0.5) * stepS > _evidence.LongestDriveS)
                    g = driving * Math.Exp((Beyond((i + 0.5) * stepS, beyondLoad) - Beyond(0, beyondLoad)) * chance.Length);
                if (i == 0 || p > 0) // without heat nothing in the matrix changes from step to step
                    step = PairStep.Of(Priors.Alpha25 * fed - draw.CoreToCanPerS, draw.CoreToCanPerS, draw.CoreToCanPerS * rho, -(draw.CoreToCanPerS + g) * rho, stepS);
                (core, can) = step.Next(core, can, (1 - motor.Copper) * p + fed * warm + ExcessFlow(ref excess, draw, fed * (warm + Priors.Alpha25 * core), tau, stepS), sun * rho);
                rotor += follow * (0.5 * (before + core) - rotor);
                at++;
                (canC[at], windingC[at], magnetC[at]) = (air + can, air + core + excess, air + rotor);
            }
        }
    }

    // The winding takes up heat before it passes it on, and gives it off after the stop: what it holds differs from one end of a step to the other.
    private static double ExcessFlow(ref double excess, RaceDraw draw, double copper, double tau, double stepS)
    {
        double settled = draw.SlotS * copper, next = settled + (excess - settled) * Math.Exp(-stepS / tau), flow = draw.WindingShare * (excess - next) / stepS;
        excess = next;
        return flow;
    }

    private static double Heat(in Constants motor, RaceDraw draw, RaceChance chance, int race) =>
        Math.Exp(motor.LogHeat + draw.DayHeatSd * chance.DayHeat + draw.RunHeatSd * chance.RunHeats[race]);

    // Log-sd beyond the tests. A race's first minutes are those that the tests drove, whatever comes after: so the longer of two races is never taken to be the cooler.
    private double Beyond(double seconds, double load)
    {
        double length = Math.Max(0, Math.Log2(seconds / _evidence.LongestDriveS));
        return RacePriors.BeyondLogSd * Math.Sqrt(length * length + load * load);
    }

    private double LogConductance(RaceDraw draw, int option, RaceChance chance, RaceHeat heat)
    {
        double logG = draw.Options[option].LogConductance + draw.MountingSd * chance.Mounting + Priors.DayConductanceSd * chance.DayConductance
            + (RacePriors.DensityExponent + RacePriors.DensityExponentSd * chance.DensityExponent) * _logDensity
            + (_scenario.Wind is { } wind && !_evidence.Winds.Contains(wind) ? RacePriors.OtherWindLogSd * chance.Wind : 0);
        double share = CoolingPriors.PassiveLow + (CoolingPriors.PassiveHigh - CoolingPriors.PassiveLow) * chance.Passive;
        (double tested, _) = FairDrive.Peak(Motor(draw, 0), draw.Options[option].LogConductance, _evidence.Fair.AmbientC, _evidence.Fair.DriveS);
        (double raced, _) = FairDrive.Peak(heat.Of(Motor(draw, draw.DayHeatSd * chance.DayHeat)), logG, _scenario.AirC, _scenario.RaceS);
        return logG + Math.Log(1 + share * (PassiveFactor(tested, _evidence.Fair.AmbientC, raced, _scenario.AirC) - 1));
    }

    // Half natural convection (rise to the power 1/4), half radiation (cube of the mean absolute temperature).
    private static double PassiveFactor(double testedC, double testedAirC, double racedC, double racedAirC)
    {
        double rise = Math.Max(racedC - racedAirC, 1) / Math.Max(testedC - testedAirC, 1);
        double kelvin = (racedC + racedAirC + 2 * PhysicalConstants.ZeroCelsiusK) / (testedC + testedAirC + 2 * PhysicalConstants.ZeroCelsiusK);
        return 0.5 * Math.Pow(rise, 0.25) + 0.5 * kelvin * kelvin * kelvin;
    }

    private double Conductance(RaceDraw draw, int option, RaceChance chance, double logG, RacePhase phase)
    {
        RaceOption o = draw.Options[option];
        double driving = Math.Exp(logG);
        if (phase == RacePhase.Race)
            return driving;
        if (phase == RacePhase.RollIn)
            return driving * Math.Exp(o.LogStoppedFanOn);
        return _scenario.Cooling switch
        {
            BreakCooling.OwnFan => driving * Math.Exp(o.LogStoppedFanOn),
            BreakCooling.PitFan => driving * Math.Exp(o.LogStoppedFanOff) + RacePriors.PitFanPerS * Math.Exp(CoolingPriors.PitFanLogSd * chance.PitFan),
            _ => driving * Math.Exp(o.LogStoppedFanOff),
        };
    }

    private double SunKPerS(RaceChance chance) => _scenario.Sky is { } sky && _evidence.SunShare is { } share
        ? ((sky == Sky.Sun ? 1 : 0) - share) * RacePriors.SunW / Priors.CoreCapacity * chance.Sun
        : 0;

    private static Constants Motor(RaceDraw draw, double logHeat) => new()
    {
        Rho = draw.CoreOverCan,
        Kappa = draw.CoreToCanPerS,
        Share = draw.WindingShare,
        Slot = draw.SlotS,
        Copper = draw.CopperShare,
        LogHeat = draw.LogHeat + logHeat,
    };

    // The magnet half-way through a test: the heat of the tests goes with its strength then.
    private double TestMagnetC(RaceDraw draw, int option, double rotorRate)
    {
        (_, double winding) = FairDrive.Peak(Motor(draw, 0), draw.Options[option].LogConductance, _evidence.Fair.AmbientC, _evidence.Fair.DriveS / 2);
        double core = winding - _evidence.Fair.AmbientC - draw.SlotS * draw.CopperShare * Math.Exp(draw.LogHeat), z = rotorRate * _evidence.Fair.DriveS / 2;
        return _evidence.Fair.AmbientC + core * (1 - (1 - Math.Exp(-z)) / z); // behind a core that rises evenly
    }

    private static double MagnetStrength(double magnetC, double testMagnetC)
    {
        MagnetGrade grade = MagnetGrade.All[0];
        return Math.Max(grade.RelativeStrength(magnetC) / grade.RelativeStrength(testMagnetC), 0.5);
    }
}
