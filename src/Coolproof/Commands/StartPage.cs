using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>What `coolproof` says when nothing was asked.</summary>
internal static class StartPage
{
    /// <summary>The page.</summary>
    public static string Text(Ink ink) => $"""
        {ink.Bold("Coolproof")} tells which way of cooling a small electric race motor really works, from readings of a temperature gun.
        It puts each reading back to the instant of the stop and to equal air, and says which differences are real and which can't be told yet.

        Try
          ./coolproof compare demo/demo-day.csv      judges the demo's test evening (its options and readings are made up)
          ./coolproof rehearse --out evening.csv     makes up another evening to play with; compare evening.csv judges it
          ./coolproof compare --help                 says what else can be asked

        Your own readings: one line a reading, in any spreadsheet, saved as CSV. README.md shows how.

        """;
}
