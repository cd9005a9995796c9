namespace Coolproof.EndToEnd.Support;

/// <summary>How long a test waits for a page. No test judges a time by it: a machine may be busy with the others.</summary>
static class Patience
{
    /// <summary>In ms.</summary>
    public const int Ms = 90_000;
}
