using System.Globalization;
using Coolproof.Advice.CoolDowns;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Pages.Days;

/// <summary>What the page of cool-downs is asked: its address as it was typed, else what the day's last run tells. In the person's degrees.</summary>
public sealed class CoolingAsked
{
    /// <summary>Most looks at the can.</summary>
    public const int MostLooks = 4;

    const double UsualAirC = 25, UsualWithinK = 3, UsualWaitMin = 10, DriveS = 360;

    // A reading as late as this says more of the cooling than of the halt.
    static readonly Duration Soon = Duration.FromMinutes(2);

    readonly IQueryCollection query;
    readonly TemperatureUnitChoice unit;
    readonly Dictionary<string, string> faults = [], usual = [];
    readonly bool sent;

    /// <summary>Reads the address.</summary>
    /// <param name="query">What was typed; nothing on the first visit.</param>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="options">Options that may be fitted.</param>
    /// <param name="unit">Degrees of the person.</param>
    public CoolingAsked(IQueryCollection query, PitNotebook notebook, NotedDay day, IReadOnlyList<NotedOption> options, TemperatureUnitChoice unit)
    {
        (this.query, this.unit, Options) = (query, unit, options);
        sent = query.ContainsKey("air");
        var last = notebook.RunsOf(day.Id).LastOrDefault(run => run.Halt is not null || run.Shots.Count > 0);
        Fitted = Guid.TryParse(sent ? query["option"].ToString() : last?.Option?.ToString(), out var id) ? options.FirstOrDefault(option => option.Id == id) : null;
        Drive = last?.DriveS ?? day.DriveS ?? DriveS;
        AirC = Temperature("air", day.Weather.LastOrDefault(note => note.AirC is not null)?.AirC ?? (last is null ? null : RunAir.Of(last, day)?.AirC) ?? UsualAirC, -30, 60) ?? UsualAirC;
        CanC = Temperature("can", last is null ? null : Read(last), -30, 200, optional: true);
        WithinK = Number("within", Units.FromKelvins(UsualWithinK, unit), 0.1, 50) is { } typed ? Units.KelvinsFrom(typed, unit) : UsualWithinK;
        WaitMin = Number("wait", UsualWaitMin, 0, CoolDown.LongestMin) ?? UsualWaitMin;
        By = query["by"].ToString() switch { "own-fan" => CoolingBy.OwnFan, "pit-fan" => CoolingBy.PitFan, "cooled-air" => CoolingBy.CooledAir, _ => CoolingBy.Shade };
        Looks = [.. Enumerable.Range(1, MostLooks).Select(Look).OfType<CanLook>()];
        if (CanC <= AirC) faults["can"] = "the can is not above the air, so there is nothing to cool: look at both numbers again";
    }

    /// <summary>Options that may be fitted.</summary>
    public IReadOnlyList<NotedOption> Options { get; }

    /// <summary>The one that is; null: not said.</summary>
    public NotedOption? Fitted { get; }

    /// <summary>Air, °C.</summary>
    public double AirC { get; }

    /// <summary>Can as read soon after the halt, °C; null: as the drive is believed to leave it.</summary>
    public double? CanC { get; }

    /// <summary>How near to the air all of it must come, K.</summary>
    public double WithinK { get; }

    /// <summary>Minutes after which the next run would start anyway.</summary>
    public double WaitMin { get; }

    /// <summary>The drive, s.</summary>
    public double Drive { get; }

    /// <summary>How it has been cooled while it was looked at.</summary>
    public CoolingBy By { get; }

    /// <summary>Looks at the can.</summary>
    public IReadOnlyList<CanLook> Looks { get; }

    /// <summary>Whether nothing is wrong.</summary>
    public bool Understood => faults.Count == 0;

    /// <summary>What is wrong with a field; null: nothing.</summary>
    public string? Fault(string field) => faults.GetValueOrDefault(field);

    /// <summary>What stands in a field.</summary>
    public string Now(string field) => sent ? query[field].ToString() : usual.GetValueOrDefault(field, "");

    /// <summary>The question.</summary>
    /// <param name="believed">What is believed of the day's readings; null: nothing was read yet.</param>
    public CoolDownQuestion Question(QuickVerdict? believed)
    {
        var place = Fitted is null || believed is null ? -1 : believed.Options.ToList().FindIndex(name => string.Equals(name, Fitted.Name, StringComparison.OrdinalIgnoreCase));
        return new CoolDownQuestion(AirC, WithinK, CanC)
        {
            Motors = place >= 0 ? believed!.Motors : null,
            Option = Math.Max(place, 0),
            HasFan = Fitted?.Fans is not { } fans || fans > 0,
            DriveS = Drive,
            WaitMin = WaitMin,
            Looks = Looks,
            LookedAtBy = By,
        };
    }

    static double? Read(NotedRun run) => run.Shots.Where(shot => shot is { ReadC: not null, ExcludedBecause: null, Spot: Spot.Can } && (run.StopToReadS(shot) ?? 0) <= Soon.TotalSeconds).FirstOrDefault()?.ReadC;

    double? Temperature(string field, double? celsius, double least, double most, bool optional = false)
    {
        var typed = Number(field, celsius is { } known ? Math.Round(Units.FromCelsius(known, unit), 1) : null, Units.FromCelsius(least, unit), Units.FromCelsius(most, unit), optional);
        return typed is { } degrees ? Units.CelsiusFrom(degrees, unit) : null;
    }

    double? Number(string field, double? here, double least, double most, bool optional = false)
    {
        usual[field] = here is { } shown ? Forms.FieldUnits.Text(shown) : "";
        var text = query[field].ToString().Trim();
        if (!sent) return here;
        if (optional && text.Length == 0) return null;
        if (Forms.TypedNumber.TryRead(text, out var number) && number >= least && number <= most) return number;
        faults[field] = string.Create(CultureInfo.InvariantCulture, $"expected a number from {least:0.#} to {most:0}");
        return here;
    }

    // Both or neither: a look is a time and a temperature.
    CanLook? Look(int place)
    {
        string minutes = $"m{place}", can = $"c{place}";
        var (at, read) = (Number(minutes, null, 0, CoolDown.LongestMin, optional: true), Temperature(can, null, -30, 200, optional: true));
        if (sent && at is null != read is null && Fault(minutes) is null && Fault(can) is null) faults[at is null ? minutes : can] = "a look at the can is its minutes and its temperature: type both";
        return at is { } min && read is { } celsius ? new CanLook(min, celsius) : null;
    }
}
