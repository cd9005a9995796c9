using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof compare` from the file to the exit code.</summary>
internal sealed class Comparison(Terminal terminal)
{
    /// <summary>Reads, judges, prints, draws.</summary>
    /// <returns>The exit code.</returns>
    public int Run(CompareRequest request, CancellationToken cancel)
    {
        if (TableFile.Read(request.File, request.DriveS, terminal) is not { } table || GunChecksFile.Read("compare", request.GunChecks, terminal) is not { } checks) return Exit.BadInput;
        table = table with { GunChecks = checks };
        List<ReadingsTable> before = [];
        foreach (var file in request.Earlier)
        {
            if (TableFile.Read(file, request.DriveS, terminal) is not { } earlier) return Exit.BadInput;
            if (Twice(earlier, [table, .. before], file, terminal)) return Exit.BadInput;
            if (earlier.Runs.Count > 0) before.Add(earlier with { GunChecks = checks });
        }
        var settings = new JudgeSettings(request.AmbientC, request.DriveS, request.SameWithinK, request.Seed);
        return Answer(TableJudging.Of(table, before, settings, terminal, cancel), table, request);
    }

    /// <summary>Whether a run of a table stands in another one too, which is then said.</summary>
    public static bool Twice(ReadingsTable table, IReadOnlyList<ReadingsTable> others, string file, Terminal terminal)
    {
        if (table.Runs.FirstOrDefault(run => others.Any(other => other.Runs.Any(own => IsSame(own, run)))) is not { } twice) return false;
        terminal.Error.WriteLine($"coolproof: run {Cells.Clean(twice.Name)} with the {Cells.Clean(twice.Option)} in {Cells.Clean(file)} stands in another table too, and would count twice. Take it out of one of them.");
        return true;
    }

    // Days and runs may well have the same names again; the same readings of the same option at the same time are the same run.
    static bool IsSame(Run a, Run b) => a.Name == b.Name && a.StartedAt == b.StartedAt && string.Equals(a.Option, b.Option, StringComparison.OrdinalIgnoreCase)
        && a.Readings.Count > 0 && a.Readings.Select(r => (r.ReadC, r.StopToReadS)).SequenceEqual(b.Readings.Select(r => (r.ReadC, r.StopToReadS)));

    /// <summary>Says what came of judging.</summary>
    /// <returns>The exit code.</returns>
    internal int Answer(Judgement judgement, ReadingsTable table, CompareRequest request) => judgement is Judged judged
        ? Tell(judged with { Verdict = TableQuestions.Beside(judged.Verdict, table) }, request)
        : TableJudging.Unjudged(judgement, request.Units, terminal);

    int Tell(Judged judged, CompareRequest request)
    {
        var verdict = judged.Verdict;
        if (request.Json)
        {
            terminal.Out.Write(CompareJson.Text(verdict, judged.Earlier));
        }
        else
        {
            var page = new PageSettings(new DegreeWords(request.Units), terminal.Width, terminal.Ink);
            var lines = request.Details ? DetailsPage.Lines(verdict, page) : VerdictPage.Lines(verdict, page);
            terminal.Out.Write(string.Join('\n', lines) + "\n");
        }
        terminal.Out.Flush();
        return request.Picture is { } path ? Draw(verdict, path, request.Units) : Exit.Done;
    }

    int Draw(Verdict verdict, string path, TemperatureUnitChoice units)
    {
        if (units == TemperatureUnitChoice.Fahrenheit)
            verdict = verdict with { Sentence = verdict.SentenceIn(units), Warnings = [.. verdict.Warnings.Select(FahrenheitWords.Of)] };
        return PictureFile.Drawn(() => VerdictPicture.Save(verdict, path, new PictureStyle(Units: units)), terminal);
    }
}
