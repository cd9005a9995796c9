using System.Text.Json.Nodes;
using Coolproof.Notebook.Tables;
using CsCheck;

namespace Coolproof.Notebook.Tests;

/// <summary>The published schema and the reader know the same columns, words and ranges.</summary>
public sealed class Schema
{
    private readonly SchemaCheck _schema = new();

    [Fact]
    public void The_schema_names_exactly_the_columns_that_the_reader_knows() =>
        Assert.Equal(ColumnRules.All.SelectMany(rule => rule.Names).Order(), _schema.Fields.Select(field => (string)field["name"]!).Order());

    [Fact]
    public void The_schema_allows_exactly_the_words_and_ranges_that_the_reader_allows()
    {
        foreach (JsonObject field in _schema.Fields)
        {
            (ColumnRule rule, ColumnUnit unit) = Header.Lookup((string)field["name"]!)!.Value;
            JsonObject? constraints = field["constraints"]?.AsObject();
            Assert.Equal(rule.Allowed, constraints?["enum"]?.AsArray().Select(word => (string)word!).ToArray() ?? []);
            if (constraints?["minimum"] is null) continue;
            Assert.Equal(In(rule.Max, unit), (double)constraints["maximum"]!, 1e-6);
            // Minutes cannot say the shortest time exactly; the reader holds to it.
            Assert.Equal(unit == ColumnUnit.Minutes ? 0 : In(rule.Min, unit), (double)constraints["minimum"]!, 1e-6);
        }
    }

    [Fact]
    public void Each_field_has_a_known_type_and_a_description()
    {
        foreach (JsonObject field in _schema.Fields)
        {
            Assert.Contains((string)field["type"]!, (string[])["string", "number", "integer", "boolean"]);
            Assert.EndsWith(".", (string)field["description"]!, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Whatever_is_written_holds_to_the_schema()
    {
        TableGen.Table.Sample(table => Assert.Empty(_schema.Violations(TableText.Written(table))), iter: 500);
        TableGen.Table.Sample(table => Assert.Empty(_schema.Violations(TableText.Written(table, TemperatureUnitChoice.Fahrenheit))), iter: 500);
    }

    [Fact]
    public void The_check_itself_finds_what_breaks_the_schema()
    {
        Assert.Equal(
            ["unknown column roof", "line 2, read_c: 900", "line 2, kind: heat", "line 2, pinion: 18.5", "line 2, started_at: yesterday", "line 2, remounted: x"],
            _schema.Violations("option,roof,read_c,kind,pinion,started_at,remounted\nbare,1,900,heat,18.5,yesterday,x\n"));
    }

    [Fact]
    public void Every_allowed_word_stands_for_the_value_of_the_same_place()
    {
        Check<RunKind>(Field.Kind);
        Check<CutShort>(Field.CutShort);
        Check<AirSource>(Field.AirBy);
        Check<Sky>(Field.Sky);
        Check<Wind>(Field.Wind);
        Check<TrackState>(Field.Track);
        Check<FanInRun>(Field.Fan);
        Check<FanAfterStop>(Field.FanAfterStop);
        Check<SpotSurface>(Field.SurfaceOfSpot);
        Check<Spot>(Field.Spot);
        Check<Hold>(Field.Hold);
        Check<WindingPair>(Field.WindingPair);

        static void Check<T>(Field field) where T : struct, Enum =>
            Assert.Equal(Enum.GetNames<T>().Select(name => name.ToUpperInvariant()), ColumnRules.Of(field).Allowed.Select(word => word.Replace("-", "").ToUpperInvariant()));
    }

    private static double In(double value, ColumnUnit unit) => unit switch
    {
        ColumnUnit.Fahrenheit => Units.FromCelsius(value, TemperatureUnitChoice.Fahrenheit),
        ColumnUnit.Minutes => value / 60,
        _ => value,
    };
}
