namespace Coolproof.Traces.Import;

/// <summary>Times of a logger's cells, in microseconds from what its <see cref="TraceClock"/> counts from.</summary>
static class CellTime
{
    const double SecondsADay = 86_400;
    // From 1899-12-30 to 1970-01-01 (ISO/IEC 29500-1, 18.17.4.1: serial 25569 is 1970-01-01).
    const double SerialOfEpoch = 25_569;
    // A little over 31,000 years: what lies beyond is no time.
    const double Farthest = 1e18;

    /// <summary>Microseconds of a number by its form; null when it can't be a time.</summary>
    public static long? OfNumber(double value, TimeForm form)
    {
        double us = form switch
        {
            TimeForm.Seconds or TimeForm.EpochSeconds => value * 1e6,
            TimeForm.Milliseconds or TimeForm.EpochMilliseconds => value * 1e3,
            TimeForm.Microseconds or TimeForm.EpochMicroseconds => value,
            TimeForm.Minutes => value * 60e6,
            TimeForm.Hours => value * 3600e6,
            TimeForm.Days => value * SecondsADay * 1e6,
            TimeForm.SerialDays => (value - SerialOfEpoch) * SecondsADay * 1e6,
            _ => double.NaN,
        };
        return Math.Abs(us) < Farthest ? (long)Math.Round(us) : null;
    }

    /// <summary>h:mm:ss.fff, h:mm:ss, mm:ss.f, with AM or PM; decimal comma too. Null when it is none.</summary>
    public static long? OfClock(ReadOnlySpan<byte> cell)
    {
        int half = -1;
        if (cell.Length > 2 && (cell[^1] | 32) == 'm' && (cell[^2] | 32) is 'a' or 'p')
        {
            half = (cell[^2] | 32) == 'p' ? 1 : 0;
            cell = cell[..^2].TrimEnd((byte)' ');
        }
        Span<long> parts = stackalloc long[3];
        int count = 0;
        while (count < 3)
        {
            if (!Whole(ref cell, 7, out long part)) return null;
            parts[count++] = part;
            if (cell.Length == 0 || cell[0] != ':') break;
            cell = cell[1..];
        }
        if (count < 2 || !Fraction(ref cell, out long us) || cell.Length > 0) return null;
        // h:mm without seconds is only told from m:ss where a half of the day stands beside it.
        (long hours, long minutes, long seconds) = count == 3 ? (parts[0], parts[1], parts[2]) : half >= 0 ? (parts[0], parts[1], 0) : (0, parts[0], parts[1]);
        if (seconds > 60 || (count == 3 && minutes > 59)) return null;
        if (half >= 0)
        {
            if (hours is < 1 or > 12) return null;
            hours = (hours % 12) + (12 * half);
        }
        return (((((hours * 60) + minutes) * 60) + seconds) * 1_000_000) + us;
    }

    /// <summary>A date and time, or a date alone; with its offset from UTC taken off where one stands. Null when it is none.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="order">Order of the date's parts.</param>
    /// <param name="hadOffset">Whether an offset stood there.</param>
    public static long? OfDate(ReadOnlySpan<byte> cell, DateOrder order, out bool hadOffset)
    {
        hadOffset = false;
        if (DayOf(ref cell, order) is not { } day) return null;
        long us = day * 86_400_000_000L;
        if (cell.Length == 0) return us;
        if (cell[0] is not ((byte)' ' or (byte)'T' or (byte)'t')) return null;
        cell = cell[1..];
        int sign = cell.IndexOfAny((byte)'+', (byte)'-', (byte)'Z');
        long offset = 0;
        if (sign >= 0)
        {
            if (OffsetUs(cell[sign..]) is not { } found) return null;
            (offset, hadOffset) = (found, true);
            cell = cell[..sign].TrimEnd((byte)' ');
        }
        long? clock = cell.Length == 5 && cell[2] == ':' ? HoursAndMinutes(cell) : OfClock(cell);
        return us + clock - offset;
    }

    static long? HoursAndMinutes(ReadOnlySpan<byte> cell) =>
        Whole(ref cell, 2, out long hours) && hours < 24 && Whole(cell[1..], out long minutes) && minutes < 60 ? ((hours * 60) + minutes) * 60_000_000L : null;

    static bool Whole(ReadOnlySpan<byte> cell, out long value) => Whole(ref cell, 2, out value) && cell.Length == 0;

    static long? DayOf(ref ReadOnlySpan<byte> cell, DateOrder order)
    {
        Span<long> parts = stackalloc long[3];
        for (int i = 0; i < 3; i++)
        {
            if (!Whole(ref cell, 4, out parts[i])) return null;
            if (i == 2) break;
            if (cell.Length == 0 || cell[0] is not ((byte)'-' or (byte)'/' or (byte)'.')) return null;
            cell = cell[1..];
        }
        (long year, long month, long date) = order switch
        {
            DateOrder.YearFirst => (parts[0], parts[1], parts[2]),
            DateOrder.DayFirst => (parts[2], parts[1], parts[0]),
            _ => (parts[2], parts[0], parts[1]),
        };
        if (year < 100) year += 2000;
        if (year is < 1970 or > 9999 || month is < 1 or > 12 || date < 1 || date > DateTime.DaysInMonth((int)year, (int)month)) return null;
        return new DateOnly((int)year, (int)month, (int)date).DayNumber - DateOnly.FromDateTime(DateTime.UnixEpoch).DayNumber;
    }

    static long? OffsetUs(ReadOnlySpan<byte> text)
    {
        if (text.SequenceEqual("Z"u8)) return 0;
        long sign = text[0] == '-' ? -1 : 1;
        ReadOnlySpan<byte> rest = text[1..];
        if (!Whole(ref rest, 2, out long hours) || hours > 18) return null;
        if (rest.Length > 0 && rest[0] == ':') rest = rest[1..];
        long minutes = 0;
        if (rest.Length > 0 && (!Whole(ref rest, 2, out minutes) || minutes > 59 || rest.Length > 0)) return null;
        return sign * ((hours * 60) + minutes) * 60_000_000L;
    }

    static bool Fraction(ref ReadOnlySpan<byte> cell, out long us)
    {
        us = 0;
        if (cell.Length == 0) return true;
        if (cell[0] is not ((byte)'.' or (byte)',')) return false;
        long size = 100_000;
        int i = 1;
        for (; i < cell.Length && cell[i] is >= (byte)'0' and <= (byte)'9'; i++, size /= 10) us += size * (cell[i] - '0');
        cell = cell[i..];
        return i > 1;
    }

    static bool Whole(ref ReadOnlySpan<byte> cell, int most, out long value)
    {
        value = 0;
        int i = 0;
        for (; i < cell.Length && i < most && cell[i] is >= (byte)'0' and <= (byte)'9'; i++) value = (value * 10) + cell[i] - '0';
        cell = cell[i..];
        return i > 0;
    }
}
