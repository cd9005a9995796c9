using System.CommandLine;
using System.Globalization;
using Coolproof.Traces.Import;

namespace Coolproof.Commands.Notebooks;

/// <summary>Options of `import --as trace`.</summary>
internal sealed class TraceOptions
{
    readonly Option<string?> _day = new("--day") { HelpName = "NAME|DATE|ID", Description = "The day of a trace. Not needed where the notebook has one day only." };
    readonly Option<string?> _time = new("--time") { HelpName = "NAME|NUMBER", Description = "The trace's column of time. Otherwise found out." };
    readonly WordOption _form = new("--time-in", "How the trace writes time, where that isn't seen.", "found", "s", "ms", "us", "min", "h", "d");
    readonly Option<double?> _step = new("--step") { HelpName = "SECONDS", Description = "Seconds between rows of a trace without time." };
    readonly WordOption _dates = new("--dates", "Order of a date's parts in a trace.", "found", "ymd", "dmy", "mdy");
    readonly Option<string[]> _units = new("--unit") { HelpName = "NAME=UNIT", Description = "Unit of a channel of a trace, such as can=F; may be said several times." };
    readonly Option<string[]> _only = new("--only") { HelpName = "NAME", Description = "Channels of a trace that are kept; otherwise all.", AllowMultipleArgumentsPerToken = true };
    readonly Option<bool> _take = new("--take") { Description = "Takes the can's readings after each halt into the runs at once, where the trace fits them for sure." };

    /// <summary>Adds them to the command; they are refused for a readings table.</summary>
    public void AddTo(Command command, WordOption sort)
    {
        Option[] all = [_day, _time, _form.Option, _step, _dates.Option, _units, _only, _take];
        foreach (var option in all) command.Options.Add(option);
        command.Validators.Add(result =>
        {
            if (result.GetResult(sort.Option)?.Tokens is not [{ Value: "trace" }])
            {
                foreach (var option in all.Where(option => result.GetResult(option) is { Implicit: false })) result.AddError($"{option.Name}: only with --as trace");
            }
            foreach (var unit in result.GetValue(_units) ?? [])
                if (unit.IndexOf('=') < 1) result.AddError($"--unit {unit}: expected a channel's name, an equals sign and a unit, such as can=F");
            if (result.GetValue(_step) is { } step && !(step is > 0 and <= 86_400)) result.AddError(string.Create(CultureInfo.InvariantCulture, $"--step {step}: expected seconds, more than 0"));
        });
    }

    /// <summary>What was asked.</summary>
    public ImportTraceRequest Request(ParseResult parsed, string file, bool dryRun, string? store, bool json)
    {
        var (form, dates) = (_form.In(parsed), _dates.In(parsed));
        LayoutWish wish = new(
            parsed.GetValue(_time),
            form switch { "s" => TimeForm.Seconds, "ms" => TimeForm.Milliseconds, "us" => TimeForm.Microseconds, "min" => TimeForm.Minutes, "h" => TimeForm.Hours, "d" => TimeForm.Days, _ => null },
            parsed.GetValue(_step),
            dates switch { "ymd" => DateOrder.YearFirst, "dmy" => DateOrder.DayFirst, "mdy" => DateOrder.MonthFirst, _ => null },
            parsed.GetValue(_units) is { Length: > 0 } units ? units.ToDictionary(unit => unit[..unit.IndexOf('=')], unit => unit[(unit.IndexOf('=') + 1)..], StringComparer.OrdinalIgnoreCase) : null,
            parsed.GetValue(_only) is { Length: > 0 } only ? only : null);
        return new ImportTraceRequest(file, parsed.GetValue(_day), wish == new LayoutWish() ? null : wish, parsed.GetValue(_take), dryRun, store, json);
    }
}
