using System.Collections.Concurrent;
using System.Text.Json;
using Json.Schema;

namespace Coolproof.Tests;

/// <summary>The contracts of docs/formats: what commands print as JSON is held against them.</summary>
static class Contract
{
    // A schema with an id of its own may be read but once.
    static readonly ConcurrentDictionary<string, Lazy<JsonSchema>> Schemas = new();

    /// <summary>Whether a contract allows a text.</summary>
    public static bool Allows(string name, string text) => Of(name).Evaluate(JsonDocument.Parse(text).RootElement).IsValid;

    /// <summary>A contract.</summary>
    public static JsonSchema Of(string name) => Schemas.GetOrAdd(name, n => new(() => JsonSchema.FromText(File.ReadAllText(TestFiles.Of("docs", "formats", $"{n}.schema.json"))))).Value;

    /// <summary>Asserts that it does.</summary>
    public static void Fits(string name, string text) => Assert.True(Allows(name, text), text);
}
