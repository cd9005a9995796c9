using Coolproof.Advice.Spending;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Pages.Forecasts;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Spending;

/// <summary>The parts and limits that the page is asked: the address, else the notebook's. They are read as a sheet is, so that what can't be right is refused for the same reasons.</summary>
public sealed class SpendAsked
{
    readonly List<string> faults = [];

    /// <summary>Reads the fields.</summary>
    /// <param name="query">What was set; without a part nothing was.</param>
    /// <param name="start">Where it starts.</param>
    /// <param name="evidence">The verdict's draws; null: none, so that only guesses count.</param>
    public SpendAsked(IQueryCollection query, IReadOnlyDictionary<string, string> start, RaceEvidence? evidence)
    {
        Fields = query.Keys.Any(key => key is ['n', ..] && char.IsAsciiDigit(key[^1])) ? query.ToDictionary(one => one.Key, one => one.Value.ToString()) : Met(query, start);
        var read = SpendSheetReader.Read(SpendFields.File(Fields).ToJsonString());
        var problems = read.Problems.Count > 0 ? read.Problems : BestUse.Problems(read.Asked!, evidence);
        faults.AddRange(problems.Select(problem => SpendFields.Said(problem, Fields)));
        Sheet = faults.Count == 0 ? read.Asked : null;
        double money = Number("money") ?? double.NaN, grams = Number("grams") ?? double.NaN, all = SpendFields.Places(Fields, 'n').Sum(place => Number($"e{place}") ?? 0), mass = SpendFields.Places(Fields, 'n').Sum(place => Number($"g{place}") ?? 0);
        Money = Slider("money", "Money", Fields.GetValueOrDefault("cur", ""), money, all);
        Grams = Slider("grams", "Grams above the minimum weight", "g", grams, mass);
    }

    /// <summary>All fields as they stand.</summary>
    public IReadOnlyDictionary<string, string> Fields { get; }

    /// <summary>Slider of the money.</summary>
    public RaceSlider Money { get; }

    /// <summary>Slider of the grams.</summary>
    public RaceSlider Grams { get; }

    /// <summary>What is asked; null where it can't be right.</summary>
    public SpendSheet? Sheet { get; }

    /// <summary>What can't be right, each with its remedy.</summary>
    public IReadOnlyList<string> Faults => faults;

    /// <summary>A field's text; empty where it is blank.</summary>
    public string Of(string name) => Fields.GetValueOrDefault(name, "");

    double? Number(string name) => TypedNumber.TryRead(Of(name), out var number) && number is >= 0 and < 1e7 ? number : null;

    // Money and grams alone may be given too: a link from elsewhere.
    static Dictionary<string, string> Met(IQueryCollection query, IReadOnlyDictionary<string, string> start)
    {
        Dictionary<string, string> fields = new(start);
        foreach (var name in new[] { "money", "grams" })
            if (query[name].ToString() is { Length: > 0 } text) fields[name] = text;
        return fields;
    }

    static RaceSlider Slider(string name, string label, string unit, double value, double all)
    {
        double step = all > 400 ? 5 : 1, most = Math.Max(step, Math.Ceiling(all / step) * step);
        if (double.IsNaN(value)) value = most;
        return new(name, label, unit, 0, Math.Max(most, value), double.IsInteger(value / step) ? step : 0.01, value);
    }
}
