using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Web;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.WebUtilities;

namespace Coolproof.Pages.Plans;

/// <summary>What the page "plan" sends besides entries: to reckon how many rounds are enough, and to stop that.</summary>
internal static class PlanRoutes
{
    /// <summary>POST /plan/{id}/rounds with the page's own address in "asked" and "start" or "stop" in "do".</summary>
    public static void MapPlans(this IEndpointRouteBuilder routes) => routes.MapPost("/plan/{id:guid}/rounds", Rounds).ExcludeFromDescription();

    static IResult Rounds(Guid id, [FromForm] IFormCollection form, NotebookBoard board, RoundsBoard rounds, ThisDevice device)
    {
        var notebook = board.Notebook;
        var day = notebook.Find<NotedDay>(id);
        var question = notebook.Find<NotedQuestion>(day?.Question ?? id);
        var address = form["asked"].ToString();
        var asked = new PlanAsked(new QueryCollection(QueryHelpers.ParseQuery(address)), notebook, day, question);
        if (!asked.Understood || asked.Options.Count < 2) return Results.LocalRedirect($"/plan/{id}{Kept(address)}");
        var settings = RoundsTask.Of(asked.Request(device.Look.Temperature), null, Threads);
        if (form["do"] == "stop") rounds.Cancel(RoundsTask.Key(settings));
        else rounds.Start(RoundsTask.Key(settings), settings);
        return Results.LocalRedirect($"/plan/{id}{Kept(address)}#rounds");
    }

    /// <summary>Days simulated at once: pages are served beside it.</summary>
    public static int Threads { get; } = Math.Clamp(Environment.ProcessorCount - 1, 1, 4);

    // Written anew, so that nothing but a query goes into the address.
    static string Kept(string address) => QueryString.Create(QueryHelpers.ParseQuery(address)).ToString();
}
