using System.Threading.Channels;

namespace Coolproof.Store.Engines;

/// <summary>Rings when something was committed; rings that nobody heard yet are one.</summary>
internal sealed class CommitBell
{
    private readonly Lock _lock = new();
    private readonly List<Ear> _ears = [];

    /// <summary>Someone who waits for the bell.</summary>
    internal sealed class Ear(CommitBell bell) : IDisposable
    {
        private readonly Channel<bool> _rings = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

        /// <summary>Waits for the next ring, or takes one that came meanwhile.</summary>
        public async Task WaitAsync(CancellationToken cancel) => await _rings.Reader.ReadAsync(cancel);

        internal void Hear() => _rings.Writer.TryWrite(true);

        public void Dispose()
        {
            lock (bell._lock) bell._ears.Remove(this);
        }
    }

    /// <summary>Begins to listen.</summary>
    public Ear Listen()
    {
        Ear ear = new(this);
        lock (_lock) _ears.Add(ear);
        return ear;
    }

    /// <summary>Rings.</summary>
    public void Ring()
    {
        lock (_lock)
        {
            foreach (Ear ear in _ears) ear.Hear();
        }
    }
}
