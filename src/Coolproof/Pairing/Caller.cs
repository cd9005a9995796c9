namespace Coolproof.Pairing;

/// <summary>The paired device that a request came from.</summary>
/// <param name="Device">The device.</param>
internal sealed record Caller(PairedDevice Device);
