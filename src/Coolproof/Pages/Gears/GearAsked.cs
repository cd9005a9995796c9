using Coolproof.Advice.Gearing;
using Coolproof.Commands;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forecasts;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Gears;

/// <summary>The cards that tell of the car whose gearing is asked about; null: none is noted.</summary>
/// <param name="Question">The question.</param>
/// <param name="Motor">The motor.</param>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="Class">The class card.</param>
/// <param name="Pack">A pack.</param>
public sealed record GearCards(NotedQuestion? Question, NotedMotor? Motor, NotedVehicle? Vehicle, NotedClass? Class, NotedPack? Pack);

/// <summary>The gearing that its page is asked about: the address, else runs and cards of the notebook, else what is typical, and then said to be assumed. What the class card allows can't be passed by the address.</summary>
public sealed class GearAsked
{
    // The can is hottest within some minutes of the stop.
    const double SoakS = 600;

    static readonly string[] Choices = ["track", "wheels"];

    readonly IQueryCollection query;
    readonly List<string> faults = [];
    readonly Dictionary<string, (double Value, string By)> known;

    /// <summary>Reads the address.</summary>
    /// <param name="query">What was set; nothing on the first visit.</param>
    /// <param name="cards">What is noted of the car.</param>
    /// <param name="table">The readings.</param>
    /// <param name="fair">Middle of the tests' air and drives.</param>
    /// <param name="unit">Degrees of the person.</param>
    public GearAsked(IQueryCollection query, GearCards cards, ReadingsTable table, FairConditions fair, TemperatureUnitChoice unit)
    {
        (this.query, Cards) = (query, cards);
        Race = new RaceAsked(query, cards.Question, cards.Motor, fair, unit);
        faults.AddRange(Race.Faults);
        known = Known(cards, table);
        var typed = GearField.All.ToDictionary(field => field.Name, Typed);
        double? Of(string name) => typed[name] ?? (known.TryGetValue(name, out var one) ? one.Value : null);
        Asked = [.. new[] { "pinion", "spur", "lap" }.Where(name => !known.ContainsKey(name))];
        foreach (var name in Asked.Where(name => name != "lap" && typed[name] is null && faults.Count == 0).ToArray())
            faults.Add($"{GearField.All.First(field => field.Name == name).Label}: neither runs nor the vehicle’s card tell it. Count its teeth and type them.");
        if (Of("mass") is { } mass && cards.Class?.MassMinG is { } least && mass < least) faults.Add($"The car as raced: found {FieldUnits.Text(mass)} g; the class card allows no less than {FieldUnits.Text(least)} g. Give it as it will be raced.");
        if (Of("from") > Of("to")) faults.Add("Pinions at hand: the smallest has more teeth than the largest. Turn them round.");
        if (typed["near"] is not null != typed["far"] is not null) faults.Add("Shafts apart: both the least and the most are needed, or neither.");
        else if (typed["near"] > typed["far"]) faults.Add("Shafts apart: the least is more than the most. Turn them round.");
        Setting = faults.Count > 0 ? null : Set(Of, cards, table);
        Entries = [.. GearField.All.Select(field => new GearEntry(field, Of(field.Name), typed[field.Name] is { } one && !(known.TryGetValue(field.Name, out var same) && same.Value == one) ? "" : known.TryGetValue(field.Name, out var from) ? from.By : "", Assumed(field.Name)))];
    }

    /// <summary>Cards of the car.</summary>
    public GearCards Cards { get; }

    /// <summary>Race day and limits.</summary>
    public RaceAsked Race { get; }

    /// <summary>Numbers of the form, in its order.</summary>
    public IReadOnlyList<GearEntry> Entries { get; }

    /// <summary>Names of those that the notebook doesn't tell.</summary>
    public IReadOnlyList<string> Asked { get; }

    /// <summary>Car, card and notes; null where it can't be reckoned.</summary>
    public GearSetting? Setting { get; private set; }

    /// <summary>Why it can't be reckoned, each with its remedy.</summary>
    public IReadOnlyList<string> Faults => faults;

    /// <summary>The race with the soak after its stop.</summary>
    public RaceScenario Scenario => Race.Scenario with { Races = 1, BreakS = SoakS };

    /// <summary>What the laps depend on, as text: the same for the same laps.</summary>
    public string Laps => string.Join('&', GearField.All.Select(one => one.Name).Concat(Choices).Select(name => $"{name}={query[name]}")) + $"&class={Cards.Class?.Fields}&{string.Join('&', known.Select(one => $"{one.Key}:{one.Value.Value}"))}";

    /// <summary>What a list of choices stands at.</summary>
    public string Chosen(string name) => query[name].ToString();

    /// <summary>Adds a reason why it can't be reckoned after all.</summary>
    public void Refuse(string reason)
    {
        faults.Add(Shown.TimeWords.Capital(reason));
        Setting = null;
    }

