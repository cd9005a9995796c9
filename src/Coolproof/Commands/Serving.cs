using System.Globalization;
using System.Security.Cryptography;
using Coolproof.Board;
using Coolproof.Commands.Notebooks;
using Coolproof.Notebook.Journal;
using Coolproof.Pairing;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Web;
using Microsoft.AspNetCore.Connections;

namespace Coolproof.Commands;

/// <summary>`coolproof serve` from the store to the end.</summary>
internal sealed class Serving(Terminal terminal)
{
    static readonly TimeSpan FirstCodeHolds = TimeSpan.FromMinutes(10);

    /// <summary>Serves until it is stopped.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> RunAsync(ServeRequest request, CancellationToken cancel)
    {
        try
        {
            var folder = DataFolder.Of(Environment.GetEnvironmentVariable);
            var settings = Settings(request, folder);
            await using var store = await JournalStore.OpenAsync(StoreOption.Place(request.Store), TimeProvider.System, cancel);
            var ahead = NotebookBoard.ReadAheadAsync(store, cancel); // a large notebook is read while the server is put together
            await using var app = await StartAsync(store, settings, request.Port is null, ahead, cancel);
            Tell(app, store, settings, request.OpenBrowser);
            await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, TaskScheduler.Default);
            await app.StopAsync(CancellationToken.None);
            return Exit.Done;
        }
        catch (StoreException cause)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Reason)} {Cells.Clean(cause.Remedy)}");
            return StoreWork.CodeOf(cause.Fault);
        }
        catch (CryptographicException cause)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Message)}");
            return Exit.BadInput;
        }
        catch (IOException cause) when (cause.InnerException is AddressInUseException)
        {
            terminal.Error.WriteLine($"coolproof: something answers there already, perhaps another pit table: {Cells.Clean(cause.Message)} Stop it, or choose another port: coolproof serve --port 0 takes any free one.");
            return Exit.Failed;
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or System.Net.Sockets.SocketException)
        {
            terminal.Error.WriteLine($"coolproof: the pit table can't be served: {Cells.Clean(cause.Message)}");
            return Exit.Failed;
        }
    }

    static WebSettings Settings(ServeRequest request, string folder)
    {
        var place = StoreOption.Place(request.Store);
        var beside = FoldersBeside.Of(place, folder);
        var paired = StoreOption.IsFile(place) ? Path.GetFullPath(place) + ".paired.json" : Path.Combine(folder, $"paired-{FoldersBeside.Known(place)}.json");
        var port = request.Port ?? WebSettings.UsualPort;
        var settings = new WebSettings(port, request.Lan, folder, paired) { HttpsPort = request.HttpsPort ?? (port == 0 ? 0 : port + 1), TracesFolder = beside.Sensors, LoggersFolder = beside.Loggers, Sensors = request.Sensors };
        if (request.Certificate is { } file) return settings with { Certificate = GivenCertificate.Of(file, request.CertificatePassword) };
        if (!request.Lan) return settings;
        var (authority, server) = OwnCertificates.Of(Path.Combine(folder, "certificates"), OwnAddresses.All(), [OwnAddresses.Name()], TimeProvider.System.GetUtcNow());
        return settings with { Certificate = server, Authority = authority };
    }

    // Nobody named a port: a taken one is no reason to fail.
    static async Task<WebApplication> StartAsync(JournalStore store, WebSettings settings, bool anyPort, Task<NotebookFold>? ahead, CancellationToken cancel)
    {
        var app = WebHost.Build(store, settings, TimeProvider.System, ahead);
        try
        {
            await app.StartAsync(cancel);
            return app;
        }
        catch (IOException cause) when (anyPort && settings.Port != 0 && cause.InnerException is AddressInUseException)
        {
            await app.DisposeAsync();
            return await StartAsync(store, settings with { Port = 0, HttpsPort = 0 }, anyPort, ahead: null, cancel); // the other server may be at the first reading still
        }
        catch
        {
            await app.DisposeAsync();
            throw;
        }
    }

    void Tell(WebApplication app, JournalStore store, WebSettings settings, bool openBrowser)
    {
        var places = ServedAt.Of(app.Services);
        var open = app.Services.GetRequiredService<HereKey>().In(places.Here);
        terminal.Out.Write($"The pit table: {open}\n  (this address lets the browser of this machine in; don't pass it on)\nThe notebook:  {Cells.Clean(store.Says)}\n");
        if (settings.Lan)
        {
            var code = app.Services.GetRequiredService<PairingCodes>().Make(FirstCodeHolds);
            terminal.Out.Write(places.Lan.Count > 0
                ? $"Phones:        {string.Join(" or ", places.Lan.Select(address => address + "/connect"))}\n  code {code.Digits}, once, until {code.Until.ToLocalTime().ToString("HH:mm", CultureInfo.InvariantCulture)}; the page \"Connect a phone\" shows another one and a QR code\n"
                : "Phones:        this machine is in no network yet; the page \"Connect a phone\" says how to make one\n");
        }
        if (settings.Sensors.BrokerPort is { } broker) terminal.Out.Write($"Sensors:       MQTT on port {broker}, any user, password {Cells.Clean(settings.Sensors.BrokerPassword)}\n");
        terminal.Out.Write("It answers until you stop it with Ctrl+C; what was tapped is kept.\n");
        terminal.Out.Flush();
        if (openBrowser) Browser.Open(open, settings.Folder, Environment.GetEnvironmentVariable);
    }
}
