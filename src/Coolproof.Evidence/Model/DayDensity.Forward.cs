namespace Coolproof.Evidence.Model;

internal sealed partial class DayDensity
{
    private void PrepareSteps()
    {
        foreach (ModelRun run in _model.Runs)
        {
            _kernel.Seconds[run.DriveStep] = run.DriveS;
            _kernel.Seconds[run.RollStep] = run.RollInS;
            _kernel.Releases[run.RollStep] = 1;
            if (run.RestStep >= 0)
                (_kernel.Seconds[run.RestStep], _kernel.Releases[run.RestStep]) = (run.RestS, 1);
            if (run.FanStopStep >= 0)
                (_kernel.Seconds[run.FanStopStep], _kernel.Releases[run.FanStopStep]) = (run.FanStopsS, 1);
        }
        foreach (ModelReading reading in _model.Readings)
            _kernel.Releases[reading.Step] = 1;
    }

    private double Forward(ReadOnlySpan<double> u)
    {
        double log = Unpack(u) + Delays(u);
        for (int r = 0; r < _model.Runs.Length; r++)
            RunInputs(u, r);
        _kernel.Forward(_c.Kappa, _c.Rho, _c.Nu);
        for (int r = 0; r < _model.Runs.Length; r++)
            log += Chain(u, r);
        return log + ReadingsLikelihood() + ChargeLikelihood(u);
    }

    /// <summary>Runs the model forward with given deviations of heat, and fills the parameters that stand for them.</summary>
    /// <param name="u">Parameters; those of the runs' heats are written.</param>
    /// <param name="heats">Deviations of log heat, one a run.</param>
    public void VisitWithHeats(Span<double> u, ReadOnlySpan<double> heats)
    {
        Groups(u, _scratch);
        Unpack(u);
        Delays(u);
        for (int r = 0; r < _model.Runs.Length; r++)
            RunInputs(u, r);
        _kernel.Forward(_c.Kappa, _c.Rho, _c.Nu);
        for (int r = 0; r < _model.Runs.Length; r++)
        {
            ModelRun run = _model.Runs[r];
            double deviation = heats[r];
            if (Levelled(r))
            {
                ref RunState s = ref _states[r];
                Start(u, r, ref s);
                HeatDeviation(u, r);
                u[run.Heat] = (deviation - s.Expected) / s.DeviationSd;
            }
            else if (run.OwnHeatSd == 0)
            {
                _value[run.Heat] = deviation / run.HeatFactor;
                u[run.Heat] = Member(_value[run.Heat], run.Heat);
            }
            Chain(u, r);
        }
    }

    // Returns the log prior of mean heat and of the packs' constants: their parameters are told from the mean of the days that were driven, which the
    // readings know, and not from that of all days that could be. So a day's deviation and its spread meet nothing thin.
    private double Unpack(ReadOnlySpan<double> u)
    {
        _dayMean = 0;
        for (int d = 0; d < _dayShare.Length; d++)
            _dayMean += _dayShare[d] * Deviation(_model.Days[d].Heat);
        _c = MotorAt(u);
        for (int i = 0; i < _ratio.Length; i++)
            _ratio[i] = _model.Ratios[i].Log(u);
        double shift = _level is null ? 0
            : _model.Level!.LogRisePerHeat - _level.LogRise(_c, TypicalLogG(_model.Level), _ratio[_model.RollInRatio], TypicalRatio(_model.Level));
        _c.LogHeat = Priors.Heat.Mean + Priors.Heat.Sd * u[Global.Heat] + shift - _dayMean;
        _heatMiss = u[Global.Heat] + (shift - _dayMean) / Priors.Heat.Sd;
        double log = -0.5 * _heatMiss * _heatMiss;
        for (int i = 0; i < _gain.Length; i++)
            _gain[i] = _model.Gains[i].At(u);
        for (int i = 0; i < _guns.Length; i++)
        {
            InstrumentEntry e = _model.Instruments[i];
            _guns[i] = (e.OffsetK + e.OffsetSdK * u[e.Offset], Log(Priors.AimLoss, u[e.LogAim]),
                ScatterOf(_x[e.Scatter]));
        }
        if (_model.Charge is { } charge)
        {
            foreach (int pack in charge.Packs)
                log -= 0.5 * Square(PackMiss(u, pack));
            _chargeSpread = Math.Sqrt(Square(Priors.ChargeSpread * _x[charge.Spread]) + Square(Priors.ChargeFloor));
        }
        for (int i = 0; i < _endbell.Length; i++)
            _endbell[i] = Math.Exp(Priors.Endbell.Mean + Priors.Endbell.Sd * u[_model.Endbells[i].Common] + Priors.EndbellOptionSd * u[_model.Endbells[i].Own]);
        return log;
    }

