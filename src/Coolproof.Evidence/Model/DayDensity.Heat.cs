namespace Coolproof.Evidence.Model;

internal sealed partial class DayDensity
{
    // Below this share of the mean heat the logarithm of what the readings ask for goes on as a straight line: they may ask for less than nothing.
    private const double StraightBelow = 0.3;

    /// <summary>Whether a run's heat deviation is written about what its readings say.</summary>
    public bool Levelled(int r) => _model.Levels.Length > 0 && _model.Levels[r].RiseK > 0;

    /// <summary>
    /// How much more heat, in its logarithm, a run's readings must ask for than it has at the last point, so that its expected deviation with its spread
    /// and its charge is the one it has.
    /// </summary>
    public double Pull(int r, RunLevel level)
    {
        RunState s = _states[r];
        ModelRun run = _model.Runs[r];
        double spread = run.HeatFactor * Priors.RunHeatSpread * _x[Global.RunHeatSpread];
        return (s.Deviation / (spread * spread) + (double.IsNaN(run.ChargeRate) || _model.Charge is null ? 0 : s.ChargeMiss / Square(_chargeSpread))) / LevelPrecision(level);
    }

    /// <summary>What stands between a member of a group (mounting, option, day) and its readings at the last point.</summary>
    public HeatBetween HeatBetween(int member)
    {
        int[] runs = [.. Enumerable.Range(0, _states.Length).Where(r => Levelled(r) && Concerns(_model.Runs[r], member))];
        if (runs.Length == 0)
            return Evidence.Model.HeatBetween.None;
        double other = 1 / runs.Average(r => _states[r].LevelPrecision), charge = runs.Average(r => _states[r].ChargePrecision);
        double heat = Square(Priors.RunHeatSpread * _x[Global.RunHeatSpread]), free = heat / (1 + heat * charge);
        return new(free + other, other, charge, 1);
    }

    private bool Concerns(ModelRun run, int member) => run.Mounting == member || _model.OptionEffect[run.Option] == member || _model.Days[run.Day].Heat == member;

    private double LevelPrecision(RunLevel level) =>
        level.RiseK * level.RiseK / (Square(_guns[level.Instrument].Scatter) / level.Readings + level.OtherVariance);

