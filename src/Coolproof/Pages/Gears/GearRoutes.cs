using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Pages.Gears;

/// <summary>What the page of gearing asks for while its sliders move.</summary>
internal static class GearRoutes
{
    /// <summary>GET /gear/{id}/answer: the answer's parts of the page for the same query, or what can't be right; "quick" is of few draws. 204 where the page has something else to say.</summary>
    public static void MapGears(this IEndpointRouteBuilder routes) => routes.MapGet("/gear/{id:guid}/answer", Answer).ExcludeFromDescription();

    static IResult Answer(Guid id, bool? quick, GearPageAsking asking) => asking.Of(id, quick is not true) is { Asked: { } asked } view
        ? new RazorComponentResult<GearSaid>(new Dictionary<string, object?> { ["Id"] = id, ["Asked"] = asked, ["Answer"] = view.Answer })
        : Results.NoContent();
}
