using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using Coolproof.Thermal;

namespace Coolproof.Pages.Forecasts;

/// <summary>A quantity that is set by a slider, in the person's unit.</summary>
/// <param name="Name">Name in the address.</param>
/// <param name="Label">What it is.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Least">Left end.</param>
/// <param name="Most">Right end.</param>
/// <param name="Step">From one value to the next.</param>
/// <param name="Value">Where it stands.</param>
public sealed record RaceSlider(string Name, string Label, string Unit, double Least, double Most, double Step, double Value);

/// <summary>The race day that the page of forecasts is asked: its address, else what the question and the tests tell. Temperatures in the address are in the unit that it names.</summary>
public sealed class RaceAsked
{
    /// <summary>Words in the address for the readings that are reckoned from: the day's own, or those of earlier days too.</summary>
    public const string Alone = "alone", Together = "together";

    const double CanLimitC = 75, BreakMin = 20;

    readonly IQueryCollection query;
    readonly TemperatureUnitChoice shown, typed;
    readonly List<RaceSlider> sliders = [];
    readonly List<string> faults = [];

    /// <summary>Reads the address.</summary>
    /// <param name="query">What was set; nothing on the first visit.</param>
    /// <param name="question">The question; null: a day without one.</param>
    /// <param name="motor">The motor's card; null: none.</param>
    /// <param name="fair">Middle of the tests' air and drives.</param>
    /// <param name="unit">Degrees of the person.</param>
    public RaceAsked(IQueryCollection query, NotedQuestion? question, NotedMotor? motor, FairConditions fair, TemperatureUnitChoice unit)
    {
        (this.query, shown) = (query, unit);
        typed = query["in"].ToString() switch { "f" => TemperatureUnitChoice.Fahrenheit, "c" => TemperatureUnitChoice.Celsius, _ => unit };
        var asks = question?.LimitOn is null or LimitOn.Can ? question?.LimitC : null;
        double air = Temperature("air", "Air in the shade", question?.AirC ?? fair.AmbientC, 0, 45), raceMin = Number("race", "Length of the race", "min", (question?.DriveS ?? fair.DriveS) / 60, 1, 30, 0.5);
        double canC = Temperature("can", "The can’s limit", asks ?? motor?.CanLimitC ?? CanLimitC, 50, 110), races = Number("races", "Races in a row", "", 1, 1, RaceScenario.MostRaces, 1);
        double breakMin = Number("break", "Break between them", "min", BreakMin, 5, 120, 5), altitude = Number("altitude", "Altitude of the race", "m", 0, 0, 3000, 50);
        double tested = Number("tested", "Altitude of the tests", "m", query.ContainsKey("altitude") ? altitude : 0, 0, 3000, 50), heat = Number("heat", "Heat against the tests", "%", 100, 50, 200, 5);
        if (altitude is not (>= -400 and <= 5000) || tested is not (>= -400 and <= 5000)) faults.Add("An altitude is expected from −400 to 5000 m.");
        if (canC is not (>= 30 and <= 250)) faults.Add("The can’s limit is expected from 30 to 250 °C.");
        Insulation = ThermalClass.Find(query["insulation"].ToString())?.Letter;
        Magnet = query["magnet"].ToString() is { Length: > 0 } suffix ? MagnetGrade.Find(suffix)?.Suffix : null;
        Odds = int.TryParse(query["odds"], CultureInfo.InvariantCulture, out var percent) && percent is >= 1 and <= 90 ? percent : 10;
        Scenario = new RaceScenario(air, 60 * raceMin)
        {
            Races = double.IsInteger(races) && races is >= 0 and <= 1000 ? (int)races : 0,
            BreakS = 60 * breakMin,
            Cooling = query["by"].ToString() switch { "own-fan" => BreakCooling.OwnFan, "pit-fan" => BreakCooling.PitFan, _ => BreakCooling.Shade },
            AltitudeM = altitude,
            TestedAtM = tested,
            Sky = query["sky"].ToString() switch { "sun" => Sky.Sun, "cloud" => Sky.Cloud, "dusk" => Sky.Dusk, "indoor" => Sky.Indoor, _ => null },
            Wind = query["wind"].ToString() switch { "calm" => Wind.Calm, "light" => Wind.Light, "strong" => Wind.Strong, _ => null },
            HeatFactor = heat / 100,
        };
        WindingOnCard = OnCard(LimitedPart.Winding, motor?.WindingLimitC, ThermalClass.Find(motor?.Insulation ?? "") is { } card ? new(LimitedPart.Winding, card.LimitC, $"class {card.Letter}") : null);
        MagnetOnCard = OnCard(LimitedPart.Magnet, motor?.MagnetLimitC, GradeOf(motor?.MagnetGrade) is { } grade ? new(LimitedPart.Magnet, grade.LimitC, grade.Suffix.Length > 0 ? $"grade {grade.Suffix}" : "plain grade") : null);
        Demand = RaceDemand.Of(canC, Insulation, Magnet, Odds / 100.0);
        if (Insulation is null && WindingOnCard is { } winding) Demand = Demand.With(winding);
        if (Magnet is null && MagnetOnCard is { } magnet) Demand = Demand.With(magnet);
        if (faults.Count == 0 && Forecast.Refusal(Scenario) is { } refused) faults.Add(Shown.TimeWords.Capital(refused));
    }

