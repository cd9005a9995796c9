namespace Coolproof.Pages.Questions;

/// <summary>What a question may ask, with the words for it.</summary>
internal static class QuestionSorts
{
    /// <summary>Words of the format and words for people.</summary>
    public static IReadOnlyList<(string Value, string Words)> All { get; } =
    [
        ("which", "which of several is coolest"), ("pays", "whether one pays beside what is there now"), ("limit", "whether a limit is kept"),
        ("gear", "how much pinion or timing it allows"), ("why", "why one day differs from another"), ("other", "something else"),
    ];

    /// <summary>What a limit may hold for.</summary>
    public static IReadOnlyList<(string Value, string Words)> LimitOn { get; } = [("can", "the can"), ("winding", "the winding"), ("magnet", "the magnets"), ("controller", "the controller")];
}
