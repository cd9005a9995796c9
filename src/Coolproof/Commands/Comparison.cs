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
        if (TableFile.Read(request.File, request.DriveS, terminal) is not { } table) return Exit.BadInput;
        return Answer(TableJudging.Of(table, new JudgeSettings(request.AmbientC, request.DriveS, request.SameWithinK, request.Seed), terminal, cancel), table, request);
    }

    /// <summary>Says what came of judging.</summary>
    /// <returns>The exit code.</returns>
    internal int Answer(Judgement judgement, ReadingsTable table, CompareRequest request) => judgement is Judged judged
        ? Tell(TableQuestions.Beside(judged.Verdict, table), request)
        : TableJudging.Unjudged(judgement, request.Units, terminal);

    int Tell(Verdict verdict, CompareRequest request)
    {
        if (request.Json)
        {
            terminal.Out.Write(CompareJson.Text(verdict));
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
