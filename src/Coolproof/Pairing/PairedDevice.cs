namespace Coolproof.Pairing;

/// <summary>A browser that may see the notebook.</summary>
/// <param name="Id">Its number in the list.</param>
/// <param name="Hash">SHA-256 of its key, hexadecimal; the key itself is only in its cookie.</param>
/// <param name="Name">What the person calls it.</param>
/// <param name="Since">When it was paired.</param>
internal sealed record PairedDevice(Guid Id, string Hash, string Name, DateTimeOffset Since);
