namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Makes the lines of a thing out of its entries: when each was, and whether it stands.</summary>
internal sealed class Lines(EntryIndex index, Clocks clocks)
{
    private readonly Dictionary<Guid, bool> _live = [];

    /// <summary>Lines in the order of <see cref="Line.Order"/>.</summary>
    public Line[] Of(Guid thing)
    {
        IReadOnlyList<StoredEntry> entries = index.OfThing(thing);
        Line[] lines = new Line[entries.Count];
        for (int i = 0; i < lines.Length; i++) lines[i] = Of(entries[i]);
        Array.Sort(lines, Line.Order);
        return lines;
    }

    private Line Of(StoredEntry stored)
    {
        LineStanding standing = LineStanding.Live;
        long nudgedMs = 0; // whole milliseconds: their sum is the same in any order
        foreach (StoredEntry referring in index.Referring(stored.Id))
        {
            if (!IsLive(referring)) continue;
            if (referring.Entry.Kind == EntryKind.Nudge) nudgedMs += (long)Math.Round((referring.Entry.Body.Number("seconds") ?? 0) * 1000);
            else if (referring.Entry.Kind == EntryKind.Undo) standing = LineStanding.TakenBack;
            else if (standing == LineStanding.Live && Corrects(referring, stored)) standing = LineStanding.Corrected;
        }

        return new Line(stored, clocks.Corrected(stored), nudgedMs / 1000.0, standing);
    }

    // A correction stands in for an entry of its own kind; a nudge moves it and leaves it standing.
    private static bool Corrects(StoredEntry referring, StoredEntry stored) => referring.Entry.Kind == stored.Entry.Kind && referring.Entry.Kind is not (EntryKind.Nudge or EntryKind.Undo);

    // References form trees (circles are left out), walked without recursion: someone may press undo and redo a thousand times.
    private bool IsLive(StoredEntry stored)
    {
        Stack<StoredEntry> open = new();
        open.Push(stored);
        while (open.TryPeek(out StoredEntry? top))
        {
            bool live = true, known = true;
            foreach (StoredEntry referring in index.Referring(top.Id))
            {
                if (referring.Entry.Kind == EntryKind.Nudge || (referring.Entry.Kind != EntryKind.Undo && !Corrects(referring, top))) continue;
                if (!_live.TryGetValue(referring.Id, out bool referringLive))
                {
                    open.Push(referring);
                    known = false;
                }
                else if (referringLive)
                {
                    live = false;
                }
            }

            if (!known) continue;
            _live[top.Id] = live;
            open.Pop();
        }

        return _live[stored.Id];
    }
}
