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
        if (request.Table.Read("compare", request.DriveS, terminal) is not { } read) return Exit.BadInput;
        var settings = new JudgeSettings(request.AmbientC, request.DriveS, request.SameWithinK, request.Seed);
        return Answer(TableJudging.Of(read.Table, read.Before, settings, terminal, cancel), read.Table, request);
    }

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
