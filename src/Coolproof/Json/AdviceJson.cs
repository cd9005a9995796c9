using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Coolproof.Json;

/// <summary>Serialisation of plans, advice and cool-downs, written when the program is built.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata, PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PlanJson))]
[JsonSerializable(typeof(SteeringJson))]
[JsonSerializable(typeof(CooldownJson))]
[JsonSerializable(typeof(ForecastJson))]
[JsonSerializable(typeof(WhyJson))]
[JsonSerializable(typeof(GearJson))]
[JsonSerializable(typeof(MountJson))]
[JsonSerializable(typeof(SpendJson))]
[JsonSerializable(typeof(GunCorrectJson))]
[JsonSerializable(typeof(GunCheckedJson))]
[JsonSerializable(typeof(GunSpotJson))]
[JsonSerializable(typeof(GunSurfacesJson))]
[JsonSerializable(typeof(GunProbeJson))]
[JsonSerializable(typeof(GunChecksJson))]
[JsonSerializable(typeof(WindingJson))]
internal sealed partial class AdviceJson : JsonSerializerContext
{
    /// <summary>The version of the contracts.</summary>
    public const int CurrentVersion = 1;

    static AdviceJson Printed { get; } = new(new JsonSerializerOptions(CompareJsonContext.Printed.Options));

    /// <summary>As text, with a line end.</summary>
    public static string Text<T>(T value) => JsonSerializer.Serialize(value, (JsonTypeInfo<T>)Printed.GetTypeInfo(typeof(T))!) + "\n";

    /// <summary>A number rounded to decimals; null where it is none.</summary>
    public static double? Rounded(double value, int decimals) => double.IsFinite(value) ? Math.Round(value, decimals, MidpointRounding.AwayFromZero) : null;
}
