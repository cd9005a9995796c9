using System.Globalization;
using Coolproof.Advice.Orders;
using Coolproof.Commands;
using Coolproof.Notebook.Journal;
using Coolproof.Rehearsal;

namespace Coolproof.Pages.Plans;

/// <summary>What the page "plan" is asked: the fields of its form as they were typed, else as the day has them, else usual ones. The address holds them, so that a page loaded anew is the same.</summary>
public sealed class PlanAsked
{
    /// <summary>Most options of a plan.</summary>
    public const int MostOptions = 12;

    // Defaults of a club evening (common practice, no source); the same as on the command line.
    const double Drive = 6, Cool = 20, Swap = 4, Charge = 45, ReadS = 120, PackCoolS = 900;
    const int Packs = 4, Chargers = 2, From = 16 * 60, LengthMin = 240;

    readonly IQueryCollection query;
    readonly Dictionary<string, string> typed = [], faults = [];
    readonly bool sent;

    /// <summary>Reads the address.</summary>
    /// <param name="query">What was typed; nothing on the first visit.</param>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day that is planned; null: one that is still to come.</param>
    /// <param name="question">The question that it works on; null: none.</param>
    public PlanAsked(IQueryCollection query, PitNotebook notebook, NotedDay? day, NotedQuestion? question)
    {
        this.query = query;
        sent = query.ContainsKey("from");
        All = [.. Listed(notebook, day, question)];
        Options = [.. All.Where(option => sent ? query["o"].Contains(option.Id.ToString()) : day is null || day.Plan.Count == 0 || day.Plan.Contains(option.Id))];
        Last = [.. Options.Where(option => sent ? query["last"].Contains(option.Id.ToString()) : option.CantBeUndone)];
        Reference = Guid.TryParse(sent ? query["ref"].ToString() : day?.Reference?.ToString(), out var reference) ? Options.FirstOrDefault(option => option.Id == reference) : null;
        FromMin = Clock("from", day?.FromMin ?? From);
        ToMin = Clock("to", day?.ToMin ?? FromMin + LengthMin);
        if (ToMin <= FromMin) ToMin += 1440;
        DriveMin = Minutes("drive", (day?.DriveS ?? question?.DriveS) / 60 ?? Drive, 10 / 60.0, 120);
        CoolMin = Minutes("cool", day?.CoolMin ?? Cool, 0, 240);
        SwapMin = Minutes("swap", day?.SwapMin ?? Swap, 0, 240);
        ChargeMin = Minutes("charge", day?.ChargeMin ?? Charge, 0, 600);
        PacksCount = Whole("packs", day?.Packs ?? (notebook.Packs.Count > 0 ? notebook.Packs.Count : Packs), 1, 50) ?? Packs;
        ChargersCount = Whole("chargers", day?.Chargers ?? Chargers, 0, 50) ?? Chargers;
        Rounds = Whole("rounds", null, 2, 6);
        Seed = Whole("seed", day?.PlanSeed ?? 1, 0, int.MaxValue) ?? 1;
        Spot = (sent ? query["spot"].ToString() : day?.Spot ?? SpotOf(notebook, day) ?? "").Trim();
        SameWithinK = question?.SameWithinK ?? 2;
        Swaps = SwapTimes();
        WhatIsWrong();
    }

    /// <summary>Options that can be planned: the question's, else the plan's, else all.</summary>
    public IReadOnlyList<NotedOption> All { get; }

    /// <summary>Those that are.</summary>
    public IReadOnlyList<NotedOption> Options { get; }

    /// <summary>Of these the ones that can't be undone.</summary>
    public IReadOnlyList<NotedOption> Last { get; }

    /// <summary>The one driven first and last.</summary>
    public NotedOption? Reference { get; }

    /// <summary>First go, min after midnight.</summary>
    public double FromMin { get; }

    /// <summary>Last halt, min after midnight.</summary>
    public double ToMin { get; }

