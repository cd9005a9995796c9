using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Coolproof.Notebook.Journal;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;

namespace Coolproof.Loggers;

/// <summary>A logger's file that was brought in: read, kept whole, not yet noted.</summary>
/// <param name="Sha256">Name of its kept file.</param>
/// <param name="Read">What it held.</param>
/// <param name="Wish">What was said of its layout, or remembered from a file with the same header.</param>
/// <param name="Remembered">Whether that was remembered.</param>
internal sealed record BroughtLog(string Sha256, LogRead Read, LayoutWish Wish, bool Remembered)
{
    /// <summary>Reads a file and keeps it.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="folder">Where traces lie.</param>
    /// <param name="notebook">Remembers layouts.</param>
    /// <param name="wish">What the person says of the layout; null: nothing.</param>
    /// <param name="cancel">To stop; then nothing is kept.</param>
    /// <exception cref="TraceRefusedException">It can't be read.</exception>
    public static BroughtLog Of(Stream stream, string folder, PitNotebook notebook, LayoutWish? wish, CancellationToken cancel)
    {
        var file = LogFile.Open(stream);
        var remembered = wish is null ? Remembers(file.Head, notebook) : null;
        var layout = LayoutGuess.Of(file.Head, wish ?? remembered);
        using var writer = new TraceWriter(folder, layout);
        var read = file.Read(layout, writer.Take, Math.Clamp(Environment.ProcessorCount, 1, 4), cancel);
        return new BroughtLog(writer.Done(), read, wish ?? remembered ?? new LayoutWish(), remembered is not null);
    }

    /// <summary>The entry's fields.</summary>
    /// <param name="day">The day.</param>
    /// <param name="name">Name of the file.</param>
    public EntryBody Body(Guid day, string name) => EntryBody.Of(
        ("name", name), ("day", day), ("sha256", Sha256), ("header", HeaderOf(Read.Layout.Header)), ("layout", JsonSerializer.Serialize(Wish, WishJson.Default.LayoutWish)),
        ("rows", (double)Read.Rows), ("problems", (double)Read.Problems.Count));

    /// <summary>A header's hash.</summary>
    public static string HeaderOf(string header) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(header)));

    // The latest trace with the same names in the same order says how such files are read.
    static LayoutWish? Remembers(FileHead head, PitNotebook notebook)
    {
        string header;
        try
        {
            header = HeaderOf(LayoutGuess.Of(head, new LayoutWish(StepS: 1)).Header);
        }
        catch (TraceRefusedException)
        {
            return null;
        }
        var last = notebook.Traces.Where(trace => trace.Header == header && trace.Layout is not null).OrderBy(trace => trace.Since).LastOrDefault();
        if (last is null) return null;
        try
        {
            return JsonSerializer.Deserialize(last.Layout!, WishJson.Default.LayoutWish);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>How a layout is remembered.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(LayoutWish))]
internal sealed partial class WishJson : JsonSerializerContext;
