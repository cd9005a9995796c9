using System.Net;
using Coolproof.Api;
using Coolproof.Board;
using Coolproof.Pages;
using Coolproof.Store;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;

namespace Coolproof.Web;

/// <summary>The pit table's server: what it is made of, and what answers where.</summary>
internal static class WebHost
{
    /// <summary>The server, not yet started. Nothing from outside (files of settings, environment variables) changes it.</summary>
    /// <param name="store">The journal; stays the caller's to close.</param>
    /// <param name="settings">How it is served.</param>
    /// <param name="clock">The server's clock.</param>
    public static WebApplication Build(JournalStore store, WebSettings settings, TimeProvider clock)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = "coolproof", // names the list of static assets, also where a test is the process
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Listen(settings.Lan ? IPAddress.Any : IPAddress.Loopback, settings.Port);
        });
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration); // where it was built, not published
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error); // keys lie in a folder of the person's own, as said
        var services = builder.Services;
        services.AddSingleton(store).AddSingleton(settings).AddSingleton(clock);
        services.AddSingleton<NotebookBoard>().AddHostedService(board => board.GetRequiredService<NotebookBoard>());
        services.AddRouting().AddHttpContextAccessor();
        services.AddDataProtection().SetApplicationName("coolproof").PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(settings.Folder, "keys")));
        services.AddRazorComponents();
        var app = builder.Build();
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapHealth();
        app.MapRazorComponents<App>();
        return app;
    }
}
