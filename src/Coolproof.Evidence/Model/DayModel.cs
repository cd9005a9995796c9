using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>A stopped-over-driving conductance: log ratio = mean + (base parameter's deviation) + sd u.</summary>
/// <param name="Mean">Mean of the log.</param>
/// <param name="Common">Index of a shared deviation; −1 when none.</param>
/// <param name="CommonSd">Its sd.</param>
/// <param name="Own">Index of the option's own deviation; −1 when none.</param>
/// <param name="OwnSd">Its sd.</param>
internal readonly record struct RatioEntry(double Mean, int Common, double CommonSd, int Own, double OwnSd)
{
    /// <summary>log of the ratio at one point of the parameters.</summary>
    public double Log(ReadOnlySpan<double> u) => Mean + (Common < 0 ? 0 : CommonSd * u[Common]) + (Own < 0 ? 0 : OwnSd * u[Own]);
}

/// <summary>An instrument's parameters: offset = OffsetK + OffsetSdK u.</summary>
internal readonly record struct InstrumentEntry(string Name, int Offset, int LogAim, int Scatter, double OffsetK, double OffsetSdK);

/// <summary>An instrument's gain on one kind of surface: log g = mean + sd u + tilt v, where v is the parameter of its offset, with which a check of the gun couples it.</summary>
internal readonly record struct GainEntry(int Parameter, NormalPrior Prior, int Offset, double Tilt)
{
    /// <summary>The gain at one point of the parameters.</summary>
    public double At(ReadOnlySpan<double> u) => Math.Exp(Prior.Mean + Prior.Sd * u[Parameter] + Tilt * u[Offset]);
}

/// <summary>A day's parameters.</summary>
internal readonly record struct DayEntry(string Name, int Heat, int Conductance, int Air, double AirSd, int Trend);

/// <summary>Parameters of the charge relation.</summary>
internal readonly record struct ChargeEntry(int Exponent, int Spread, IReadOnlyList<int> Packs);

/// <summary>The joint model of a notebook: what is unknown, how it is laid out, and what each run and reading refers to. Immutable once built.</summary>
internal sealed class DayModel
{
    private double[]? _dayShares;

    public required IReadOnlyList<Parameter> Parameters { get; init; }
    public required ArrowLayout Layout { get; init; }
    public required DeviationGroup[] Groups { get; init; }
    public required ModelRun[] Runs { get; init; }
    public required ModelReading[] Readings { get; init; }
    public required IReadOnlyList<string> Options { get; init; }
    public required int[] OptionEffect { get; init; }
    public required RatioEntry[] Ratios { get; init; }
    public required InstrumentEntry[] Instruments { get; init; }
    public required GainEntry[] Gains { get; init; }
    public required (int Common, int Own)[] Endbells { get; init; }
    public required DayEntry[] Days { get; init; }
    public required ChargeEntry? Charge { get; init; }
    public required int Steps { get; init; }

    /// <summary>Index of the ratio entry for rolling in: the common fan case.</summary>
    public required int RollInRatio { get; init; }

    /// <summary>What each run's readings say of its heat, for the coordinates; empty: plain deviations.</summary>
    public RunLevel[] Levels { get; init; } = [];

    /// <summary>What all readings say of mean heat, for the coordinates; null: mean heat plainly.</summary>
    public MeanLevel? Level { get; init; }

    public int Dimension => Parameters.Count;

    /// <summary>Whether what is unknown of a day lies in a block of its own with its runs, since there are too many days to be globals.</summary>
    public bool DaysAreBlocks => Days.Length > 0 && Days[0].Heat >= Layout.Globals;

    /// <summary>
    /// Share of the runs that each day has, of which the mean of the days is told; 0 where days are blocks, since a mean over them would couple each to all others, and nothing that
    /// takes blocks for independent would hold. Of so many days the mean is well known anyway.
    /// </summary>
    public IReadOnlyList<double> DayShares => _dayShares ??= [.. Days.Select((_, d) => DaysAreBlocks ? 0 : (double)Runs.Count(r => r.Day == d) / Runs.Length)];

    /// <summary>The same model with other centring weights, one a group.</summary>
    public DayModel Centred(IReadOnlyList<double> weights) => With(Parameters, [.. Groups.Select((g, i) => g with { CentredWeight = weights[i] })], Levels, Level);

    /// <summary>The same model with options, mountings and days that know what the evidence says of each: parameter → evidence.</summary>
    public DayModel Informed(Func<int, MemberEvidence> evidence) => With(Parameters, [.. Groups.Select(g => g.Spread == Global.RunHeatSpread ? g : g with
    {
        CentredWeight = 0, Evidence = [.. g.Members.Select(evidence)],
    })], Levels, Level);

    /// <summary>The same model with heat deviations about what each run's readings say, and mean heat about what all of them say.</summary>
    public DayModel Levelled(RunLevel[] levels, MeanLevel? level) => With(Parameters, [.. Groups.Select(g => g.Spread != Global.RunHeatSpread ? g : g with
    {
        CentredWeight = 0, Members = [.. Runs.Where((r, i) => r.OwnHeatSd == 0 && levels[i].RiseK == 0).Select(r => r.Heat)],
    })], levels, level);

    /// <summary>The same model with some spreads all but fixed; the dictionary gives them in units of their scales.</summary>
    public DayModel Holding(IReadOnlyDictionary<int, double> spreads) => With(
        [.. Parameters.Select((p, i) => spreads.TryGetValue(i, out double x) ? p with { Held = HalfNormal.Invert(x) } : p)], Groups, Levels, Level);

    private DayModel With(IReadOnlyList<Parameter> parameters, DeviationGroup[] groups, RunLevel[] levels, MeanLevel? level) => new()
    {
        Parameters = parameters,
        Groups = groups,
        Layout = Layout,
        Runs = Runs,
        Readings = Readings,
        Options = Options,
        OptionEffect = OptionEffect,
        Ratios = Ratios,
        Instruments = Instruments,
        Gains = Gains,
        Endbells = Endbells,
        Days = Days,
        Charge = Charge,
        Steps = Steps,
        RollInRatio = RollInRatio,
        Levels = levels,
        Level = level,
    };
}

/// <summary>Indices of the globals that every model has, in this order at the front of the parameter vector.</summary>
internal static class Global
{
    public const int CoreOverCan = 0, CoreToCan = 1, WindingShare = 2, Slot = 3, CopperShare = 4, Heat = 5, Conductance = 6, StoppedFanOn = 7, OptionSpread = 8,
        MountingSpread = 9, RunHeatSpread = 10, Fixed = 11;
}
