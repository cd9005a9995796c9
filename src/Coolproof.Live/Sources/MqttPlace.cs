using System.Globalization;

namespace Coolproof.Live.Sources;

/// <summary>Topics of a broker as they are typed: [USER@]HOST[:PORT]/TOPIC. The password stands elsewhere, where nobody else sees it.</summary>
/// <param name="Host">The broker.</param>
/// <param name="Port">Its port.</param>
/// <param name="Topic">Topics, with + for one level and # for all below.</param>
/// <param name="User">Who logs in; null for nobody.</param>
public sealed record MqttPlace(string Host, int Port, string Topic, string? User)
{
    /// <summary>Port where none is given (MQTT 3.1.1, section 4.2; registered with IANA).</summary>
    public const int UsualPort = 1883;

    /// <summary>The source's name.</summary>
    public string Name => $"mqtt {Host}{(Port == UsualPort ? "" : string.Create(CultureInfo.InvariantCulture, $":{Port}"))}/{Topic}";

    /// <summary>Reads it.</summary>
    /// <returns>The place, or a sentence that says what is wrong.</returns>
    public static (MqttPlace? Place, string? Problem) Of(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var slash = typed.IndexOf('/', StringComparison.Ordinal);
        if (slash <= 0 || typed.Contains("://", StringComparison.Ordinal)) return (null, $"\"{typed}\" names no topic: write HOST:PORT/TOPIC, such as 192.168.1.5:1883/bench/#.");
        var (whole, topic) = (typed[..slash], typed[(slash + 1)..]);
        if (TopicProblem(topic) is { } wrong) return (null, $"\"{typed}\": {wrong}");
        var at = whole.LastIndexOf('@');
        var (user, address) = at < 0 ? (null, whole) : (whole[..at], whole[(at + 1)..]);
        if (user?.Contains(':', StringComparison.Ordinal) == true) return (null, "A password doesn't belong on the command line, where others can see it: put it into the variable COOLPROOF_MQTT_PASSWORD.");
        var colon = address.EndsWith(']') ? -1 : address.LastIndexOf(':');
        var host = colon < 0 ? address : address[..colon];
        if (host.Length == 0 || user?.Length == 0) return (null, $"\"{typed}\" names no broker: write HOST:PORT/TOPIC.");
        if (colon < 0) return (new(host, UsualPort, topic, user), null);
        return int.TryParse(address[(colon + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port is >= 1 and <= 65535
            ? (new(host, port, topic, user), null) : (null, $"\"{typed}\" has no port after the colon: 1 to 65535.");
    }

    // MQTT 3.1.1, section 4.7.1: # only as the last level, + only as a whole one.
    static string? TopicProblem(string topic)
    {
        if (topic.Length is 0 or > 1000) return "a topic has 1 to 1000 letters.";
        var levels = topic.Split('/');
        for (var i = 0; i < levels.Length; i++)
        {
            if (levels[i].Contains('#', StringComparison.Ordinal) && (levels[i] != "#" || i < levels.Length - 1)) return "# stands only for all that is below, as the last level: bench/#.";
            if (levels[i].Contains('+', StringComparison.Ordinal) && levels[i] != "+") return "+ stands only for a whole level: bench/+/can.";
        }
        return null;
    }
}
