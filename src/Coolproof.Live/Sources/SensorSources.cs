namespace Coolproof.Live.Sources;

/// <summary>What the pit table listens to besides what is posted to it.</summary>
/// <param name="Serial">Serial ports.</param>
/// <param name="Mqtt">Topics of brokers.</param>
/// <param name="MqttPassword">Password at these brokers; null for none.</param>
/// <param name="BrokerPort">Port of the own broker; null: there is none.</param>
/// <param name="BrokerPassword">Its password.</param>
public sealed record SensorSources(IReadOnlyList<SerialPlace> Serial, IReadOnlyList<MqttPlace> Mqtt, string? MqttPassword, int? BrokerPort, string BrokerPassword)
{
    /// <summary>Nothing.</summary>
    public static SensorSources None { get; } = new([], [], null, null, "");

    /// <summary>Listens to all of it until it is cancelled.</summary>
    /// <param name="board">Who takes the lines.</param>
    /// <param name="lan">Whether other machines may reach the own broker.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="cancel">Ends it.</param>
    public Task RunAsync(SensorBoard board, bool lan, TimeProvider clock, CancellationToken cancel) => Task.WhenAll(
    [
        .. Serial.Select(place => new SerialSource(place, board, clock).RunAsync(cancel)),
        .. Mqtt.Select(place => new MqttSource(place, MqttPassword, board, clock).RunAsync(cancel)),
        .. BrokerPort is { } port ? [new OwnBroker(port, lan, BrokerPassword, board, clock).RunAsync(cancel)] : Array.Empty<Task>(),
    ]);
}
