using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Notebook;
using Coolproof.Pages.Forms;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace Coolproof.Pages.Spending;

/// <summary>What the page of parts and money asks for while its sliders move, and the sheets that it takes and gives.</summary>
internal static class SpendRoutes
{
    const int LargestSheet = 200_000;

    static readonly JsonDocumentOptions Loose = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
    static readonly JsonSerializerOptions Written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// GET /spend/answer and /spend/{id}/answer: the answer's parts of the page for the same query, or what can't be right; "quick" is of few draws. 204 where the page has something else to say.
    /// POST /spend/sheet: takes a sheet of docs/formats/spend-sheet.schema.json to the page. GET /spend/sheet.json: the page's fields as such a sheet.
    /// </summary>
    public static void MapSpending(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/spend/answer", (bool? quick, SpendAsking asking) => Answer(null, quick, asking)).ExcludeFromDescription();
        routes.MapGet("/spend/{id:guid}/answer", (Guid id, bool? quick, SpendAsking asking) => Answer(id, quick, asking)).ExcludeFromDescription();
        routes.MapPost("/spend/sheet", TakeAsync).ExcludeFromDescription();
        routes.MapGet("/spend/sheet.json", Give).ExcludeFromDescription();
    }

    static IResult Answer(Guid? id, bool? quick, SpendAsking asking) => asking.Of(id, quick is not true) is { Asked: { } asked } view
        ? new RazorComponentResult<SpendSaid>(new Dictionary<string, object?> { ["Id"] = id, ["Asked"] = asked, ["Answer"] = view.Answer })
        : Results.NoContent();

    static async Task<IResult> TakeAsync([FromForm] IFormCollection form, CancellationToken cancel)
    {
        var text = form["text"].ToString();
        if (form.Files["file"] is { Length: > 0 } file)
        {
            if (file.Length > LargestSheet) return Refused(["The file is longer than a sheet of parts can be. Take the right one."]);
            using StreamReader reader = new(file.OpenReadStream(), Encoding.UTF8);
            text = await reader.ReadToEndAsync(cancel);
        }
        if (text.Trim().Length == 0) return Refused(["There is nothing in it. Choose a file, or paste its text."]);
        var read = SpendSheetReader.Read(text);
        if (read.Asked is not { } sheet) return Refused([.. read.Problems.Select(problem => problem.ToString())]);
        var fields = SpendFields.Of(sheet);
        if (sheet.Parts.SelectMany(part => part.Places.Concat(part.Excludes).Concat(part.Needs).Append(part.Part.Name)).Any(name => name.Contains(',') || name.Contains(';')))
            return Refused(["A name with a comma or a semicolon in it: the page sets commas between names. Write it without, or use coolproof spend."]);
        if (JsonNode.Parse(text, documentOptions: Loose)?["class"] is JsonObject rules && rules["minimumMassG"]?.GetValue<double>() is { } least && rules["carMassG"]?.GetValue<double>() is { } car)
            (fields["min"], fields["car"]) = (FieldUnits.Text(least), FieldUnits.Text(car));
        if (sheet.Predicted.Count > 0) fields["mounts"] = $"{sheet.Predicted.Count}";
        var address = (Guid.TryParse(form["id"], out var id) ? $"/spend/{id}" : "/spend") + QueryString.Create(fields.Select(one => KeyValuePair.Create(one.Key, (string?)one.Value)));
        return address.Length > SpendFields.LongestAddress ? Refused(["More parts, or longer names, than an address can hold. Shorten the names, or use coolproof spend."]) : Results.LocalRedirect(address);
    }

    static IResult Give(HttpRequest request) => Results.File(
        Encoding.UTF8.GetBytes(SpendFields.File(request.Query.ToDictionary(one => one.Key, one => one.Value.ToString())).ToJsonString(Written)), "application/json", "parts.json");

    static RazorComponentResult<TroublePage> Refused(string[] wrong) =>
        new(new Dictionary<string, object?> { ["Title"] = wrong.Length > 1 ? $"{wrong.Length} things in the sheet can’t be right" : "The sheet can’t be used as it stands", ["Reason"] = string.Join(" ", wrong), ["Remedy"] = "Nothing was taken. Mend it, go back, and bring it again." })
        { StatusCode = StatusCodes.Status422UnprocessableEntity };
}
