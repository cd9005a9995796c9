using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using Coolproof.Web;

namespace Coolproof.Pages;

/// <summary>The opening of every page that reckons from a verdict: whose it is, how it stands, and whether this device hides it while a round is being driven.</summary>
internal sealed class VerdictAsking(NotebookBoard board, VerdictBoard verdicts, ThisDevice device, IHttpContextAccessor http)
{
    /// <summary>How it stands; null where there is no such day or question. Asking has it judged.</summary>
    /// <param name="id">UUID of the day or the question.</param>
    /// <param name="withEarlier">Whether the answer is to be of earlier days too, where some belong to the day.</param>
    public AskedVerdict? Of(Guid id, bool withEarlier = false)
    {
        var query = http.HttpContext!.Request.Query;
        var notebook = board.Notebook;
        if (AskedAbout.Of(notebook, id) is not { } about) return null;
        var hidden = !query.ContainsKey("show") && device.Hides(about);
        var together = withEarlier && about.Day is not null && !hidden;
        return new(notebook, about, together ? verdicts.WithEarlier(id) : verdicts.Of(id), hidden, together);
    }
}

/// <summary>A verdict that a page reckons from.</summary>
/// <param name="Notebook">The notebook.</param>
/// <param name="About">Whose it is.</param>
/// <param name="State">How it stands.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides, and nobody asked to see it all the same.</param>
/// <param name="WithEarlier">Whether it is to be of earlier days too.</param>
internal sealed record AskedVerdict(PitNotebook Notebook, AskedAbout About, VerdictState State, bool Hidden, bool WithEarlier)
{
    /// <summary>The verdict from the day or question by itself; null where hidden, or before there is one.</summary>
    public Judged? Own => Hidden ? null : State.Judgement as Judged;

    /// <summary>The verdict with earlier days; null where it was not asked for, or isn't there.</summary>
    public Judged? Together => WithEarlier && Own is not null ? State.Earlier?.Together : null;

    /// <summary>Why it can't be given with earlier days although it was asked for, in °C; null where it is, is awaited, or none belongs.</summary>
    public string? NotTogether => !WithEarlier || Together is not null ? null : State.Earlier switch
    {
        { Judgement: NotConverged failed } => $"the calculation did not pass its own checks ({failed.Quantity}).",
        { Judgement: Refused refused } => refused.Reason,
        { Fault: { } fault } => fault,
        _ => null,
    };

    /// <summary>Whether earlier days belong to it that are still being weighed.</summary>
    public bool Waits => WithEarlier && Own is not null && (State.Earlier is { } earlier ? earlier is { Judgement: null, Fault: null } : EarlierTask.Of(Notebook, State.About, 1) is not null);
}
