using Microsoft.AspNetCore.OpenApi;

namespace Coolproof.Api;

/// <summary>The description of the API at /openapi/v1.json.</summary>
internal static class Description
{
    /// <summary>Its heading, and only what lies under /api and /health.</summary>
    public static void Of(OpenApiOptions options)
    {
        options.ShouldInclude = api => api.RelativePath is { } path && (path.StartsWith("api/", StringComparison.Ordinal) || path == "health");
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info.Title = "Coolproof pit table";
            document.Info.Version = "1";
            document.Info.Description = "Entries by docs/formats/entries.md. A device is connected first (/connect); its cookie comes with each request. Failures are problem details (RFC 9457).";
            document.Servers?.Clear();
            return Task.CompletedTask;
        });
    }
}
