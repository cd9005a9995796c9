namespace Coolproof.Notebook;

/// <summary>The published schema of the readings table.</summary>
public static class ReadingsTableSchema
{
    /// <summary>Frictionless Table Schema (version 2) as JSON: docs/formats/readings-table.schema.json.</summary>
    public static string Json()
    {
        using Stream stream = typeof(ReadingsTableSchema).Assembly.GetManifestResourceStream("readings-table.schema.json")
            ?? throw new InvalidOperationException("The schema of the readings table is not in the assembly.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
