namespace Coolproof.Traces.Import;

/// <summary>How a logger writes time.</summary>
public enum TimeForm
{
    /// <summary>Seconds from its start.</summary>
    Seconds,
    /// <summary>Milliseconds from its start.</summary>
    Milliseconds,
    /// <summary>Microseconds from its start.</summary>
    Microseconds,
    /// <summary>Minutes from its start.</summary>
    Minutes,
    /// <summary>Hours from its start.</summary>
    Hours,
    /// <summary>Days from its start, or the share of a day.</summary>
    Days,
    /// <summary>h:mm:ss with parts of a second, or mm:ss, from its start or of the day.</summary>
    Clock,
    /// <summary>Date and time.</summary>
    DateAndTime,
    /// <summary>Days since 1899-12-30, as spreadsheets write dates (ISO/IEC 29500-1, 18.17.4.1).</summary>
    SerialDays,
    /// <summary>Seconds since 1970-01-01 UTC.</summary>
    EpochSeconds,
    /// <summary>Milliseconds since 1970-01-01 UTC.</summary>
    EpochMilliseconds,
    /// <summary>Microseconds since 1970-01-01 UTC.</summary>
    EpochMicroseconds,
    /// <summary>No time is written: rows follow each other at a known interval.</summary>
    EvenSteps,
}

/// <summary>What the times of a trace count from.</summary>
public enum TraceClock
{
    /// <summary>The logger's start, whenever that was.</summary>
    LoggerStart,
    /// <summary>Midnight of an unknown day, local time.</summary>
    Midnight,
    /// <summary>1970-01-01 in the logger's local time.</summary>
    LocalDate,
    /// <summary>1970-01-01 UTC.</summary>
    Utc,
}

/// <summary>Order of the parts of a date.</summary>
public enum DateOrder
{
    /// <summary>Year, month, day (ISO 8601).</summary>
    YearFirst,
    /// <summary>Day, month, year.</summary>
    DayFirst,
    /// <summary>Month, day, year.</summary>
    MonthFirst,
}
