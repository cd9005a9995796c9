using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>One tap, as the device that it was made on wrote it down. Never changed afterwards: a correction is another entry.</summary>
/// <param name="Id">UUID made on the device (version 7; version 8 where it was made from the content of an imported table).</param>
/// <param name="Kind">One of <see cref="EntryKind"/>.</param>
/// <param name="At">The device's clock when it was tapped, to the millisecond.</param>
/// <param name="About">The thing that it speaks of.</param>
/// <param name="Corrects">The entry that it stands in for; null when it is no correction.</param>
/// <param name="Body">What it says.</param>
public sealed record Entry(Guid Id, string Kind, Instant At, Guid About, Guid? Corrects, EntryBody Body);