    // Fills a run's deviation of log heat; returns its log prior where it has its own coordinate.
    private double HeatDeviation(ReadOnlySpan<double> u, int r)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        if (!Levelled(r))
        {
            s.Deviation = run.OwnHeatSd > 0 ? run.OwnHeatSd * u[run.Heat] : run.HeatFactor * Deviation(run.Heat);
            return 0;
        }
        RunLevel level = _model.Levels[r];
        UnitResponse(r);
        double rise = (level.ReadC - _guns[level.Instrument].Offset - s.Air) / _gain[level.Gain];
        s.Ratio = (rise - s.Rest) / (s.PerHeat * s.MeanP);
        s.ByLevel = s.Ratio > StraightBelow ? Math.Log(s.Ratio) : Math.Log(StraightBelow) + s.Ratio / StraightBelow - 1;
        double spread = run.HeatFactor * Priors.RunHeatSpread * _x[Global.RunHeatSpread];
        s.PriorPrecision = 1 / (spread * spread);
        s.LevelPrecision = LevelPrecision(level);
        (s.ChargePrecision, s.ByCharge) = (0, 0);
        if (_model.Charge is { } charge && !double.IsNaN(run.ChargeRate))
        {
            s.ChargePrecision = 1 / Square(_chargeSpread);
            s.ByCharge = -ChargeMiss(u, charge, run, s.MeanLogP);
        }
        double precision = s.PriorPrecision + s.LevelPrecision + s.ChargePrecision;
        s.DeviationSd = 1 / Math.Sqrt(precision);
        s.Expected = (s.LevelPrecision * s.ByLevel + s.ChargePrecision * s.ByCharge) / precision;
        s.Deviation = s.Expected + s.DeviationSd * u[run.Heat];
        return -0.5 * s.Deviation * s.Deviation * s.PriorPrecision + Math.Log(s.DeviationSd / spread);
    }

    // The can at the mean reading as Rest + PerHeat × heat, the feedback on the winding's share of the start left out and the copper's share of heat as at mean heat.
    private void UnitResponse(int r)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        TwoNodeKernel k = _kernel;
        int d = run.DriveStep, h = run.RollStep;
        s.UnitCopper = s.MeanCopper / s.MeanP;
        double heat = 1 - _c.Copper + s.UnitCopper * s.Warm;
        s.UnitGo1 = -_c.Share * _c.Slot * s.UnitCopper * s.Warm;
        s.RestEnd1 = k.E11[d] * s.Start1 + k.E12[d] * s.Start2;
        s.RestEnd2 = k.E21[d] * s.Start1 + k.E22[d] * s.Start2;
        s.UnitEnd1 = k.E11[d] * s.UnitGo1 + heat * k.F1[d];
        s.UnitEnd2 = k.E21[d] * s.UnitGo1 + heat * k.F2[d];
        double hot = s.Warm + Priors.Alpha25 * Priors.TypicalCoreRise, w = s.UnitCopper * hot;
        s.RestHalt1 = k.E11[h] * s.RestEnd1 + k.E12[h] * s.RestEnd2;
        s.RestHalt2 = k.E21[h] * s.RestEnd1 + k.E22[h] * s.RestEnd2;
        s.UnitHalt1 = k.E11[h] * s.UnitEnd1 + k.E12[h] * s.UnitEnd2 + w * k.F1[h];
        s.UnitHalt2 = k.E21[h] * s.UnitEnd1 + k.E22[h] * s.UnitEnd2 + w * k.F2[h];
        w *= k.Decay[h];
        (s.Rest, s.PerHeat) = (0, 0);
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            int q = _model.Readings[i].Step;
            if (!RunLevel.Counts(_model.Readings[i]))
                continue;
            s.Rest += k.E21[q] * s.RestHalt1 + k.E22[q] * s.RestHalt2;
            s.PerHeat += k.E21[q] * s.UnitHalt1 + k.E22[q] * s.UnitHalt2 + w * k.F2[q];
        }
        double share = 1.0 / _model.Levels[r].Readings;
        s.Rest *= share;
        s.PerHeat *= share;
    }

    // From the heat back to its mean, its deviation, the readings' and the charge's targets, and the start.
    private void HeatBackward(ReadOnlySpan<double> u, Span<double> gradient, int r, ref RunState s, ref RunAdjoint b)
    {
        ModelRun run = _model.Runs[r];
        b.Copper += b.Drive * (s.Warm + Priors.Alpha25 * Priors.TypicalCoreRise);
        b.MeanCopper -= b.Drive * Priors.Alpha25 * Priors.TypicalCoreRise;
        b.Warm += b.Drive * s.Copper;
        double perHeat = s.Copper + s.OwnByLogSlot;
        _cBar.Slot += b.Copper * s.OwnByLogSlot * _c.PerSlot;
        _cBar.Copper += b.Copper * perHeat / _c.Copper - b.Drive * s.P;
        double logPBar = b.Drive * (1 - _c.Copper) * s.P + b.Copper * perHeat + ChargeBackward(u, gradient, run, s.MeanLogP + s.Deviation);
        b.MeanLogP += logPBar;
        if (Levelled(r))
            DeviationBackward(u, gradient, r, logPBar, ref s, ref b);
        else if (run.OwnHeatSd > 0)
            gradient[run.Heat] += logPBar * run.OwnHeatSd;
        else
            _valueBar[run.Heat] += logPBar * run.HeatFactor;
    }

    private void DeviationBackward(ReadOnlySpan<double> u, Span<double> gradient, int r, double logPBar, ref RunState s, ref RunAdjoint b)
    {
        ModelRun run = _model.Runs[r];
        RunLevel level = _model.Levels[r];
        double bar = logPBar - s.Deviation * s.PriorPrecision, inverse = s.DeviationSd * s.DeviationSd;
        gradient[run.Heat] += bar * s.DeviationSd;
        // A precision enters by the sd p^(-1/2), its logarithm in the Jacobian, and the weights of the expected value.
        double common = -0.5 * (bar * s.DeviationSd * u[run.Heat] + 1) * inverse - bar * s.Expected * inverse;
        double priorBar = common - 0.5 * s.Deviation * s.Deviation;
        gradient[Global.RunHeatSpread] += (-2 * s.PriorPrecision * priorBar - 1) * _logSlope[Global.RunHeatSpread];
        double levelPrecisionBar = common + bar * s.ByLevel * inverse;
        _gunBars[level.Instrument].Scatter -= levelPrecisionBar * Square(s.LevelPrecision / level.RiseK) * 2 * _guns[level.Instrument].Scatter / level.Readings;
        double levelBar = bar * s.LevelPrecision * inverse, ratioBar = levelBar / Math.Max(s.Ratio, StraightBelow);
        b.MeanLogP -= ratioBar * s.Ratio;
        double restBar = -ratioBar / (s.MeanP * s.PerHeat), riseBar = -restBar, gain = _gain[level.Gain];
        double rise = (level.ReadC - _guns[level.Instrument].Offset - s.Air) / gain;
        _gainBar[level.Gain] -= riseBar * rise;
        _gunBars[level.Instrument].Offset -= riseBar / gain;
        b.Air -= riseBar / gain;
        UnitResponseBackward(r, restBar, -ratioBar * s.Ratio / s.PerHeat, ref s, ref b);
        if (s.ChargePrecision == 0)
            return;
        ChargeEntry charge = _model.Charge!.Value;
        double chargeBar = bar * s.ChargePrecision * inverse;
        gradient[charge.Packs[run.Pack]] += chargeBar * Priors.ChargeConstantSd;
        gradient[charge.Exponent] += chargeBar * Priors.ChargeExponent.Sd * run.ChargeRate;
        gradient[charge.Spread] -= 2 * (common + bar * s.ByCharge * inverse) * s.ChargePrecision * ChargeSlope(charge);
        _cBar.DrivenHeat += chargeBar;
        b.MeanLogP -= chargeBar;
    }

    // Adjoint of UnitResponse.
    private void UnitResponseBackward(int r, double restBar, double perHeatBar, ref RunState s, ref RunAdjoint b)
    {
        ModelRun run = _model.Runs[r];
        TwoNodeKernel k = _kernel;
        TwoNodeAdjoint a = _adjoint;
        int d = run.DriveStep, h = run.RollStep;
        double share = 1.0 / _model.Levels[r].Readings, hot = s.Warm + Priors.Alpha25 * Priors.TypicalCoreRise, end = s.UnitCopper * hot, halt = end * k.Decay[h];
        restBar *= share;
        perHeatBar *= share;
        double rest1 = 0, rest2 = 0, unit1 = 0, unit2 = 0, haltBar = 0;
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            int q = _model.Readings[i].Step;
            if (!RunLevel.Counts(_model.Readings[i]))
                continue;
            a.E21[q] += restBar * s.RestHalt1 + perHeatBar * s.UnitHalt1;
            a.E22[q] += restBar * s.RestHalt2 + perHeatBar * s.UnitHalt2;
            a.F2[q] += perHeatBar * halt;
            rest1 += restBar * k.E21[q];
            rest2 += restBar * k.E22[q];
            unit1 += perHeatBar * k.E21[q];
            unit2 += perHeatBar * k.E22[q];
            haltBar += perHeatBar * k.F2[q];
        }
        a.Decay[h] += haltBar * end;
        double endBar = haltBar * k.Decay[h] + unit1 * k.F1[h] + unit2 * k.F2[h];
        AddStep(h, rest1, rest2, unit1, unit2, s.RestEnd1, s.RestEnd2, s.UnitEnd1, s.UnitEnd2, end);
        (double restEnd1, double restEnd2) = (k.E11[h] * rest1 + k.E21[h] * rest2, k.E12[h] * rest1 + k.E22[h] * rest2);
        (double unitEnd1, double unitEnd2) = (k.E11[h] * unit1 + k.E21[h] * unit2, k.E12[h] * unit1 + k.E22[h] * unit2);
        double heat = 1 - _c.Copper + s.UnitCopper * s.Warm;
        AddStep(d, restEnd1, restEnd2, unitEnd1, unitEnd2, s.Start1, s.Start2, s.UnitGo1, 0, heat);
        b.Start1 += k.E11[d] * restEnd1 + k.E21[d] * restEnd2;
        b.Start2 += k.E12[d] * restEnd1 + k.E22[d] * restEnd2;
        double heatBar = k.F1[d] * unitEnd1 + k.F2[d] * unitEnd2, goBar = k.E11[d] * unitEnd1 + k.E21[d] * unitEnd2;
        double copper = s.UnitCopper, copperBar = endBar * hot + heatBar * s.Warm - goBar * _c.Share * _c.Slot * s.Warm;
        b.Warm += copper * (endBar + heatBar - goBar * _c.Share * _c.Slot);
        b.MeanCopper += copperBar / s.MeanP;
        b.MeanLogP -= copperBar * copper;
        _cBar.Copper -= heatBar;
        _cBar.Share -= goBar * _c.Slot * copper * s.Warm;
        _cBar.Slot -= goBar * _c.Share * copper * s.Warm;
    }

    // Adds what two states (without heat: x, for one of heat: y with forcing w) passing through one step put on its matrices.
    private void AddStep(int q, double xBar1, double xBar2, double yBar1, double yBar2, double x1, double x2, double y1, double y2, double w)
    {
        _adjoint.E11[q] += xBar1 * x1 + yBar1 * y1;
        _adjoint.E12[q] += xBar1 * x2 + yBar1 * y2;
        _adjoint.E21[q] += xBar2 * x1 + yBar2 * y1;
        _adjoint.E22[q] += xBar2 * x2 + yBar2 * y2;
        _adjoint.F1[q] += yBar1 * w;
        _adjoint.F2[q] += yBar2 * w;
    }
}
