using System.Text.Json;
using Coolproof.Notebook.Journal.Rules;

namespace Coolproof.Notebook.Journal;

/// <summary>Writes entries as JSON by docs/formats/entries.md.</summary>
public static class EntryWriter
{
    /// <summary>Writes an entry as its device made it.</summary>
    public static void Write(Utf8JsonWriter writer, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(entry);
        writer.WriteStartObject();
        WriteMembers(writer, entry);
        writer.WriteEndObject();
    }

    /// <summary>Writes an entry with device, seq and kept.</summary>
    public static void Write(Utf8JsonWriter writer, StoredEntry stored)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(stored);
        writer.WriteStartObject();
        WriteMembers(writer, stored.Entry);
        writer.WriteString("device", stored.Device);
        writer.WriteNumber("seq", stored.Seq);
        writer.WriteString("kept", EntryText.Written(stored.Kept));
        writer.WriteEndObject();
    }

    private static void WriteMembers(Utf8JsonWriter writer, Entry entry)
    {
        writer.WriteString("id", entry.Id);
        writer.WriteString("kind", entry.Kind);
        writer.WriteString("at", EntryText.Written(entry.At));
        writer.WriteString("about", entry.About);
        if (entry.Corrects is { } corrects) writer.WriteString("corrects", corrects);
        else writer.WriteNull("corrects");
        writer.WritePropertyName("body");
        entry.Body.Write(writer);
    }
}
