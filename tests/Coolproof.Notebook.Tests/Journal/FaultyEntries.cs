using System.Text;
using Coolproof.Notebook.Journal;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>What is wrong with a batch is named entry by entry and field by field; whatever comes, nothing is thrown.</summary>
public sealed class FaultyEntries
{
    private const string Good = """{"id":"01970000-0000-7000-8000-000000000001","kind":"run.stop","at":"2026-06-13T15:05:12.345Z","about":"01970000-0000-7000-8000-000000000002","corrects":null,"body":{"by":"later","secondsAgo":30}}""";

    private static EntryBatchRead Read(params string[] entries) =>
        EntryReader.ReadBatch(Encoding.UTF8.GetBytes($$"""{"device":"01970000-0000-7000-8000-000000000009","sentAt":"2026-06-13T15:05:13.000Z","entries":[{{string.Join(',', entries)}}]}"""));

    [Fact]
    public void A_good_batch_is_understood()
    {
        EntryBatch batch = Read(Good).Batch!;
        Entry entry = batch.Entries.Single();
        Assert.Equal(("run.stop", "later", 30.0), (entry.Kind, entry.Body.Text("by"), entry.Body.Number("secondsAgo")));
        Assert.Equal(1_781_363_112_345, entry.At.ToUnixTimeMilliseconds());
    }

