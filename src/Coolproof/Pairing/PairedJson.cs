using System.Text.Json.Serialization;

namespace Coolproof.Pairing;

/// <summary>How paired devices are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(List<PairedDevice>))]
internal sealed partial class PairedJson : JsonSerializerContext;
