using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Json;
using NodaTime;

namespace Coolproof.Api;

/// <summary>How a verdict stands, as JSON.</summary>
internal static class VerdictAnswers
{
    static readonly JsonWriterOptions Readable = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>In one line, without the verdict itself: for events.</summary>
    public static string Line(VerdictState state) => Written(writer => Members(writer, state));

    /// <summary>With the verdict as `compare --json` prints it.</summary>
    public static string Whole(VerdictState state, Instant now) => Written(writer =>
    {
        Members(writer, state);
        if (state.Age(now) is { } age) writer.WriteNumber("ageS", Math.Round(age.TotalSeconds));
        if (state.Verdict is not { } verdict) return;
        writer.WriteString("sentence", verdict.Sentence);
        writer.WritePropertyName("verdict");
        writer.WriteRawValue(CompareJson.Text(verdict));
    });

    static void Members(Utf8JsonWriter writer, VerdictState state)
    {
        writer.WriteString("about", state.About);
        writer.WriteString("state", state.Word);
        writer.WriteBoolean("current", state.Current);
        if (state.JudgedAt is { } at) writer.WriteString("judgedAt", at.ToDateTimeUtc());
        if (state.Progress is { } progress)
        {
            writer.WriteString("doing", progress.Doing);
            writer.WriteNumber("fraction", Math.Round(progress.Fraction, 3));
        }
        var (reason, remedy) = state switch
        {
            { Fault: { } fault } => (fault, "Nothing that you noted is lost. Pass these words on to the program's makers."),
            { Judgement: Refused refused } => (refused.Reason, refused.Remedy),
            { Judgement: NotConverged failed } => ($"{failed.Quantity}: {failed.Reason}", failed.Remedy),
            _ => (null, null),
        };
        if (reason is null) return;
        writer.WriteString("reason", reason);
        writer.WriteString("remedy", remedy);
    }

    static string Written(Action<Utf8JsonWriter> members)
    {
        var held = new ArrayBufferWriter<byte>(512);
        using (var writer = new Utf8JsonWriter(held, Readable))
        {
            writer.WriteStartObject();
            members(writer);
            writer.WriteEndObject();
        }
        return Encoding.UTF8.GetString(held.WrittenSpan);
    }
}