    /// <summary>A drive, min.</summary>
    public double DriveMin { get; }

    /// <summary>Cool-down, min.</summary>
    public double CoolMin { get; }

    /// <summary>A swap, min.</summary>
    public double SwapMin { get; }

    /// <summary>Charging, min.</summary>
    public double ChargeMin { get; }

    /// <summary>Charged packs.</summary>
    public int PacksCount { get; }

    /// <summary>Chargers.</summary>
    public int ChargersCount { get; }

    /// <summary>Rounds; null: as many as fit.</summary>
    public int? Rounds { get; }

    /// <summary>Seed.</summary>
    public int Seed { get; }

    /// <summary>The spot; empty: the usual one.</summary>
    public string Spot { get; }

    /// <summary>Half-width of the "same" band, K.</summary>
    public double SameWithinK { get; }

    /// <summary>Minutes to change from option a to option b of <see cref="Options"/>.</summary>
    public double[,] Swaps { get; }

    /// <summary>What is wrong with a field; null: nothing.</summary>
    public string? Fault(string field) => faults.GetValueOrDefault(field);

    /// <summary>Whether nothing is wrong.</summary>
    public bool Understood => faults.Count == 0;

    /// <summary>What stands in a field.</summary>
    public string Now(string field) => sent && query.TryGetValue(field, out var said) ? said.ToString() : typed.GetValueOrDefault(field, "");

    /// <summary>Name of the field for the change from one listed option to another.</summary>
    public string SwapField(NotedOption from, NotedOption to) => string.Create(CultureInfo.InvariantCulture, $"s{Place(from)}-{Place(to)}");

    /// <summary>Minutes for a change where its field is blank: fitting takes as long as is noted of the option, else as any swap.</summary>
    public double UsualSwap(NotedOption to) => Math.Max(SwapMin, to.FitMin ?? 0);

    /// <summary>What the day allows.</summary>
    public DayLimits Limits()
    {
        var seconds = new double[Options.Count, Options.Count];
        for (var a = 0; a < Options.Count; a++)
            for (var b = 0; b < Options.Count; b++) seconds[a, b] = 60 * Swaps[a, b];
        return new DayLimits(
            (ToMin - FromMin) * 60, DriveMin * 60, CoolMin * 60, ReadS, seconds, PacksCount, ChargersCount, PackCoolS, ChargeMin * 60,
            [.. Enumerable.Range(0, Options.Count).Where(o => Last.Contains(Options[o]))], Reference is null ? null : Options.ToList().IndexOf(Reference))
        { MostRounds = Rounds };
    }

    /// <summary>The same as the command line would be asked.</summary>
    internal PlanRequest Request(Coolproof.Notebook.TemperatureUnitChoice units) => new(
        [.. Options.Select(option => new RehearsalOption(option.Name, HasFan: HasFan(option)))], Limits(), (int)Math.Round(FromMin), Spot.Length > 0 ? Spot : null, RoundsDays, null, null, null, SameWithinK,
        Seed, null, units, false);

    /// <summary>Simulated days for how many rounds are enough.</summary>
    public const int RoundsDays = 200;

    /// <summary>What the entry "day.set" says of it.</summary>
    /// <param name="order">Options in the order of runs.</param>
    public IReadOnlyList<(string Name, object? Value)> Said(IEnumerable<Guid> order) =>
    [
        ("plan", order.ToArray()), ("fromMin", FromMin), ("toMin", ToMin), ("driveS", DriveMin * 60), ("coolMin", CoolMin), ("swapMin", SwapMin), ("packs", PacksCount), ("chargers", ChargersCount),
        ("chargeMin", ChargeMin), ("reference", Reference?.Id.ToString("D")), ("spot", Spot.Length > 0 ? Spot : null), ("planSeed", Seed),
    ];

