using System.Collections.Concurrent;
using System.Text.Json;
using Json.Schema;

namespace Coolproof.Tests;

/// <summary>The contracts of docs/formats: what commands print as JSON is held against them.</summary>
static class Contract
{
    static readonly ConcurrentDictionary<string, JsonSchema> Schemas = new();

    /// <summary>Whether a contract allows a text.</summary>
    public static bool Allows(string name, string text) =>
        Schemas.GetOrAdd(name, n => JsonSchema.FromText(File.ReadAllText(TestFiles.Of("docs", "formats", $"{n}.schema.json")))).Evaluate(JsonDocument.Parse(text).RootElement).IsValid;

    /// <summary>Asserts that it does.</summary>
    public static void Fits(string name, string text) => Assert.True(Allows(name, text), text);
}
