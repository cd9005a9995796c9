using System.CommandLine;
using System.Security.Cryptography;
using Coolproof.Live.Sources;

namespace Coolproof.Commands;

/// <summary>What `coolproof serve` listens to, as it is typed. Passwords stand in the environment: other people of the machine can read a command line.</summary>
internal sealed class SensorOptions
{
    const string MqttPassword = "COOLPROOF_MQTT_PASSWORD";
    const string BrokerPassword = "COOLPROOF_BROKER_PASSWORD";
    const string Letters = "abcdefghijkmnpqrstuvwxyz23456789"; // none that look alike

    /// <summary>Serial ports.</summary>
    public Option<string[]> Serial { get; } = Many("--serial", "DEVICE[@BAUD]", $"Listens to a sensor or receiver at a serial port, {SerialPlace.UsualBaud} baud unless said. May be given several times.", text => SerialPlace.Of(text).Problem);

    /// <summary>Topics of brokers.</summary>
    public Option<string[]> Mqtt { get; } = Many("--mqtt", "[USER@]HOST[:PORT]/TOPIC", $"Listens to topics of a broker; the user's password in the variable {MqttPassword}. May be given several times.", text => MqttPlace.Of(text).Problem);

    /// <summary>The own broker.</summary>
    public QuantityOption Broker { get; } = QuantityOption.Whole("--broker", $"Answers as an MQTT broker on this port; the password in the variable {BrokerPassword}, else one that is made and printed. Otherwise there is none.", 1, 65535);

    /// <summary>What was asked.</summary>
    public SensorSources In(ParseResult parsed, Func<string, string?> variable) => new(
        [.. (parsed.GetValue(Serial) ?? []).Select(text => SerialPlace.Of(text).Place).OfType<SerialPlace>()],
        [.. (parsed.GetValue(Mqtt) ?? []).Select(text => MqttPlace.Of(text).Place).OfType<MqttPlace>()],
        variable(MqttPassword), (int?)Broker.In(parsed), variable(BrokerPassword) is { Length: > 0 } given ? given : RandomNumberGenerator.GetString(Letters, 12));

    static Option<string[]> Many(string name, string example, string description, Func<string, string?> problem)
    {
        var option = new Option<string[]>(name) { HelpName = example, Description = description };
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens)
                if (problem(token.Value) is { } wrong) result.AddError($"{name}: {wrong}");
        });
        return option;
    }
}
