using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal;
using Coolproof.Store;

namespace Coolproof.Api;

/// <summary>Failures as problem details (RFC 9457): what happened, what is safe, what to do.</summary>
internal static class Problems
{
    const string Type = "application/problem+json";

    /// <summary>A failure with a reason and a remedy.</summary>
    /// <param name="status">HTTP status.</param>
    /// <param name="title">What happened, in plain words.</param>
    /// <param name="remedy">What to do about it.</param>
    /// <param name="fault">A word that programs can go by; null for none.</param>
    public static IResult Of(int status, string title, string remedy, string? fault = null)
    {
        var problem = Body(status, title, remedy);
        if (fault is not null) problem["fault"] = fault;
        return Text(problem, status);
    }

    /// <summary>A batch that can't be kept: each fault with the entry and field it is in.</summary>
    public static IResult Of(IReadOnlyList<EntryFault> faults)
    {
        var problem = Body(StatusCodes.Status400BadRequest, "Nothing of this batch was kept: some entries can't be understood.", "Set those aside and send the others again.");
        problem["errors"] = new JsonArray([.. faults.Select(fault => new JsonObject
        {
            ["entry"] = fault.Entry, ["field"] = fault.Field, ["reason"] = fault.Reason, ["remedy"] = fault.Remedy,
        })]);
        return Text(problem, StatusCodes.Status400BadRequest);
    }

    /// <summary>What hinders the store.</summary>
    public static IResult Of(StoreException cause) => Of(StatusOf(cause.Fault), cause.Reason, cause.Remedy, JsonNamingPolicy.KebabCaseLower.ConvertName(cause.Fault.ToString()));

    /// <summary>The HTTP status of a store's fault: 5xx makes a phone keep its taps and try again.</summary>
    public static int StatusOf(StoreFault fault) => fault switch
    {
        StoreFault.DiskFull => StatusCodes.Status507InsufficientStorage,
        StoreFault.OtherPhoto => StatusCodes.Status409Conflict,
        StoreFault.Locked or StoreFault.NoAccess => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status500InternalServerError,
    };

    static JsonObject Body(int status, string title, string remedy) => new() { ["title"] = title, ["status"] = status, ["detail"] = remedy };

    static IResult Text(JsonObject problem, int status) => Results.Text(problem.ToJsonString(Readable), Type, statusCode: status);

    static JsonSerializerOptions Readable { get; } = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
