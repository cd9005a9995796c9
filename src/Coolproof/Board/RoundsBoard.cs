using Coolproof.Advice.HowMany;

namespace Coolproof.Board;

/// <summary>How far it is reckoned how many rounds of a plan are enough.</summary>
/// <param name="Fraction">Done part, 0 to 1.</param>
/// <param name="Promises">What each number of rounds promises; null before it is done.</param>
/// <param name="Fault">Words of an unexpected failure; null when there was none.</param>
internal sealed record RoundsState(double Fraction, IReadOnlyList<RoundsPromise>? Promises, string? Fault);

/// <summary>Simulates the days of plans in the background, one plan at a time, with progress and cancel. A plan is known by a key that is the same for the same plan.</summary>
/// <remarks>Nothing of it is kept: the same plan and seed give the same figures again.</remarks>
internal sealed class RoundsBoard(TimeProvider clock, ILogger<RoundsBoard> log, IHostApplicationLifetime life)
{
    const int MostHeld = 16;
    static readonly TimeSpan TellEvery = TimeSpan.FromMilliseconds(500);

    readonly Lock turn = new();
    readonly Dictionary<string, Held> held = [];
    readonly SemaphoreSlim one = new(1, 1);
    long changes;

    /// <summary>Raised after a state has changed; whoever listens must be quick about it.</summary>
    public event Action? Changed;

    /// <summary>How a plan stands; null: it was never asked for, was cancelled or is forgotten.</summary>
    public RoundsState? Of(string key)
    {
        lock (turn) return held.GetValueOrDefault(key)?.State;
    }

    /// <summary>Keys whose state changed after a count of changes, and the count now.</summary>
    public (IReadOnlyList<string> Keys, long Now) Since(long known)
    {
        lock (turn) return ([.. held.Where(pair => pair.Value.Change > known).Select(pair => pair.Key)], changes);
    }

    /// <summary>Begins, unless it is under way or done.</summary>
    /// <param name="key">The plan's key.</param>
    /// <param name="settings">What to simulate.</param>
    public void Start(string key, HowManySettings settings)
    {
        Held it;
        lock (turn)
        {
            if (held.TryGetValue(key, out var there) && there.State.Fault is null) return;
            if (held.Count >= MostHeld && held.Where(pair => pair.Value.State.Promises is not null).OrderBy(pair => pair.Value.Change).FirstOrDefault().Key is { } oldest) held.Remove(oldest);
            it = held[key] = new Held(CancellationTokenSource.CreateLinkedTokenSource(life.ApplicationStopping));
        }
        Change(key, it, new RoundsState(0, null, null));
        _ = Task.Run(() => ReckonAsync(key, it, settings));
    }

    /// <summary>Stops the work on a plan and forgets it.</summary>
    public void Cancel(string key)
    {
        lock (turn)
        {
            if (!held.TryGetValue(key, out var it) || it.State.Promises is not null) return;
            it.Stop.Cancel();
            it.State = it.State with { Fault = "It was stopped." };
            it.Change = ++changes;
        }
        Changed?.Invoke();
    }

    async Task ReckonAsync(string key, Held it, HowManySettings settings)
    {
        try
        {
            await one.WaitAsync(it.Stop.Token);
            try
            {
                var promises = RoundsNeeded.Of(settings, new Telling<double>(clock, TellEvery, done => Change(key, it, new RoundsState(done, null, null))), it.Stop.Token);
                Change(key, it, new RoundsState(1, promises, null));
            }
            finally
            {
                one.Release();
            }
        }
        catch (OperationCanceledException)
        {
            // Somebody stopped it, or the server ends.
        }
        catch (Exception fault)
        {
            log.LogError(fault, "Simulating the days of a plan failed");
            Change(key, it, new RoundsState(0, null, $"This is a fault of the program: {fault.Message}"));
        }
    }

    void Change(string key, Held it, RoundsState state)
    {
        lock (turn)
        {
            if (it.Stop.IsCancellationRequested || held.GetValueOrDefault(key) != it) return;
            // Days end on several threads: a report that comes late takes nothing back.
            it.State = state.Promises is null && state.Fault is null ? state with { Fraction = Math.Max(state.Fraction, it.State.Fraction) } : state;
            it.Change = ++changes;
        }
        Changed?.Invoke();
    }

    sealed class Held(CancellationTokenSource stop)
    {
        public CancellationTokenSource Stop { get; } = stop;
        public RoundsState State { get; set; } = new(0, null, null);
        public long Change { get; set; }
    }
}
