using Coolproof.Advice.Spending;
using Coolproof.Board;
using Coolproof.Notebook.Journal;

namespace Coolproof.Pages.Spending;

/// <summary>One request for the page of parts and money.</summary>
internal sealed class SpendAsking(VerdictAsking verdicts, IHttpContextAccessor http)
{
    const long Seed = 1;

    // While a slider moves: kelvin to some half.
    const int FewDraws = 200;

    /// <summary>How it stands.</summary>
    /// <param name="id">UUID of the day or the question whose readings count; null: guesses alone.</param>
    /// <param name="whole">Whether the answer should be of all draws.</param>
    public SpendView Of(Guid? id, bool whole)
    {
        var context = http.HttpContext!;
        var query = context.Request.Query;
        if (id is not { } about) return Answered(new(null, null, null, true, false, [], null, null), new SpendAsked(query, NotebookParts.MadeUp, null), null, whole, context.RequestAborted);
        if (verdicts.Of(about) is not { } it) return new(null, null, null, false, false, [], null, null);
        var (day, question, driven) = it.About;
        SpendView view = new(day, question, it.State, true, it.Hidden, [], null, null);
        if (it.Own is not { Races: { } races }) return view;
        var notebook = it.Notebook;
        var vehicle = notebook.Find<NotedVehicle>(driven?.Vehicle ?? question?.Vehicle ?? Guid.Empty) ?? (notebook.Vehicles is [var only] ? only : null);
        var (start, left) = NotebookParts.Of(notebook, question, vehicle, notebook.Find<NotedClass>(question?.Class ?? vehicle?.Class ?? Guid.Empty), races.Value);
        return Answered(view with { LeftOut = left }, new SpendAsked(query, start, races.Value), races.Value, whole, context.RequestAborted);
    }

    static SpendView Answered(SpendView view, SpendAsked asked, Evidence.Forecasts.RaceEvidence? evidence, bool whole, CancellationToken cancel) => view with
    {
        Asked = asked,
        Answer = asked.Sheet is not { } sheet ? null : new(BestUse.Of(sheet, whole ? evidence : evidence?.Thinned(FewDraws), Seed, cancel: cancel), whole),
    };
}

/// <summary>The answer, of all draws or of few.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Whole">Of all draws; else of few, while a slider moves.</param>
public sealed record SpendShown(SpendAnswer Answer, bool Whole);

/// <summary>What the page of parts and money has to show.</summary>
/// <param name="Day">The day; null: of a whole question, or of none.</param>
/// <param name="Question">The question; null: none.</param>
/// <param name="State">How the verdict stands; null where none was asked for.</param>
/// <param name="There">Whether the day or question is there.</param>
/// <param name="Hidden">Whether a round is being driven that this device hides.</param>
/// <param name="LeftOut">Driven options of which the notebook has no price or mass.</param>
/// <param name="Asked">What was asked; null where hidden, not there or before the first verdict.</param>
/// <param name="Answer">The answer; null where there is none.</param>
internal sealed record SpendView(NotedDay? Day, NotedQuestion? Question, VerdictState? State, bool There, bool Hidden, IReadOnlyList<string> LeftOut, SpendAsked? Asked, SpendShown? Answer);
