using Coolproof.Api;
using Coolproof.Pages;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Web;

/// <summary>Words for answers that would come without any: no such address, a method or a content that it doesn't take.</summary>
internal static class MissingPage
{
    /// <summary>Puts it behind the gate: strangers aren't told what there is.</summary>
    public static void UseMissingPage(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (context.GetEndpoint() is null) context.Response.StatusCode = StatusCodes.Status404NotFound;
        else await next(context);
        var response = context.Response;
        if (response.StatusCode < 400 || response.HasStarted || response.ContentType is not null || response.ContentLength is > 0) return;
        var (title, remedy) = Words(response.StatusCode);
        if (context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
        {
            var said = new Dictionary<string, object?> { [nameof(TroublePage.Title)] = title, [nameof(TroublePage.Reason)] = "Nothing is lost, and nothing was done.", [nameof(TroublePage.Remedy)] = "" };
            await new RazorComponentResult<TroublePage>(said) { StatusCode = response.StatusCode }.ExecuteAsync(context);
        }
        else await Problems.Of(response.StatusCode, title, remedy).ExecuteAsync(context);
    });

    static (string Title, string Remedy) Words(int status) => status switch
    {
        StatusCodes.Status404NotFound => ("There is no such page.", "The addresses for programs are described at /openapi/v1.json."),
        StatusCodes.Status405MethodNotAllowed => ("This address doesn't take that method.", "The addresses for programs are described at /openapi/v1.json."),
        StatusCodes.Status415UnsupportedMediaType => ("This address doesn't take that sort of content.", "Send it with the right Content-Type: JSON as application/json, a photo as image/jpeg, image/png or image/webp."),
        _ => ("This can't be understood as it was sent.", "The addresses for programs are described at /openapi/v1.json."),
    };
}
