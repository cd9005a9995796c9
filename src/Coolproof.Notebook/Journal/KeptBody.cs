using System.Text.Json;

namespace Coolproof.Notebook.Journal;

/// <summary>Reads a body as <see cref="EntryBody.Json"/> writes it, without a document in between: a notebook is read whole whenever it is opened.</summary>
internal static class KeptBody
{
    private static readonly JsonReaderOptions Flat = new() { MaxDepth = 2 };

    /// <summary>Reads a flat object whose names stand in their order.</summary>
    /// <param name="utf8">Its JSON.</param>
    /// <returns>The body; null where it is written another way, or is no such object.</returns>
    /// <exception cref="JsonException">No JSON, or deeper than a list in an object.</exception>
    /// <exception cref="InvalidOperationException">Half a surrogate pair.</exception>
    public static EntryBody? Read(ReadOnlySpan<byte> utf8)
    {
        Utf8JsonReader reader = new(utf8, Flat);
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject) return null;
        List<KeyValuePair<string, object?>> fields = new(4);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            string name = reader.GetString()!;
            if (fields.Count > 0 && string.CompareOrdinal(fields[^1].Key, name) >= 0) return null;
            reader.Read();
            if (!TryValue(ref reader, out object? value)) return null;
            fields.Add(new(name, value));
        }

        // What stands behind the object's end is found by reading on.
        if (reader.Read()) return null;
        return fields.Count == 0 ? EntryBody.Empty : new EntryBody([.. fields]);
    }

    private static bool TryValue(ref Utf8JsonReader reader, out object? value)
    {
        value = null;
        switch (reader.TokenType)
        {
            case JsonTokenType.Null: return true;
            case JsonTokenType.True: value = true; return true;
            case JsonTokenType.False: value = false; return true;
            case JsonTokenType.String: value = reader.GetString(); return true;
            case JsonTokenType.Number when reader.TryGetDouble(out double number) && double.IsFinite(number): value = number + 0.0; return true; // no negative zero
            case JsonTokenType.StartArray: return TryList(ref reader, out value);
            default: return false;
        }
    }

    private static bool TryList(ref Utf8JsonReader reader, out object? value)
    {
        List<string> list = [];
        while (reader.Read() && reader.TokenType == JsonTokenType.String) list.Add(reader.GetString()!);
        value = list.ToArray();
        return reader.TokenType == JsonTokenType.EndArray;
    }
}
