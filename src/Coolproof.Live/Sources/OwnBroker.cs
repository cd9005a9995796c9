using System.Net;
using System.Security.Cryptography;
using System.Text;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace Coolproof.Live.Sources;

/// <summary>The pit table's own broker, for sensors that speak MQTT where nobody has a broker. It takes what is published by who knows its password, and passes nothing on.</summary>
/// <param name="port">Its port.</param>
/// <param name="lan">Whether other machines may connect.</param>
/// <param name="password">Its password; the user's name doesn't matter.</param>
/// <param name="board">Who takes the lines.</param>
/// <param name="clock">The clock.</param>
public sealed class OwnBroker(int port, bool lan, string password, SensorBoard board, TimeProvider clock)
{
    /// <summary>The source's name.</summary>
    public const string Name = "own broker";

    /// <summary>Answers until it is cancelled; where its port is taken, it is tried again and again.</summary>
    public Task RunAsync(CancellationToken cancel) =>
        Listening.AgainAndAgainAsync(board, Name, SourceKind.Broker, clock, _ => AnswerAsync(cancel), cancel);

    /// <returns>Why it doesn't answer; null where it was cancelled.</returns>
    async Task<string?> AnswerAsync(CancellationToken cancel)
    {
        using var server = Server();
        try
        {
            await server.StartAsync();
            board.Tell(Name, SourceKind.Broker, null);
            await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, TaskScheduler.Default);
            await server.StopAsync();
            return null;
        }
        catch (Exception cause) when (cause is System.Net.Sockets.SocketException or IOException)
        {
            return $"Port {port} can't be had: {cause.Message}. Stop what answers there, or choose another one: --broker PORT.";
        }
    }

    MqttServer Server()
    {
        var server = new MqttServerFactory().CreateMqttServer(new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointPort(port)
            .WithDefaultEndpointBoundIPAddress(lan ? IPAddress.Any : IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(lan ? IPAddress.IPv6Any : IPAddress.IPv6Loopback).Build());
        server.ValidatingConnectionAsync += asked =>
        {
            if (!Right(asked.Password)) asked.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
            return Task.CompletedTask;
        };
        server.InterceptingPublishAsync += heard =>
        {
            heard.ProcessPublish = false; // it passes nothing on, and retains nothing
            TopicLines.Hear(board, Name, SourceKind.Broker, heard.ApplicationMessage.Topic, heard.ApplicationMessage.Payload);
            return Task.CompletedTask;
        };
        return server;
    }

    bool Right(string? given) => CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given ?? "")), SHA256.HashData(Encoding.UTF8.GetBytes(password)));
}
