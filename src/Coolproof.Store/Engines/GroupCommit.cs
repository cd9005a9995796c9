using System.Threading.Channels;
using NodaTime;

namespace Coolproof.Store.Engines;

/// <summary>
/// Commits what waits together: while one transaction is being synced to disk, batches gather and go into the next one. So many phones share the cost of a sync, and a
/// batch is acknowledged only after its own commit.
/// </summary>
internal sealed class GroupCommit : IAsyncDisposable
{
    // A group this large takes a few milliseconds to insert; larger ones would make small batches wait.
    private const int MostRows = 5000;

    private readonly Channel<Waiting> _waiting = Channel.CreateUnbounded<Waiting>(new UnboundedChannelOptions { SingleReader = true });
    private readonly Engine _engine;
    private readonly TimeProvider _clock;
    private readonly CommitBell _bell;
    private readonly CancellationTokenSource _closing = new();
    private readonly Task _loop;

    public GroupCommit(Engine engine, TimeProvider clock, CommitBell bell)
    {
        _engine = engine;
        _clock = clock;
        _bell = bell;
        _loop = Task.Run(LoopAsync);
    }

    private sealed record Waiting(IReadOnlyList<NewEntry> Entries, (Guid Id, string MediaType, ReadOnlyMemory<byte> Bytes)? Photo, TaskCompletionSource<Kept> Done);

    public Task<Kept> AppendAsync(IReadOnlyList<NewEntry> entries, CancellationToken cancel) => HandOver(entries, null, cancel);

    public Task PutPhotoAsync(Guid id, string mediaType, ReadOnlyMemory<byte> bytes, CancellationToken cancel) => HandOver([], (id, mediaType, bytes), cancel);

    private Task<Kept> HandOver(IReadOnlyList<NewEntry> entries, (Guid, string, ReadOnlyMemory<byte>)? photo, CancellationToken cancel)
    {
        Waiting waiting = new(entries, photo, new TaskCompletionSource<Kept>(TaskCreationOptions.RunContinuationsAsynchronously));
        ObjectDisposedException.ThrowIf(!_waiting.Writer.TryWrite(waiting), this);
        return waiting.Done.Task.WaitAsync(cancel);
    }

    private async Task LoopAsync()
    {
        while (await _waiting.Reader.WaitToReadAsync())
        {
            List<Waiting> group = [];
            int rows = 0;
            // A photo goes alone: its bytes would hold up the taps.
            while (rows < MostRows && _waiting.Reader.TryPeek(out Waiting? next) && (next.Photo is null || group.Count == 0))
            {
                _waiting.Reader.TryRead(out next);
                group.Add(next!);
                rows += next!.Entries.Count;
                if (next.Photo is not null) break;
            }

            await CommitAsync(group);
        }
    }

    private async Task CommitAsync(List<Waiting> group)
    {
        try
        {
            Instant now = Instant.FromDateTimeOffset(_clock.GetUtcNow());
            long keptMs = now.ToUnixTimeMilliseconds();
            List<EntryRow> rows = [.. group.SelectMany(waiting => waiting.Entries.Select(entry => EntryRow.Of(entry, keptMs)))];
            PhotoRow? photo = group is [{ Photo: { } put }] ? new PhotoRow(put.Id.ToString("D"), put.MediaType, put.Bytes.ToArray(), keptMs) : null;
            (bool[] isNew, long cursor) = await _engine.WriteAsync(rows, photo, _closing.Token);
            int from = 0;
            foreach (Waiting waiting in group)
            {
                int count = waiting.Entries.Count;
                waiting.Done.SetResult(new Kept([.. waiting.Entries.Select(entry => entry.Entry.Id)], isNew.AsSpan(from, count).Count(true), cursor, Instant.FromUnixTimeMilliseconds(keptMs)));
                from += count;
            }

            if (isNew.Contains(true)) _bell.Ring();
        }
        catch (Exception failure)
        {
            foreach (Waiting waiting in group) waiting.Done.TrySetException(failure);
        }
    }

    /// <summary>Commits what was handed over, then ends.</summary>
    public async ValueTask DisposeAsync()
    {
        _waiting.Writer.TryComplete();
        await _loop;
        _closing.Dispose();
    }
}
