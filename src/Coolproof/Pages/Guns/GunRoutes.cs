using Coolproof.Web;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Pages.Guns;

/// <summary>What the page of a gun asks for while its sliders move.</summary>
internal static class GunRoutes
{
    /// <summary>GET /gun/answer: the answer's parts of the page for the same query.</summary>
    public static void MapGuns(this IEndpointRouteBuilder routes) => routes.MapGet("/gun/answer", Answer).ExcludeFromDescription();

    static IResult Answer(HttpContext context, ThisDevice device) =>
        new RazorComponentResult<GunSaid>(new Dictionary<string, object?> { ["Asked"] = new GunAsked(context.Request.Query, device.Look.Temperature) });
}
