using System.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>
/// Reads bytes that are no UTF-8 as Windows-1252, the superset of ISO 8859-1 that spreadsheets still write (° is the byte B0); remembers that it had to.
/// </summary>
internal sealed class LegacyLetters : DecoderFallback
{
    private static readonly Encoding Windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)
        ?? throw new InvalidOperationException("Code page 1252 is part of the runtime.");

    /// <summary>Whether any byte but a degree sign was read this way.</summary>
    public bool Used { get; private set; }

    public override int MaxCharCount => 4;

    public override DecoderFallbackBuffer CreateFallbackBuffer() => new Buffer(this);

    private sealed class Buffer(LegacyLetters owner) : DecoderFallbackBuffer
    {
        private string _letters = "";
        private int _next;

        public override int Remaining => _letters.Length - _next;

        public override bool Fallback(byte[] bytesUnknown, int index)
        {
            // A lone degree sign is no doubt worth a word; letters of names may be.
            owner.Used |= bytesUnknown.AsSpan().ContainsAnyExcept((byte)0xB0);
            _letters = Windows1252.GetString(bytesUnknown);
            _next = 0;
            return _letters.Length > 0;
        }

        public override char GetNextChar() => _next < _letters.Length ? _letters[_next++] : '\0';

        public override bool MovePrevious()
        {
            if (_next == 0) return false;
            _next--;
            return true;
        }

        public override void Reset()
        {
            _letters = "";
            _next = 0;
        }
    }
}
