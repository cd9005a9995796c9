using Coolproof.Evidence.Guns;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Model;

/// <summary>Spreads and gun constants that are known: for tests against a known generator; null leaves the prior.</summary>
internal sealed record KnownConstants(
    double? OptionSpread = null, double? MountingSpread = null, double? RunHeatSpread = null, double? DayHeatSpread = null, double? Scatter = null,
    double? AimLoss = null);

/// <summary>Lays out the joint model of a readings table.</summary>
internal sealed class DayModelBuilder
{
    // A mounting that held for more runs than this is a global: its block would grow with the square of its runs.
    private const int MostRunsInBlock = 6;
    private const double KnownSd = 0.01;

    // Days beyond this many are blocks of their own: as globals their work would grow with the square of the table.
    private const int MostDaysAsGlobals = 12;

    private readonly ReadingsTable _table;
    private readonly KnownConstants _known;
    private readonly List<Parameter> _parameters = [];
    private readonly List<ModelRun> _runs = [];
    private readonly List<ModelReading> _readings = [];
    private readonly List<string> _options;
    private readonly List<RatioEntry> _ratios = [];
    private readonly Dictionary<(int Option, int State), int> _ratioIndex = [];
    private readonly List<InstrumentEntry> _instruments = [];
    private readonly List<GunBelief> _guns = [];
    private readonly List<GainEntry> _gains = [];
    private readonly Dictionary<(int, bool), int> _gainIndex = [];
    private readonly List<(int, int)> _endbells = [];
    private readonly Dictionary<int, int> _endbellIndex = [];
    private readonly List<string> _dayNames = [];
    private readonly List<DeviationGroup> _groups = [];
    private int _stoppedFanOff = -1, _endbellCommon = -1;

    private DayModelBuilder(ReadingsTable table, KnownConstants known) => (_table, _known, _options) = (table, known, [.. table.Options]);

    /// <summary>The model of a table. Runs without clock times and without readings that count are left out.</summary>
    public static DayModel Build(ReadingsTable table, KnownConstants? known = null) => new DayModelBuilder(table, known ?? new()).Build();

    private DayModel Build()
    {
        AddCommonGlobals();
        foreach (IGrouping<string, (Run Run, int Index)> day in _table.Runs.Select((r, i) => (Run: r, Index: i)).GroupBy(x => x.Run.Day))
            AddDay(day.Key, [.. day]);
        int[] optionEffect = AddOptions();
        int daySpread = AddSpread("spread of heat day to day", Priors.DayHeatSpread, DoubtSource.MountingAndDay, _known.DayHeatSpread);
        bool dayBlocks = _dayNames.Count > MostDaysAsGlobals;
        DayEntry[] days = dayBlocks ? new DayEntry[_dayNames.Count] : [.. _dayNames.Select(AddDayTerms)];
        HeatTerms.Attach(_runs, _table, Add);
        ChargeEntry? charge = ChargeTerms.Attach(_runs, _table, Add);
        List<int[]> blocks = MountingBlocks();
        int globals = _parameters.Count;
        int[] sizes = dayBlocks ? AddDayBlocks(blocks, days) : AddLocals(blocks);
        _groups.Add(new(daySpread, Priors.DayHeatSpread, [.. days.Select(d => d.Heat)], 0));
        _groups.Add(new(Global.RunHeatSpread, Priors.RunHeatSpread, [.. _runs.Where(r => r.OwnHeatSd == 0).Select(r => r.Heat)], 0));
        return new()
        {
            Parameters = _parameters,
            Layout = new(globals, sizes),
            Groups = [.. _groups],
            Runs = [.. _runs],
            Readings = [.. _readings],
            Options = _options,
            OptionEffect = optionEffect,
            Ratios = [.. _ratios],
            Instruments = [.. _instruments],
            Gains = [.. _gains],
            Endbells = [.. _endbells],
            Days = days,
            Charge = charge,
            Steps = NumberSteps(),
            RollInRatio = 0,
        };
    }

    private int Add(string name, PriorKind kind, DoubtSource source, double a = 0, double b = 1)
    {
        _parameters.Add(new(name, kind, a, b, source) { Scale = kind == PriorKind.HalfNormal ? a : 0 });
        return _parameters.Count - 1;
    }

