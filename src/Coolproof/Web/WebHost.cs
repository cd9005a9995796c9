using System.Net;
using Coolproof.Api;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Loggers;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using Coolproof.Pages.Clock;
using Coolproof.Pages.Forecasts;
using Coolproof.Pages.Gears;
using Coolproof.Pages.Guns;
using Coolproof.Pages.Mounts;
using Coolproof.Pages.Plans;
using Coolproof.Pages.Rehearsals;
using Coolproof.Pages.Spending;
using Coolproof.Pages.Traced;
using Coolproof.Pairing;
using Coolproof.Photos;
using Coolproof.Reports;
using Coolproof.Sensors;
using Coolproof.Store;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.StaticWebAssets;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Coolproof.Web;

/// <summary>The pit table's server: what it is made of, and what answers where.</summary>
internal static class WebHost
{
    const int LargestBody = 9_000_000;

    // A page of parts has them all in its address.
    const int LongestLine = 32_768;

    /// <summary>The server, not yet started. Nothing from outside (files of settings, environment variables) changes it.</summary>
    /// <param name="store">The journal; stays the caller's to close.</param>
    /// <param name="settings">How it is served.</param>
    /// <param name="clock">The server's clock.</param>
    /// <param name="ahead">What is being read of the journal already; null: it is read when the server starts.</param>
    /// <param name="judging">Judges tables; null: <see cref="Judge.Of"/>.</param>
    /// <param name="together">Judges them with those of earlier days; null: <see cref="Judge.Together"/>.</param>
    public static WebApplication Build(JournalStore store, WebSettings settings, TimeProvider clock, Task<NotebookFold>? ahead = null, Judging? judging = null, JudgingTogether? together = null)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions
        {
            ApplicationName = "coolproof", // names the list of static assets, also where a test is the process
            ContentRootPath = AppContext.BaseDirectory,
            EnvironmentName = Environments.Production,
        });
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel => Listen(kestrel, settings));
        StaticWebAssetsLoader.UseStaticWebAssets(builder.Environment, builder.Configuration); // where it was built, not published
        builder.Logging.AddSimpleConsole(console => console.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error) // keys lie in a folder of the person's own
            .AddFilter("Microsoft.AspNetCore.Server.Kestrel", LogLevel.Error);
        AddServices(builder.Services, store, settings, clock);
        builder.Services.AddSingleton(judging ?? ((table, how, progress, cancel) => Judge.Of(table, how, progress, cancel)));
        builder.Services.AddSingleton(together ?? ((table, before, alone, how, progress, cancel) => Judge.Together(table, before, alone, how, progress, cancel)));
        builder.Services.AddSingleton(_ => new NotebookBoard(store, clock, ahead)).AddHostedService(all => all.GetRequiredService<NotebookBoard>());
        var app = builder.Build();
        app.UseResponseCompression();
        app.UseSafeHeaders();
        app.UseTroubles();
        app.UseRouting();
        app.UseGate();
        app.UseMissingPage();
        app.UseAntiforgery();
        Map(app);
        return app;
    }

    static void Listen(KestrelServerOptions kestrel, WebSettings settings)
    {
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxRequestBodySize = LargestBody;
        kestrel.Limits.MaxRequestLineSize = LongestLine;
        void On(int port, Action<ListenOptions> how)
        {
            if (settings.Lan) kestrel.ListenAnyIP(port, how);
            else kestrel.Listen(IPAddress.Loopback, port, how);
        }
        On(settings.Port, _ => { });
        if (settings.Certificate is { } certificate) On(settings.HttpsPort, listen => listen.UseHttps(certificate));
    }

    static void AddServices(IServiceCollection services, JournalStore store, WebSettings settings, TimeProvider clock)
    {
        services.AddSingleton(store).AddSingleton(settings).AddSingleton(clock);
        services.AddSingleton<RunClockFiles>();
        services.AddSingleton<VerdictBoard>().AddHostedService(all => all.GetRequiredService<VerdictBoard>());
        services.AddSingleton<RoundsBoard>();
        services.AddSingleton<ReportBoard>().AddScoped<ReportRoutes.Asking>();
        services.AddSingleton(new PairedDevices(settings.PairedFile, clock)).AddSingleton<PairingCodes>().AddSingleton<HereKey>();
        services.AddSingleton<Thumbnails>();
        SensorListening.Add(services, settings);
        services.AddSingleton(new LoggerFiles(settings.LoggersFolder));
        services.AddResponseCompression(); // pages over plain http; over https a compressed page could leak its secrets (BREACH), and stays as it is
        services.AddRouting().AddHttpContextAccessor().AddOpenApi("v1", Description.Of);
        services.AddDataProtection().SetApplicationName("coolproof").PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(settings.Folder, "keys")));
        services.AddRazorComponents();
        services.AddPages();
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(5));
    }

    static void Map(WebApplication app)
    {
        app.MapStaticAssets().OpenWhatConnectingNeeds();
        app.MapHealth();
        app.MapEntries();
        app.MapLive();
        app.MapSensorLines();
        app.MapTraces();
        app.MapPhotos();
        app.MapVerdicts();
        app.MapRunClock();
        app.MapPairing();
        app.MapPages();
        app.MapPlans();
        app.MapForecasts();
        app.MapMounts();
        app.MapGears();
        app.MapSpending();
        app.MapLogs();
        app.MapGuns();
        app.MapRehearsals();
        app.MapReports();
        app.MapOpenApi("/openapi/{documentName}.json");
        app.MapRazorComponents<App>();
    }
}
