namespace Coolproof.Web;

/// <summary>Headers that keep a browser from doing what no page here asks for.</summary>
internal static class SafeHeaders
{
    // Pictures carry their colours in style attributes; scripts are files of ours only.
    const string Policy = "default-src 'self'; img-src 'self' data: blob:; media-src 'self' blob: data:; style-src 'self' 'unsafe-inline'; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Puts them on every answer.</summary>
    public static void UseSafeHeaders(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        var headers = context.Response.Headers;
        context.Response.OnStarting(() =>
        {
            headers.TryAdd("Content-Security-Policy", Policy);
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "same-origin";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            return Task.CompletedTask;
        });
        return next(context);
    });
}
