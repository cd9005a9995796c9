namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Merges bodies field by field: the latest that names a field counts.</summary>
internal static class FieldMerge
{
    /// <summary>Merges lines that stand in the order of <see cref="Line.Order"/>.</summary>
    /// <param name="ranked">Groups of lines; a later group goes before an earlier one, whatever the time.</param>
    public static EntryBody Of(params ReadOnlySpan<IEnumerable<Line>> ranked)
    {
        EntryBody? only = null;
        Dictionary<string, object?>? merged = null;
        foreach (IEnumerable<Line> lines in ranked)
        {
            foreach (Line line in lines)
            {
                if (only is null)
                {
                    only = line.Body;
                    continue;
                }

                merged ??= Opened(only);
                foreach ((string name, object? value) in line.Body.Fields) merged[name] = value;
            }
        }

        if (merged is null) return only ?? EntryBody.Empty;
        KeyValuePair<string, object?>[] sorted = [.. merged];
        Array.Sort(sorted, static (a, b) => string.CompareOrdinal(a.Key, b.Key));
        return new EntryBody(sorted);
    }

    private static Dictionary<string, object?> Opened(EntryBody body)
    {
        Dictionary<string, object?> fields = new(body.Count + 4);
        foreach ((string name, object? value) in body.Fields) fields[name] = value;
        return fields;
    }
}
