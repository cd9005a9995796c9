using Coolproof.Evidence.Doubts;
using Coolproof.Evidence.Model;
using Coolproof.Evidence.Opinion;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Words;

/// <summary>All that is said, of simulated days of every kind: each is answered, in plain words.</summary>
public class WordsOfDaysTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_simulated_day_is_put_into_plain_words(long seed) => Speak(DayGenerator.Day(seed).Table);

    [Theory]
    [InlineData(1, 4)]
    [InlineData(2, 1)]
    public void An_invented_day_is_put_into_plain_words(int options, int rounds) => Speak(InventedDays.Plain(options, rounds));

    [Fact]
    public void A_day_with_everything_in_it_is_put_into_plain_words() => Speak(InventedDays.Rich());

    [Fact]
    [Trait("Suite", "long")]
    public void Many_simulated_days_are_put_into_plain_words()
    {
        for (long seed = 100; seed < 160; seed++)
            Speak(DayGenerator.Day(seed).Table);
    }

    private void Speak(ReadingsTable table)
    {
        Posterior posterior = SampledDay.Of(table);
        string[] names = [.. posterior.Options.Select(o => table.Options[o])];
        OptionVerdict[] options = [.. names.Select((name, k) => new OptionVerdict(name, Judge.Counted(table, posterior.Options[k]).Count(),
            Judge.Counted(table, posterior.Options[k]).Sum(r => r.Readings.Count(DayModelBuilder.Counts)), Summaries.Of(posterior.CanC[k]), Summaries.Of(posterior.WindingC[k]),
            Said.Around(1, 0.1), Said.Around(1, 0.1), Coolest(posterior, k)))];
        PairVerdict[] pairs = [.. from a in Enumerable.Range(0, names.Length) from b in Enumerable.Range(a + 1, names.Length - a - 1)
            from body in new[] { ComparedOn.Can, ComparedOn.Winding } select Pair(body == ComparedOn.Can ? posterior.CanC : posterior.WindingC, names, a, b, body)];
        string best = options.MaxBy(o => o.ProbabilityCoolest)!.Name;
        PairVerdict? main = pairs.Where(p => p.On == ComparedOn.Can && (p.A == best || p.B == best)).MinBy(p => Math.Abs(p.DifferenceK.Mean));
        IReadOnlyList<DoubtShare> doubt = main is null ? [] : DoubtShares.Of(posterior, Array.IndexOf(names, main.A), Array.IndexOf(names, main.B));
        SecondOpinion? second = SecondOpinionFit.Of(posterior, [.. table.Runs.Select(Curve)], pairs);
        string[] all = [VerdictSentence.Of(options, pairs, main, posterior.Fair, 2), .. Warnings.Of(table, options), .. Advice.Of(table, options, pairs, main, doubt, 2),
            .. second is null ? Array.Empty<string>() : [second.Remark]];
        output.WriteLine(string.Join("\n", all) + "\n");
        Assert.All(all, Said.AssertPlain);
    }

    private static double Coolest(Posterior p, int option)
    {
        int draws = p.CanC[0].Length;
        return Enumerable.Range(0, draws).Count(i => p.CanC.All(c => p.CanC[option][i] <= c[i])) / (double)draws;
    }

    private static PairVerdict Pair(double[][] peaks, string[] names, int a, int b, ComparedOn on)
    {
        double[] difference = [.. peaks[a].Zip(peaks[b], (x, y) => x - y)];
        double cooler = difference.Count(d => d < 0) / (double)difference.Length, same = difference.Count(d => Math.Abs(d) < 2) / (double)difference.Length;
        PairCall call = cooler >= 0.975 ? PairCall.ACooler : cooler <= 0.025 ? PairCall.BCooler : same >= 0.95 ? PairCall.Same : PairCall.Open;
        return new(names[a], names[b], on, Summaries.Of(difference), cooler, call);
    }

    // The readings as they stand for the corrected ones.
    private static RunCurve Curve(Run run) => new(run.Day, run.Name, run.Option, Said.Around(27, 0.5), [], [], [],
        [.. run.Readings.Where(DayModelBuilder.Counts).Where(r => r.ReadC is not null).Select(r => new CorrectedReading(r.Line, 10, true, r.ReadC!.Value, r.ReadC.Value, 0, 0, 0, 0, 0, r.ReadC.Value))], null);
}
