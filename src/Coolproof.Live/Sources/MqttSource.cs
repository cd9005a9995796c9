using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace Coolproof.Live.Sources;

/// <summary>Listens to topics of a broker, for as long as it is asked to; connects again when the broker was away.</summary>
/// <remarks>
/// Asks for messages at least once (QoS 1) in a session that the broker holds while the connection is away (MQTT 3.1.1, section 3.1.2.4): what senders publish meanwhile
/// comes later, and is taken where it says its time. Without one it would be kept at a time at which nothing was measured.
/// What a broker retained from before is left out: nobody knows how old it is.
/// </remarks>
/// <param name="place">The topics.</param>
/// <param name="password">The user's password; null for none.</param>
/// <param name="board">Who takes the lines.</param>
/// <param name="clock">The clock.</param>
public sealed class MqttSource(MqttPlace place, string? password, SensorBoard board, TimeProvider clock)
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    static readonly TimeSpan HeldFor = TimeSpan.FromSeconds(1); // what a broker held comes at once

    readonly string me = $"coolproof-{Guid.NewGuid():N}"[..23]; // 23 letters is what each broker takes (section 3.1.3.1)

    /// <summary>Listens until it is cancelled.</summary>
    public Task RunAsync(CancellationToken cancel) =>
        Listening.AgainAndAgainAsync(board, place.Name, SourceKind.Mqtt, clock, async backoff => await ListenAsync(backoff, cancel), cancel);

    /// <returns>Why it listens no more.</returns>
    async Task<string> ListenAsync(Backoff backoff, CancellationToken cancel)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        var (held, since) = (false, clock.GetTimestamp());
        var gone = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        client.DisconnectedAsync += lost =>
        {
            gone.TrySetResult(lost.Exception?.Message ?? "The broker ended the connection.");
            return Task.CompletedTask;
        };
        client.ConnectedAsync += connected =>
        {
            (held, since) = (connected.ConnectResult.IsSessionPresent, clock.GetTimestamp());
            return Task.CompletedTask;
        };
        client.ApplicationMessageReceivedAsync += heard =>
        {
            var late = held && clock.GetElapsedTime(since) < HeldFor;
            if (!heard.ApplicationMessage.Retain) TopicLines.Hear(board, place.Name, SourceKind.Mqtt, heard.ApplicationMessage.Topic, heard.ApplicationMessage.Payload, late);
            return Task.CompletedTask;
        };
        try
        {
            var connected = await client.ConnectAsync(Options(), cancel);
            if (connected.ResultCode != MqttClientConnectResultCode.Success) return $"The broker {place.Host} refuses: {connected.ResultCode}. Look at the user's name, and the password in COOLPROOF_MQTT_PASSWORD.";
            var subscribed = await client.SubscribeAsync(place.Topic, MqttQualityOfServiceLevel.AtLeastOnce, cancel);
            if (subscribed.Items.Any(item => item.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2)) return $"The broker {place.Host} gives no {place.Topic}. Look at what the user may read there.";
            board.Tell(place.Name, SourceKind.Mqtt, null);
            backoff.Reset();
            var why = await gone.Task.WaitAsync(cancel);
            return $"The broker {place.Host} is gone: {why} It is tried again and again.";
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            await LeaveAsync(client);
            return "The pit table ends.";
        }
        catch (Exception cause) // whatever a broker does wrong, it must not end the listening
        {
            return $"The broker {place.Host}, port {place.Port}, doesn't answer: {cause.GetBaseException().Message}. It is tried again and again.";
        }
    }

    MqttClientOptions Options()
    {
        var options = new MqttClientOptionsBuilder().WithTcpServer(place.Host, place.Port).WithProtocolVersion(MqttProtocolVersion.V311)
            .WithClientId(me).WithCleanSession(false).WithTimeout(Patience).WithKeepAlivePeriod(TimeSpan.FromSeconds(15));
        return (place.User is null ? options : options.WithCredentials(place.User, password ?? "")).Build();
    }

    static async Task LeaveAsync(IMqttClient client)
    {
        try
        {
            if (client.IsConnected) await client.DisconnectAsync(new MqttClientDisconnectOptionsBuilder().Build(), CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(1));
        }
        catch (Exception cause) when (cause is MqttCommunicationException or TimeoutException or OperationCanceledException)
        {
            // It was going anyway.
        }
    }
}
