using Coolproof.Sampling;

namespace Coolproof.Advice.Orders;

/// <summary>
/// The order of a day's runs: rounds that hold each option once, so that a day that is cut short still compares fairly; begun from Williams sequences and
/// randomised rounds, then improved by exchanges within rounds. Options that can't be undone come after all others.
/// </summary>
public sealed class OrderSearch
{
    private const int MostRounds = 6, RandomStarts = 12, Improved = 3;
    private const double WholeDayWeight = 0.6;
    private readonly DayLimits _limits;
    private readonly ExpectedWidth _width;
    private readonly RandomStream _chance;
    private readonly int[] _free;

    private OrderSearch(DayLimits limits, RunNoise noise, long seed)
    {
        (_limits, _width, _chance) = (limits, new(noise), new(seed));
        _free = [.. Enumerable.Range(0, limits.Options).Except(limits.CantBeUndone)];
    }

    /// <summary>The best order found. The same limits, noise and seed give the same order.</summary>
    /// <param name="limits">What the day allows.</param>
    /// <param name="noise">What runs are off by.</param>
    /// <param name="seed">Seed.</param>
    public static PlannedOrder Best(DayLimits limits, RunNoise noise, long seed)
    {
        OrderSearch search = new(limits, noise, seed);
        int rounds = search.Rounds();
        List<int[][]> starts = [search.Williams(rounds), .. Enumerable.Range(0, RandomStarts).Select(_ => search.RandomRounds(rounds))];
        int[][] best = starts.OrderBy(search.Score).Take(Improved).Select(search.Improve).MinBy(search.Score)!;
        return search.Planned(best);
    }

    /// <summary>Randomised rounds without a search, cut to what fits: the yardstick.</summary>
    public static PlannedOrder Randomised(DayLimits limits, RunNoise noise, long seed)
    {
        OrderSearch search = new(limits, noise, seed);
        return search.Planned(search.RandomRounds(search.Rounds()));
    }

    /// <summary>Any order, as it would go on such a day.</summary>
    public static PlannedOrder Given(IReadOnlyList<int> order, DayLimits limits, RunNoise noise) =>
        new OrderSearch(limits, noise, 1).Planned([[.. order]]);

    // As many rounds as could fit if nothing had to be waited for, at least one.
    private int Rounds()
    {
        double least = _limits.DriveS + _limits.ReadS + _limits.CoolS;
        return Math.Clamp((int)Math.Ceiling(_limits.LengthS / least / _limits.Options), 1, Math.Clamp(_limits.MostRounds ?? MostRounds, 1, MostRounds));
    }

    private int[][] Williams(int rounds)
    {
        int[][] rows = _free.Length < 2 ? [[0]] : WilliamsDesign.Sequences(_free.Length);
        return Fixed([.. Enumerable.Range(0, rounds).Select(r => rows[r % rows.Length].Select(i => _free[i]).ToArray())]);
    }

    private int[][] RandomRounds(int rounds)
    {
        int[][] shuffled = new int[rounds][];
        for (int r = 0; r < rounds; r++)
        {
            shuffled[r] = [.. _free];
            for (int i = _free.Length - 1; i > 0; i--)
            {
                int j = _chance.NextIndex(i + 1);
                (shuffled[r][i], shuffled[r][j]) = (shuffled[r][j], shuffled[r][i]);
            }
        }
        return Fixed(shuffled);
    }

    // The reference to the front of the first round and the end of the last.
    private int[][] Fixed(int[][] rounds)
    {
        if (_limits.Reference is not { } reference || !_free.Contains(reference))
            return rounds;
        rounds[0] = [reference, .. rounds[0].Where(o => o != reference)];
        if (rounds.Length > 1)
            rounds[^1] = [.. rounds[^1].Where(o => o != reference), reference];
        return rounds;
    }

    private bool IsFixed(int[][] rounds, int round, int place) => _limits.Reference is { } reference && rounds[round][place] == reference
        && ((round == 0 && place == 0) || (round > 0 && round == rounds.Length - 1 && place == rounds[round].Length - 1));

    // First improvement over all exchanges within a round, until none helps.
    private int[][] Improve(int[][] rounds)
    {
        double score = Score(rounds);
        for (bool better = true; better;)
        {
            better = false;
            for (int r = 0; r < rounds.Length; r++)
            {
                for (int i = 0; i < rounds[r].Length; i++)
                {
                    for (int j = 0; j < i; j++)
                    {
                        if (IsFixed(rounds, r, i) || IsFixed(rounds, r, j))
                            continue;
                        (rounds[r][i], rounds[r][j]) = (rounds[r][j], rounds[r][i]);
                        double changed = Score(rounds);
                        if (changed < score - 1e-9)
                            (score, better) = (changed, true);
                        else
                            (rounds[r][i], rounds[r][j]) = (rounds[r][j], rounds[r][i]);
                    }
                }
            }
        }
        return rounds;
    }

    private double Score(int[][] rounds)
    {
        (int[] order, DaySchedule schedule) = Fitted(rounds);
        double[] starts = [.. schedule.StartS];
        double whole = _width.Of(order, starts, _limits.Options), sum = 0;
        int count = 0;
        for (int cut = _limits.Options; cut < order.Length; cut += _limits.Options, count++)
            sum += _width.Of(order.AsSpan(0, cut), starts.AsSpan(0, cut), _limits.Options);
        return count == 0 ? whole : WholeDayWeight * whole + (1 - WholeDayWeight) * sum / count;
    }

    private PlannedOrder Planned(int[][] rounds)
    {
        (int[] order, DaySchedule schedule) = Fitted(rounds);
        double[] starts = [.. schedule.StartS];
        List<double> after = [];
        for (int cut = _limits.Options; cut <= order.Length; cut += _limits.Options)
            after.Add(_width.Of(order.AsSpan(0, cut), starts.AsSpan(0, cut), _limits.Options));
        return new(order, starts, _width.Of(order, starts, _limits.Options), after, Balance.Of([order], _limits.Options), schedule.WaitedForPackS);
    }

    // The runs that fit: rounds of what can be undone, then as many rounds of the rest, so many that all options have the same share.
    private (int[] Order, DaySchedule Schedule) Fitted(int[][] rounds)
    {
        int[] last = [.. _limits.CantBeUndone];
        for (int whole = rounds.Length; last.Length > 0 && whole >= 1; whole--)
        {
            int[] tried = [.. rounds.Take(whole).SelectMany(r => r), .. last.SelectMany(o => Enumerable.Repeat(o, whole))];
            DaySchedule fits = DaySchedule.Of(tried, _limits);
            if (fits.Runs == tried.Length || whole == 1)
                return (tried[..fits.Runs], fits);
        }
        int[] order = [.. rounds.SelectMany(r => r)];
        DaySchedule schedule = DaySchedule.Of(order, _limits);
        return (order[..schedule.Runs], schedule);
    }
}