    private int AddSpread(string name, double scale, DoubtSource source, double? known)
    {
        _parameters.Add(known is { } value
            ? new(name, PriorKind.Known, HalfNormal.Invert(value / scale), KnownSd, source) { Scale = scale }
            : new(name, PriorKind.HalfNormal, scale, 0, source) { Scale = scale });
        return _parameters.Count - 1;
    }

    private void AddCommonGlobals()
    {
        const DoubtSource motor = DoubtSource.MotorAndPriors;
        Add("core over can capacity", PriorKind.Unit, motor);
        Add("core to can", PriorKind.Unit, motor);
        Add("winding share of capacity", PriorKind.Unit, motor);
        Add("slot resistance", PriorKind.Unit, motor);
        Add("copper share of heat", PriorKind.LogitBeta, motor, Priors.CopperShareShape);
        Add("mean heat", PriorKind.Unit, motor);
        Add("mean watts shed per degree", PriorKind.Unit, motor);
        int fanOn = Add("stopped ratio, fan on", PriorKind.Unit, motor);
        AddSpread("spread of options", Priors.OptionSpread, motor, _known.OptionSpread);
        AddSpread("spread of mountings", Priors.MountingSpread, DoubtSource.MountingAndDay, _known.MountingSpread);
        AddSpread("spread of heat run to run", Priors.RunHeatSpread, DoubtSource.Load, _known.RunHeatSpread);
        _ratios.Add(new(Priors.StoppedFanOn.Mean, fanOn, Priors.StoppedFanOn.Sd, -1, 0));
    }

    private void AddDay(string name, List<(Run Run, int Index)> runs)
    {
        bool clocked = runs.All(r => r.Run.StartedAt is not null);
        List<(Run Run, int Index)> kept = [.. clocked ? runs : runs.Where(r => r.Run.Kind is RunKind.Test or RunKind.Race && r.Run.Readings.Any(Counts))];
        if (kept.Count == 0)
            return;
        int day = _dayNames.Count;
        _dayNames.Add(name);
        (double C, double Sd)[] air = AirNotes.Of([.. kept.Select(r => r.Run)]);
        for (int i = 0; i < kept.Count; i++)
        {
            (Run run, int index) = kept[i];
            StartMode start = !clocked ? StartMode.Unclocked : i == 0 ? StartMode.FirstOfDay : StartMode.Chained;
            ModelRun model = NewRun(run, index, day, start, air[i]);
            model.DayPlace = kept.Count == 1 ? 0 : (double)i / (kept.Count - 1) - 0.5;
            if (start == StartMode.Chained)
                model.RestS = RestSeconds(kept[i - 1].Run, run);
            _runs.Add(model);
            AddReadings(run, index, _runs.Count - 1);
        }
    }

    private ModelRun NewRun(Run run, int index, int day, StartMode start, (double C, double Sd) air)
    {
        int option = OptionOf(run);
        bool fanStops = run.FanAfterStop == FanAfterStop.On && run.PowerOffS is > 0;
        return new()
        {
            TableRun = index,
            Day = day,
            Option = option,
            Start = start,
            DriveS = run.DriveS,
            LogDriven = Math.Log(1 - Math.Min(run.StoodS / run.DriveS, 0.95)),
            AirC = air.C,
            AirSd = air.Sd,
            StartC = run.StartC ?? double.NaN,
            RollInS = run.RollInS is { } s ? Math.Max(s, 1e-3) : double.NaN,
            FanStopsS = fanStops ? run.PowerOffS!.Value : double.NaN,
            OwnHeatSd = run.Kind is RunKind.Void or RunKind.WarmUp ? Priors.VoidHeatSd : 0,
            HeatFactor = run.Kind == RunKind.Race ? Priors.RaceSpreadFactor : 1,
            RatioEntry = RatioOf(option, run),
            FanOffEntry = fanStops ? RatioOf(option, run with { FanAfterStop = FanAfterStop.Off }) : -1,
        };
    }

    // A run whose fan failed tells of another option than the one that was meant.
    private int OptionOf(Run run)
    {
        string name = run.Fan == FanInRun.Failed ? run.Option + " (fan failed)" : run.Option;
        int at = _options.FindIndex(o => string.Equals(o, name, StringComparison.OrdinalIgnoreCase));
        if (at >= 0)
            return at;
        _options.Add(name);
        return _options.Count - 1;
    }

