using System.Runtime.ExceptionServices;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// Runs chains side by side, a piece of one after a piece of another, so that no thread waits long for the slowest at the end. What a chain does depends on its index alone, so the number of threads changes
/// nothing but the time.
/// </summary>
static class ChainRunner
{
    // Some ten milliseconds of a usual density: little to wait for, much against the taking of turns.
    const int Piece = 20;

    /// <param name="chains">Chains.</param>
    /// <param name="threads">Threads at most.</param>
    /// <param name="ticks">Iterations expected over all chains.</param>
    /// <param name="progress">Told rising parts of 1, about a hundred times.</param>
    /// <param name="chain">Takes a chain's index and gives what does an iteration at each step.</param>
    public static void Run(int chains, int threads, long ticks, IProgress<double>? progress, Func<int, IEnumerable<int>> chain)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(threads);
        Action tick = progress is null ? () => { } : Ticker(progress, ticks);
        // The chain that has done least goes first; of equals the one of the lower index.
        PriorityQueue<(int Index, IEnumerator<int> Steps), (int Done, int Index)> waiting = new();
        for (int i = 0; i < chains; i++)
            waiting.Enqueue((i, chain(i).GetEnumerator()), (0, i));
        if (threads == 1)
        {
            Work(waiting, tick);
            return;
        }

        try
        {
            Parallel.For(0, Math.Min(threads, chains), new ParallelOptions { MaxDegreeOfParallelism = threads }, _ => Work(waiting, tick));
        }
        catch (AggregateException e)
        {
            // The caller sees what the chain threw, as with one thread.
            ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
        }
    }

    // Takes turns until no chain waits; one that another thread is at comes back to that thread.
    static void Work(PriorityQueue<(int Index, IEnumerator<int> Steps), (int Done, int Index)> waiting, Action tick)
    {
        while (true)
        {
            (int index, IEnumerator<int> steps) taken;
            int done;
            lock (waiting)
            {
                if (!waiting.TryDequeue(out taken, out (int Done, int Index) priority))
                    return;
                done = priority.Done;
            }

            int made = 0;
            while (made < Piece && taken.steps.MoveNext())
            {
                made++;
                tick();
            }

            if (made < Piece)
            {
                taken.steps.Dispose();
                continue;
            }

            lock (waiting)
                waiting.Enqueue(taken, (done + made, taken.index));
        }
    }

    static Action Ticker(IProgress<double> progress, long ticks)
    {
        Lock gate = new();
        long done = 0, every = Math.Max(1, ticks / 100);
        return () =>
        {
            lock (gate)
            {
                done++;
                if (done % every == 0 || done == ticks)
                    progress.Report((double)done / ticks);
            }
        };
    }
}
