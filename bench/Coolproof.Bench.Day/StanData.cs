using System.Text.Json;
using Coolproof.Evidence.Model;

namespace Coolproof.Bench.Day;

/// <summary>
/// A day model as data of peers/day.stan: which parameter stands for what, what was noted, and every number of the priors. Indices count from 1; 0 means none.
/// </summary>
internal static class StanData
{
    /// <summary>Writes the data as JSON: "numbers" are scalars, "lists" arrays, also where they have one element.</summary>
    /// <exception cref="NotSupportedException">The model has a part that the peer's program doesn't know.</exception>
    public static void Write(DayModel model, string path)
    {
        Refuse(model);
        Dictionary<string, object> numbers = Numbers(model), lists = Lists(model);
        File.WriteAllText(path, JsonSerializer.Serialize(new { numbers, lists }));
    }

    private static void Refuse(DayModel model)
    {
        string? odd =
            model.Charge is not null ? "charge" :
            model.Endbells.Length > 0 || model.Readings.Any(r => r.On != ReadingOn.Can) ? "readings elsewhere than on the can" :
            model.Readings.Any(r => double.IsNaN(r.DelayS) || r.FromFanStop) ? "unknown delays or fans that stop" :
            model.Runs.Any(r => r.FanStopStep >= 0 || r.OwnHeatSd > 0 || r.HeatTerms.Length > 0) ? "fan stops, void runs, drivers or gearing" :
            model.Runs.Any(r => r.Start == StartMode.Unclocked || !double.IsNaN(r.StartC)) ? "runs without clock or with a noted start" :
            model.Parameters.Any(p => p.Prior is PriorKind.CutGamma or PriorKind.Known || !double.IsNaN(p.Held)) ? "cut-off delays or known constants" : null;
        if (odd is not null)
            throw new NotSupportedException($"The table has {odd}; peers/day.stan is written for plain days with clock and delays.");
    }

    private static Dictionary<string, object> Numbers(DayModel model) =>
        new()
        {
            ["dimension"] = model.Dimension,
            ["groups"] = model.Groups.Length,
            ["members"] = model.Groups.Sum(g => g.Members.Length),
            ["follows"] = model.Groups.Sum(g => g.Evidence.Sum(e => e.Follows.Length)) + 1,
            ["units"] = Units(model).Length,
            ["options"] = model.Options.Count,
            ["days"] = model.Days.Length,
            ["ratios"] = model.Ratios.Length,
            ["guns"] = model.Instruments.Length,
            ["gains"] = model.Gains.Length,
            ["runs"] = model.Runs.Length,
            ["readings"] = model.Readings.Length,
            ["levelled"] = model.Levels.Length > 0 ? 1 : 0,
            ["roll_in_ratio"] = model.RollInRatio + 1,
            ["copper_shape"] = Priors.CopperShareShape,
            ["alpha"] = Priors.Alpha25,
            ["typical_rise"] = Priors.TypicalCoreRise,
            ["day_conductance_sd"] = Priors.DayConductanceSd,
            ["trend_sd"] = Priors.TrendSd,
            ["first_run_sd"] = Priors.FirstRunSd,
            ["run_heat_scale"] = Priors.RunHeatSpread,
            ["run_heat_floor"] = Floor(model, Global.RunHeatSpread),
            ["offset_sd"] = Priors.OffsetSd,
            ["scatter_scale"] = Priors.ScatterSpread,
            ["scatter_floor"] = Priors.ScatterFloor,
            ["wide_weight"] = Priors.WideWeight,
            ["wide_factor"] = Priors.WideFactor,
            ["mean_levelled"] = model.Level is null ? 0 : 1,
            ["mean_drive_s"] = model.Level?.DriveS ?? 0,
            ["mean_roll_s"] = model.Level?.RollInS ?? 0,
            ["mean_delay_s"] = model.Level?.DelayS ?? 0,
            ["mean_warm"] = model.Level?.Warm ?? 0,
            ["mean_copper_heat"] = model.Level?.CopperHeat ?? 0,
            ["mean_log_rise"] = model.Level?.LogRisePerHeat ?? 0,
        };

