using Microsoft.AspNetCore.Http.HttpResults;

namespace Coolproof.Pages.Forecasts;

/// <summary>What the page of forecasts asks for while its sliders move.</summary>
internal static class RaceRoutes
{
    /// <summary>GET /forecast/{id}/answer: the answer's parts of the page for the same query; "quick" gives those that can follow a slider. 204 where the page has something else to say.</summary>
    public static void MapForecasts(this IEndpointRouteBuilder routes) => routes.MapGet("/forecast/{id:guid}/answer", Answer).ExcludeFromDescription();

    static IResult Answer(Guid id, bool? quick, RaceAsking asking) => asking.Of(id, quick is not true) is { Answer: { } answer } view
        ? new RazorComponentResult<RaceSaid>(new Dictionary<string, object?> { ["Id"] = id, ["Answer"] = answer, ["Question"] = view.Question?.Id, ["Table"] = view.State!.Table?.Table })
        : Results.NoContent();
}
