using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Pages.Mounts;

/// <summary>What the page of a mount asks for while its sliders move.</summary>
internal static class MountRoutes
{
    /// <summary>GET /mount/answer and /mount/{id}/answer: the answer's parts of the page for the same query, or what can't be right. 204 where the page has something else to say.</summary>
    public static void MapMounts(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/mount/answer", (MountAsking asking) => Answer(null, asking)).ExcludeFromDescription();
        routes.MapGet("/mount/{id:guid}/answer", (Guid id, MountAsking asking) => Answer(id, asking)).ExcludeFromDescription();
    }

    static IResult Answer(Guid? id, MountAsking asking) => asking.Of(id) is { Asked: { } asked } view
        ? new RazorComponentResult<MountSaid>(new Dictionary<string, object?> { ["Id"] = id, ["Asked"] = asked, ["Answer"] = view.Answer })
        : Results.NoContent();
}
