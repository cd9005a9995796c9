using static Coolproof.Notebook.Journal.Rules.FieldRules;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Kinds that speak of other entries, of two runs, of clocks, and of imports.</summary>
internal static class CorrectionKinds
{
    public static readonly IReadOnlyList<KindRule> All =
    [
        new(EntryKind.Nudge, "the thing of the entry", "moves a stamp; the original stays", [Must(Id("of", "the entry")), Must(Number("seconds", -7200, 7200, "later by, s"))]),
        new(EntryKind.Undo, "the thing of the entry", "takes an entry back; of an undo: brings it again", [Must(Id("of", "the entry"))]),
        new(EntryKind.RunSame, "run", "the two are one run, which two phones began", [Must(Id("other", "the other run"))]),
        new(EntryKind.RunTwo, "run", "the two are two runs", [Must(Id("other", "the other run"))]),
        new(EntryKind.ClockChoice, "run", "which stamp of several devices counts", [Must(Id("run", "the run")), Must(Word("event", "the stamp", "go", "stop", "halt", "power-off")), Must(Id("entry", "the entry that counts"))]),
        new(EntryKind.ClockOffset, "device", "device clock minus server clock, as the device measured it", [Must(Number("ms", -1e13, 1e13, "ahead by, ms"))]),
        new(EntryKind.Import, "import", "a readings table was imported", [Text("name", "name of the file"), Must(Text("sha256", "hash of its content")), Whole("runs", 0, 1e6, "runs in it")]),
    ];
}
