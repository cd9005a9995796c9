using Coolproof.Api;

namespace Coolproof.Pairing;

/// <summary>Marks what answers a device that isn't paired.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class OpenToAllAttribute : Attribute;

/// <summary>Stands before every route: who isn't paired gets only what is marked <see cref="OpenToAllAttribute"/>.</summary>
internal static class Gate
{
    const string Plain = "coolproof-key";
    const string Secured = "__Host-coolproof-key";
    static readonly TimeSpan Kept = TimeSpan.FromDays(400); // as long as browsers let a cookie live

    /// <summary>Puts up the gate, after routing.</summary>
    public static void UseGate(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (FromElsewhere(context.Request))
        {
            await Problems.Of(StatusCodes.Status403Forbidden, "This came from a page of another site, and was not done.", "Do it from the pit table's own pages.").ExecuteAsync(context);
            return;
        }
        var devices = context.RequestServices.GetRequiredService<PairedDevices>();
        if (KeyOf(context.Request) is { Length: > 0 } key && devices.With(key) is { } device) context.Features.Set(new Caller(device));
        else if (context.GetEndpoint()?.Metadata.GetMetadata<OpenToAllAttribute>() is null)
        {
            await RefuseAsync(context);
            return;
        }
        await next(context);
    });

    /// <summary>Gives a browser its key.</summary>
    public static void LetIn(HttpContext context, string key) => context.Response.Cookies.Append(NameFor(context.Request), key, Options(context.Request, Kept));

    /// <summary>Takes the key from a browser.</summary>
    public static void Forget(HttpContext context) => context.Response.Cookies.Delete(NameFor(context.Request), Options(context.Request, null));

    // A name of its own where it is encrypted: there a browser lets nothing from plain http stand in for it.
    static string NameFor(HttpRequest request) => request.IsHttps ? Secured : Plain;

    static string? KeyOf(HttpRequest request) => request.Cookies[NameFor(request)];

    static CookieOptions Options(HttpRequest request, TimeSpan? kept) => new()
    {
        HttpOnly = true,
        SameSite = SameSiteMode.Lax,
        Secure = request.IsHttps,
        Path = "/",
        MaxAge = kept,
        IsEssential = true,
    };

    // A foreign page could make a paired browser send something. Browsers say where a request comes from; what says nothing is no browser.
    static bool FromElsewhere(HttpRequest request)
    {
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) return false;
        if (request.Headers["Sec-Fetch-Site"].ToString() is { Length: > 0 } site && site is not ("same-origin" or "none")) return true;
        return request.Headers.Origin.ToString() is { Length: > 0 } origin && origin != $"{request.Scheme}://{request.Host}";
    }

    static async Task RefuseAsync(HttpContext context)
    {
        var request = context.Request;
        context.Response.Headers.CacheControl = "no-store";
        if (HttpMethods.IsGet(request.Method) && !request.Path.StartsWithSegments("/api") && request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
        {
            // 303 to where it can be put right; whether there is such a page at all isn't told.
            context.Response.StatusCode = StatusCodes.Status303SeeOther;
            context.Response.Headers.Location = "/connect";
            return;
        }
        await Problems.Of(
            StatusCodes.Status401Unauthorized, "This device isn't connected to the pit table.",
            "Open /connect on it, and type the code that the laptop shows. What it has tapped is safe on it, and goes through as soon as it is connected.", "not-connected").ExecuteAsync(context);
    }
}