    /// <summary>Sliders in their order.</summary>
    public IReadOnlyList<RaceSlider> Sliders => sliders;

    /// <summary>The day.</summary>
    public RaceScenario Scenario { get; }

    /// <summary>Limits and accepted odds.</summary>
    public RaceDemand Demand { get; }

    /// <summary>Letter of the thermal class; null: unknown.</summary>
    public string? Insulation { get; }

    /// <summary>Letters of the magnet's grade; null: unknown.</summary>
    public string? Magnet { get; }

    /// <summary>Limit of the winding by the motor's card; null: unknown.</summary>
    public RaceLimit? WindingOnCard { get; }

    /// <summary>Limit of the magnet by the motor's card; null: unknown.</summary>
    public RaceLimit? MagnetOnCard { get; }

    /// <summary>Accepted odds, percent.</summary>
    public int Odds { get; }

    /// <summary>Why it can't be forecast, in °C; none where it can.</summary>
    public IReadOnlyList<string> Faults => faults;

    /// <summary>Whether an address asks for earlier days to be in the answer; null: it leaves that to the device.</summary>
    public static bool? EarlierIn(IQueryCollection query) => query["days"].ToString() switch { Together => true, Alone => false, _ => null };

    /// <summary>What a list of choices stands at.</summary>
    public string Chosen(string field) => query[field].ToString();

    // A limit in degrees goes before a letter: it is the maker's own figure.
    static RaceLimit? OnCard(LimitedPart part, double? limitC, RaceLimit? byLetter) =>
        limitC is { } stated ? new(part, stated, "on the motor’s card") : byLetter is { } letter ? letter with { Reason = $"{letter.Reason} by the motor’s card" } : null;

    // "SH" and "N42SH" are one; "N52" is the plain grade; nothing written is unknown.
    static MagnetGrade? GradeOf(string? written) => string.IsNullOrWhiteSpace(written) ? null : MagnetGrade.Find(written[(written.LastIndexOfAny([.. "0123456789"]) + 1)..]);

    double Temperature(string name, string label, double celsius, double leastC, double mostC)
    {
        double usual = Math.Round(Units.FromCelsius(celsius, typed)), now = Typed(name, label, usual), inC = Units.CelsiusFrom(now, typed);
        Slide(name, label, Units.Symbol(shown), Math.Round(Units.FromCelsius(leastC, shown)), Math.Round(Units.FromCelsius(mostC, shown)), 1, shown == typed ? now : Math.Round(Units.FromCelsius(inC, shown)));
        return inC;
    }

    double Number(string name, string label, string unit, double usual, double least, double most, double step)
    {
        var now = Typed(name, label, Math.Round(usual / step) * step);
        Slide(name, label, unit, least, most, step, now);
        return now;
    }

    double Typed(string name, string label, double usual)
    {
        var text = query[name].ToString().Trim();
        if (text.Length == 0) return usual;
        if (TypedNumber.TryRead(text, out var number) && Math.Abs(number) < 1e6) return number;
        faults.Add($"{label}: expected a number.");
        return usual;
    }

    // A value off the usual range, or between two steps, has its place on the slider too: a link gives what it gave.
    void Slide(string name, string label, string unit, double least, double most, double step, double value) =>
        sliders.Add(new(name, label, unit, Math.Min(least, value), Math.Max(most, value), double.IsInteger((value - Math.Min(least, value)) / step) ? step : 0.1, value));

    /// <summary>The words beside a slider.</summary>
    public static string Say(RaceSlider slider) => FieldUnits.Text(slider.Value) + (slider.Unit.Length > 0 ? " " + slider.Unit : "");
}