    // Least spread in units of its scale.
    private static double Floor(DayModel model, int spread) => Priors.FloorOf(spread) / model.Parameters[spread].Scale;

    // Mean heat has its prior about the days driven.
    private static int[] Units(DayModel model) =>
        [.. model.Parameters.Select((p, i) => (p, i)).Where(x => (x.p.Prior is PriorKind.Unit or PriorKind.HalfNormal) && x.i != Global.Heat).Select(x => x.i + 1)];

    private static Dictionary<string, object> Lists(DayModel model)
    {
        double[] Of(NormalPrior p) => [p.Mean, p.Sd];
        List<int> members = [.. InOrder(model).SelectMany(g => g.Members)];
        AskTerm[][] followed = [.. InOrder(model).SelectMany(g => g.Members.Select((_, i) => g.Evidence.Length > 0 ? g.Evidence[i].Follows : []))];
        int end = 0;
        int[] ends = [.. followed.Select(f => end += f.Length)];
        // One more that nobody asks for: an array of nothing is no array in R.
        AskTerm[] follows = [.. followed.SelectMany(f => f), new(0, 0, false)];
        Dictionary<string, object> lists = new()
        {
            ["unit"] = Units(model),
            ["core_over_can"] = Of(Priors.CoreOverCan),
            ["core_to_can"] = Of(Priors.CoreToCan),
            ["winding_share"] = Of(Priors.WindingShare),
            ["slot_resistance"] = Of(Priors.Slot),
            ["mean_heat"] = Of(Priors.Heat),
            ["mean_conductance"] = Of(Priors.Conductance),
            ["resting"] = Of(Priors.Resting),
            ["roll_in_gamma"] = new[] { Priors.RollIn.Shape, Priors.RollIn.Mean },
            ["aim_loss"] = Of(Priors.AimLoss),
            ["group_spread"] = InOrder(model).Select(g => g.Spread + 1),
            ["group_scale"] = InOrder(model).Select(g => g.Scale),
            ["group_size"] = InOrder(model).Select(g => g.Members.Length),
            ["group_centred"] = InOrder(model).Select(g => g.CentredWeight),
            ["group_floor"] = InOrder(model).Select(g => Floor(model, g.Spread)),
            ["group_informed"] = InOrder(model).Select(g => g.Evidence.Length > 0 ? 1 : 0),
            ["member"] = members.Select(m => m + 1),
            ["evidence_information"] = Evidence(model, e => e.Information),
            ["evidence_asks"] = Evidence(model, e => e.Asks),
            ["evidence_other_variance"] = Evidence(model, e => e.OtherVariance),
            ["evidence_charge_precision"] = Evidence(model, e => e.ChargePrecision),
            ["evidence_heat_share"] = Evidence(model, e => e.HeatShare),
            ["follow_last"] = ends,
            ["follow_parameter"] = follows.Select(f => f.Parameter + 1),
            ["follow_member"] = follows.Select(f => f.IsMember ? members.IndexOf(f.Parameter) + 1 : 0),
            ["follow_slope"] = follows.Select(f => f.Slope),
            ["option_member"] = model.OptionEffect.Select(i => members.IndexOf(i) + 1),
            ["day_member"] = model.Days.Select(d => members.IndexOf(d.Heat) + 1),
            ["day_conductance"] = model.Days.Select(d => d.Conductance + 1),
            ["day_air"] = model.Days.Select(d => d.Air + 1),
            ["day_trend"] = model.Days.Select(d => d.Trend + 1),
            ["day_air_sd"] = model.Days.Select(d => d.AirSd),
            ["day_share"] = model.DayShares,
            ["ratio_mean"] = model.Ratios.Select(r => r.Mean),
            ["ratio_common"] = model.Ratios.Select(r => r.Common + 1),
            ["ratio_common_sd"] = model.Ratios.Select(r => r.CommonSd),
            ["ratio_own"] = model.Ratios.Select(r => r.Own + 1),
            ["ratio_own_sd"] = model.Ratios.Select(r => r.OwnSd),
            ["gun_offset"] = model.Instruments.Select(g => g.Offset + 1),
            ["gun_aim"] = model.Instruments.Select(g => g.LogAim + 1),
            ["gun_scatter"] = model.Instruments.Select(g => g.Scatter + 1),
            ["gain_parameter"] = model.Gains.Select(g => g.Parameter + 1),
            ["gain_mean"] = model.Gains.Select(g => g.Prior.Mean),
            ["gain_sd"] = model.Gains.Select(g => g.Prior.Sd),
            ["read_c"] = model.Readings.Select(r => r.ValueC),
            ["read_delay"] = model.Readings.Select(r => r.DelayS),
            ["read_gun"] = model.Readings.Select(r => r.Instrument + 1),
            ["read_gain"] = model.Readings.Select(r => r.Gain + 1),
            ["read_factor"] = model.Readings.Select(r => r.MaxFactor),
        };
        MeanLevel? level = model.Level;
        lists["mean_options"] = level?.Options ?? new double[model.Options.Count];
        lists["mean_ratios"] = level?.Ratios ?? new double[model.Ratios.Length];
        AddRuns(model, members, lists);
        return lists;
    }

