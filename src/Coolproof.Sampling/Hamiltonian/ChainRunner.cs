using System.Runtime.ExceptionServices;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Runs chains side by side. What a chain does depends on its index alone, so the number of threads changes nothing but the time.</summary>
static class ChainRunner
{
    /// <param name="chains">Chains.</param>
    /// <param name="threads">Threads at most.</param>
    /// <param name="ticks">Ticks expected over all chains.</param>
    /// <param name="progress">Told rising parts of 1, about a hundred times.</param>
    /// <param name="run">Takes a chain's index and what to call after each iteration.</param>
    public static ChainTrace[] Run(int chains, int threads, long ticks, IProgress<double>? progress, Func<int, Action, ChainTrace> run)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(threads);
        ChainTrace[] traces = new ChainTrace[chains];
        Action tick = progress is null ? () => { } : Ticker(progress, ticks);
        if (threads == 1)
        {
            for (int i = 0; i < chains; i++)
                traces[i] = run(i, tick);
            return traces;
        }

        try
        {
            Parallel.For(0, chains, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => traces[i] = run(i, tick));
        }
        catch (AggregateException e)
        {
            // The caller sees what the chain threw, as with one thread.
            ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
        }

        return traces;
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
