using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Web;

namespace Coolproof.Pages.Forecasts;

/// <summary>One request for a forecast.</summary>
internal sealed class RaceAsking(VerdictAsking verdicts, ThisDevice device, IHttpContextAccessor http)
{
    /// <summary>How it stands.</summary>
    /// <param name="id">UUID of the day or the question.</param>
    /// <param name="whole">Whether the answer should be of all draws.</param>
    public RaceView Of(Guid id, bool whole)
    {
        var context = http.HttpContext!;
        var query = context.Request.Query;
        if (verdicts.Of(id, RaceAsked.EarlierIn(query) ?? device.EarlierFirst) is not { } it) return new(null, null, null, false, null, null);
        var (day, question, driven) = it.About;
        RaceView view = new(day, question, it.State, it.Hidden, null, null) { Waits = it.Waits, WithEarlier = it.WithEarlier };
        if (view.Waits || (it.Together ?? it.Own) is not { Races: { } races, Verdict: var verdict }) return view;
        var motor = it.Notebook.Find<NotedMotor>(driven?.Motor ?? question?.Motor ?? Guid.Empty);
        RaceAsked asked = new(query, question, motor, verdict.Fair, device.Look.Temperature);
        if (asked.Faults.Count > 0) return view with { Asked = asked };
        var answer = RaceAnswer.Of(races.Value, asked, whole, context.RequestAborted);
        if (it.Together is { Earlier: { } added }) answer = answer.With(added, it.Own!.Races!.Value, context.RequestAborted);
        return view with { Asked = asked, Answer = it is { WithEarlier: true, State.Earlier: { } earlier } ? answer with { EarlierDays = it.Together is null ? earlier.Days : earlier.Judged, NotTogether = it.NotTogether } : answer };
    }
}

/// <summary>What a forecast's page has to show.</summary>
/// <param name="Day">The day; null: of a whole question.</param>
/// <param name="Question">The question; null: a day without one.</param>
/// <param name="State">How the verdict stands; null where there is no such day or question.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides.</param>
/// <param name="Asked">The race day; null before the first verdict.</param>
/// <param name="Answer">The answer; null where there is none.</param>
internal sealed record RaceView(NotedDay? Day, NotedQuestion? Question, VerdictState? State, bool Hidden, RaceAsked? Asked, RaceAnswer? Answer)
{
    /// <summary>Whether it is to be of earlier days too.</summary>
    public bool WithEarlier { get; init; }

    /// <summary>Whether these are still being weighed.</summary>
    public bool Waits { get; init; }

    /// <summary>Whether the answer is of earlier readings than those that stand now.</summary>
    public bool Old => State is { Current: false } || Answer?.Earlier is not null && State?.Earlier is { Current: false };
}
