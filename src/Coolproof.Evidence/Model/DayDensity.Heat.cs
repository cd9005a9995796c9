namespace Coolproof.Evidence.Model;

internal sealed partial class DayDensity
{
    /// <summary>Derivatives by a run's mean log heat, log conductance and air.</summary>
    private readonly record struct HeatBars(double LogP, double LogG, double Air);

    /// <summary>
    /// log of about the can's rise at the end of hard driving for one K/s of heat: the whole motor as one body, good enough for coordinates.
    /// </summary>
    internal double LogUnitRise(int r, out double byLogG, out double byLogRho)
    {
        double inverseRho = 1 / _c.Rho, z = _model.Runs[r].DriveS * Math.Exp(_states[r].LogG) / (1 + inverseRho), e = Math.Exp(-z);
        double bend = z < 1e-8 ? 1 : z * e / (1 - e);
        byLogG = bend - 1;
        byLogRho = bend * inverseRho / (1 + inverseRho);
        return -_states[r].LogG + Math.Log(1 - e);
    }

    /// <summary>What gun and air add to a run's log level.</summary>
    internal double GunShift(in RunLevel level, double airC) => Math.Log(_gain[level.Gain]) + (_guns[level.Instrument].Offset + airC - level.AirC) / level.RiseK;

    // Fills the run's deviation of log heat; meanLogP is the log heat without it.
    private double HeatDeviation(ReadOnlySpan<double> u, int r, double meanLogP)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        bool levelled = _model.Levels.Length > 0 && _model.Levels[r].RiseK > 0;
        if (!levelled)
        {
            s.Deviation = run.OwnHeatSd > 0 ? run.OwnHeatSd * u[run.Heat] : run.HeatFactor * Deviation(u, run.Heat);
            return 0;
        }
        RunLevel level = _model.Levels[r];
        double spread = run.HeatFactor * Priors.RunHeatSpread * _x[Global.RunHeatSpread], scatter = _guns[level.Instrument].Scatter;
        s.PriorPrecision = 1 / (spread * spread);
        s.LevelPrecision = level.RiseK * level.RiseK / (scatter * scatter / level.Readings + level.OtherVariance);
        s.ByLevel = level.LogLevel - GunShift(level, s.Air) - LogUnitRise(r, out _, out _) - meanLogP;
        s.ChargePrecision = 0;
        s.ByCharge = 0;
        if (_model.Charge is { } charge && !double.IsNaN(run.ChargeRate))
        {
            s.ChargePrecision = 1 / Square(Priors.ChargeSpread * _x[charge.Spread]);
            s.ByCharge = -ChargeMiss(u, charge, run, Math.Exp(meanLogP));
        }
        double precision = s.PriorPrecision + s.LevelPrecision + s.ChargePrecision;
        s.DeviationSd = 1 / Math.Sqrt(precision);
        s.Expected = (s.LevelPrecision * s.ByLevel + s.ChargePrecision * s.ByCharge) / precision;
        s.Deviation = s.Expected + s.DeviationSd * u[run.Heat];
        return -0.5 * s.Deviation * s.Deviation * s.PriorPrecision + Math.Log(s.DeviationSd / spread);
    }

    private HeatBars HeatDeviationBackward(ReadOnlySpan<double> u, Span<double> gradient, int r, double logPBar)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        if (_model.Levels.Length == 0 || _model.Levels[r].RiseK == 0)
        {
            if (run.OwnHeatSd > 0)
                gradient[run.Heat] += logPBar * run.OwnHeatSd;
            else
                AddDeviationBar(u, gradient, run.Heat, logPBar * run.HeatFactor);
            return new(logPBar, 0, 0);
        }
        RunLevel level = _model.Levels[r];
        double bar = logPBar - s.Deviation * s.PriorPrecision;
        double inverse = s.DeviationSd * s.DeviationSd, levelBar = bar * s.LevelPrecision * inverse, chargeBar = bar * s.ChargePrecision * inverse;
        gradient[run.Heat] = bar * s.DeviationSd;
        // Precision p enters by the sd p^(-1/2), its logarithm in the Jacobian, and the weights of the expected value.
        double common = -0.5 * (bar * s.DeviationSd * u[run.Heat] + 1) * inverse - bar * s.Expected * inverse;
        double priorBar = common - 0.5 * s.Deviation * s.Deviation, levelPrecisionBar = common + bar * s.ByLevel * inverse;
        // The spread also stands in the prior's −log spread.
        gradient[Global.RunHeatSpread] += (-2 * s.PriorPrecision * priorBar - 1) * _logSlope[Global.RunHeatSpread];
        double scatter = _guns[level.Instrument].Scatter;
        _gunBars[level.Instrument].Scatter -= levelPrecisionBar * Square(s.LevelPrecision / level.RiseK) * 2 * scatter / level.Readings;
        LogUnitRise(r, out double byLogG, out double byLogRho);
        _cBar.Rho -= levelBar * byLogRho / _c.Rho;
        _gainBar[level.Gain] -= levelBar;
        _gunBars[level.Instrument].Offset -= levelBar / level.RiseK;
        double meanBar = logPBar - levelBar;
        if (s.ChargePrecision > 0)
            meanBar += ChargeTargetBackward(gradient, run, ref s, chargeBar, common + bar * s.ByCharge * inverse);
        return new(meanBar, -levelBar * byLogG, -levelBar / level.RiseK);
    }

    // The charge's own target for the deviation: adds its gradient, returns the derivative by mean log heat.
    private double ChargeTargetBackward(Span<double> gradient, ModelRun run, ref RunState s, double targetBar, double precisionBar)
    {
        ChargeEntry charge = _model.Charge!.Value;
        gradient[charge.Packs[run.Pack]] += targetBar * Priors.ChargeConstantSd;
        gradient[charge.Exponent] += targetBar * Priors.ChargeExponent.Sd * run.ChargeRate;
        gradient[charge.Spread] -= 2 * precisionBar * s.ChargePrecision * _logSlope[charge.Spread];
        _cBar.LogHeat += targetBar;
        return -targetBar;
    }
}
