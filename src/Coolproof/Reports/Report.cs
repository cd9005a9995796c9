using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Words;
using NodaTime;

namespace Coolproof.Reports;

/// <summary>A judged day or question, with all that its page, its pictures and its data say.</summary>
/// <param name="Subject">What it is of.</param>
/// <param name="Verdict">The verdict, with what is odd in the table among its warnings.</param>
/// <param name="Alone">What the last day says alone; null where there is but one day.</param>
/// <param name="Made">Date on which it was made.</param>
public sealed record Report(ReportSubject Subject, Verdict Verdict, DayAlone? Alone, LocalDate Made)
{
    /// <summary>Version of the program.</summary>
    public static string Version { get; } = typeof(Report).Assembly.GetName().Version!.ToString(3);

    /// <summary>Temperatures in words.</summary>
    internal DegreeWords Degrees => new(Subject.Units);

    /// <summary>The question in words.</summary>
    public string Asked => Subject.Asked.Length > 0 ? Subject.Asked : "Which way of cooling keeps the motor coolest?";

    /// <summary>What earlier days have added to the verdict; null where it is from the table by itself.</summary>
    public EarlierEvidence? Earlier { get; init; }

    /// <summary>The verdict together with earlier days, where the day's own is the report's.</summary>
    public Judged? Wider { get; init; }

    /// <summary>The question answered as it was asked.</summary>
    public string Answer => AnswerOf(Verdict);

    /// <summary>The same by another verdict.</summary>
    public string AnswerOf(Verdict verdict) => new QuestionAnswer(verdict, Subject.Question, Subject.Options, Degrees, Subject.Costs).Say();

    /// <summary>Runs of all tables that the verdict is from.</summary>
    internal IEnumerable<Run> Runs => Earlier is null ? Subject.Table.Runs : [.. Subject.Earlier.SelectMany(one => one.Table.Runs), .. Subject.Table.Runs];

    /// <summary>Why there is no verdict together with earlier days that were asked for; null where there is.</summary>
    public string? NotTogether { get; init; }

    /// <summary>What a reader must know before trusting it.</summary>
    public IReadOnlyList<string> Mind => [.. NotTogether is null ? [] : new[] { NotTogether }, .. Subject.LeftOut.Except(Verdict.Warnings), .. Verdict.Warnings];

    /// <summary>Days that have a run which counts, in the order of the table.</summary>
    public IReadOnlyList<string> Days => DaysOf(Verdict);

    /// <summary>Like "Readings of 9 June 2026" or "Readings of 4 days, 2 to 30 June 2026"; when it was made where no run has a date.</summary>
    public string When
    {
        get
        {
            LocalDate[] dates = [.. Runs.Select(run => run.StartedAt?.Date).OfType<LocalDate>()];
            string days = Days.Count > 1 ? $"{Days.Count} days, " : "";
            if (dates.Length == 0) return $"{(Days.Count > 1 ? $"Readings of {Days.Count} days without a date" : "Readings without a date")}, drawn on {Say(Made)}";
            var (first, last) = (dates.Min(), dates.Max());
            return first == last ? $"Readings of {days}{Say(first)}"
                : $"Readings of {days}{first.ToString(first.Year != last.Year ? "d MMMM uuuu" : first.Month != last.Month ? "d MMMM" : "%d", CultureInfo.InvariantCulture)} to {Say(last)}";
        }
    }

    /// <summary>A date like "9 June 2026".</summary>
    public static string Say(LocalDate date) => date.ToString("d MMMM uuuu", CultureInfo.InvariantCulture);

    /// <summary>A sentence of the evidence in the report's unit.</summary>
    public string Put(string sentence) => Subject.Units == TemperatureUnitChoice.Fahrenheit ? FahrenheitWords.Of(sentence) : sentence;

    internal static IReadOnlyList<string> DaysOf(Verdict verdict) => [.. verdict.Runs.Select(run => run.Day).Distinct(StringComparer.OrdinalIgnoreCase)];
}

/// <summary>The last day judged alone, at the conditions of the whole.</summary>
/// <param name="Day">Its name.</param>
/// <param name="Verdict">Its verdict; null where it can't be judged alone.</param>
/// <param name="Why">Why not; empty where it can.</param>
public sealed record DayAlone(string Day, Verdict? Verdict, string Why);
