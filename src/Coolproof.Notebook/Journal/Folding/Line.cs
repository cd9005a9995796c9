using NodaTime;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Whether an entry stands.</summary>
internal enum LineStanding { Live, TakenBack, Corrected }

/// <summary>An entry beside what others say of it.</summary>
/// <param name="Stored">The entry.</param>
/// <param name="Tapped">When it was made, by the corrected clock.</param>
/// <param name="NudgedS">Sum of its live nudges, s.</param>
/// <param name="Standing">Whether it stands.</param>
internal sealed record Line(StoredEntry Stored, Instant Tapped, double NudgedS, LineStanding Standing)
{
    public Guid Id => Stored.Id;
    public string Kind => Stored.Entry.Kind;
    public EntryBody Body => Stored.Entry.Body;
    /// <summary>The type of thing that it speaks of; null for any.</summary>
    public ThingType? Type { get; } = Subject.TypeOf(Stored.Entry.Kind);

    public bool Live => Standing == LineStanding.Live;

    /// <summary>When what it speaks of was: seconds ago and nudges included.</summary>
    public Instant At { get; } = Tapped + Duration.FromMilliseconds((long)Math.Round((NudgedS - (Stored.Entry.Body.Number("secondsAgo") ?? 0)) * 1000));

    /// <summary><see cref="Order"/>.</summary>
    public static Comparer<Line> InOrder { get; } = Comparer<Line>.Create(Order);

    /// <summary><see cref="OrderAt"/>.</summary>
    public static Comparer<Line> InOrderAt { get; } = Comparer<Line>.Create(OrderAt);

    /// <summary>The order in which what was said later counts; no two entries are equal in it.</summary>
    public static int Order(Line a, Line b)
    {
        int byTime = a.Tapped.CompareTo(b.Tapped);
        return byTime != 0 ? byTime : a.Id.CompareTo(b.Id);
    }

    /// <summary>The order of what was spoken of.</summary>
    public static int OrderAt(Line a, Line b)
    {
        int byTime = a.At.CompareTo(b.At);
        return byTime != 0 ? byTime : a.Id.CompareTo(b.Id);
    }
}
