using NodaTime;

namespace Coolproof.Store;

/// <summary>A photo's bytes.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="MediaType">Its media type, such as image/jpeg.</param>
/// <param name="Bytes">Its bytes.</param>
/// <param name="Kept">The server's clock when it was committed.</param>
public sealed record StoredPhoto(Guid Id, string MediaType, byte[] Bytes, Instant Kept);