    private static void AddRuns(DayModel model, List<int> members, Dictionary<string, object> lists)
    {
        void Add<T>(string name, Func<ModelRun, T> of) => lists[name] = model.Runs.Select(of);
        Add("run_day", r => r.Day + 1);
        Add("run_option", r => r.Option + 1);
        Add("run_ratio", r => r.RatioEntry + 1);
        Add("run_mounting", r => members.IndexOf(r.Mounting) + 1);
        Add("run_heat_member", r => members.IndexOf(r.Heat) + 1);
        Add("run_heat", r => r.Heat + 1);
        Add("run_air", r => r.Air + 1);
        Add("run_rest", r => r.Rest + 1);
        Add("run_start_can", r => r.StartCan + 1);
        Add("run_start_core", r => r.StartCore + 1);
        Add("run_roll_in", r => r.RollIn + 1);
        Add("run_roll_in_s", r => double.IsNaN(r.RollInS) ? 0 : r.RollInS);
        Add("run_rest_s", r => r.RestS);
        Add("run_drive_s", r => r.DriveS);
        Add("run_log_driven", r => r.LogDriven);
        Add("run_air_c", r => r.AirC);
        Add("run_air_sd", r => r.AirSd);
        Add("run_heat_factor", r => r.HeatFactor);
        Add("run_place", r => r.DayPlace);
        Add("run_first", r => r.FirstReading + 1);
        Add("run_last", r => r.EndReading);
        RunLevel[] levels = model.Levels.Length > 0 ? model.Levels : new RunLevel[model.Runs.Length];
        lists["level_read_c"] = levels.Select(l => l.ReadC);
        lists["level_rise"] = levels.Select(l => l.RiseK);
        lists["level_readings"] = levels.Select(l => l.Readings);
        lists["level_other"] = levels.Select(l => l.OtherVariance);
        lists["level_gun"] = levels.Select(l => l.Instrument + 1);
        lists["level_gain"] = levels.Select(l => l.Gain + 1);
    }

    // What follows members of other groups comes after them.
    private static IEnumerable<DeviationGroup> InOrder(DayModel model) => model.Groups.OrderBy(g => g.Evidence.Any(e => e.Follows.Length > 0));

    private static IEnumerable<double> Evidence(DayModel model, Func<MemberEvidence, double> of) =>
        InOrder(model).SelectMany(g => g.Members.Select((_, i) => g.Evidence.Length > 0 ? of(g.Evidence[i]) : of(new(0, 0, 1, 0, 0))));
}
