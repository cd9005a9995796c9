using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Web;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace Coolproof.Commands;

/// <summary>`coolproof serve` from the store to the end.</summary>
internal sealed class Serving(Terminal terminal)
{
    /// <summary>Serves until it is stopped.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> RunAsync(ServeRequest request, CancellationToken cancel)
    {
        try
        {
            var folder = DataFolder.Of(Environment.GetEnvironmentVariable);
            await using var store = await JournalStore.OpenAsync(request.Store ?? Path.Combine(folder, "notebook.coolproof"), TimeProvider.System, cancel);
            await using var app = WebHost.Build(store, new WebSettings(request.Port, request.Lan, folder), TimeProvider.System);
            await app.StartAsync(cancel);
            var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First().Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal);
            terminal.Out.Write($"The pit table: {address}\nThe notebook:  {store.Says}\nIt answers until you stop it with Ctrl+C; what was tapped is kept.\n");
            terminal.Out.Flush();
            if (request.OpenBrowser) Browser.Open(address, Environment.GetEnvironmentVariable);
            await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, TaskScheduler.Default);
            await app.StopAsync(CancellationToken.None);
            return Exit.Done;
        }
        catch (StoreException cause)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Reason)} {Cells.Clean(cause.Remedy)}");
            return cause.Fault is StoreFault.BadPlace ? Exit.BadInput : Exit.Failed;
        }
        catch (IOException cause) when (cause.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            terminal.Error.WriteLine($"coolproof: something answers on port {request.Port} already, perhaps another pit table. Stop it, or choose another port: coolproof serve --port 0 takes any free one.");
            return Exit.Failed;
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or System.Net.Sockets.SocketException)
        {
            terminal.Error.WriteLine($"coolproof: the pit table can't be served: {Cells.Clean(cause.Message)}");
            return Exit.Failed;
        }
    }
}
