using System.Text.Json.Serialization;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Kept;

/// <summary>A channel of a kept trace. Values are kept as written; own value = written × scale + shift.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Unit of own values.</param>
/// <param name="Measures">What it measures.</param>
/// <param name="Scale">Factor from written to own.</param>
/// <param name="Shift">Added after it.</param>
public sealed record KeptChannel(string Name, string Unit, Measured Measures, double Scale, double Shift);

/// <summary>What a kept trace is, as it stands at its end.</summary>
/// <param name="Version">Version of the format.</param>
/// <param name="Clock">What its times count from.</param>
/// <param name="Rows">How many rows there are.</param>
/// <param name="FirstUs">Time of the first, µs.</param>
/// <param name="LastUs">Time of the last, µs.</param>
/// <param name="Channels">The channels.</param>
public sealed record KeptAbout(int Version, TraceClock Clock, long Rows, long FirstUs, long LastUs, IReadOnlyList<KeptChannel> Channels);

/// <summary>Where a block lies in the file.</summary>
/// <param name="Offset">Its first byte.</param>
/// <param name="Bytes">How many it has.</param>
/// <param name="Rows">Its rows.</param>
/// <param name="FirstUs">Time of its first row, µs.</param>
/// <param name="LastUs">Time of its last row, µs.</param>
readonly record struct BlockPlace(long Offset, int Bytes, int Rows, long FirstUs, long LastUs);

/// <summary>How the end of the file is written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UseStringEnumConverter = true)]
[JsonSerializable(typeof(KeptAbout))]
sealed partial class KeptJson : JsonSerializerContext;
