using System.Net.Http.Json;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Pairing;
using Coolproof.Store;
using Coolproof.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Coolproof.Tests.Serving;

/// <summary>The real server on a free port of this machine, with a notebook of its own, in this process.</summary>
sealed class PitServer : IAsyncDisposable
{
    readonly string folder;

    PitServer(string folder, JournalStore store, WebApplication app)
    {
        (this.folder, Store, App) = (folder, store, app);
        Address = new Uri(ServedAt.Of(app.Services).Here);
        Stranger = Client();
        Paired = Client();
        Paired.DefaultRequestHeaders.Add("Cookie", CookieOf("test"));
    }

    /// <summary>The store.</summary>
    public JournalStore Store { get; }

    /// <summary>The application.</summary>
    public WebApplication App { get; }

    /// <summary>Where it answers.</summary>
    public Uri Address { get; }

    /// <summary>A client that isn't connected.</summary>
    public HttpClient Stranger { get; }

    /// <summary>A client that is.</summary>
    public HttpClient Paired { get; }

    /// <summary>Path of the notebook, where it is a file.</summary>
    public string File => Path.Combine(folder, "n.coolproof");

    /// <summary>Starts one.</summary>
    /// <param name="change">Changes its settings.</param>
    /// <param name="place">The notebook; null: a fresh file.</param>
    /// <param name="clock">The server's clock; null: the system's.</param>
    /// <param name="ready">Whether to wait until the notebook is read.</param>
    /// <param name="judging">Judges tables; null: the program's own.</param>
    /// <param name="together">Judges them with those of earlier days; null: as in earnest.</param>
    public static async Task<PitServer> StartAsync(Func<WebSettings, WebSettings>? change = null, string? place = null, TimeProvider? clock = null, bool ready = true, Board.Judging? judging = null, Board.JudgingTogether? together = null)
    {
        var folder = Directory.CreateTempSubdirectory("coolproof-").FullName;
        var settings = new WebSettings(0, Lan: false, folder, Path.Combine(folder, "paired.json"));
        var store = await JournalStore.OpenAsync(place ?? Path.Combine(folder, "n.coolproof"), clock);
        var app = WebHost.Build(store, change?.Invoke(settings) ?? settings, clock ?? TimeProvider.System, judging: judging, together: together);
        await app.StartAsync();
        if (ready) await app.Services.GetRequiredService<Board.NotebookBoard>().ReadyAsync();
        return new PitServer(folder, store, app);
    }

    /// <summary>A service of it.</summary>
    public T Get<T>() where T : notnull => App.Services.GetRequiredService<T>();

    /// <summary>A client without a cookie that follows no redirects.</summary>
    public HttpClient Client() => new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = Address };

    /// <summary>A cookie that lets a device in.</summary>
    public string CookieOf(string name) => $"coolproof-key={Get<PairedDevices>().Add(name)}";

    /// <summary>Sends a batch.</summary>
    public Task<HttpResponseMessage> SendAsync(params JsonNode[] entries) => Paired.PostAsJsonAsync("/api/entries", Batch(entries), TestContext.Current.CancellationToken);

    /// <summary>A batch as JSON.</summary>
    public static JsonObject Batch(params JsonNode[] entries) => new() { ["device"] = Device.ToString(), ["sentAt"] = "2026-06-13T15:05:12.345Z", ["entries"] = new JsonArray(entries) };

    /// <summary>The device that sends.</summary>
    public static Guid Device { get; } = Guid.CreateVersion7();

    /// <summary>An entry as JSON.</summary>
    public static JsonObject Entry(string kind, Guid about, JsonObject? body = null, string at = "2026-06-13T15:05:12.345Z", Guid? id = null) => new()
    {
        ["id"] = (id ?? Guid.CreateVersion7()).ToString(),
        ["kind"] = kind,
        ["at"] = at,
        ["about"] = about.ToString(),
        ["corrects"] = null,
        ["body"] = body ?? [],
    };

    /// <summary>An answer as JSON.</summary>
    public static async Task<JsonNode> JsonAsync(HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        return JsonNode.Parse(text) ?? throw new JsonException(text);
    }

    public async ValueTask DisposeAsync()
    {
        Stranger.Dispose();
        Paired.Dispose();
        await App.StopAsync();
        await App.DisposeAsync();
        await Store.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}
