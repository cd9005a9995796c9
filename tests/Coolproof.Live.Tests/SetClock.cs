namespace Coolproof.Live.Tests;

/// <summary>A clock that goes when it is told to.</summary>
sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; private set; } = now;

    public long Ms => Now.ToUnixTimeMilliseconds();

    public void Go(double seconds) => Now = Now.AddSeconds(seconds);

    public override DateTimeOffset GetUtcNow() => Now;
}
