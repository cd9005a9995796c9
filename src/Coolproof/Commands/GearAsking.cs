using Coolproof.Advice.Gearing;
using Coolproof.Evidence.Earlier;
using Coolproof.Evidence.Forecasts;
using Coolproof.Evidence.Words;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Pictures;
using Coolproof.Screen;
using Coolproof.Thermal;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>`coolproof gear` from the file to the exit code.</summary>
internal sealed class GearAsking(Terminal terminal)
{
    // The can is hottest within some minutes of the stop.
    const double SoakS = 600;

    /// <summary>Judges the tests, sweeps pinions and timings, prints, draws.</summary>
    /// <returns>The exit code.</returns>
    public int Run(TableAsked tests, GearRequest request, CancellationToken cancel)
    {
        GivenLap? lap = null;
        if (request.LapFile is { } path && (lap = LapFile.Read(path, terminal)) is null) return Exit.BadInput;
        if (tests.Read("gear", null, terminal) is not { } read) return Exit.BadInput;
        var (setting, refused) = GearSetting.Of(request, read.Earlier.Count == 0 ? read.Table : EarlierTables.Joined(read.Table, read.Before), lap);
        if (setting is null) return Refuse(refused!);
        var (judged, exit) = TestsJudged.Of(read, request.Seed, request.Units, terminal, cancel);
        if (judged is null) return exit;
        RaceScenario scenario = new(request.AirC ?? judged.Verdict.Fair.AmbientC, request.RaceS ?? judged.Verdict.Fair.DriveS) { BreakS = SoakS };
        if (Forecast.Refusal(scenario) is { } wrong) return Refuse(wrong);
        GearQuestion question = new(setting.Rig, setting.Card, scenario, request.Demand) { HotterK = request.HotterK, Seed = request.Seed };
        try
        {
            GearAnswer answer = Swept(question, judged.Races, setting, cancel);
            terminal.Out.Write(request.Json ? GearJson.Text(question, answer, judged.Earlier) : string.Join('\n', Lines(question, answer, setting, judged.Earlier, request.Units)) + "\n");
            terminal.Out.Flush();
            return request.Picture is { } picture
                ? PictureFile.Drawn(() => GearDrawing.Of(question, answer, new PictureStyle(Theme: request.Theme, Units: request.Units)).Save(picture), terminal)
                : Exit.Done;
        }
        catch (LapException cause)
        {
            return Refuse(cause.Message);
        }
    }

    GearAnswer Swept(GearQuestion question, RaceEvidence evidence, GearSetting setting, CancellationToken cancel)
    {
        using var line = new ProgressLine(terminal.Error, terminal.ShowsProgress);
        return GearSweep.Of(question, evidence, setting.Notes, line.For("trying pinions"), cancel);
    }

    IEnumerable<string> Lines(GearQuestion question, GearAnswer answer, GearSetting setting, EarlierInAnswer? earlier, TemperatureUnitChoice units) => GearPage.Lines(
        question, answer, [.. setting.Assumed.Select(one => one == GearSetting.NoLapTime ? $"{one}: give --lap-time 26s" : one)],
        setting.Traced, earlier is null ? [] : EarlierLines.Of(earlier, earlier.Added.Alone.SentenceIn(units), units), new DegreeWords(units), terminal.Width);

    int Refuse(string reason)
    {
        terminal.Error.WriteLine($"coolproof gear: {Cells.Clean(reason)}");
        return Exit.BadInput;
    }
}
