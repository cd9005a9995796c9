using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Coolproof.Photos;
using Coolproof.Store;
using Coolproof.Web;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace Coolproof.Pages;

/// <summary>What pages send besides the fields of things: the demo, rehearsals, photos, how this device shows pages.</summary>
internal static class PageRoutes
{
    /// <summary>Adds what pages need.</summary>
    public static IServiceCollection AddPages(this IServiceCollection services) => services.AddScoped<ThisDevice>().AddScoped<VerdictAsking>().AddScoped<Forecasts.RaceAsking>().AddScoped<Mounts.MountAsking>().AddSingleton<Gears.KeptLaps>().AddScoped<Gears.GearPageAsking>().AddScoped<Spending.SpendAsking>();

    /// <summary>Maps the forms' addresses. Each asks for the antiforgery token of its form.</summary>
    public static void MapPages(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/demo", TryDemoAsync).ExcludeFromDescription();
        routes.MapPost("/demo/remove", RemoveDemoAsync).ExcludeFromDescription();
        routes.MapPost("/rehearsal", RehearseAsync).ExcludeFromDescription();
        routes.MapPost("/photo/{id:guid}", KeepPhotoAsync).ExcludeFromDescription();
        routes.MapPost("/look", Look).ExcludeFromDescription();
        routes.MapPost("/earlier", Earlier).ExcludeFromDescription();
        routes.MapGet("/table/{about:guid}", Table).ExcludeFromDescription();
    }

    static async Task<IResult> TryDemoAsync([FromForm] IFormCollection form, NotebookBoard board, TimeProvider clock, CancellationToken cancel)
    {
        var entries = DemoNotebook.Entries();
        foreach (var batch in entries.Chunk(EntryReader.LargestBatch)) await board.KeepAsync(Demo.DemoAuthor, batch, cancel);
        await SayAsync(board, Demo.DemoAuthor, Demo.BringBack(board.Notebook, entries), clock, cancel);
        return Results.LocalRedirect($"/question/{DemoNotebook.Question}");
    }

    static async Task<IResult> RemoveDemoAsync([FromForm] IFormCollection form, NotebookBoard board, ThisDevice device, TimeProvider clock, CancellationToken cancel)
    {
        await SayAsync(board, device.Id(), Demo.Remove(board.Notebook), clock, cancel);
        return Results.LocalRedirect("/");
    }

    static async Task<IResult> RehearseAsync([FromForm] IFormCollection form, NotebookBoard board, TimeProvider clock, CancellationToken cancel)
    {
        var local = clock.GetLocalNow();
        var entries = Demo.Rehearsal(board.Notebook, RandomNumberGenerator.GetInt32(1, 100_000), LocalDate.FromDateTime(local.DateTime), out var day);
        foreach (var batch in entries.Chunk(EntryReader.LargestBatch)) await board.KeepAsync(Demo.RehearsalAuthor, batch, cancel);
        return Results.LocalRedirect($"/day/{day}");
    }

    static async Task<IResult> KeepPhotoAsync(Guid id, [FromForm] IFormFile photo, NotebookBoard board, JournalStore store, ThisDevice device, TimeProvider clock, CancellationToken cancel)
    {
        if (photo.Length > CleanPhoto.LargestBytes) return Refused(StatusCodes.Status413PayloadTooLarge, "A photo has at most 8 MB.", "Make it smaller, and send it again.");
        using MemoryStream bytes = new();
        await photo.CopyToAsync(bytes, cancel);
        if (CleanPhoto.Of(bytes.ToArray(), out var wrong) is not { } clean) return Refused(StatusCodes.Status415UnsupportedMediaType, wrong.Reason, wrong.Remedy);
        var now = clock.Now();
        var kept = Guid.CreateVersion7(now.ToDateTimeOffset());
        await store.PutPhotoAsync(kept, clean.Kind.MediaType(), clean.Bytes, cancel);
        await SayAsync(board, device.Id(), [(kept, EntryKind.Photo, EntryBody.Of(("about", id), ("type", clean.Kind.MediaType()), ("bytes", clean.Bytes.Length), ("width", clean.Width), ("height", clean.Height)))], clock, cancel);
        return Results.LocalRedirect($"/option/{id}");
    }

    static RazorComponentResult<TroublePage> Refused(int status, string reason, string remedy) =>
        new(new Dictionary<string, object?> { ["Title"] = "The photo was not kept", ["Reason"] = reason, ["Remedy"] = remedy }) { StatusCode = status };

    /// <summary>The readings of a question or a day as `coolproof export` writes them.</summary>
    static IResult Table(Guid about, NotebookBoard board, ThisDevice device)
    {
        var notebook = board.Notebook;
        if (JudgeTask.Of(notebook, about, 1) is not { } task) return Results.LocalRedirect($"/question/{about}");
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        Notebook.ReadingsTableWriter.Write(task.Table.Table, text, device.Look.Temperature);
        return Results.File(Encoding.UTF8.GetBytes(text.ToString()), "text/csv; charset=utf-8", "readings.csv");
    }

    static IResult Look([FromForm] IFormCollection form, ThisDevice device)
    {
        string One(string name, params string[] allowed) => allowed.Contains(form[name].ToString()) ? form[name].ToString() : allowed[0];
        device.Id();
        device.Keep(DeviceLook.Cookie, new DeviceLook(
            One("theme", "", "light", "dark", "sun"), One("units", "c", "f") == "f" ? Notebook.TemperatureUnitChoice.Fahrenheit : Notebook.TemperatureUnitChoice.Celsius,
            One("mass", "g", "oz") == "oz", One("hand", "right", "left") == "left").ToString());
        if (form["hide"].ToString() is "yes" or "no") device.Keep(ThisDevice.HideCookie, form["hide"].ToString());
        return Back(form, "/settings");
    }

    static IResult Earlier([FromForm] IFormCollection form, ThisDevice device)
    {
        device.Keep(ThisDevice.EarlierCookie, form["first"] == "yes" ? "yes" : "no");
        return Back(form, "/");
    }

    static IResult Back(IFormCollection form, string otherwise)
    {
        var back = form["back"].ToString();
        return Results.LocalRedirect(back.StartsWith('/') && !back.StartsWith("//", StringComparison.Ordinal) && !back.Contains('\\') ? back : otherwise);
    }

    static async Task SayAsync(NotebookBoard board, Guid author, IEnumerable<(Guid About, string Kind, EntryBody Body)> said, TimeProvider clock, CancellationToken cancel)
    {
        var now = clock.Now();
        Entry[] entries = [.. said.Select(one => new Forms.Said(one.Kind, one.About, one.Body).At(now))];
        foreach (var batch in entries.Chunk(EntryReader.LargestBatch)) await board.KeepAsync(author, batch, cancel);
    }
}
