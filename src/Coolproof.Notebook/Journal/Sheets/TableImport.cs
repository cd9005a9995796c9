using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Coolproof.Notebook.Tables;
using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal;

/// <summary>
/// Entries that say what a readings table says. Their ids are made from the table's content, so that the same table imported twice, on whatever machine, is one import.
/// </summary>
public sealed class TableImport
{
    // Long before any tap: whatever is said of these things later, on a device, counts.
    private static readonly Instant Long = Instant.FromUtc(2000, 1, 1, 0, 0);

    private readonly List<Entry> _entries = [];
    private readonly ImportedThings _things;
    private readonly byte[] _hash;

    private readonly PitNotebook _into;

    private TableImport(ReadingsTable table, PitNotebook into)
    {
        _into = into;
        _hash = Hash(table);
        _things = new ImportedThings(into, Add, Id);
    }

    /// <summary>The entries.</summary>
    /// <param name="table">A table that was read; a test or race run without a reading can't be imported.</param>
    /// <param name="into">The notebook that it goes into: options, instruments, vehicles, motors and packs of the same name are taken to be the same; null: none.</param>
    /// <param name="fileName">Name of the file, for the list of imports.</param>
    /// <param name="days">Days of the notebook that runs are added to, by the table's names of days; others are made anew.</param>
    /// <exception cref="ArgumentException">A test or race run without a reading.</exception>
    public static IReadOnlyList<Entry> Of(ReadingsTable table, PitNotebook? into = null, string? fileName = null, IReadOnlyDictionary<string, Guid>? days = null)
    {
        ArgumentNullException.ThrowIfNull(table);
        TableImport import = new(table, into ?? PitNotebook.Empty);
        import.Add(EntryKind.Import, import.Id("import"), "import", EntryBody.Of(("name", fileName ?? "readings table"), ("sha256", Convert.ToHexStringLower(import._hash)), ("runs", table.Runs.Count)));
        import.AddAll(table, days ?? new Dictionary<string, Guid>());
        return import._entries;
    }

    private void AddAll(ReadingsTable table, IReadOnlyDictionary<string, Guid> into)
    {
        foreach (string option in table.Options) _things.Option(option);
        bool noneNoted = table.Runs.All(run => run.DriveAssumed);
        int dayNumber = 0;
        IGrouping<string, Run>[] days = [.. table.Runs.GroupBy(run => run.Day)];
        // Dates that not every day has, or that contradict the order of rows, would put the days into another order than the table's.
        LocalDate?[] dates = [.. days.Select(day => day.Min(run => run.StartedAt?.Date))];
        bool dated = Array.TrueForAll(dates, date => date is not null) && dates.SequenceEqual(dates.Order());
        foreach ((IGrouping<string, Run> day, LocalDate? date) in days.Zip(dates))
        {
            int place = 0;
            if (into.TryGetValue(day.Key, out Guid there))
            {
                // Behind the runs that are there, where no clock tells.
                int last = (int)_into.RunsOf(there).Select(run => run.Fields.Number("order") ?? run.Number ?? 0).DefaultIfEmpty().Max();
                foreach (Run run in day) AddRun(run, there, ++place, last);
                continue;
            }
            Guid dayId = Id("day/" + day.Key);
            List<(string, object?)> fields = [("name", day.Key), ("order", ++dayNumber)];
            if (dated && date is { } known) fields.Add(("date", LocalDatePattern.Iso.Format(known)));
            if (noneNoted) fields.Add(("driveS", day.First().DriveS));
            Add(EntryKind.DaySet, dayId, "set/day/" + day.Key, EntryBody.Of(fields));
            foreach (Run run in day) AddRun(run, dayId, ++place);
        }
    }

    private void AddRun(Run run, Guid day, int place, int after = 0)
    {
        // Names are unique within a day by the format; the place keeps runs apart that a program made without.
        string path = $"{run.Day}/{place}/{run.Name}";
        Guid id = Id("run/" + path);
        List<(string, object?)> fields = [("typed", true), ("day", day), ("option", _things.Option(run.Option)), ("name", run.Name), ("order", after + place), .. RunFields.Of(run, _things)];
        if (int.TryParse(run.Name, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number is >= 1 and <= 100_000) fields.Add(("number", number));
        Add(EntryKind.RunSet, id, "set/run/" + path, EntryBody.Of(fields));
        for (int i = 0; i < run.Readings.Count; i++) AddReading(run.Readings[i], id, $"{path}/{i}", i + 1);
    }

    private void AddReading(Reading reading, Guid run, string path, int place)
    {
        Guid shot = Id("shot/" + path);
        List<(string, object?)> fields = [("untimed", true), ("run", run), ("order", place), .. ReadingFields.Of(reading)];
        if (reading.Instrument != "gun") fields.Add(("instrument", _things.Instrument(reading.Instrument)));
        Add(EntryKind.ShotSet, shot, "set/shot/" + path, EntryBody.Of(fields));
        if (reading.ReadC is { } readC) Add(EntryKind.ShotRead, shot, "read/" + path, EntryBody.Of(("shot", shot), ("value", readC), ("unit", "c")));
    }

    private void Add(string kind, Guid about, string path, EntryBody body) =>
        _entries.Add(new Entry(Id("entry/" + path), kind, Long + Duration.FromMilliseconds(_entries.Count), about, null, body));

    // A UUID of version 8 (RFC 9562, 5.8): the application's own, here the table's hash and a path in it.
    private Guid Id(string path)
    {
        byte[] bytes = SHA256.HashData([.. _hash, .. Encoding.UTF8.GetBytes(path)])[..16];
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x80);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }

    // Of what the table says, not of the file's bytes: the same sheet with other line ends or units in its header is the same.
    private static byte[] Hash(ReadingsTable table)
    {
        StringWriter text = new(CultureInfo.InvariantCulture);
        if (table.Runs.Count > 0 && table.Runs.All(run => run.DriveAssumed)) text.Write($"drive {CellWords.Number(table.Runs[0].DriveS)}\n");
        ReadingsTableWriter.Write(table, text);
        return SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString()));
    }
}
