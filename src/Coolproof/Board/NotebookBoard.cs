using Coolproof.Notebook.Journal;
using Coolproof.Store;

namespace Coolproof.Board;

/// <summary>The notebook as it stands now, in memory, kept up to date from the store whoever writes to it: this server, another one, or a restore.</summary>
/// <param name="store">The store.</param>
/// <param name="clock">The clock.</param>
/// <param name="ahead">What is being read of the store already; null: it is read when the board starts.</param>
internal sealed class NotebookBoard(JournalStore store, TimeProvider clock, Task<NotebookFold>? ahead = null) : BackgroundService
{
    static readonly TimeSpan RetryAfter = TimeSpan.FromSeconds(2);

    readonly Lock turn = new();
    readonly TaskCompletionSource read = new(TaskCreationOptions.RunContinuationsAsynchronously);
    TaskCompletionSource changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
    volatile PitNotebook notebook = PitNotebook.Empty;
    volatile StoreException? trouble;

    /// <summary>Raised after the notebook has changed; whoever listens must be quick about it.</summary>
    public event Action? Changed;

    /// <summary>The notebook now. It never changes; ask again for a newer one.</summary>
    public PitNotebook Notebook => notebook;

    /// <summary>Whether everything in the store has been read once.</summary>
    public bool Ready => read.Task.IsCompletedSuccessfully;

    /// <summary>Why the store can't be read at the moment; null when it can.</summary>
    public StoreException? Trouble => trouble;

    /// <summary>Waits until everything in the store has been read once.</summary>
    public Task ReadyAsync(CancellationToken cancel = default) => read.Task.WaitAsync(cancel);

    /// <summary>Keeps entries, all or none, and waits until the notebook has them.</summary>
    /// <param name="device">Author.</param>
    /// <param name="entries">Entries.</param>
    /// <param name="cancel">Stops waiting; they may be kept all the same.</param>
    /// <returns>What the store holds after the commit.</returns>
    /// <exception cref="StoreException">They can't be kept.</exception>
    public async Task<Kept> KeepAsync(Guid device, IReadOnlyList<Entry> entries, CancellationToken cancel = default)
    {
        var kept = await store.AppendAsync(device, entries, cancel);
        if (kept.New > 0) await ReachAsync(kept.Cursor, cancel);
        return kept;
    }

    /// <summary>Waits until the notebook has everything up to a cursor.</summary>
    public async Task ReachAsync(long cursor, CancellationToken cancel = default)
    {
        for (var now = Notebook; now.Cursor < cursor;) now = await NextAsync(now, cancel);
    }

    /// <summary>Waits for a notebook other than the one that is known.</summary>
    public async Task<PitNotebook> NextAsync(PitNotebook known, CancellationToken cancel = default)
    {
        while (true)
        {
            Task signal;
            lock (turn) signal = changed.Task;
            if (notebook != known) return notebook;
            await signal.WaitAsync(cancel);
        }
    }

    /// <summary>Reads all that a store holds, for a board that is to come.</summary>
    public static Task<NotebookFold> ReadAheadAsync(JournalStore store, CancellationToken cancel) => Task.Run(
        async () =>
        {
            var fold = new NotebookFold();
            await AddNewAsync(store, fold, cancel);
            return fold;
        },
        cancel);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var fold = new NotebookFold();
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (ahead is not null)
                {
                    var reading = ahead;
                    ahead = null; // where it failed, the store is read from here
                    fold = await reading.WaitAsync(stoppingToken);
                    Show(fold.Notebook);
                }
                await foreach (var cursor in store.WatchAsync(stoppingToken)) await FollowAsync(fold, stoppingToken);
            }
            catch (StoreException failure)
            {
                trouble = failure;
                await Task.Delay(RetryAfter, clock, stoppingToken);
            }
        }
    }

    async Task FollowAsync(NotebookFold fold, CancellationToken cancel)
    {
        await AddNewAsync(store, fold, cancel);
        trouble = null;
        Show(fold.Notebook);
        read.TrySetResult();
    }

    static async Task AddNewAsync(JournalStore store, NotebookFold fold, CancellationToken cancel)
    {
        // The next page is read while this one is folded: a notebook of a thousand days opens in half the time.
        var reading = store.ReadAfterAsync(fold.Notebook.Cursor, JournalStore.LargestPage, cancel);
        while (true)
        {
            var page = await reading;
            if (page.More) reading = store.ReadAfterAsync(page.Cursor, JournalStore.LargestPage, cancel);
            fold.Add(page.Entries);
            if (!page.More) break;
        }
    }

    void Show(PitNotebook now)
    {
        if (now == notebook) return;
        TaskCompletionSource heard;
        lock (turn)
        {
            notebook = now;
            heard = changed;
            changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
        }
        heard.SetResult();
        Changed?.Invoke();
    }
}
