using System.Net;
using Microsoft.AspNetCore.Mvc;

namespace Coolproof.Pairing;

/// <summary>How a device comes in, and goes.</summary>
internal static class PairingRoutes
{
    /// <summary>GET /connect/here, POST /connect/pair, /connect/code and /connect/unpair. All work without script.</summary>
    public static void MapPairing(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/connect/here", Here).WithMetadata(new OpenToAllAttribute()).ExcludeFromDescription();
        routes.MapGet("/connect/authority.crt", Authority).WithMetadata(new OpenToAllAttribute()).ExcludeFromDescription();
        routes.MapPost("/connect/pair", Pair).WithMetadata(new OpenToAllAttribute()).DisableAntiforgery().ExcludeFromDescription();
        routes.MapPost("/connect/code", Code).DisableAntiforgery().ExcludeFromDescription();
        routes.MapPost("/connect/unpair", Unpair).DisableAntiforgery().ExcludeFromDescription();
    }

    static IResult Here(HttpContext context, string? key, HereKey here, PairedDevices devices)
    {
        if (context.Features.Get<Caller>() is not null) return See("/");
        if (!here.Opens(key, context.Connection.RemoteIpAddress)) return See("/connect?said=address");
        Gate.LetIn(context, devices.Add("this computer's browser"));
        return See("/");
    }

    // Public by its nature: each encrypted answer carries it along.
    static IResult Authority(Web.WebSettings settings) => settings.Authority is { } authority
        ? Results.Bytes(authority.Export(System.Security.Cryptography.X509Certificates.X509ContentType.Cert), "application/x-x509-ca-cert", "coolproof.crt")
        : Results.NotFound();

    static IResult Pair(HttpContext context, [FromForm] string? code, [FromForm] string? name, PairingCodes codes, PairedDevices devices)
    {
        if (context.Features.Get<Caller>() is not null) return See("/connect");
        switch (codes.Enter(code ?? "", context.Connection.RemoteIpAddress ?? IPAddress.None))
        {
            case CodeAnswer.Right:
                Gate.LetIn(context, devices.Add(name is { Length: > 0 } ? name : "a phone"));
                return See("/connect");
            case CodeAnswer.TooMany:
                context.Response.Headers.RetryAfter = PairingCodes.Wait.TotalSeconds.ToString("0", System.Globalization.CultureInfo.InvariantCulture);
                return See("/connect?said=wait", StatusCodes.Status429TooManyRequests);
            default:
                return See("/connect?said=wrong");
        }
    }

    static IResult Code(PairingCodes codes)
    {
        codes.Make();
        return See("/connect");
    }

    static IResult Unpair(HttpContext context, [FromForm] Guid device, PairedDevices devices)
    {
        devices.Remove(device);
        if (context.Features.Get<Caller>()?.Device.Id != device) return See("/connect");
        Gate.Forget(context);
        return See("/connect?said=gone");
    }

    static IResult See(string where, int status = StatusCodes.Status303SeeOther) => new Seen(where, status);

    sealed class Seen(string where, int status) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.Headers.CacheControl = "no-store";
            httpContext.Response.Headers.Location = where;
            httpContext.Response.StatusCode = status;
            if (status == StatusCodes.Status303SeeOther) return Task.CompletedTask;
            httpContext.Response.ContentType = "text/html; charset=utf-8";
            return httpContext.Response.WriteAsync($"<!DOCTYPE html><html lang=\"en\"><title>Wait a minute</title><p>Too many wrong codes. Wait a minute, have the laptop show a new code, and <a href=\"{where}\">try again</a>.</p></html>");
        }
    }
}
