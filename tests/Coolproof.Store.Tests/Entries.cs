using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Store.Tests;

/// <summary>Entries for tests.</summary>
internal static class Entries
{
    public static readonly Guid Phone = Id(1, 0);
    public static readonly Guid Run = Id(2, 0);

    /// <summary>A UUIDv7 that tells its maker and number.</summary>
    public static Guid Id(int maker, int number)
    {
        Span<byte> bytes = stackalloc byte[16];
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(bytes, 26_000_000);
        bytes[6] = 0x70;
        bytes[8] = 0x80;
        System.Buffers.Binary.BinaryPrimitives.WriteInt16BigEndian(bytes[9..], (short)(maker % 30_000));
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(bytes[12..], number + (maker / 30_000 << 24));
        return new Guid(bytes, bigEndian: true);
    }

    public static Entry Lap(Guid id, Instant at) => new(id, EntryKind.RunLap, at, Run, null, EntryBody.Empty);

    public static Entry[] Laps(int maker, int count) =>
        [.. Enumerable.Range(1, count).Select(n => Lap(Id(maker, n), Instant.FromUnixTimeMilliseconds(1_780_000_000_000 + n)))];
}
