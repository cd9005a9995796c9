using Coolproof.Notebook.Journal;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>The notebook does not depend on the order, the number of times, or the portions in which its entries come.</summary>
public sealed class AnyOrder
{
    [Fact]
    public void Entries_in_any_order_doubled_and_in_any_portions_give_the_same_notebook() =>
        Gen.Select(JournalGen.Entries, Gen.Int[0, int.MaxValue]).Sample((entries, seed) =>
        {
            Random chance = new(seed);
            StoredEntry[] shuffled = [.. entries.Concat(entries.Where(_ => chance.Next(3) == 0))];
            chance.Shuffle(shuffled);
            NotebookFold fold = new();
            for (int from = 0; from < shuffled.Length;)
            {
                int count = Math.Min(shuffled.Length - from, 1 + chance.Next(5));
                fold.Add(shuffled[from..(from + count)]);
                from += count;
            }

            Same(PitNotebook.Of(entries), fold.Notebook);
        }, iter: 3000, threads: 2);

    [Fact]
    public void A_merge_of_two_notebooks_is_the_notebook_of_the_union() =>
        Gen.Select(JournalGen.Entries, Gen.Int[0, int.MaxValue]).Sample((entries, seed) =>
        {
            Random chance = new(seed);
            StoredEntry[] a = [.. entries.Where(_ => chance.Next(2) == 0)], b = [.. entries.Where(_ => chance.Next(2) == 0)];
            NotebookFold ab = new(), ba = new();
            ab.Add(a);
            ab.Add(b);
            ba.Add(b);
            ba.Add(a);
            Same(ab.Notebook, ba.Notebook);
            Same(PitNotebook.Of(a.Union(b)), ab.Notebook);
        }, iter: 2000, threads: 2);

    [Fact]
    public void Undo_and_redo_of_any_entry_is_nothing() =>
        Gen.Select(JournalGen.Entries, Gen.Int[0, int.MaxValue]).Sample((entries, pick) =>
        {
            StoredEntry any = entries[pick % entries.Length];
            StoredEntry undo = JournalGen.Stored(90_000, EntryKind.Undo, any.Entry.About, 0, null, 5000, ("of", any.Id));
            StoredEntry redo = JournalGen.Stored(90_001, EntryKind.Undo, any.Entry.About, 0, null, 5001, ("of", undo.Id));
            NotebookFold fold = new();
            string before = NotebookText.Of(fold.Add(entries), history: false);
            Assert.Equal(before, NotebookText.Of(fold.Add([undo, redo]), history: false));
        }, iter: 2000, threads: 2);

    [Fact]
    public void Undo_of_any_entry_that_nobody_refers_to_is_as_if_it_had_not_been_said() =>
        Gen.Select(JournalGen.Entries, Gen.Int[0, int.MaxValue]).Sample((entries, pick) =>
        {
            StoredEntry[] free = [.. entries.Where(entry => entry.Entry.Kind is not (EntryKind.Nudge or EntryKind.Undo) && !entries.Any(other => other.Entry.Corrects == entry.Id || other.Entry.Body.Id("of") == entry.Id || other.Entry.Body.Id("entry") == entry.Id))];
            if (free.Length == 0) return;
            StoredEntry any = free[pick % free.Length];
            StoredEntry undo = JournalGen.Stored(90_000, EntryKind.Undo, any.Entry.About, 0, null, 5000, ("of", any.Id));
            Assert.Equal(
                NotebookText.Of(PitNotebook.Of(entries.Where(entry => entry.Id != any.Id)), history: false),
                NotebookText.Of(PitNotebook.Of([.. entries, undo]), history: false));
        }, iter: 2000, threads: 2);

    private static void Same(PitNotebook a, PitNotebook b) => Assert.Equal(NotebookText.Of(a, history: true), NotebookText.Of(b, history: true));
}
