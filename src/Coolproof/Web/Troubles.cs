using Coolproof.Api;
using Coolproof.Pages;
using Coolproof.Store;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Web;

/// <summary>What is answered when something goes wrong: problem details to programs, a page to people; never half a page, never a trace.</summary>
internal static class Troubles
{
    /// <summary>Puts it in front of everything.</summary>
    public static void UseTroubles(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        try
        {
            await next(context);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has gone.
        }
        catch (Exception cause) when (!context.Response.HasStarted)
        {
            context.Response.Clear();
            await AnswerAsync(context, cause);
        }
    });

    static Task AnswerAsync(HttpContext context, Exception cause)
    {
        var (status, reason, remedy, fault) = cause switch
        {
            StoreException store => (Problems.StatusOf(store.Fault), store.Reason, store.Remedy, System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(store.Fault.ToString())),
            BadHttpRequestException bad => (bad.StatusCode, "This can't be understood as it was sent.", "Nothing was done. Go back and try again.", "bad-request"),
            _ => (StatusCodes.Status500InternalServerError, "This is a fault of the program. What was noted is safe.", "Try again; if it stays, pass on to its makers what the program printed where it runs.", "program"),
        };
        if (status >= 500)
        {
            var log = context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Coolproof.Web");
            if (cause is StoreException) log.LogWarning("{Reason} {Remedy}", reason, remedy);
            else log.LogError(cause, "A request failed");
        }
        if (context.Request.Path.StartsWithSegments("/api") || !context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
            return Problems.Of(status, reason, remedy, fault).ExecuteAsync(context);
        return new RazorComponentResult<TroublePage>(new Dictionary<string, object?> { ["Reason"] = reason, ["Remedy"] = remedy }) { StatusCode = status }.ExecuteAsync(context);
    }
}
