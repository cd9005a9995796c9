using Coolproof.Notebook.Journal;

namespace Coolproof.Board;

/// <summary>What a page is asked about: a day, or a question with all its days.</summary>
/// <param name="Day">The day; null: of a whole question.</param>
/// <param name="Question">The question, or the one that the day works on; null: a day without one.</param>
/// <param name="Driven">The day whose round may be under way: the day itself, or the last one of the question; null where it has none.</param>
internal sealed record AskedAbout(NotedDay? Day, NotedQuestion? Question, NotedDay? Driven)
{
    /// <summary>What an id is of; null where the notebook has no such day or question.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="id">UUID of a day or a question.</param>
    public static AskedAbout? Of(PitNotebook notebook, Guid id)
    {
        if (notebook.Find<NotedDay>(id) is { } day) return new(day, day.Question is { } works ? notebook.Find<NotedQuestion>(works) : null, day);
        return notebook.Find<NotedQuestion>(id) is { } question ? new(null, question, notebook.Days.LastOrDefault(one => one.Question == id)) : null;
    }
}
