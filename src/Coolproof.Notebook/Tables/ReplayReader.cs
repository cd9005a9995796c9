namespace Coolproof.Notebook.Tables;

/// <summary>Text whose head was looked at already: the head again, then the rest.</summary>
internal sealed class ReplayReader(string head, TextReader rest) : TextReader
{
    private int _next;

    public override int Read(char[] buffer, int index, int count)
    {
        if (_next == head.Length) return rest.Read(buffer, index, count);
        count = Math.Min(count, head.Length - _next);
        head.CopyTo(_next, buffer, index, count);
        _next += count;
        return count;
    }

    public override int Peek() => _next < head.Length ? head[_next] : rest.Peek();

    public override int Read() => _next < head.Length ? head[_next++] : rest.Read();
}