    GearSetting? Set(Func<string, double?> of, GearCards cards, ReadingsTable table)
    {
        var about = GearSetting.PinionsAbout(of("pinion")!.Value);
        var timing = of("timing") ?? GearSetting.TypicalTimingDeg;
        GearRequest request = new(Race.Demand)
        {
            Carpet = Chosen("track") == "carpet",
            TwoWheelDrive = (Chosen("wheels") is { Length: > 0 } wheels ? wheels : Wheels(cards.Vehicle)) == "two",
            LapS = of("lap"),
            Pinion = (int?)of("pinion"),
            Spur = (int?)of("spur"),
            TimingDeg = of("timing"),
            Pinions = of("from") is null && of("to") is null ? null : (of("from") ?? about.Least, of("to") ?? about.Most),
            Timings = cards.Class is { TimingMinDeg: null, TimingMaxDeg: null } or null ? null : (cards.Class.TimingMinDeg ?? Math.Min(timing, cards.Class.TimingMaxDeg!.Value), cards.Class.TimingMaxDeg ?? Math.Max(timing, cards.Class.TimingMinDeg!.Value)),
            Ratio = cards.Class is { RatioMin: null, RatioMax: null } or null ? null : (cards.Class.RatioMin ?? 0.1, cards.Class.RatioMax ?? 100),
            SpaceMm = of("near") is { } near && of("far") is { } far ? (near, far) : null,
            ModuleMm = of("module"),
            InternalRatio = of("internal"),
            TyreMm = of("tyre"),
            MassG = of("mass"),
            LeastMassG = cards.Class?.MassMinG,
            Turns = of("turns"),
            RpmPerVolt = of("kv"),
            MotorMohm = of("mohm"),
            NoLoadA = of("noload"),
            Cells = (int?)of("cells"),
            CapacityMah = of("capacity"),
            CurrentLimitA = of("most-a"),
        };
        var (setting, refused) = GearSetting.Of(request, table, null);
        if (refused is { } why) faults.Add(Shown.TimeWords.Capital(why));
        return setting;
    }

    /// <summary>Driven wheels by the vehicle's card: "two", or empty.</summary>
    public static string Wheels(NotedVehicle? vehicle) => vehicle?.Drive is { } drive && (drive.Contains("two", StringComparison.OrdinalIgnoreCase) || drive.Contains('2')) ? "two" : "";

    // What runs and cards tell, with the words for it.
    static Dictionary<string, (double Value, string By)> Known(GearCards cards, ReadingsTable table)
    {
        Dictionary<string, (double, string)> known = [];
        var loads = table.Runs.Where(run => run.Kind is RunKind.Test or RunKind.Race).Select(run => run.Load).ToArray();
        void Put(string name, double? inRuns, double? onCard, string card)
        {
            if (inRuns is { } noted) known[name] = (noted, "in the runs");
            else if (onCard is { } carded) known[name] = (carded, card);
        }
        double? Most(Func<LoadNotes, double?> of) => loads.Select(of).OfType<double>().GroupBy(value => value).OrderByDescending(same => same.Count()).Select(same => (double?)same.Key).FirstOrDefault();
        const string OnVehicle = "on the vehicle’s card", OnMotor = "on the motor’s card", OnPack = "on the pack’s card";
        Put("pinion", Most(load => load.PinionTeeth), cards.Vehicle?.PinionTeeth, OnVehicle);
        Put("spur", Most(load => load.SpurTeeth), cards.Vehicle?.SpurTeeth, OnVehicle);
        Put("timing", Most(load => load.TimingDeg), cards.Motor?.TimingDeg, OnMotor);
        Put("tyre", null, cards.Vehicle?.TyreDiameterMm, OnVehicle);
        Put("mass", null, cards.Vehicle?.MassG, OnVehicle);
        Put("internal", null, cards.Vehicle?.InternalRatio, OnVehicle);
        Put("turns", null, cards.Motor?.Turns, OnMotor);
        Put("mohm", null, cards.Motor?.WindingColdMilliohm, OnMotor);
        Put("cells", null, cards.Pack?.Cells, OnPack);
        Put("capacity", null, cards.Pack?.CapacityMah, OnPack);
        double[] laps = [.. table.Runs.Select(LapNotes.LapS).OfType<double>()];
        if (laps.Length > 0) known["lap"] = (Math.Round(laps.Average(), 2), "in the runs");
        return known;
    }

    double? Typed(GearField field)
    {
        var text = query[field.Name].ToString().Trim();
        if (text.Length == 0) return null;
        var unit = field.Unit.Length > 0 ? $" {field.Unit}" : "";
        if (TypedNumber.TryRead(text, out var number) && number >= field.Least && number <= field.Most && (!field.Whole || double.IsInteger(number))) return number;
        faults.Add($"{field.Label}: found “{(text.Length > 20 ? text[..20] : text)}”; expected {(field.Whole ? "a whole number from " : "")}{FieldUnits.Text(field.Least)} to {FieldUnits.Text(field.Most)}{unit}.");
        return null;
    }

    // What stands in for a field that nobody filled; null where it isn't known what is taken.
    double? Assumed(string name) => Setting is not { } set ? null : name switch
    {
        "timing" => set.Rig.Driven.TimingDeg,
        "tyre" => Math.Round(1000 * set.Rig.Car.TyreDiameterM),
        "mass" => Math.Round(1000 * set.Rig.Car.MassKg),
        "internal" => set.Rig.InternalRatio,
        "turns" => set.Turns,
        "kv" => Math.Round(set.Rig.Motor.SpeedConstantRpm),
        "mohm" => Math.Round(1000 * set.Rig.Motor.ColdOhm, 1),
        "noload" => Math.Round(set.Rig.Motor.NoLoadA, 1),
        "cells" => set.Rig.Pack.Cells,
        "capacity" => Math.Round(1000 * set.Rig.Pack.CapacityAh),
        "most-a" => set.Rig.Pack.CurrentLimitA,
        "from" => set.Card.LeastPinion,
        "to" => set.Card.MostPinion,
        "module" => Math.Round(GearSetting.TypicalModuleMm, 3),
        _ => null,
    };
}
