using Coolproof.Live;
using Coolproof.Traces.Live;
using Coolproof.Web;

namespace Coolproof.Sensors;

/// <summary>Listens to the sensors while the pit table is served.</summary>
internal sealed class SensorListening(SensorBoard board, WebSettings settings, TimeProvider clock) : BackgroundService
{
    /// <summary>Adds the board, the traces and the listening.</summary>
    public static void Add(IServiceCollection services, WebSettings settings)
    {
        services.AddSingleton(_ => new TraceFolder(settings.TracesFolder)).AddSingleton<SensorBoard>().AddHostedService<SensorListening>();
    }

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken)
    {
        board.Start();
        return settings.Sensors.RunAsync(board, settings.Lan, clock, stoppingToken);
    }
}
