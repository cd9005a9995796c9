using Coolproof.Advice.Gearing;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Thermal;
using Coolproof.Web;

namespace Coolproof.Pages.Gears;

/// <summary>One request for the page of gearing.</summary>
internal sealed class GearPageAsking(VerdictAsking verdicts, KeptLaps kept, ThisDevice device, IHttpContextAccessor http)
{
    /// <summary>How it stands.</summary>
    /// <param name="id">UUID of the day or the question.</param>
    /// <param name="whole">Whether the answer should be of all draws.</param>
    public GearView Of(Guid id, bool whole)
    {
        var context = http.HttpContext!;
        if (verdicts.Of(id) is not { } it) return new(null, null, null, false, null, null);
        var (day, question, driven) = it.About;
        var state = it.State;
        if (it.Own is not { Races: { } races, Verdict: var verdict } || state.Table is not { } table) return new(day, question, state, it.Hidden, null, null);
        GearAsked asked = new(context.Request.Query, Cards(it.Notebook, question, driven), table.Table, verdict.Fair, device.Look.Temperature);
        GearShown? answer = null;
        try
        {
            if (asked.Setting is { } setting)
                answer = GearShown.Of(asked, setting, races.Value, raceS => kept.Of($"{state.Mark}&{asked.Laps}", raceS, !whole, () => GearLaps.Of(setting.Rig, setting.Card, setting.Notes, raceS, cancel: context.RequestAborted)), whole, context.RequestAborted);
        }
        catch (LapException cause)
        {
            asked.Refuse(cause.Message);
        }
        return new(day, question, state, it.Hidden, asked, answer);
    }

    static GearCards Cards(PitNotebook notebook, NotedQuestion? question, NotedDay? driven)
    {
        var motor = notebook.Find<NotedMotor>(driven?.Motor ?? question?.Motor ?? Guid.Empty);
        var vehicle = notebook.Find<NotedVehicle>(driven?.Vehicle ?? question?.Vehicle ?? Guid.Empty) ?? (notebook.Vehicles is [var only] ? only : null);
        return new(question, motor ?? notebook.Find<NotedMotor>(vehicle?.Motor ?? Guid.Empty) ?? (notebook.Motors is [var one] ? one : null), vehicle, notebook.Find<NotedClass>(question?.Class ?? vehicle?.Class ?? Guid.Empty), notebook.Packs.FirstOrDefault(pack => pack.CapacityMah is not null));
    }
}

/// <summary>What the draws of a verdict say of pinion and timing.</summary>
/// <param name="Asked">What was asked.</param>
/// <param name="Setting">Car, card and notes.</param>
/// <param name="Question">The question as it was reckoned.</param>
/// <param name="Answer">The answer.</param>
/// <param name="Whole">Of all draws; else of few, while a slider moves.</param>
public sealed record GearShown(GearAsked Asked, Commands.GearSetting Setting, GearQuestion Question, GearAnswer Answer, bool Whole)
{
    // Draws while a slider moves, shared among the timings, and points along the pinions; then at rest.
    const int FewDraws = 40, LeastDraws = 16, FewNodes = 3, AllDraws = 400, AllNodes = 6;

    /// <summary>Reckons it.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="setting">Car, card and notes.</param>
    /// <param name="evidence">The verdict's draws.</param>
    /// <param name="laps">The laps for a length of the race, s.</param>
    /// <param name="whole">Whether of all draws.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="LapException">Nothing within the card can be driven.</exception>
    public static GearShown Of(GearAsked asked, Commands.GearSetting setting, Evidence.Forecasts.RaceEvidence evidence, Func<double, GearLaps> laps, bool whole, CancellationToken cancel)
    {
        var scenario = asked.Scenario;
        var timings = setting.Card.Timings().Count;
        GearQuestion question = new(setting.Rig, setting.Card, scenario, asked.Race.Demand) { Draws = whole ? AllDraws : Math.Max(FewDraws / timings, LeastDraws) };
        return new(asked, setting, question, GearAlong.Of(question, evidence, laps(scenario.RaceS), whole ? AllNodes : FewNodes, hotter: whole, cancel), whole);
    }
}

/// <summary>What the page of gearing has to show.</summary>
/// <param name="Day">The day; null: of a whole question.</param>
/// <param name="Question">The question; null: a day without one.</param>
/// <param name="State">How the verdict stands; null where there is no such day or question.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides.</param>
/// <param name="Asked">What was asked; null before the first verdict.</param>
/// <param name="Answer">The answer; null where there is none.</param>
internal sealed record GearView(NotedDay? Day, NotedQuestion? Question, VerdictState? State, bool Hidden, GearAsked? Asked, GearShown? Answer);
