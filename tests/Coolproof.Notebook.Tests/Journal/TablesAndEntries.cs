using System.Text.Json;
using Coolproof.Notebook.Journal;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>A readings table becomes entries, and a notebook a readings table; nothing is lost on the way.</summary>
public sealed class TablesAndEntries
{
    [Fact]
    public void A_table_that_became_entries_and_a_table_again_says_the_same() =>
        TableGen.Table.Sample(table =>
        {
            PitNotebook notebook = PitNotebook.Of(Sent(TableImport.Of(table)));
            NotebookTable back = NotebookTable.Of(notebook);
            string? difference = SameTable.Difference(table, back.Table);
            Assert.True(difference is null, difference);
            Assert.Equal(table.Options, back.Table.Options);
            Assert.Equal(table.Runs.Count, back.Runs.Distinct().Count());
        }, iter: 2000, threads: 2);

    [Fact]
    public void The_same_table_imported_twice_is_one_import()
    {
        ReadingsTable table = TableText.Understood("option,read_c,drive_s\nbare,61.5,360\nfan,50,360\n");
        ReadingsTable same = TableText.Understood("cooling;read_f;drive_min\r\nbare;142.7;6\r\nfan;122;6\r\n");
        IReadOnlyList<Entry> first = TableImport.Of(table), second = TableImport.Of(same);
        Assert.Equal(first, second);
        Assert.NotEqual(first[0].Id, TableImport.Of(TableText.Understood("option,read_c,drive_s\nbare,61.6,360\nfan,50,360\n"))[0].Id);
        PitNotebook notebook = PitNotebook.Of([.. Sent(first), .. Sent(second)]);
        Assert.Equal((2, 2, 1), (notebook.Runs.Count, notebook.Options.Count, notebook.Imports.Count));
    }

    [Fact]
    public void A_second_table_finds_the_options_that_are_there_by_name()
    {
        PitNotebook notebook = PitNotebook.Of(Sent(TableImport.Of(TableText.Understood("option,read_c,drive_s,motor\nbare,61.5,360,stock\n"))));
        IReadOnlyList<Entry> more = TableImport.Of(TableText.Understood("option,read_c,drive_s,motor\nBare,60,360,Stock\nfan,50,360,stock\n"), notebook);
        PitNotebook both = PitNotebook.Of([.. Sent(TableImport.Of(TableText.Understood("option,read_c,drive_s,motor\nbare,61.5,360,stock\n"))), .. Sent(more)]);
        Assert.Equal(["bare", "fan"], both.Options.Select(option => option.Name));
        Assert.Single(both.Motors);
        Assert.Equal(["bare", "fan"], NotebookTable.Of(both).Table.Options);
    }

    [Fact]
    public void What_is_said_on_a_phone_goes_before_what_was_imported()
    {
        IReadOnlyList<Entry> import = TableImport.Of(TableText.Understood("option,read_c,drive_s\nbare,61.5,360\n"));
        Guid run = import.First(entry => entry.Kind == EntryKind.RunSet).About;
        StoredEntry later = JournalGen.Stored(1, EntryKind.RunSet, run, 0, null, 0, ("driveS", 355));
        Assert.Equal(355, NotebookTable.Of(PitNotebook.Of([later, .. Sent(import)])).Table.Runs.Single().DriveS);
    }

    [Fact]
    public void Every_entry_of_an_import_is_valid_by_the_format() =>
        TableGen.Table.Sample(table =>
        {
            EntryBatchRead read = EntryReader.ReadBatch(Batch(TableImport.Of(table)));
            Assert.True(read.Understood, string.Join("; ", read.Faults));
        }, iter: 500, threads: 2);

    // As they come back from a store: through JSON and in any order.
    private static StoredEntry[] Sent(IReadOnlyList<Entry> entries)
    {
        EntryBatch batch = EntryReader.ReadBatch(Batch(entries)).Batch!;
        StoredEntry[] stored = [.. batch.Entries.Select((entry, i) => new StoredEntry(entry, batch.Device, i + 1, entry.At))];
        new Random(stored.Length).Shuffle(stored);
        return stored;
    }

    private static byte[] Batch(IReadOnlyList<Entry> entries)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream))
        {
            writer.WriteStartObject();
            writer.WriteString("device", Taps.Id(10));
            writer.WriteStartArray("entries");
            foreach (Entry entry in entries) EntryWriter.Write(writer, entry);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return stream.ToArray();
    }
}
