using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;
using Coolproof.Evidence;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using CsCheck;

namespace Coolproof.Tests;

/// <summary>
/// What must not matter to a verdict: the order of rows where every run has its clock time, the names of options, the unit typed in. All is compared to the
/// last byte: each of these changes leads to the very same calculation, so no allowance for chance is needed.
/// </summary>
public partial class WholeVerdictTests
{
    const int Few = 4;
    const int Many = 60;

    static readonly string[] Plain = ["Alder", "Birch", "Cedar", "Dogwood"];

    // Each is none of the others' parts; in the order of no alphabet; with quotes, commas, marks, signs beyond the basic plane, both writing directions.
    static readonly string[] Odd =
    [
        "Zulu \"9\"", "Öl-Kühler №3", "冷却ファン 二", "Fan, 25 mm; left", "مروحة", "🌀 Whirl", "Ævar = 5", "Duct <b>&amp;</b>", "Ångström", "Q\u0301uick", "No. 007", "Ωmega^2", "without", "øst-vind", "zip-tied fan",
    ];

    /// <summary>A made-up evening or two with all clock times; two instruments, some readings at one instant, some delays not noted.</summary>
    static readonly Gen<WrittenTable> Evening =
        from seed in Gen.Int[1, 1_000_000]
        from options in Gen.Int[2, 3]
        from runs in Gen.Int[1, 2]
        from readings in Gen.Int[1, 3]
        from evenings in Gen.Int[1, 2]
        from instrument in Gen.Int[0, 2]
        from noted in Gen.Int[0, 2]
        select Written(seed, options, runs, readings, runs == 1 ? evenings : 1, instrument, noted);

    static WrittenTable Written(int seed, int options, int runs, int readings, int evenings, int instrument, int noted)
    {
        var day = Rehearse.Day(new RehearsalSettings(seed, [.. Plain.Take(options).Select(name => new RehearsalOption(name))], runs)
        {
            ReadingsPerRun = readings,
            Evenings = evenings,
            DelaysNoted = 0.5 + 0.25 * noted,
        });
        using var writer = new StringWriter();
        ReadingsTableWriter.Write(day.Table, writer);
        // Delays in wide steps, so that some readings of a run stand at one instant.
        var table = WrittenTable.Of(writer.ToString(), "note").Changed("stop_to_read_s", "stop_to_read_s", WrittenTable.Number(s => s - s % 15 + 5));
        return table.With("instrument", row => (row + instrument) % 3 == 0 ? "probe" : "gun").With("spot", row => (row + instrument) % 4 == 1 ? "endbell" : "can");
    }

    [Fact]
    public void With_clock_times_any_order_of_rows_gives_the_same_bytes() => OrderOfRows(Few);

    [Fact, Trait("Suite", "long")]
    public void With_clock_times_any_order_of_rows_gives_the_same_bytes_on_many_evenings() => OrderOfRows(Many);

    static void OrderOfRows(int times) =>
        (from table in Evening
         from places in Gen.Shuffle(Enumerable.Range(0, table.Rows.Count).ToArray())
         select (table, InTurn(table, places))).Sample(
            (table, shuffled) => Assert.Equal(Answer(table), Answer(shuffled)), iter: times, threads: 1, print: x => $"{x.Item1}\n{x.Item2}");

    // A delay that was not noted is known by the row's place among those of its run alone: such a run's rows stay in turn, wherever they stand.
    static WrittenTable InTurn(WrittenTable table, int[] places)
    {
        var moved = places.ToArray();
        foreach (var run in places.GroupBy(place => (table.Cell(place, "day"), table.Cell(place, "run"))).Where(run => run.Any(place => table.Cell(place, "stop_to_read_s").Length == 0)))
        {
            var stands = run.Select(place => Array.IndexOf(places, place)).Order();
            foreach (var (at, place) in stands.Zip(run.Order())) moved[at] = place;
        }
        return table.InOrder(moved);
    }

    [Fact]
    public void Other_names_of_the_options_change_their_names_and_nothing_else() => NamesOfOptions(Few);

    [Fact, Trait("Suite", "long")]
    public void Other_names_of_the_options_change_their_names_and_nothing_else_on_many_evenings() => NamesOfOptions(Many);

    static void NamesOfOptions(int times) =>
        (from table in Evening from names in Gen.Shuffle(Odd) select (table, names)).Sample(
            (table, names) => Assert.Equal(Answer(table, Plain), Answer(table.Changed("option", "option", name => names[Array.IndexOf(Plain, name)]), names)),
            iter: times, threads: 1, print: x => $"{string.Join(" | ", x.Item2)}\n{x.Item1}");

    [Fact]
    public void The_unit_typed_in_makes_no_difference() => UnitTypedIn(Few);

    [Fact, Trait("Suite", "long")]
    public void The_unit_typed_in_makes_no_difference_on_many_evenings() => UnitTypedIn(Many);

    // Drives in steps of 3 s, so that their minutes end within two decimals as a person would type them.
    static void UnitTypedIn(int times) =>
        Evening.Select(table => table.Changed("drive_s", "drive_s", WrittenTable.Number(s => s - s % 3))).Sample(
            table => Assert.Equal(Answer(table), Answer(table
                .Changed("read_c", "read_f", Fahrenheit).Changed("ambient_c", "ambient_f", Fahrenheit).Changed("drive_s", "drive_min", WrittenTable.Number(s => s / 60))
                .Changed("stop_to_read_s", "stop_to_read_s", cell => cell + " s"))),
            iter: times, threads: 1, print: table => table.ToString());

    static Func<string, string> Fahrenheit => WrittenTable.Number(c => c * 1.8m + 32);

    // All that the evidence says, the sentence and each run's curve too; names of options as their places in the table where they are given.
    static string Answer(WrittenTable table, params string[] names)
    {
        var read = ReadingsTableReader.Read(table.Bytes());
        Assert.True(read.Understood, string.Join('\n', read.Problems));
        var answer = Judge.Of(read.Table!, new JudgeSettings()) switch
        {
            Judged { Verdict: var v } => string.Join('\n', [CompareJson.Text(v), v.Sentence, v.SecondOpinion?.Remark, .. v.Runs.Select(Curve)]),
            var other => other.ToString(),
        };
        for (var place = 0; place < Math.Min(names.Length, read.Table!.Options.Count); place++)
            foreach (var said in Said(names[place])) answer = answer.Replace(said, $"option[{place}]");
        return answer;
    }

    static string InJson(string name) => JsonEncodedText.Encode(name, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).ToString();

    static string Curve(RunCurve run) => string.Join(' ', [run.Day, run.Run, run.Option, run.AirC.ToString(), .. run.CanC, .. run.WindingC, .. run.Readings.Select(r => r with { Line = 0 }),
        Lines().Replace(run.Outlier ?? "", "")]);

    // A name that begins with a small letter gets an article within a sentence, and a capital at its start.
    static IEnumerable<string> Said(string name) =>
        from article in new[] { "the ", "The ", "" } from written in new[] { InJson(name), name, char.ToUpperInvariant(name[0]) + name[1..] } select article + written;

    [GeneratedRegex(@" \(line \d+\)")]
    private static partial Regex Lines();
}
