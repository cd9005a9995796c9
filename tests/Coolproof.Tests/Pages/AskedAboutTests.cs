using Coolproof.Board;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Tests.Pages;

/// <summary>What a page is asked about, by the id in its address.</summary>
public class AskedAboutTests
{
    static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 16, 0);

    readonly Guid question = Guid.CreateVersion7(), first = Guid.CreateVersion7(), second = Guid.CreateVersion7(), alone = Guid.CreateVersion7(), option = Guid.CreateVersion7();

    [Fact]
    public void A_day_is_asked_about_with_its_question_and_is_itself_what_is_driven()
    {
        var about = AskedAbout.Of(Notebook(), first)!;
        Assert.Equal((first, question, first), (about.Day!.Id, about.Question!.Id, about.Driven!.Id));
    }

    [Fact]
    public void A_day_without_a_question_is_asked_about_by_itself()
    {
        var about = AskedAbout.Of(Notebook(), alone)!;
        Assert.Equal((alone, null, alone), (about.Day!.Id, about.Question, about.Driven!.Id));
    }

    [Fact]
    public void Of_a_question_the_last_of_its_days_is_the_one_that_is_driven()
    {
        var about = AskedAbout.Of(Notebook(), question)!;
        Assert.Equal((null, question, second), (about.Day, about.Question!.Id, about.Driven!.Id));
        var none = AskedAbout.Of(PitNotebook.Of([Stored(EntryKind.QuestionSet, question, ("text", "which?"))]), question)!;
        Assert.Equal((null, null), (none.Day, none.Driven));
    }

    [Fact]
    public void Nothing_else_can_be_asked_about()
    {
        Assert.Null(AskedAbout.Of(Notebook(), option));
        Assert.Null(AskedAbout.Of(PitNotebook.Empty, first));
    }

    PitNotebook Notebook() => PitNotebook.Of(
    [
        Stored(EntryKind.QuestionSet, question, ("text", "which?")), Stored(EntryKind.OptionSet, option, ("name", "bare can")), Stored(EntryKind.DaySet, second, ("date", "2026-06-16"), ("question", question)),
        Stored(EntryKind.DaySet, first, ("date", "2026-06-09"), ("question", question)), Stored(EntryKind.DaySet, alone, ("date", "2026-06-23")),
    ]);

    static StoredEntry Stored(string kind, Guid about, params (string, object?)[] fields) =>
        new(new Entry(Guid.CreateVersion7(), kind, Start, about, null, EntryBody.Of(fields)), Serving.PitServer.Device, 1, Start);
}
