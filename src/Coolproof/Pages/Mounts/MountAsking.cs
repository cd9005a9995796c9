using Coolproof.Advice.Mounts;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Notebook.Journal;
using Coolproof.Web;

namespace Coolproof.Pages.Mounts;

/// <summary>One request for a mount.</summary>
internal sealed class MountAsking(VerdictAsking verdicts, ThisDevice device, IHttpContextAccessor http)
{
    const long Seed = 1;

    /// <summary>How it stands.</summary>
    /// <param name="id">UUID of the day or the question whose verdict stands beside it; null: by ruler and fan alone.</param>
    public MountView Of(Guid? id)
    {
        var query = http.HttpContext!.Request.Query;
        if (id is not { } about) return Answered(new(null, null, null, true, false, null, null), null, new MountAsked(query, null, null, device.Look.Temperature));
        if (verdicts.Of(about) is not { } it) return new(null, null, null, false, false, null, null);
        var (day, question, driven) = it.About;
        MountView view = new(day, question, it.State, true, it.Hidden, null, null);
        if (it.Hidden) return view;
        var motor = it.Notebook.Find<NotedMotor>(driven?.Motor ?? question?.Motor ?? Guid.Empty);
        return Answered(view, it.Own, new MountAsked(query, motor, it.Own?.Verdict.Fair, device.Look.Temperature));
    }

    static MountView Answered(MountView view, Judged? judged, MountAsked asked) => view with
    {
        Asked = asked,
        Answer = asked.Sheet is not { } sheet ? null : judged?.Races is { } races ? MountPredictions.Of(sheet, races.Value, Seed) : MountPredictions.Of(sheet, Seed),
    };
}

/// <summary>What a mount's page has to show.</summary>
/// <param name="Day">The day; null: of a whole question, or of none.</param>
/// <param name="Question">The question; null: none.</param>
/// <param name="State">How the verdict stands; null where none was asked for.</param>
/// <param name="There">Whether the day or question is there.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides.</param>
/// <param name="Asked">The mount; null where hidden or not there.</param>
/// <param name="Answer">The answer; null where there is none.</param>
internal sealed record MountView(NotedDay? Day, NotedQuestion? Question, VerdictState? State, bool There, bool Hidden, MountAsked? Asked, MountAnswer? Answer);