    private int RatioOf(int option, Run run)
    {
        int state = run.FanAfterStop switch
        {
            FanAfterStop.On => 0,
            FanAfterStop.Off or FanAfterStop.None => 1,
            _ => run.Fan is FanInRun.None or FanInRun.Failed ? 1 : 2,
        };
        if (_ratioIndex.TryGetValue((option, state), out int entry))
            return entry;
        if (state == 1 && _stoppedFanOff < 0)
            _stoppedFanOff = Add("stopped ratio, fan off", PriorKind.Unit, DoubtSource.MotorAndPriors);
        int own = Add($"stopped ratio of {_options[option]}, fan {(state == 0 ? "on" : state == 1 ? "off" : "unknown")}", PriorKind.Unit, DoubtSource.MotorAndPriors);
        _ratios.Add(state switch
        {
            0 => new(Priors.StoppedFanOn.Mean, Global.StoppedFanOn, Priors.StoppedFanOn.Sd, own, Priors.StoppedOptionSd),
            1 => new(Priors.StoppedFanOff.Mean, _stoppedFanOff, Priors.StoppedFanOff.Sd, own, Priors.StoppedOptionSd),
            _ => new(Priors.StoppedUnknown.Mean, -1, 0, own, Priors.StoppedUnknown.Sd),
        });
        return _ratioIndex[(option, state)] = _ratios.Count - 1;
    }

    private static double RestSeconds(Run before, Run run)
    {
        double between = (run.StartedAt!.Value.InUtc().ToInstant() - before.StartedAt!.Value.InUtc().ToInstant()).TotalSeconds;
        return Math.Max(between - before.DriveS - (before.RollInS ?? Priors.RollIn.Mean), 1);
    }

    /// <summary>Whether a reading can be evidence at all: counted, and on a spot that stands for can or winding.</summary>
    public static bool Counts(Reading r) => r.ExcludedBecause is null && (r.Winding is not null || (r.ReadC is not null && r.Spot is Spot.Can or Spot.Endbell or Spot.Winding));

    private void AddReadings(Run run, int tableRun, int modelRun)
    {
        ModelRun model = _runs[modelRun];
        model.FirstReading = _readings.Count;
        foreach (int i in ReadingOrder.Of(run.Readings))
        {
            Reading r = run.Readings[i];
            if (r.ExcludedBecause is not null)
                continue;
            if (r.ReadC is { } value && r.Spot is Spot.Can or Spot.Endbell or Spot.Winding)
                AddReading(model, r, modelRun, tableRun, i, On(r.Spot), value, r.StopToReadS ?? double.NaN);
            if (r.Winding is { } w)
                AddReading(model, r, modelRun, tableRun, i, ReadingOn.WindingByResistance, Thermal.Winding.TemperatureC(w.HotMilliohm, w.ColdMilliohm, w.ColdC), w.AtS ?? r.StopToReadS ?? double.NaN);
        }
        model.EndReading = _readings.Count;
        BoundUnknownDelays(model);
    }

    private static ReadingOn On(Spot spot) => spot switch { Spot.Endbell => ReadingOn.Endbell, Spot.Winding => ReadingOn.WindingByGun, _ => ReadingOn.Can };

    private void AddReading(ModelRun model, Reading r, int run, int tableRun, int index, ReadingOn on, double value, double delay)
    {
        int instrument = InstrumentOf(r.Instrument);
        _readings.Add(new()
        {
            TableRun = tableRun,
            TableReading = index,
            Run = run,
            On = on,
            DelayS = delay,
            Instrument = instrument,
            ValueC = on is ReadingOn.Can or ReadingOn.Endbell ? GunSetting.Undo(value, r.EmissivitySet ?? _guns[instrument].Setting, model.AirC) : value,
            Gain = GainOf(instrument, r.Surface is SpotSurface.Tape or SpotSurface.Paint),
            MaxFactor = r.Hold == Hold.Max ? 1 / Priors.MaxHoldFactor : 1,
            EndbellEntry = on == ReadingOn.Endbell ? EndbellOf(model.Option) : -1,
            FromFanStop = delay > model.FanStopsS,
        });
    }

