using System.Globalization;
using System.Text;
using Coolproof.Traces;

namespace Coolproof.Sensors;

/// <summary>Traces as CSV (RFC 4180): a line per sample, in the order of channels and time.</summary>
internal static class TraceTable
{
    /// <summary>The columns.</summary>
    public const string Header = "time_utc,seconds,source,channel,unit,value,mark";

    /// <summary>Writes it.</summary>
    /// <param name="traces">The traces; values are in the channel's own unit.</param>
    /// <param name="zeroMs">The instant from which seconds are counted, ms since 1970-01-01 UTC: a run's go.</param>
    public static string Of(IReadOnlyList<ChannelTrace> traces, long zeroMs)
    {
        var text = new StringBuilder(Header).Append("\r\n");
        foreach (var trace in traces)
        {
            var (source, name, unit) = (Cell(trace.Channel.Source), Cell(trace.Channel.Name), Cell(trace.Channel.Unit));
            foreach (var sample in trace.Samples)
            {
                var value = sample.Mark == SampleMark.Good ? sample.Value.ToString("R", CultureInfo.InvariantCulture) : "";
                text.Append(CultureInfo.InvariantCulture, $"{DateTime.UnixEpoch.AddMilliseconds(sample.AtMs):yyyy-MM-dd'T'HH:mm:ss.fff'Z'},{(sample.AtMs - zeroMs) / 1000.0:0.000},{source},{name},{unit},{value},{Word(sample.Mark)}\r\n");
            }
        }
        return text.ToString();
    }

    static string Word(SampleMark mark) => mark switch { SampleMark.Good => "", SampleMark.Gap => "gap", _ => "nonsense" };

    static string Cell(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
