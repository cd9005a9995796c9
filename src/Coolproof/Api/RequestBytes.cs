namespace Coolproof.Api;

/// <summary>The body of a request as bytes, no larger than it may be.</summary>
internal static class RequestBytes
{
    /// <summary>Reads it whole; null when it is larger than allowed.</summary>
    public static async Task<ReadOnlyMemory<byte>?> ReadAsync(HttpRequest request, int largest, CancellationToken cancel)
    {
        if (request.ContentLength > largest) return null;
        using var held = new MemoryStream((int)(request.ContentLength ?? 4096));
        var part = System.Buffers.ArrayPool<byte>.Shared.Rent(16_384);
        try
        {
            int count;
            while ((count = await request.Body.ReadAsync(part, cancel)) > 0)
            {
                if (held.Length + count > largest) return null;
                held.Write(part, 0, count);
            }
        }
        finally
        {
            System.Buffers.ArrayPool<byte>.Shared.Return(part);
        }
        return held.GetBuffer().AsMemory(0, (int)held.Length);
    }
}
