using System.Globalization;
using System.Text;

namespace Coolproof.Traces.Import;

/// <summary>What the person says of a file's layout; the rest is guessed.</summary>
/// <param name="Time">Name of the column of time, or its number from 1.</param>
/// <param name="TimeForm">How time is written.</param>
/// <param name="StepS">Seconds between rows, where no time is written.</param>
/// <param name="Order">Order of a date's parts.</param>
/// <param name="Units">Units of channels by their names.</param>
/// <param name="Only">Names of the channels that are taken; null: all.</param>
public sealed record LayoutWish(
    string? Time = null, TimeForm? TimeForm = null, double? StepS = null, DateOrder? Order = null, IReadOnlyDictionary<string, string>? Units = null, IReadOnlyCollection<string>? Only = null);

/// <summary>Guesses how a logger's file is laid out, from its first lines.</summary>
public static class LayoutGuess
{
    /// <summary>The layout.</summary>
    /// <param name="head">First lines of the file.</param>
    /// <param name="wish">What is known better; null: nothing.</param>
    /// <exception cref="TraceRefusedException">No rows of numbers, no time, or a wish that the file can't fulfil.</exception>
    public static TraceLayout Of(FileHead head, LayoutWish? wish = null)
    {
        ArgumentNullException.ThrowIfNull(head);
        wish ??= new LayoutWish();
        SampleRows rows = SampleRows.Of(head);
        List<string> guessed = [];
        string[] names = rows.Names(out string[] units);
        (int time, TimeForm form, int date) = TimeIn(rows, names, units, wish, guessed);
        (DateOrder order, bool offset) = Dates(rows, form == TimeForm.DateAndTime ? time : date, wish, guessed);
        IReadOnlyList<LoggedChannel> channels = Channels(rows, names, units, time, date, wish, guessed);
        return new TraceLayout
        {
            Separator = rows.Separator,
            DecimalComma = rows.DecimalComma,
            FirstLine = rows.FirstLine,
            HeaderLine = rows.HeaderLine,
            Columns = rows.Columns,
            TimeColumn = form == TimeForm.EvenSteps ? -1 : time,
            DateColumn = date,
            TimeForm = form,
            DateOrder = order,
            HasOffset = offset,
            StepS = wish.StepS ?? 0,
            Channels = channels,
            Header = rows.HeaderLine == 0 ? "" : string.Join('|', rows.HeaderCells),
            Guessed = guessed,
        };
    }

    static (int Column, TimeForm Form, int Date) TimeIn(SampleRows rows, string[] names, string[] units, LayoutWish wish, List<string> guessed)
    {
        if (wish.StepS is { } step)
        {
            if (!(step > 0 && step <= 86_400)) throw Refused(0, "", string.Create(CultureInfo.InvariantCulture, $"a step of {step} s between rows"), "more than 0 and at most a day");
            return (-1, TimeForm.EvenSteps, -1);
        }
        int column = wish.Time is { } asked ? Named(asked, names, rows.HeaderLine) : BestTime(rows, names);
        if (column < 0) throw Refused(rows.FirstLine, "", $"no column that could be time among {List(names)}", "a column of time; name it, or say the seconds between rows");
        TimeForm form = wish.TimeForm ?? FormOf(rows, column, names[column], units[column], guessed);
        int date = form == TimeForm.Clock ? Enumerable.Range(0, rows.Columns).FirstOrDefault(c => c != column && rows.All(c, cell => IsDate(cell, timed: false)), -1) : -1;
        return (column, form, date);
    }