    // All of the motor's constants but its mean heat.
    private static Constants MotorAt(ReadOnlySpan<double> u)
    {
        Constants c = default;
        c.LogRho = Priors.CoreOverCan.Mean + Priors.CoreOverCan.Sd * u[Global.CoreOverCan];
        c.Rho = Math.Exp(c.LogRho);
        c.Kappa = Log(Priors.CoreToCan, u[Global.CoreToCan]);
        c.Share = Log(Priors.WindingShare, u[Global.WindingShare]);
        c.Slot = Log(Priors.Slot, u[Global.Slot]);
        c.PerSlot = 1 / c.Slot;
        c.PerRho = 1 / c.Rho;
        c.Nu = c.PerSlot / c.Share;
        c.Copper = 1 / (1 + Math.Exp(-u[Global.CopperShare]));
        c.LogConductance = Priors.Conductance.Mean + Priors.Conductance.Sd * u[Global.Conductance];
        return c;
    }

    private double TypicalLogG(MeanLevel level)
    {
        double sum = _c.LogConductance;
        for (int o = 0; o < level.Options.Length; o++)
            sum += level.Options[o] * Deviation(_model.OptionEffect[o]);
        return sum;
    }

    private double TypicalRatio(MeanLevel level)
    {
        double sum = 0;
        for (int i = 0; i < _ratio.Length; i++)
            sum += level.Ratios[i] * _ratio[i];
        return sum;
    }

    // A pack's constant about the mean heat of all days, in sds.
    private double PackMiss(ReadOnlySpan<double> u, int pack) => u[pack] + _dayMean / Priors.ChargeConstantSd;

    private static double Square(double x) => x * x;

    // Copper heat at 25 °C core, K/s: the winding's own excess adds to its resistance. Also its derivative by the log of the slot resistance.
    private double Copper(double p, out double byLogSlot)
    {
        double plain = _c.Copper * p, x = Priors.Alpha25 * plain * _c.Slot;
        byLogSlot = plain * (1 + 2 * x) * x;
        return plain * (1 + x + x * x);
    }

    private static double Log(NormalPrior prior, double u) => Math.Exp(prior.Mean + prior.Sd * u);

    // Delays of readings, s from halt, with the priors of gaps that are cut off at a noted later delay.
    private double Delays(ReadOnlySpan<double> u)
    {
        double log = 0;
        for (int i = 0; i < _seen.Length; i++)
        {
            ModelReading reading = _model.Readings[i];
            ref ReadingState seen = ref _seen[i];
            seen.DelayBar = 0;
            if (reading.Gap < 0)
            {
                seen.Delay = reading.DelayS;
                continue;
            }
            double from = reading.After < 0 ? 0 : _seen[reading.After].Delay, v = u[reading.Gap];
            if (double.IsNaN(reading.Before))
            {
                seen.Gap = Math.Exp(v);
            }
            else
            {
                Parameter p = _model.Parameters[reading.Gap];
                seen.Logistic = 1 / (1 + Math.Exp(-v));
                seen.Gap = (reading.Before - from) * seen.Logistic;
                log += p.A * Math.Log(seen.Gap) - seen.Gap * p.A / p.B + Math.Log(1 - seen.Logistic);
            }
            seen.Delay = from + seen.Gap;
        }
        return log;
    }

