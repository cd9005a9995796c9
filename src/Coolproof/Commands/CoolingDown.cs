using Coolproof.Advice.CoolDowns;
using Coolproof.Evidence;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>What `coolproof cooldown` was asked.</summary>
/// <param name="Table">A readings table; null: none.</param>
/// <param name="AirC">Air, °C; null: the table's.</param>
/// <param name="Option">The option fitted; null: the table's first.</param>
/// <param name="DriveS">The drive, s; null: the table's.</param>
/// <param name="Units">Degrees for people.</param>
/// <param name="Json">Whether to print JSON.</param>
/// <param name="Question">The rest.</param>
internal sealed record CooldownRequest(TableAsked? Table, double? AirC, string? Option, double? DriveS, TemperatureUnitChoice Units, bool Json, CoolDownQuestion Question);

/// <summary>`coolproof cooldown` from the question to the exit code.</summary>
internal sealed class CoolingDown(Terminal terminal)
{
    const int Draws = 400;

    /// <summary>Reckons and prints.</summary>
    /// <returns>The exit code.</returns>
    public int Run(CooldownRequest request, CancellationToken cancel)
    {
        if (Asked(request) is not { } question) return Exit.BadInput;
        if (question.CanC is { } can && can <= question.AirC)
        {
            terminal.Error.WriteLine($"coolproof cooldown: --can {can:0.#} °C is not above the air of {question.AirC:0.#} °C, so there is nothing to cool. Look at both numbers again.");
            return Exit.BadInput;
        }
        IReadOnlyList<CoolDownPromise> promises = CoolDown.Of(question, cancel);
        terminal.Out.Write(request.Json
            ? CooldownJson.Text(question, promises)
            : string.Join('\n', CooldownPage.Lines(question, promises, new DegreeWords(request.Units), terminal.Width)) + "\n");
        terminal.Out.Flush();
        return Exit.Done;
    }

    CoolDownQuestion? Asked(CooldownRequest request)
    {
        if (request.Table is not { } asked) return request.Question;
        if (asked.Read("cooldown", request.DriveS, terminal) is not { Table: var table }) return null;
        if (QuickJudge.Of(table, new JudgeSettings(request.AirC, request.DriveS, Seed: request.Question.Seed), Draws) is not { } verdict)
        {
            terminal.Error.WriteLine($"coolproof cooldown: {Cells.Clean(asked.File)} holds no reading that counts. Ask without a table, or give one with readings of the can.");
            return null;
        }
        int place = request.Option is null ? 0 : verdict.Options.ToList().FindIndex(o => string.Equals(o, request.Option, StringComparison.OrdinalIgnoreCase));
        if (place < 0)
        {
            terminal.Error.WriteLine($"coolproof cooldown: --option {Cells.Clean(request.Option!)}: expected one of {Cells.Clean(string.Join(", ", verdict.Options))}");
            return null;
        }
        bool fan = request.Question.HasFan && table.Runs.Any(r => string.Equals(r.Option, verdict.Options[place], StringComparison.OrdinalIgnoreCase) && r.Fan != FanInRun.None);
        return request.Question with { AirC = verdict.Fair.AmbientC, DriveS = verdict.Fair.DriveS, Motors = verdict.Motors, Option = place, HasFan = fan };
    }
}