    /// <summary>A minute of the day as a clock time.</summary>
    public static string ClockTime(double minutes) => string.Create(CultureInfo.InvariantCulture, $"{(int)Math.Round(minutes) / 60 % 24:00}:{(int)Math.Round(minutes) % 60:00}");

    static IEnumerable<NotedOption> Listed(PitNotebook notebook, NotedDay? day, NotedQuestion? question)
    {
        var asked = (question?.Options ?? []).Concat(day?.Plan ?? []).Distinct().Select(id => notebook.Find<NotedOption>(id)).OfType<NotedOption>().Where(option => !option.Removed).ToList();
        return asked.Count > 0 ? asked : notebook.Options;
    }

    static string? SpotOf(PitNotebook notebook, NotedDay? day) => day?.Motor is { } motor ? notebook.Find<NotedMotor>(motor)?.Fields.Text("spotNote") : null;

    static bool HasFan(NotedOption option) => option.Fans is { } fans ? fans > 0 : option.FanSizeMm is not null || option.FanV is not null;

    int Place(NotedOption option) => All.ToList().IndexOf(option);

    double Clock(string field, double usual)
    {
        typed[field] = ClockTime(usual);
        if (!sent) return usual;
        if (Typed.MinuteOfDay(query[field].ToString().Trim()) is { } minute) return minute;
        faults[field] = "expected a clock time like 16:30";
        return usual;
    }

    double Minutes(string field, double usual, double least, double most)
    {
        typed[field] = Forms.FieldUnits.Text(usual);
        if (!sent) return usual;
        if (Number(query[field].ToString()) is { } minutes && minutes >= least && minutes <= most) return minutes;
        faults[field] = string.Create(CultureInfo.InvariantCulture, $"expected minutes up to {most:0}, like {usual:0.#}");
        return usual;
    }

    static double? Number(string text)
    {
        var said = Forms.FieldUnits.Typed(EntryKind.DaySet, "driveS", text.Trim()).Replace(',', '.');
        return double.TryParse(said, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    int? Whole(string field, int? usual, int least, int most)
    {
        typed[field] = usual?.ToString(CultureInfo.InvariantCulture) ?? "";
        var text = query[field].ToString().Trim();
        if (!sent || (usual is null && text.Length == 0)) return usual;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) && whole >= least && whole <= most) return whole;
        faults[field] = $"expected a whole number from {least} to {most}";
        return usual;
    }

    double[,] SwapTimes()
    {
        var minutes = new double[Options.Count, Options.Count];
        for (var a = 0; a < Options.Count; a++)
        {
            for (var b = 0; b < Options.Count; b++)
            {
                if (a == b) continue;
                var field = SwapField(Options[a], Options[b]);
                var text = query[field].ToString().Trim();
                minutes[a, b] = text.Length == 0 ? UsualSwap(Options[b]) : Number(text) is { } said and >= 0 and <= 240 ? said : double.NaN;
                if (double.IsNaN(minutes[a, b])) (faults[field], minutes[a, b]) = ("expected minutes up to 240", SwapMin);
            }
        }
        return minutes;
    }

    void WhatIsWrong()
    {
        if (Options.Count == 0) faults["o"] = "choose one option at least";
        if (Options.Count > MostOptions) faults["o"] = $"{Options.Count} options are too many for one plan: choose {MostOptions} at most";
        if (Options.Count > 0 && Last.Count == Options.Count) faults["last"] = "one option at least must be left to drive first";
        if (Reference is not null && Last.Contains(Reference)) faults["ref"] = "it is driven first, and it can't be undone: choose another";
        if (Options.GroupBy(option => option.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(same => same.Count() > 1) is { } same) faults["o"] = $"two options are called {same.Key}: give one of them another name";
        if (Options.Any(option => option.Name.Length == 0)) faults["o"] = "an option has no name yet: give it one";
        if (faults.Count == 0 && DriveMin > ToMin - FromMin) faults["to"] = "no run fits: a drive is longer than the day";
    }
}
