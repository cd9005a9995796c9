namespace Coolproof.Tests.Serving;

/// <summary>A clock that goes when it is told to.</summary>
sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
