namespace Coolproof.Rehearsal.Tests;

public class TimePerRun(ITestOutputHelper output)
{
    [Fact(Explicit = true)]
    public void Processor_time_of_a_simulated_run_is_printed()
    {
        for (int repeat = 0; repeat < 5; repeat++)
        {
            TimeSpan before = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime;
            int runs = Enumerable.Range(1, 300).Sum(seed => DayGenerator.Day(seed).Runs.Count);
            double ms = (System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
            output.WriteLine($"{ms / runs:f3} ms a run, {ms / 300:f2} ms a day, over {runs} runs");
        }
    }
}
