using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using Coolproof.Web;

namespace Coolproof.Pages.Forecasts;

/// <summary>One request for a forecast.</summary>
internal sealed class RaceAsking(NotebookBoard board, VerdictBoard verdicts, ThisDevice device, IHttpContextAccessor http)
{
    /// <summary>How it stands.</summary>
    /// <param name="id">UUID of the day or the question.</param>
    /// <param name="whole">Whether the answer should be of all draws.</param>
    public RaceView Of(Guid id, bool whole)
    {
        var context = http.HttpContext!;
        var notebook = board.Notebook;
        if (AskedAbout.Of(notebook, id) is not { } about) return new(null, null, null, false, null, null);
        var (day, question, driven) = about;
        var state = verdicts.Of(id);
        var hidden = !context.Request.Query.ContainsKey("show") && device.Hides(about);
        if (hidden || state.Judgement is not Judged { Races: { } races, Verdict: var verdict }) return new(day, question, state, hidden, null, null);
        var motor = notebook.Find<NotedMotor>(driven?.Motor ?? question?.Motor ?? Guid.Empty);
        RaceAsked asked = new(context.Request.Query, question, motor, verdict.Fair, device.Look.Temperature);
        return new(day, question, state, hidden, asked, asked.Faults.Count > 0 ? null : RaceAnswer.Of(races.Value, asked, whole, context.RequestAborted));
    }
}

/// <summary>What a forecast's page has to show.</summary>
/// <param name="Day">The day; null: of a whole question.</param>
/// <param name="Question">The question; null: a day without one.</param>
/// <param name="State">How the verdict stands; null where there is no such day or question.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides.</param>
/// <param name="Asked">The race day; null before the first verdict.</param>
/// <param name="Answer">The answer; null where there is none.</param>
internal sealed record RaceView(NotedDay? Day, NotedQuestion? Question, VerdictState? State, bool Hidden, RaceAsked? Asked, RaceAnswer? Answer);
