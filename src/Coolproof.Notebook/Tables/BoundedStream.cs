namespace Coolproof.Notebook.Tables;

/// <summary>Reads a first block again and then the rest of a stream, up to a limit; says whether there was more.</summary>
internal sealed class BoundedStream(ReadOnlyMemory<byte> first, Stream rest, long limit) : Stream
{
    private ReadOnlyMemory<byte> _first = first;
    private long _left = limit;

    /// <summary>Whether the stream went on past the limit.</summary>
    public bool Exceeded { get; private set; }

    public override int Read(Span<byte> buffer)
    {
        if (buffer.IsEmpty || Exceeded) return 0;
        int count;
        if (!_first.IsEmpty)
        {
            count = Math.Min(buffer.Length, _first.Length);
            _first.Span[..count].CopyTo(buffer);
            _first = _first[count..];
        }
        else
        {
            count = rest.Read(buffer);
        }

        Exceeded = count > _left;
        count = (int)Math.Min(count, _left);
        _left -= count;
        return count;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override bool CanRead => true;
    public override bool CanSeek => false;
    public override bool CanWrite => false;
    public override long Length => throw new NotSupportedException();
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
    public override void Flush() { }
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