    private void RunInputs(ReadOnlySpan<double> u, int r)
    {
        ModelRun run = _model.Runs[r];
        DayEntry day = _model.Days[run.Day];
        ref RunState s = ref _states[r];
        s.Air = run.AirC + day.AirSd * u[day.Air] + run.AirSd * u[run.Air];
        s.LogG = _c.LogConductance + Deviation(_model.OptionEffect[run.Option]) + Deviation(run.Mounting) + Priors.DayConductanceSd * u[day.Conductance];
        double logP = _c.LogHeat + Deviation(day.Heat) + Priors.TrendSd * run.DayPlace * u[day.Trend] + run.LogDriven;
        foreach ((int parameter, double factor, _) in run.HeatTerms)
            logP += parameter < 0 ? factor : factor * u[parameter];
        s.MeanLogP = logP;
        s.MeanP = Math.Exp(logP);
        s.MeanCopper = Copper(s.MeanP, out s.CopperByLogSlot);
        s.Warm = 1 + Priors.Alpha25 * (s.Air - 25);
        double logGamma = s.LogG + _c.LogRho;
        _kernel.LogGamma[run.DriveStep] = logGamma;
        _kernel.Feedback[run.DriveStep] = Priors.Alpha25 * s.MeanCopper;
        _kernel.LogGamma[run.RollStep] = logGamma + _ratio[_model.RollInRatio];
        if (run.RollIn >= 0)
            _kernel.Seconds[run.RollStep] = Math.Exp(u[run.RollIn]);
        if (run.RestStep >= 0)
            _kernel.LogGamma[run.RestStep] = logGamma + Priors.Resting.Mean + Priors.Resting.Sd * u[run.Rest];
        double stopped = logGamma + _ratio[run.RatioEntry], still = run.FanOffEntry < 0 ? stopped : logGamma + _ratio[run.FanOffEntry];
        if (run.FanStopStep >= 0)
            _kernel.LogGamma[run.FanStopStep] = stopped;
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            ModelReading reading = _model.Readings[i];
            _kernel.LogGamma[reading.Step] = reading.FromFanStop ? still : stopped;
            _kernel.Seconds[reading.Step] = reading.FromFanStop ? _seen[i].Delay - run.FanStopsS : _seen[i].Delay;
        }
    }

    // One run's states in order of time; returns the log likelihood of a noted start and the prior of its heat.
    private double Chain(ReadOnlySpan<double> u, int r)
    {
        ModelRun run = _model.Runs[r];
        ref RunState s = ref _states[r];
        TwoNodeKernel k = _kernel;
        double log = Start(u, r, ref s) + HeatDeviation(u, r);
        s.P = s.MeanP * Math.Exp(s.Deviation);
        s.Copper = Copper(s.P, out s.OwnByLogSlot);
        s.Drive = (1 - _c.Copper) * s.P + s.Copper * s.Warm + Priors.Alpha25 * (s.Copper - s.MeanCopper) * Priors.TypicalCoreRise;
        double perSlot = _c.PerSlot;
        s.Go1 = s.Start1 - _c.Share * _c.Slot * s.Copper * (s.Warm + Priors.Alpha25 * s.Start1);
        int d = run.DriveStep, h = run.RollStep;
        s.End1 = k.E11[d] * s.Go1 + k.E12[d] * s.Start2 + s.Drive * k.F1[d];
        s.End2 = k.E21[d] * s.Go1 + k.E22[d] * s.Start2 + s.Drive * k.F2[d];
        s.EndExcess = _c.Slot * s.Copper * (s.Warm + Priors.Alpha25 * s.End1);
        double w = s.EndExcess * perSlot;
        s.Halt1 = k.E11[h] * s.End1 + k.E12[h] * s.End2 + w * k.F1[h];
        s.Halt2 = k.E21[h] * s.End1 + k.E22[h] * s.End2 + w * k.F2[h];
        s.HaltExcess = s.EndExcess * k.Decay[h];
        if (run.FanStopStep >= 0)
        {
            int f = run.FanStopStep;
            w = s.HaltExcess * perSlot;
            s.Still1 = k.E11[f] * s.Halt1 + k.E12[f] * s.Halt2 + w * k.F1[f];
            s.Still2 = k.E21[f] * s.Halt1 + k.E22[f] * s.Halt2 + w * k.F2[f];
            s.StillExcess = s.HaltExcess * k.Decay[f];
        }
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            ModelReading reading = _model.Readings[i];
            int q = reading.Step;
            (double x1, double x2, double e) = reading.FromFanStop ? (s.Still1, s.Still2, s.StillExcess) : (s.Halt1, s.Halt2, s.HaltExcess);
            w = e * perSlot;
            _seen[i].Core = k.E11[q] * x1 + k.E12[q] * x2 + w * k.F1[q];
            _seen[i].Can = k.E21[q] * x1 + k.E22[q] * x2 + w * k.F2[q];
            if (!IsGun(reading))
                _seen[i].Winding = _c.Winding(_seen[i].Core, _seen[i].Can, e * k.Decay[q], s.EndExcess);
        }
        return log;
    }

    private double Start(ReadOnlySpan<double> u, int r, ref RunState s)
    {
        ModelRun run = _model.Runs[r];
        bool noted = !double.IsNaN(run.StartC);
        if (run.Start == StartMode.Chained)
        {
            ref RunState before = ref _states[r - 1];
            int q = run.RestStep;
            double shift = before.Air - s.Air, w = before.HaltExcess * _c.PerSlot;
            s.Before1 = before.Halt1 + shift;
            s.Before2 = before.Halt2 + shift;
            s.Start1 = _kernel.E11[q] * s.Before1 + _kernel.E12[q] * s.Before2 + w * _kernel.F1[q];
            s.Start2 = _kernel.E21[q] * s.Before1 + _kernel.E22[q] * s.Before2 + w * _kernel.F2[q];
            return StartLikelihood(r);
        }
        bool unclocked = run.Start == StartMode.Unclocked;
        s.Start2 = noted ? run.StartC + Priors.StartNotedSd * u[run.StartCan] - s.Air : (unclocked ? Priors.StartUnknownSd : Priors.FirstRunSd) * u[run.StartCan];
        if (unclocked)
        {
            (double over, double slope) = HalfNormalTable.At(u[run.StartCore]);
            (s.Start1, s.CoreSlope) = (s.Start2 + Priors.CoreOverCanStart * over, Priors.CoreOverCanStart * slope);
            return 0;
        }
        s.Start1 = (noted ? s.Start2 : 0) + Priors.FirstRunSd * u[run.StartCore];
        return 0;
    }

    // Of the can as noted before a run that goes on from the one before: elsewhere the note is where the can starts.
    private double StartLikelihood(int r)
    {
        ModelRun run = _model.Runs[r];
        if (run.Start != StartMode.Chained || double.IsNaN(run.StartC))
            return 0;
        return -0.5 * Square((_states[r].Start2 + _states[r].Air - run.StartC) / Priors.StartNotedSd);
    }

    /// <summary>Log likelihood at the last point, up to a constant: of the readings, the charges and the starts that were noted.</summary>
    public double LogLikelihood(ReadOnlySpan<double> u)
    {
        double log = ReadingsLikelihood() + ChargeLikelihood(u);
        for (int r = 0; r < _states.Length; r++)
            log += StartLikelihood(r);
        return log;
    }

    /// <summary>Log likelihood of the readings at the last point with another scatter of an instrument, by its parameter; it stays until the next visit.</summary>
    public double LogLikelihoodWithScatter(int instrument, double u)
    {
        _guns[instrument].Scatter = ScatterOf(HalfNormal.At(u).X);
        return ReadingsLikelihood();
    }

    private static double ScatterOf(double x) => Math.Sqrt(Square(Priors.ScatterSpread * x) + Square(Priors.ScatterFloor));

    private double ReadingsLikelihood()
    {
        double log = 0;
        int gun = 0;
        for (int i = 0; i < _seen.Length; i++)
        {
            ModelReading reading = _model.Readings[i];
            ref ReadingState seen = ref _seen[i];
            double air = _states[reading.Run].Air;
            if (!IsGun(reading))
            {
                seen.Mean = air + seen.Winding;
                double miss = (seen.Mean - reading.ValueC) / WindingSd(reading);
                log -= 0.5 * miss * miss;
                continue;
            }
            (double offset, double aim, double scatter) = _guns[reading.Instrument];
            double body = reading.EndbellEntry < 0 ? seen.Can : seen.Can * _endbell[reading.EndbellEntry];
            seen.Mean = air + _gain[reading.Gain] * body + offset;
            seen.Loss = aim * reading.MaxFactor * Math.Sqrt(body * body + 1);
            _likelihood.Shortfall[gun] = seen.Mean - reading.ValueC;
            _likelihood.Loss[gun] = seen.Loss;
            _likelihood.Scatter[gun++] = scatter;
        }
        return log + _likelihood.Evaluate();
    }

    private static double WindingSd(ModelReading reading) =>
        reading.On == ReadingOn.WindingByResistance ? Priors.WindingResistanceSd : Priors.WindingGunSd;

    private double ChargeLikelihood(ReadOnlySpan<double> u)
    {
        if (_model.Charge is not { } charge)
            return 0;
        double log = 0;
        for (int r = 0; r < _states.Length; r++)
        {
            ModelRun run = _model.Runs[r];
            if (double.IsNaN(run.ChargeRate))
                continue;
            double spread = _chargeSpread, miss = ChargeMiss(u, charge, run, _states[r].MeanLogP + _states[r].Deviation) / spread;
            _states[r].ChargeMiss = miss * spread;
            // The charge is what was observed: its own density, the relation solved for it, has the exponent as a factor. Without it an exponent of nothing
            // with no spread of heat would explain any charges best.
            log -= 0.5 * miss * miss + Math.Log(spread) - Math.Log(Exponent(u, charge));
        }
        return log;
    }

    /// <summary>Mean square of what the charge relation misses at the last point.</summary>
    public double ChargeMeanSquare(ReadOnlySpan<double> u)
    {
        double sum = 0;
        int count = 0;
        for (int r = 0; r < _states.Length; r++)
        {
            if (_model.Charge is not { } charge || double.IsNaN(_model.Runs[r].ChargeRate))
                continue;
            sum += Math.Pow(ChargeMiss(u, charge, _model.Runs[r], _states[r].MeanLogP + _states[r].Deviation), 2);
            count++;
        }
        return sum / Math.Max(count, 1);
    }

    private double ChargeMiss(ReadOnlySpan<double> u, ChargeEntry charge, ModelRun run, double logP) =>
        logP - run.LogDriven - _c.LogHeat - _dayMean - Priors.ChargeConstantSd * u[charge.Packs[run.Pack]]
        - Exponent(u, charge) * run.ChargeRate;

    private static double Exponent(ReadOnlySpan<double> u, ChargeEntry charge) =>
        Math.Max(Priors.ChargeExponent.Mean + Priors.ChargeExponent.Sd * u[charge.Exponent], 0);
}