    private int InstrumentOf(string name)
    {
        int at = _instruments.FindIndex(i => string.Equals(i.Name, name, StringComparison.OrdinalIgnoreCase));
        if (at >= 0)
            return at;
        _guns.Add(GunBelief.Of(name, _table));
        _instruments.Add(new(name, Add($"offset of {name}", PriorKind.Unit, DoubtSource.Gun),
            _known.AimLoss is { } aim
                ? Add($"aim loss of {name}", PriorKind.Known, DoubtSource.ScatterAndAim, (Math.Log(aim) - Priors.AimLoss.Mean) / Priors.AimLoss.Sd, KnownSd)
                : Add($"aim loss of {name}", PriorKind.Unit, DoubtSource.ScatterAndAim),
            AddSpread($"scatter of {name}", Priors.ScatterSpread, DoubtSource.ScatterAndAim, _known.Scatter), _guns[^1].OffsetK, _guns[^1].OffsetSdK));
        return _instruments.Count - 1;
    }

    private int GainOf(int instrument, bool matt)
    {
        if (_gainIndex.TryGetValue((instrument, matt), out int entry))
            return entry;
        string name = $"gain of {_instruments[instrument].Name} on {(matt ? "tape or paint" : "bare metal or an unknown surface")}";
        GunBelief gun = _guns[instrument];
        _gains.Add(new(Add(name, PriorKind.Unit, DoubtSource.Gun), matt ? gun.Tape : gun.Bare, _instruments[instrument].Offset, matt ? gun.TapeTilt : gun.BareTilt));
        return _gainIndex[(instrument, matt)] = _gains.Count - 1;
    }

    private int EndbellOf(int option)
    {
        if (_endbellIndex.TryGetValue(option, out int entry))
            return entry;
        if (_endbellCommon < 0)
            _endbellCommon = Add("endbell over can", PriorKind.Unit, DoubtSource.MotorAndPriors);
        _endbells.Add((_endbellCommon, Add($"endbell over can of {_options[option]}", PriorKind.Unit, DoubtSource.MotorAndPriors)));
        return _endbellIndex[option] = _endbells.Count - 1;
    }

