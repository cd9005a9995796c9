using System.Runtime.CompilerServices;
using System.Text.Json;
using Coolproof.Notebook.Journal;
using Coolproof.Notebook.Journal.Rules;
using CsCheck;
using Json.Schema;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>The published page and schema say what the program does. To write both anew: COOLPROOF_WRITE=1.</summary>
public sealed class PublishedFormat
{
    private static readonly bool Write = Environment.GetEnvironmentVariable("COOLPROOF_WRITE") == "1";

    [Fact]
    public void The_schema_is_the_one_that_the_program_gives() => Same("entries.schema.json", _ => EntrySchema.Json());

    [Fact]
    public void The_page_lists_every_kind_and_field() => Same("entries.md", page =>
    {
        int begin = page.IndexOf(KindsPage.Begin, StringComparison.Ordinal) + KindsPage.Begin.Length;
        int end = page.IndexOf(KindsPage.End, StringComparison.Ordinal);
        return page[..begin] + KindsPage.Of(KindRules.All) + page[end..];
    });

    [Fact]
    public void Every_kind_has_a_rule_and_every_rule_a_kind()
    {
        string[] names = [.. typeof(EntryKind).GetFields().Select(field => (string)field.GetRawConstantValue()!)];
        Assert.Equal(names.Order(StringComparer.Ordinal), KindRules.All.Select(rule => rule.Kind).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_schema_and_the_reader_agree_on_valid_and_on_spoilt_batches()
    {
        JsonSchema schema = JsonSchema.FromText(EntrySchema.Json());
        int refused = 0, understood = 0;
        EntryGen.Batch.Sample(json =>
        {
            using JsonDocument document = JsonDocument.Parse(json);
            bool bySchema = schema.Evaluate(document.RootElement).IsValid;
            EntryBatchRead read = EntryReader.ReadBatch(System.Text.Encoding.UTF8.GetBytes(json));
            Interlocked.Increment(ref read.Understood ? ref understood : ref refused);
            Assert.True(bySchema == read.Understood, $"schema says {bySchema}, reader {string.Join("; ", read.Faults)}: {json}");
        }, iter: 3000, threads: 2);
        Assert.True(refused > 300 && understood > 300, $"{understood} understood, {refused} refused");
    }

    private static void Same(string name, Func<string, string> made, [CallerFilePath] string here = "")
    {
        string file = Path.Combine(Path.GetDirectoryName(here)!, "../../../docs/formats", name);
        string text = File.Exists(file) ? File.ReadAllText(file) : "";
        string right = made(text);
        if (Write) File.WriteAllText(file, right);
        else Assert.Equal(right, text);
    }
}
