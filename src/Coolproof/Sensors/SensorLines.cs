using System.Text;
using System.Text.Json;
using Coolproof.Live.Shown;
using Coolproof.Words;

namespace Coolproof.Sensors;

/// <summary>All sensors at one moment as one line of JSON, for pages that show them: wwwroot/js/live-values.js puts it in place.</summary>
internal static class SensorLines
{
    static readonly JsonWriterOptions Readable = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes it.</summary>
    public static string Of(SensorView view, DegreeWords degrees)
    {
        var held = new System.Buffers.ArrayBufferWriter<byte>(4096);
        using (var writer = new Utf8JsonWriter(held, Readable))
        {
            writer.WriteStartObject();
            writer.WriteString("shape", view.Shape);
            writer.WriteStartArray("channels");
            foreach (var one in view.Channels) Write(writer, one, view.AtMs, degrees);
            writer.WriteEndArray();
            writer.WriteStartArray("sources");
            foreach (var source in view.Sources)
            {
                writer.WriteStartObject();
                writer.WriteString("name", source.Name);
                writer.WriteNumber("lines", source.Lines);
                writer.WriteEndObject();
            }
            writer.WriteEndArray();
            writer.WriteEndObject();
        }
        return Encoding.UTF8.GetString(held.WrittenSpan);
    }

    static void Write(Utf8JsonWriter writer, ShownChannel one, long nowMs, DegreeWords degrees)
    {
        writer.WriteStartObject();
        writer.WriteString("key", one.Channel.Key);
        writer.WriteString("state", StateOf(one));
        writer.WriteString("value", one.Value is { } value ? SensorWords.Number(value, one.Channel.Unit, degrees) : "–");
        writer.WriteNumber("age", one.Value is null ? 0 : Math.Round((nowMs - one.ValueAtMs) / 1000.0, 1));
        writer.WriteString("matter", SensorWords.Matter(one));
        writer.WriteString("span", SensorWords.Span(one, degrees));
        writer.WriteString("breaks", SensorWords.Gaps(one));
        writer.WriteString("line", one.Picture.Line);
        writer.WriteString("gaps", one.Picture.Gaps);
        writer.WriteNumber("count", one.Count);
        writer.WriteEndObject();
    }

    /// <summary>A channel's state as one word: live, nonsense, silent.</summary>
    public static string StateOf(ShownChannel one) => one.State.ToString().ToLowerInvariant();
}