    static int Named(string asked, string[] names, int headerLine)
    {
        int column = Array.FindIndex(names, name => string.Equals(name, asked.Trim(), StringComparison.OrdinalIgnoreCase));
        if (column < 0 && int.TryParse(asked, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1 && number <= names.Length) column = number - 1;
        return column >= 0 ? column : throw Refused(headerLine, asked, "no such column", $"one of {List(names)}, or its number from 1");
    }

    static int BestTime(SampleRows rows, string[] names)
    {
        int best = -1;
        double most = 0;
        for (int c = 0; c < rows.Columns; c++)
        {
            bool clock = rows.All(c, IsClock), dated = rows.All(c, cell => IsDate(cell, timed: true)), rising = rows.Rises(c, ColumnName.SaysTime(names[c]) > 0);
            if (!clock && !dated && !rising) continue;
            // Of several the plainest name, then what is no bare number, then the first.
            double worth = 1 + (4 * ColumnName.SaysTime(names[c])) + (dated ? 3 : clock ? 2 : 0) - (0.01 * c);
            if (worth > most) (best, most) = (c, worth);
        }
        return best;
    }

    static TimeForm FormOf(SampleRows rows, int column, string name, string unit, List<string> guessed)
    {
        if (rows.All(column, IsClock)) return TimeForm.Clock;
        if (rows.All(column, cell => IsDate(cell, timed: true) || IsDate(cell, timed: false))) return TimeForm.DateAndTime;
        if (!rows.MostlyNumbers(column)) throw Refused(rows.FirstLine, name, $"“{rows.FirstCell(column)}”", "a time as seconds, h:mm:ss, or a date and time");
        double first = rows.Numbers(column).First(), step = rows.MedianStep(column);
        if (first is > 9e14 and < 5e15) return TimeForm.EpochMicroseconds;
        if (first is > 9e11 and < 5e12) return TimeForm.EpochMilliseconds;
        if (first is > 9e8 and < 5e9 && ColumnName.TimeUnit(unit) is null or TimeForm.Seconds) return TimeForm.EpochSeconds;
        if (ColumnName.TimeUnit(unit) is { } told) return told;
        if (ColumnName.TimeUnit(name) is { } named) return named;
        if (first is > 36_000 and < 60_000 && step < 0.05) return TimeForm.SerialDays;
        bool whole = rows.Numbers(column).All(number => number == Math.Floor(number));
        if (whole && step >= 5)
        {
            guessed.Add($"time in {name} counts in steps of {step.ToString(CultureInfo.InvariantCulture)} without a unit: taken as milliseconds");
            return TimeForm.Milliseconds;
        }
        guessed.Add($"time in {name} has no unit: taken as seconds");
        return TimeForm.Seconds;
    }

    static (DateOrder Order, bool Offset) Dates(SampleRows rows, int column, LayoutWish wish, List<string> guessed)
    {
        if (column < 0) return (DateOrder.YearFirst, false);
        string first = rows.FirstCell(column);
        bool offset = CellTime.OfDate(Encoding.UTF8.GetBytes(first), DateOrder.YearFirst, out bool had) is not null && had;
        if (wish.Order is { } told) return (told, offset);
        DateOrder[] fit = [.. Enum.GetValues<DateOrder>().Where(order => rows.All(column, cell => CellTime.OfDate(Encoding.UTF8.GetBytes(cell), order, out _) is not null))];
        if (fit.Contains(DateOrder.YearFirst) || fit.Length == 0) return (DateOrder.YearFirst, offset);
        if (fit.Length > 1) guessed.Add($"dates such as {first} could begin with the day or the month: taken as the day");
        return (fit[0], offset);
    }

    static IReadOnlyList<LoggedChannel> Channels(SampleRows rows, string[] names, string[] units, int time, int date, LayoutWish wish, List<string> guessed)
    {
        List<LoggedChannel> channels = [];
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        foreach (string only in wish.Only ?? []) Named(only, names, rows.HeaderLine);
        for (int c = 0; c < rows.Columns; c++)
        {
            if (c == time || c == date || (wish.Only is { } only && !only.Any(name => string.Equals(name.Trim(), names[c], StringComparison.OrdinalIgnoreCase)))) continue;
            if (!rows.MostlyNumbers(c))
            {
                if (rows.FirstCell(c).Length > 0) guessed.Add($"{names[c]} holds no numbers and is left out");
                continue;
            }
            string name = names[c];
            for (int n = 2; !taken.Add(name); n++) name = $"{names[c]} {n}";
            string word = wish.Units?.FirstOrDefault(pair => string.Equals(pair.Key.Trim(), names[c], StringComparison.OrdinalIgnoreCase)).Value ?? units[c];
            ChannelUnit? unit = ChannelUnit.Of(word);
            if (unit is null && word.Length == 0 && ChannelUnit.Suggested(names[c]) is { } suggested)
            {
                unit = suggested;
                guessed.Add($"{name} has no unit: taken as {suggested.Name}");
            }
            channels.Add(new LoggedChannel(c, name, unit ?? ChannelUnit.None with { Name = word }));
        }
        return channels.Count > 0 ? channels : throw Refused(rows.FirstLine, "", "no column of numbers beside the time", "at least one channel");
    }

    internal static bool IsClock(string cell) => cell.Contains(':') && CellTime.OfClock(Encoding.UTF8.GetBytes(cell)) is not null;

    internal static bool IsDate(string cell, bool timed) =>
        cell.Contains(':') == timed && Enum.GetValues<DateOrder>().Any(order => CellTime.OfDate(Encoding.UTF8.GetBytes(cell), order, out _) is not null);

    static string List(string[] names) => string.Join(", ", names.Take(20)) + (names.Length > 20 ? ", …" : "");

    static TraceRefusedException Refused(int line, string column, string found, string expected) => new(new TraceProblem(line, column, found, expected));
}
