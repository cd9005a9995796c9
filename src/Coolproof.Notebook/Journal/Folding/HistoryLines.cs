namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Tells the history of things out of their lines.</summary>
internal static class HistoryLines
{
    public static IReadOnlyList<HistoryLine> Of(IEnumerable<Line> lines)
    {
        List<HistoryLine> history = [];
        Dictionary<(Guid About, string Field), object?> held = [];
        foreach (Line line in lines.DistinctBy(line => line.Id).Order(Line.InOrder))
        {
            EntryBody before = EntryBody.Empty;
            if (line.Kind.EndsWith(".set", StringComparison.Ordinal) || line.Kind == EntryKind.RunBegin)
            {
                Guid about = line.Stored.Entry.About;
                before = EntryBody.Of(line.Body.Names.Where(name => held.ContainsKey((about, name))).Select(name => (name, held[(about, name)])));
                if (line.Live)
                {
                    foreach ((string name, object? value) in line.Body.Fields) held[(about, name)] = value;
                }
            }

            history.Add(new HistoryLine(line.Stored, line.Tapped, line.At, line.Live, Subject.Refers(line.Stored) ?? line.Stored.Entry.Corrects, before));
        }

        return history;
    }
}
