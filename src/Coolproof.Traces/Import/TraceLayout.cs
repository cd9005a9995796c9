namespace Coolproof.Traces.Import;

/// <summary>A channel that is taken from a logger's file.</summary>
/// <param name="Column">Its column, from 0.</param>
/// <param name="Name">Its name.</param>
/// <param name="Unit">The unit that it is written in.</param>
public sealed record LoggedChannel(int Column, string Name, ChannelUnit Unit);

/// <summary>How the rows of a logger's file are laid out. Guessed by <see cref="LayoutGuess"/>, put right by the person, remembered by the header.</summary>
public sealed record TraceLayout
{
    /// <summary>Between cells: comma, semicolon, tab or bar.</summary>
    public required char Separator { get; init; }
    /// <summary>Whether numbers have a decimal comma.</summary>
    public bool DecimalComma { get; init; }
    /// <summary>Line of the first row of values, from 1.</summary>
    public required int FirstLine { get; init; }
    /// <summary>Line of the names, from 1; 0 when there is none.</summary>
    public int HeaderLine { get; init; }
    /// <summary>How many columns a row has.</summary>
    public required int Columns { get; init; }
    /// <summary>Column of time, from 0; −1 with <see cref="TimeForm.EvenSteps"/>.</summary>
    public required int TimeColumn { get; init; }
    /// <summary>Column of the date where it stands apart from the time of day; −1 when it doesn't.</summary>
    public int DateColumn { get; init; } = -1;
    /// <summary>How time is written.</summary>
    public required TimeForm TimeForm { get; init; }
    /// <summary>Order of a date's parts.</summary>
    public DateOrder DateOrder { get; init; }
    /// <summary>Whether dates carry their offset from UTC.</summary>
    public bool HasOffset { get; init; }
    /// <summary>Seconds between rows with <see cref="TimeForm.EvenSteps"/>.</summary>
    public double StepS { get; init; }
    /// <summary>Channels that are taken.</summary>
    public required IReadOnlyList<LoggedChannel> Channels { get; init; }
    /// <summary>The names as they stand in the header, joined by bars: by them a layout is remembered. Empty without a header.</summary>
    public string Header { get; init; } = "";
    /// <summary>What was guessed and may be wrong, in words for the person.</summary>
    public IReadOnlyList<string> Guessed { get; init; } = [];

    /// <summary>What its times count from.</summary>
    public TraceClock Clock => TimeForm switch
    {
        TimeForm.Clock => DateColumn >= 0 ? TraceClock.LocalDate : TraceClock.Midnight,
        TimeForm.DateAndTime or TimeForm.SerialDays => HasOffset ? TraceClock.Utc : TraceClock.LocalDate,
        TimeForm.EpochSeconds or TimeForm.EpochMilliseconds or TimeForm.EpochMicroseconds => TraceClock.Utc,
        _ => TraceClock.LoggerStart,
    };
}
