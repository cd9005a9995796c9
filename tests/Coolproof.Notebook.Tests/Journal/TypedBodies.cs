using Coolproof.Notebook.Journal;

namespace Coolproof.Notebook.Tests.Journal;

public sealed class TypedBodies
{
    private static TypedBody Read(string kind, params (string Name, string Text)[] typed) =>
        TypedBody.Read(kind, typed.GroupBy(pair => pair.Name).Select(group => KeyValuePair.Create(group.Key, (IReadOnlyList<string>)[.. group.Select(pair => pair.Text)])));

    [Fact]
    public void Texts_numbers_words_and_yes_become_what_the_kind_holds()
    {
        TypedBody read = Read(EntryKind.OptionSet, ("name", " rear blower "), ("massG", "41,5"), ("fans", "1"), ("cantBeUndone", "yes"), ("mark", "star"));
        Assert.Empty(read.Faults);
        Assert.Equal(EntryBody.Of(("name", "rear blower"), ("massG", 41.5), ("fans", 1), ("cantBeUndone", true), ("mark", "star")), read.Body);
    }

    [Fact]
    public void A_blank_clears_a_field_of_a_set_and_says_nothing_elsewhere()
    {
        Assert.Equal(EntryBody.Of(("price", null)), Read(EntryKind.OptionSet, ("price", "  ")).Body);
        Assert.Equal(EntryBody.Of(("day", "0197a000-0000-7000-8000-000000000001"), ("airC", 24.0)), Read(EntryKind.Weather, ("day", "0197a000-0000-7000-8000-000000000001"), ("airC", "24"), ("sky", "")).Body);
    }

    [Fact]
    public void A_list_may_be_empty()
    {
        TypedBody read = Read(EntryKind.QuestionSet, ("options", ""));
        Assert.Empty(read.Faults);
        Assert.Empty(read.Body.Ids("options"));
        Assert.True(read.Body.Has("options"));
    }

    [Theory]
    [InlineData("massG", "heavy", "heavy is no number")]
    [InlineData("massG", "-3", "-3, too small")]
    [InlineData("massG", "1e400", "1e400 is no number")]
    [InlineData("cantBeUndone", "perhaps", "perhaps is neither yes nor no")]
    [InlineData("mark", "heart", "unknown: heart")]
    public void What_is_not_understood_is_named_once_with_its_field(string field, string text, string reason)
    {
        EntryFault fault = Assert.Single(Read(EntryKind.OptionSet, (field, text)).Faults);
        Assert.Equal(field, fault.Field);
        Assert.Equal(reason, fault.Reason);
        Assert.NotEmpty(fault.Remedy);
    }

    [Fact]
    public void What_must_be_there_is_asked_for() =>
        Assert.Contains(Read(EntryKind.RaceReading, ("value", "61"), ("unit", "c"), ("option", "")).Faults, fault => fault.Field == "option" && fault.Reason == "missing");

    [Fact]
    public void Numbers_are_turned_into_the_unit_of_the_field()
    {
        TypedBody read = TypedBody.Read(EntryKind.QuestionSet, [KeyValuePair.Create("airC", (IReadOnlyList<string>)["86"])], (_, fahrenheit) => (fahrenheit - 32) / 1.8);
        Assert.Equal(30, read.Body.Number("airC")!.Value, 9);
    }
}