    private void BoundUnknownDelays(ModelRun run)
    {
        int before = -1;
        double passed = 0;
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            ModelReading r = _readings[i];
            if (double.IsNaN(r.DelayS))
            {
                r.After = before;
                ModelReading? next = _readings[i..run.EndReading].FirstOrDefault(x => x.DelayS > passed);
                r.Before = next?.DelayS ?? double.NaN;
            }
            else
            {
                passed = r.DelayS;
            }
            before = i;
        }
    }

    private int[] AddOptions()
    {
        int[] effect = [.. _options.Select(o => Add($"watts shed per degree of {o}", PriorKind.Member, DoubtSource.MotorAndPriors))];
        _groups.Add(new(Global.OptionSpread, Priors.OptionSpread, effect, 0));
        return effect;
    }

    private DayEntry AddDayTerms(string name) => new(name,
        Add($"heat on {name}", PriorKind.Member, DoubtSource.MountingAndDay),
        Add($"watts shed per degree on {name}", PriorKind.Unit, DoubtSource.MountingAndDay),
        Add($"air on {name}", PriorKind.Unit, DoubtSource.Air),
        _table.Runs.Any(r => r.Day == name && r.AirC is not null) ? Priors.DayAirSd : Priors.DayAirUnknownSd,
        Add($"trend on {name}", PriorKind.Unit, DoubtSource.MountingAndDay));

    // Runs that share a mounting share a block, unless there are too many of them.
    private List<int[]> MountingBlocks()
    {
        List<List<int>> mountings = [];
        Dictionary<(int Day, int Option), int> last = [];
        for (int r = 0; r < _runs.Count; r++)
        {
            (int, int) key = (_runs[r].Day, _runs[r].Option);
            bool? refitted = _table.Runs[_runs[r].TableRun].Remounted;
            bool sameAsBefore = r > 0 && _runs[r - 1].Day == _runs[r].Day && _runs[r - 1].Option == _runs[r].Option;
            bool held = last.ContainsKey(key) && (refitted == false || (refitted is null && sameAsBefore));
            if (!held)
            {
                last[key] = mountings.Count;
                mountings.Add([]);
            }
            mountings[last[key]].Add(r);
        }
        List<int> globalMountings = [];
        foreach (List<int> big in mountings.Where(m => m.Count > MostRunsInBlock))
        {
            int parameter = Add($"mounting of {_options[_runs[big[0]].Option]}", PriorKind.Member, DoubtSource.MountingAndDay);
            globalMountings.Add(parameter);
            big.ForEach(r => _runs[r].Mounting = parameter);
        }
        _groups.Add(new(Global.MountingSpread, Priors.MountingSpread, [.. globalMountings], 0));
        return [.. mountings.SelectMany(m => m.Count > MostRunsInBlock ? m.Select(r => new[] { r }) : [[.. m]])];
    }

    // A block a day: what belongs to the day and then what belongs to its runs.
    private int[] AddDayBlocks(List<int[]> mountings, DayEntry[] days)
    {
        List<int> sizes = [];
        foreach (IGrouping<int, int[]> day in mountings.GroupBy(m => _runs[m[0]].Day))
        {
            int first = _parameters.Count;
            days[day.Key] = AddDayTerms(_dayNames[day.Key]);
            AddLocals([.. day]);
            sizes.Add(_parameters.Count - first);
        }
        return [.. sizes];
    }

    private int[] AddLocals(List<int[]> blocks)
    {
        List<int> sizes = [], mountings = [.. _groups[^1].Members];
        foreach (int[] block in blocks)
        {
            int first = _parameters.Count;
            if (_runs[block[0]].Mounting < 0)
            {
                int mounting = Add($"mounting of {_options[_runs[block[0]].Option]}", PriorKind.Member, DoubtSource.MountingAndDay);
                mountings.Add(mounting);
                foreach (int r in block)
                    _runs[r].Mounting = mounting;
            }
            foreach (int r in block)
                AddRunLocals(_runs[r]);
            sizes.Add(_parameters.Count - first);
        }
        _groups[^1] = _groups[^1] with { Members = [.. mountings] };
        return [.. sizes];
    }

    private void AddRunLocals(ModelRun run)
    {
        string name = _table.Runs[run.TableRun].Name;
        run.Heat = Add($"heat of run {name}", run.OwnHeatSd > 0 ? PriorKind.Unit : PriorKind.Member, DoubtSource.Load);
        run.Air = Add($"air of run {name}", PriorKind.Unit, DoubtSource.Air);
        if (run.Start == StartMode.Chained)
        {
            run.Rest = Add($"rest before run {name}", PriorKind.Unit, DoubtSource.Warmth);
        }
        else
        {
            run.StartCan = Add($"can before run {name}", PriorKind.Unit, DoubtSource.Warmth);
            run.StartCore = run.Start == StartMode.Unclocked
                ? Add($"core over can before run {name}", PriorKind.Unit, DoubtSource.Warmth)
                : Add($"core before run {name}", PriorKind.Unit, DoubtSource.Warmth);
        }
        if (double.IsNaN(run.RollInS))
            run.RollIn = Add($"roll-in of run {name}", PriorKind.LogGamma, DoubtSource.Delay, Priors.RollIn.Shape, Priors.RollIn.Mean);
        for (int i = run.FirstReading; i < run.EndReading; i++)
        {
            if (!double.IsNaN(_readings[i].DelayS))
                continue;
            (double shape, double mean) = _readings[i].After < 0 ? Priors.FirstDelay : Priors.LaterGap;
            _readings[i].Gap = Add($"delay of reading {i - run.FirstReading + 1} of run {name}",
                double.IsNaN(_readings[i].Before) ? PriorKind.LogGamma : PriorKind.CutGamma, DoubtSource.Delay, shape, mean);
        }
    }

    private int NumberSteps()
    {
        int step = 0;
        foreach (ModelRun run in _runs)
        {
            if (run.Start == StartMode.Chained)
                run.RestStep = step++;
            run.DriveStep = step++;
            run.RollStep = step++;
            if (!double.IsNaN(run.FanStopsS))
                run.FanStopStep = step++;
            for (int i = run.FirstReading; i < run.EndReading; i++)
                _readings[i].Step = step++;
        }
        return step;
    }
}
