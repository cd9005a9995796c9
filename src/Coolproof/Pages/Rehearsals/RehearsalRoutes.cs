using System.Security.Cryptography;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace Coolproof.Pages.Rehearsals;

/// <summary>What a guided rehearsal sends and asks besides entries.</summary>
internal static class RehearsalRoutes
{
    /// <summary>POST /rehearsal/guided begins one; GET /clock/{day}/gun/{shot} is the number on the display of its gun, nothing while the shot is not there yet.</summary>
    public static void MapRehearsals(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/rehearsal/guided", BeginAsync).ExcludeFromDescription();
        routes.MapGet("/clock/{day:guid}/gun/{shot:guid}", Gun).ExcludeFromDescription();
    }

    static async Task<IResult> BeginAsync([FromForm] IFormCollection form, NotebookBoard board, TimeProvider clock, CancellationToken cancel)
    {
        var entries = GuidedRehearsal.Begin(
            board.Notebook, RandomNumberGenerator.GetInt32(1, 100_000), clock.Now(), Offset.FromTimeSpan(clock.GetLocalNow().Offset), out var day);
        await board.KeepAsync(Demo.RehearsalAuthor, entries, cancel);
        return Results.LocalRedirect($"/clock/{day}");
    }

    static IResult Gun(Guid day, Guid shot, NotebookBoard board, HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-store";
        var notebook = board.Notebook;
        return notebook.Find<NotedDay>(day) is { } noted && GuidedRehearsal.SeedOf(notebook, noted) is { } seed && GuidedRehearsal.Read(notebook, noted, seed, shot) is { } read
            ? Results.Text(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{{\"value\":{read:0.0},\"unit\":\"c\"}}"), "application/json")
            : Results.NoContent();
    }
}
