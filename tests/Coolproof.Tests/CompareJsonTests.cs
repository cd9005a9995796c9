using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Json;
using Json.Schema;

namespace Coolproof.Tests;

public class CompareJsonTests
{
    static readonly JsonSchema Schema = Contract.Of("compare");

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(40)]
    public void A_verdict_prints_as_the_schema_says(int options) => AssertFits(CompareJson.Text(Samples.Of(options)));

    [Theory]
    [InlineData("\"version\": 1", "\"version\": 2")]
    [InlineData("\"on\": \"can\"", "\"on\": \"Can\"")]
    [InlineData("\"call\": \"b-cooler\"", "\"call\": \"BCooler\"")]
    [InlineData("\"peakCanC\"", "\"peakCan\"")]
    [InlineData("\"probabilityCoolest\": 0.93", "\"probabilityCoolest\": 93")]
    [InlineData("\"start\": \"ambient\"", "\"start\": \"warm\"")]
    public void The_schema_refuses_what_the_contract_does_not_allow(string right, string wrong)
    {
        var text = CompareJson.Text(Samples.Of(2));
        Assert.Contains(right, text);
        Assert.False(Fits(text.Replace(right, wrong)));
    }

    [Fact]
    public void Names_and_calls_are_those_of_the_contract()
    {
        var json = JsonNode.Parse(CompareJson.Text(Samples.Of(6)))!;
        Assert.Equal(["version", "reference", "options", "pairs", "doubt", "sampler", "warnings", "advice"], json.AsObject().Select(member => member.Key));
        Assert.Equal(
            ["name", "runs", "readings", "peakCanC", "peakWindingC", "relativeConductance", "wattsPerKelvin", "probabilityCoolest"],
            json["options"]![0]!.AsObject().Select(member => member.Key));
        Assert.Equal(["mean", "sd", "q05", "q25", "q50", "q75", "q95"], json["options"]![0]!["peakCanC"]!.AsObject().Select(member => member.Key));
        Assert.Equal(["a", "b", "on", "differenceK", "probabilityACooler", "call"], json["pairs"]![0]!.AsObject().Select(member => member.Key));
        Assert.Equal(["chains", "draws", "rHatMax", "essMin", "divergences"], json["sampler"]!.AsObject().Select(member => member.Key));
        Assert.Equal(30, json["pairs"]!.AsArray().Count); // 15 pairs, on the can and on the winding
    }

    [Fact]
    public void Doubt_still_sums_to_one_after_rounding()
    {
        var thirds = Samples.Of(2) with { Doubt = [new("delay", 1 / 3.0), new("gun", 1 / 3.0), new("air", 1 / 3.0)] };
        var shares = JsonNode.Parse(CompareJson.Text(thirds))!["doubt"]!.AsArray().Select(share => share!["share"]!.GetValue<decimal>());
        Assert.Equal(1m, shares.Sum());
    }

    [Fact]
    public void The_schema_names_the_sources_of_doubt_that_there_are() =>
        Assert.Equal(
            SourceOfDoubt.All.Select(source => source.Name),
            JsonNode.Parse(File.ReadAllText(TestFiles.Of("docs", "formats", "compare.schema.json")))!
                ["properties"]!["doubt"]!["items"]!["properties"]!["source"]!["enum"]!.AsArray().Select(name => name!.GetValue<string>()));

    [Fact]
    public void Reading_the_text_and_writing_it_again_changes_nothing()
    {
        var text = CompareJson.Text(Samples.Of(6));
        var again = JsonSerializer.Serialize(JsonSerializer.Deserialize(text, CompareJsonContext.Printed.CompareJson), CompareJsonContext.Printed.CompareJson);
        Assert.Equal(text, again + "\n");
    }

    [Fact]
    public void A_number_that_is_none_is_never_printed()
    {
        var verdict = Samples.Of(2);
        var broken = verdict with { Sampler = new SamplerRecord(4, 2000, double.NaN, 100, 0) };
        Assert.Contains("rHatMax", Assert.Throws<ArgumentException>(() => CompareJson.Text(broken)).Message);
    }

    [Fact]
    public void Names_with_quotes_and_markup_stay_what_they_are()
    {
        var verdict = Samples.Of(1);
        var odd = "duct \"A\" <b>&amp;</b> 30 °C ø \u001b[31m";
        var text = CompareJson.Text(verdict with { Options = [verdict.Options[0] with { Name = odd }] });
        Assert.Equal(odd, JsonNode.Parse(text)!["options"]![0]!["name"]!.GetValue<string>());
        Assert.DoesNotContain('\u001b', text);
    }

    /// <summary>Whether a text is what the schema says.</summary>
    internal static bool Fits(string text) => Schema.Evaluate(JsonDocument.Parse(text).RootElement).IsValid;

    internal static void AssertFits(string text)
    {
        var result = Schema.Evaluate(JsonDocument.Parse(text).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join('\n', (result.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))));
    }
}