    [Theory]
    [InlineData("\"kind\":\"run.stop\"", "\"kind\":\"run.stopp\"", "kind")]
    [InlineData("\"later\"", "\"whenever\"", "body.by")]
    [InlineData("\"secondsAgo\":30", "\"secondsAgo\":-1", "body.secondsAgo")]
    [InlineData("\"secondsAgo\":30", "\"secondsAgo\":\"30\"", "body.secondsAgo")]
    [InlineData("\"secondsAgo\":30", "\"secondsAgo\":1e999", "body.secondsAgo")]
    [InlineData("\"secondsAgo\":30", "\"secondsAgoo\":30", "body.secondsAgoo")]
    [InlineData("\"secondsAgo\":30", "\"secondsAgo\":30,\"x\":{}", "body.x")]
    [InlineData("12.345Z", "12.345+02:00", "at")]
    [InlineData("2026-06-13T15", "1970-01-01T00", "at")]
    [InlineData("\"corrects\":null", "\"corrects\":\"01970000-0000-7000-8000-000000000001\"", "corrects")]
    [InlineData("0000-7000-8000-000000000001", "0000-4000-8000-000000000001", "id")]
    public void A_fault_names_its_entry_and_field_with_a_remedy(string from, string to, string field)
    {
        EntryBatchRead read = Read(Good.Replace("000000000001\",\"kind", "000000000003\",\"kind", StringComparison.Ordinal), Good.Replace(from, to, StringComparison.Ordinal));
        Assert.False(read.Understood);
        EntryFault fault = Assert.Single(read.Faults);
        Assert.Equal(field, fault.Field);
        Assert.Equal(field == "id" ? "1" : "01970000-0000-7000-8000-000000000001", fault.Entry);
        Assert.True(fault.Reason.Length > 3 && fault.Remedy.Length > 3);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"device\":7,\"entries\":[]}")]
    [InlineData("{\"device\":\"01970000-0000-7000-8000-000000000009\",\"entries\":{}}")]
    [InlineData("{\"device\":\"01970000-0000-7000-8000-000000000009\",\"device\":\"01970000-0000-7000-8000-000000000009\",\"entries\":[]}")]
    public void What_is_no_batch_is_refused(string json) => Assert.NotEmpty(EntryReader.ReadBatch(Encoding.UTF8.GetBytes(json)).Faults);

    [Fact]
    public void Half_a_surrogate_pair_and_a_letter_of_code_0_are_no_text()
    {
        string abandon = Good.Replace("run.stop", "run.abandon", StringComparison.Ordinal);
        Assert.False(Read(abandon.Replace("\"by\":\"later\",\"secondsAgo\":30", "\"because\":\"\\ud800\"", StringComparison.Ordinal)).Understood);
        Assert.False(Read(abandon.Replace("\"by\":\"later\",\"secondsAgo\":30", "\"because\":\"\\u0000\"", StringComparison.Ordinal)).Understood);
        Assert.False(Read(abandon.Replace("\"by\":\"later\",\"secondsAgo\":30", "\"\\ud800\":1", StringComparison.Ordinal)).Understood);
        Assert.False(Read(abandon.Replace("\"corrects\":null", "\"\\ud800\":1", StringComparison.Ordinal)).Understood);
        Assert.True(Read(abandon.Replace("\"by\":\"later\",\"secondsAgo\":30", "\"because\":\"\\ud83c\\udf27\"", StringComparison.Ordinal)).Understood);
    }

    [Fact]
    public void More_entries_than_a_batch_holds_are_refused() =>
        Assert.Equal("entries", Assert.Single(Read([.. Enumerable.Repeat(Good, EntryReader.LargestBatch + 1)]).Faults).Field);

    [Fact]
    public void A_batch_with_many_faults_lists_the_first()
    {
        EntryBatchRead read = Read([.. Enumerable.Repeat("{}", EntryReader.LargestBatch)]);
        Assert.Equal(EntryReader.ListedFaults, read.Faults.Count);
    }

    [Fact]
    public void Whatever_bytes_come_they_are_refused_or_understood_and_nothing_is_thrown() =>
        Gen.Select(EntryGen.Batch, Gen.Int[0, int.MaxValue], Gen.Byte.Array[0, 8]).Sample((json, at, bytes) =>
        {
            byte[] utf8 = Encoding.UTF8.GetBytes(json);
            int from = at % utf8.Length;
            EntryBatchRead read = EntryReader.ReadBatch((byte[])[.. utf8.AsSpan(0, from), .. bytes, .. utf8.AsSpan(Math.Min(utf8.Length, from + (at % 5)))]);
            Assert.Equal(read.Understood, read.Faults.Count == 0);
        }, iter: 5000, threads: 2);

    [Fact]
    public void A_body_is_written_and_read_back_the_same()
    {
        EntryBody body = EntryBody.Of(("z", 1.0 / 3), ("a", "naïve ✓ \"x\" \\ \n\u0001"), ("m", null), ("l", new[] { "p", "q" }), ("y", true), ("n", -0.0), ("t", 5e-324));
        Assert.Equal(body, Kept(body.Json()));
        Assert.Equal(body.Json(), Kept(body.Json()).Json());
        Assert.Equal("{\"a\":1,\"b\":2}", EntryBody.Of(("b", 2), ("a", 1)).Json());
        Assert.Throws<FormatException>(() => Kept("[]"));
    }

    [Theory]
    [InlineData("{\"b\":1,\"a\":\"x\"}", "{\"a\":\"x\",\"b\":1}")]
    [InlineData(" { \"a\" : [ ] } ", "{\"a\":[]}")]
    [InlineData("{\"a\\u0062\":\"\\u00ef\"}", "{\"ab\":\"\u00ef\"}")]
    [InlineData("{}", "{}")]
    public void A_body_that_others_wrote_another_way_is_read_all_the_same(string json, string same) => Assert.Equal(same, Kept(json).Json());

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("{\"a\":1}}")]
    [InlineData("{\"a\":1} {}")]
    [InlineData("{\"a\":{}}")]
    [InlineData("{\"a\":[1]}")]
    [InlineData("{\"a\":[[]]}")]
    [InlineData("{\"a\":1,\"a\":2}")]
    [InlineData("{\"a\":1e999}")]
    [InlineData("{\"a\":\"\\ud83d\"}")]
    [InlineData("{\"\\ud83d\":1}")]
    public void A_body_that_is_no_flat_object_is_refused(string json) => Assert.Throws<FormatException>(() => Kept(json));

    [Fact]
    public void A_kept_kind_is_one_text_in_memory_and_a_newer_one_is_left_as_it_is()
    {
        Assert.Same(EntryReader.ReadKeptKind("run.begin"u8), EntryReader.ReadKeptKind("run.begin"u8));
        Assert.Equal("some.kind.of.a.newer.version.that.has.a.long.name", EntryReader.ReadKeptKind("some.kind.of.a.newer.version.that.has.a.long.name"u8));
    }

    private static EntryBody Kept(string json) => EntryReader.ReadKeptBody(Encoding.UTF8.GetBytes(json));
}
