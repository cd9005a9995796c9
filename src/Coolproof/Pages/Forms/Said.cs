using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Pages.Forms;

/// <summary>Something that a form says of a thing; it becomes an entry.</summary>
/// <param name="Kind">One of <see cref="EntryKind"/>.</param>
/// <param name="About">The thing.</param>
/// <param name="Body">What is said.</param>
public sealed record Said(string Kind, Guid About, EntryBody Body)
{
    /// <summary>The entry.</summary>
    /// <param name="now">The server's clock, which stands in for the device's: a form is sent at once.</param>
    public Entry At(Instant now) => new(Guid.CreateVersion7(now.ToDateTimeOffset()), Kind, Instant.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds()), About, null, Body);
}
