using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Coolproof.Json;

/// <summary>Serialisation written when the program is built, so that starting up costs no reflection.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CompareJson))]
internal sealed partial class CompareJsonContext : JsonSerializerContext
{
    /// <summary>Readable by people too: letters such as ° and é stand as they are.</summary>
    public static CompareJsonContext Printed { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
