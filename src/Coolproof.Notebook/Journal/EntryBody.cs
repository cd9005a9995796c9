using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Coolproof.Notebook.Journal;

/// <summary>
/// Flat fields by name, in the order of names: text, number, yes or no, a list of texts, or null, which clears a field. Two bodies with the same fields are equal.
/// </summary>
public sealed class EntryBody : IEquatable<EntryBody>
{
    // Names of people's things are read by people in exports and logs; the text is data, never put into a page as it stands.
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly KeyValuePair<string, object?>[] _fields;

    internal EntryBody(KeyValuePair<string, object?>[] sortedFields) => _fields = sortedFields;

    /// <summary>No fields.</summary>
    public static EntryBody Empty { get; } = new([]);

    /// <summary>A body of the given fields.</summary>
    /// <param name="fields">Names, each once, with a text, number, yes or no, UUID, list of texts or UUIDs, or null.</param>
    /// <exception cref="ArgumentException">A name twice, a value of another type, or a number that is not finite.</exception>
    public static EntryBody Of(params IEnumerable<(string Name, object? Value)> fields)
    {
        KeyValuePair<string, object?>[] sorted = [.. fields.Select(field => KeyValuePair.Create(field.Name, Held(field.Name, field.Value)))];
        Array.Sort(sorted, static (a, b) => string.CompareOrdinal(a.Key, b.Key));
        for (int i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].Key == sorted[i - 1].Key) throw new ArgumentException($"The field {sorted[i].Key} stands twice.", nameof(fields));
        }

        return sorted.Length == 0 ? Empty : new EntryBody(sorted);
    }

    /// <summary>Names of the fields, in their order.</summary>
    public IEnumerable<string> Names => _fields.Select(pair => pair.Key);

    /// <summary>How many fields there are.</summary>
    public int Count => _fields.Length;

    /// <summary>Whether the field is there, be it null.</summary>
    public bool Has(string name) => IndexOf(name) >= 0;

    /// <summary>A text; null when it is not there or no text.</summary>
    public string? Text(string name) => Value(name) as string;

    /// <summary>A number; null when it is not there or no number.</summary>
    public double? Number(string name) => Value(name) is double number ? number : null;

    /// <summary>A whole number; null when it is not there or none.</summary>
    public int? Whole(string name) => Value(name) is double number && number == Math.Floor(number) && Math.Abs(number) <= int.MaxValue ? (int)number : null;

    /// <summary>Yes or no; null when it is not there or neither.</summary>
    public bool? YesNo(string name) => Value(name) is bool yes ? yes : null;

    /// <summary>A UUID; null when it is not there or none.</summary>
    public Guid? Id(string name) => Guid.TryParseExact(Text(name), "D", out Guid id) ? id : null;

    /// <summary>A list of texts; empty when it is not there.</summary>
    public IReadOnlyList<string> List(string name) => Value(name) as string[] ?? [];

    /// <summary>A list of UUIDs; empty when it is not there.</summary>
    public IReadOnlyList<Guid> Ids(string name) => [.. List(name).Select(text => Guid.TryParseExact(text, "D", out Guid id) ? id : Guid.Empty).Where(id => id != Guid.Empty)];

    /// <summary>The fields as JSON, the same bytes for equal bodies.</summary>
    public string Json()
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream, Plain)) Write(writer);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    /// <summary>Writes the fields as a JSON object.</summary>
    public void Write(Utf8JsonWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartObject();
        foreach ((string name, object? value) in _fields)
        {
            writer.WritePropertyName(name);
            switch (value)
            {
                case string text: writer.WriteStringValue(text); break;
                case double number: writer.WriteNumberValue(number); break;
                case bool yes: writer.WriteBooleanValue(yes); break;
                case string[] list:
                    writer.WriteStartArray();
                    foreach (string text in list) writer.WriteStringValue(text);
                    writer.WriteEndArray();
                    break;
                default: writer.WriteNullValue(); break;
            }
        }

        writer.WriteEndObject();
    }

    /// <inheritdoc/>
    public bool Equals(EntryBody? other)
    {
        if (other is null || other._fields.Length != _fields.Length) return false;
        for (int i = 0; i < _fields.Length; i++)
        {
            if (_fields[i].Key != other._fields[i].Key || !Same(_fields[i].Value, other._fields[i].Value)) return false;
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as EntryBody);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach ((string name, object? value) in _fields)
        {
            hash.Add(name);
            hash.Add(value is string[] list ? list.Length : value);
        }

        return hash.ToHashCode();
    }

    /// <summary>The fields as JSON.</summary>
    public override string ToString() => Json();

    internal ReadOnlySpan<KeyValuePair<string, object?>> Fields => _fields;

    internal object? Value(string name) => IndexOf(name) is >= 0 and int index ? _fields[index].Value : null;

    private int IndexOf(string name)
    {
        // A handful of fields: walking along them beats anything cleverer.
        for (int i = 0; i < _fields.Length; i++)
        {
            if (_fields[i].Key == name) return i;
        }

        return -1;
    }

    private static bool Same(object? a, object? b) => a is string[] x && b is string[] y ? x.AsSpan().SequenceEqual(y) : Equals(a, b);

    private static object? Held(string name, object? value) => value switch
    {
        null or string or bool => value,
        double number when double.IsFinite(number) => number + 0.0, // no negative zero: equal numbers are written the same
        int number => (double)number,
        Guid id => id.ToString("D"),
        IEnumerable<string> list => list.ToArray(),
        IEnumerable<Guid> ids => ids.Select(id => id.ToString("D")).ToArray(),
        _ => throw new ArgumentException($"The field {name} can't hold {value}.", nameof(value)),
    };
}
