namespace Coolproof.Rehearsal;

/// <summary>One run of the plan, before chance has its say.</summary>
/// <param name="Evening">Which evening, from 0.</param>
/// <param name="Position">Where in the evening, from 0.</param>
/// <param name="Option">Which option, from 0.</param>
/// <param name="Refit">Whether the option is fitted anew before the run.</param>
/// <param name="IsVoid">Whether it ends in a crash.</param>
internal sealed record PlannedRun(int Evening, int Position, int Option, bool Refit, bool IsVoid)
{
    /// <summary>All runs of a rehearsal in the order of time.</summary>
    internal static IReadOnlyList<PlannedRun> Plan(RehearsalSettings settings)
    {
        List<PlannedRun> plan = [];
        for (int evening = 0; evening < settings.Evenings; evening++)
        {
            RandomStream chance = new(settings.Seed, "order", evening);
            List<int> options = [];
            options.AddRange(settings.Sequence ?? []);
            for (int round = 0; options.Count < settings.Options.Count * settings.RunsPerOption && settings.Sequence is null; round++)
            {
                List<int> once = [.. Enumerable.Range(0, settings.Options.Count)];
                if (settings.Order == RunOrder.Shuffled)
                    chance.Shuffle(once);
                options.AddRange(once);
            }
            HashSet<int> crashes = [];
            while (crashes.Count < Math.Min(settings.VoidRuns, options.Count))
                crashes.Add(chance.Pick(options.Count));
            AddEvening(plan, evening, options, crashes);
        }
        return plan;
    }

    static void AddEvening(List<PlannedRun> plan, int evening, List<int> options, HashSet<int> crashes)
    {
        int position = 0;
        for (int i = 0; i < options.Count; i++)
        {
            bool refit = i == 0 || options[i] != options[i - 1];
            if (crashes.Contains(i))
            {
                plan.Add(new(evening, position++, options[i], refit, IsVoid: true));
                refit = false;
            }
            plan.Add(new(evening, position++, options[i], refit, IsVoid: false));
        }
    }
}
