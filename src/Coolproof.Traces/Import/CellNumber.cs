using System.Buffers.Text;
using System.Runtime.CompilerServices;

namespace Coolproof.Traces.Import;

/// <summary>
/// Numbers straight from the bytes of a file. Digits are gathered in a whole number; up to 2^53 and 10^22 one division of two exact doubles is the correctly rounded value
/// (Clinger 1990, "How to read floating point numbers accurately", the fast path); what is longer goes to the runtime's own reader.
/// </summary>
static class CellNumber
{
    const ulong Exact = 1UL << 53;
    const int LongestCell = 64;

    static readonly double[] Tens = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    /// <summary>
    /// Reads a plain number (sign, digits, decimal mark, digits) that begins at a place and ends where something else begins. The bytes must end with a line end, which stops it.
    /// </summary>
    /// <param name="at">Where it begins.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="value">The number.</param>
    /// <param name="decimals">How many digits follow the decimal mark.</param>
    /// <returns>How many bytes it has; 0 where no plain number stands, or it is too long for the fast path.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Plain(ref byte at, byte mark, out double value, out int decimals)
    {
        int i = 0;
        bool negative = at == (byte)'-';
        if (negative) i = 1;
        ulong digits = 0;
        int begin = i;
        uint digit;
        while ((digit = (uint)(Unsafe.Add(ref at, i) - '0')) <= 9)
        {
            digits = (digits * 10) + digit;
            i++;
        }
        int count = i - begin;
        decimals = 0;
        if (Unsafe.Add(ref at, i) == mark)
        {
            int point = ++i;
            while ((digit = (uint)(Unsafe.Add(ref at, i) - '0')) <= 9)
            {
                digits = (digits * 10) + digit;
                i++;
            }
            decimals = i - point;
            count += decimals;
        }
        value = 0;
        // 19 digits can't overflow, more might.
        if (count is 0 or > 19 || digits > Exact) return 0;
        value = decimals == 0 ? digits : digits / Tens[decimals];
        if (negative) value = -value;
        return i;
    }

    /// <summary>Reads a whole cell, blanks cut off: also with a plus sign, exponent, the other decimal mark or very many digits.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="value">The number.</param>
    /// <param name="decimals">How many digits follow the decimal mark; −1 where its exponent makes that no measure.</param>
    public static bool TryCell(ReadOnlySpan<byte> cell, byte mark, out double value, out int decimals)
    {
        value = 0;
        decimals = -1;
        if (cell.Length is 0 or > LongestCell) return false;
        Span<byte> text = stackalloc byte[LongestCell];
        int point = -1, exponent = -1;
        if (cell[0] == '+')
        {
            cell = cell[1..];
            if (cell.Length == 0 || cell[0] is (byte)'+' or (byte)'-') return false;
        }
        for (int i = 0; i < cell.Length; i++)
        {
            byte b = cell[i];
            bool sign = b is (byte)'+' or (byte)'-' && (i == 0 || i == exponent + 1);
            if (b == mark && point < 0 && exponent < 0) (point, b) = (i, (byte)'.');
            else if (b is (byte)'e' or (byte)'E' && exponent < 0) exponent = i;
            else if (!sign && b is < (byte)'0' or > (byte)'9') return false;
            text[i] = b;
        }
        if (exponent < 0) decimals = point < 0 ? 0 : cell.Length - point - 1;
        return Utf8Parser.TryParse(text[..cell.Length], out value, out int used, exponent < 0 ? 'F' : 'E') && used == cell.Length && double.IsFinite(value);
    }
}
