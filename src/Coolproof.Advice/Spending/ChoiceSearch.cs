namespace Coolproof.Advice.Spending;

/// <summary>
/// All best choices, exactly: those that no other beats in money, counted grams and worth at once. Parts are decided one after another; of partial choices that leave the same future open
/// only those survive that no other beats. For each known combination (and for none) apart, since it counts as a whole.
/// </summary>
public static class ChoiceSearch
{
    /// <summary>The front, by money, then by grams; the empty choice is its first.</summary>
    /// <param name="choices">Parts and rules.</param>
    /// <param name="limits">What may be spent.</param>
    /// <param name="cancel">Stops the work.</param>
    public static IReadOnlyList<PartChoice> Front(PartChoices choices, SpendLimits limits, CancellationToken cancel = default)
    {
        List<PartChoice> all = [];
        for (int core = -1; core < choices.Known.Count; core++)
            all.AddRange(new Pass(choices, limits, core).Run(cancel));
        return Unbeaten(all);
    }

    /// <summary>Those of some choices that no other beats; of several alike in all three the first by parts.</summary>
    public static IReadOnlyList<PartChoice> Unbeaten(IEnumerable<PartChoice> choices)
    {
        List<PartChoice> front = [];
        Staircase stairs = new();
        foreach (PartChoice choice in choices.OrderBy(c => c.Cents).ThenBy(c => c.CountedGrams).ThenByDescending(c => c.Worth).ThenBy(c => c.Grams).ThenBy(c => c.Parts))
            if (stairs.Adds(choice.CountedGrams, choice.Worth)) front.Add(choice);
        return front;
    }

    // What is left open to a partial choice: parts barred, parts that must follow, known combinations that go before the pass's own and may still become whole, and fans.
    private readonly record struct Open(ulong Barred, ulong Due, ulong Alive, int Fans);

    private readonly record struct Label(long Cents, double Grams, double Worth, ulong Parts);

    private sealed class Pass
    {
        private readonly PartChoices _c;
        private readonly SpendLimits _limits;
        private readonly ulong _core, _higher;
        private readonly int[] _order;
        private readonly double[] _gramsAfter;

        public Pass(PartChoices choices, SpendLimits limits, int core)
        {
            (_c, _limits) = (choices, limits);
            _core = core < 0 ? 0 : choices.Known[core].Parts;
            for (int d = 0; d < choices.Known.Count; d++)
                if (core < 0 || d != core && choices.Before(d, core)) _higher |= 1UL << d;
            CoreWorth = core < 0 ? 0 : choices.Known[core].Worth;
            _order = Order();
            _gramsAfter = new double[_order.Length + 1];
            for (int k = _order.Length - 1; k >= 0; k--) _gramsAfter[k] = _gramsAfter[k + 1] + choices.Grams[_order[k]];
        }

        private double CoreWorth { get; }

        public IEnumerable<PartChoice> Run(CancellationToken cancel)
        {
            Dictionary<Open, List<Label>> now = new() { [new(_c.Barred, _core, _higher, 0)] = [new(0, 0, CoreWorth, 0)] };
            ulong future = _c.Count == 64 ? ulong.MaxValue : (1UL << _c.Count) - 1;
            for (int k = 0; k < _order.Length; k++)
            {
                cancel.ThrowIfCancellationRequested();
                int part = _order[k];
                future &= ~(1UL << part);
                now = Decide(now, part, future, _gramsAfter[k + 1]);
            }
            return now.Values.SelectMany(labels => labels).Select(l => new PartChoice(l.Parts, l.Cents, l.Grams, Math.Max(0, l.Grams - _limits.FreeGrams), l.Worth));
        }

        // Parts that bear on one another stand together, so that little is left open between them: by components of what excludes, needs or was driven together.
        private int[] Order()
        {
            ulong[] near = [.. Enumerable.Range(0, _c.Count).Select(i => _c.Apart[i] | _c.Needs[i])];
            for (int i = 0; i < near.Length; i++)
            {
                for (int j = 0; j < near.Length; j++)
                    if ((_c.Needs[j] >> i & 1) != 0) near[i] |= 1UL << j;
                foreach ((ulong parts, _) in _c.Known)
                    if ((parts >> i & 1) != 0) near[i] |= parts;
            }
            List<int> order = [];
            ulong seen = 0;
            for (int first = 0; first < near.Length; first++)
                for (Queue<int> queue = new([first]); queue.TryDequeue(out int i);)
                {
                    if ((seen >> i & 1) != 0) continue;
                    seen |= 1UL << i;
                    if (Helps(i)) order.Add(i);
                    for (int j = 0; j < near.Length; j++)
                        if ((near[i] >> j & 1) != 0 && (seen >> j & 1) == 0) queue.Enqueue(j);
                }
            return [.. order];
        }

        // What adds nothing and nothing asks for only costs.
        private bool Helps(int i) => _c.Worth[i] > 0 || _c.Needs.Any(n => (n >> i & 1) != 0) || _c.Known.Any(d => (d.Parts >> i & 1) != 0);

        private Dictionary<Open, List<Label>> Decide(Dictionary<Open, List<Label>> before, int part, ulong future, double gramsAfter)
        {
            ulong bit = 1UL << part;
            Dictionary<Open, List<(List<Label> Labels, bool Taken)>> sources = [];
            foreach ((Open open, List<Label> labels) in before)
            {
                if (Left(open, bit, future) is { } left) Add(left, labels, false);
                if (Taken(open, part, bit, future) is { } taken) Add(taken, labels, true);
            }
            Dictionary<Open, List<Label>> after = [];
            foreach ((Open open, List<(List<Label> Labels, bool Taken)> from) in sources)
            {
                List<Label> labels = Merged(from, part, bit, gramsAfter);
                if (labels.Count > 0) after[open] = labels;
            }
            return after;

            void Add(Open open, List<Label> labels, bool taken)
            {
                if (!sources.TryGetValue(open, out var list)) sources[open] = list = [];
                list.Add((labels, taken));
            }
        }

        private Open? Left(Open open, ulong bit, ulong future)
        {
            if ((open.Due & bit) != 0) return null;
            ulong barred = open.Barred & future, alive = open.Alive;
            for (ulong rest = future; rest != 0; rest &= rest - 1)
            {
                int other = System.Numerics.BitOperations.TrailingZeroCount(rest);
                if ((_c.Needs[other] & bit) != 0) barred |= 1UL << other;
            }
            for (ulong rest = alive; rest != 0; rest &= rest - 1)
            {
                int d = System.Numerics.BitOperations.TrailingZeroCount(rest);
                if ((_c.Known[d].Parts & bit) != 0) alive &= ~(1UL << d);
            }
            return Settled(new(barred, open.Due, alive, open.Fans), future);
        }

        private Open? Taken(Open open, int part, ulong bit, ulong future)
        {
            if ((open.Barred & bit) != 0) return null;
            int fans = open.Fans + (_limits.Fans < int.MaxValue ? _c.Fans[part] : 0);
            if (fans > _limits.Fans) return null;
            // What it needs and was decided against before has barred it; what is still to come becomes due.
            Open next = new((open.Barred | _c.Apart[part]) & future, (open.Due | _c.Needs[part]) & future, open.Alive, fans);
            return Settled(next, future);
        }

        // A due part that is barred is a dead end; so is a higher combination that has become whole. One that can't any more is forgotten.
        private Open? Settled(Open open, ulong future)
        {
            if ((open.Due & open.Barred) != 0) return null;
            ulong alive = open.Alive;
            for (ulong rest = alive; rest != 0; rest &= rest - 1)
            {
                int d = System.Numerics.BitOperations.TrailingZeroCount(rest);
                ulong toCome = _c.Known[d].Parts & future;
                if (toCome == 0) return null;
                if ((toCome & open.Barred) != 0) alive &= ~(1UL << d);
            }
            return open with { Alive = alive };
        }

        private List<Label> Merged(List<(List<Label> Labels, bool Taken)> from, int part, ulong bit, double gramsAfter)
        {
            double worth = (_core & bit) != 0 ? 0 : _c.Worth[part];
            List<Label> all = [];
            foreach ((List<Label> labels, bool taken) in from)
                all = InOrder(all, taken ? [.. labels.Select(l => new Label(l.Cents + _c.Cents[part], l.Grams + _c.Grams[part], l.Worth + worth, l.Parts | bit)).Where(Affordable)] : labels);
            // Grams that can't come to count any more, whatever follows, are all alike.
            double least = _limits.FreeGrams - gramsAfter;
            Staircase stairs = new();
            List<Label> kept = [];
            foreach (Label l in all)
                if (stairs.Adds(Math.Max(l.Grams, least), l.Worth)) kept.Add(l);
            return kept;
        }

        private bool Affordable(Label l) => l.Cents <= _limits.Cents && l.Grams - _limits.FreeGrams <= _limits.Grams + 1e-9;

        // Two lists in order, by money, grams and worth, as one; adding the same part to all of a list leaves it in order.
        private static List<Label> InOrder(List<Label> a, List<Label> b)
        {
            if (a.Count == 0) return b;
            List<Label> both = new(a.Count + b.Count);
            int i = 0, j = 0;
            while (i < a.Count && j < b.Count) both.Add(Compared(a[i], b[j]) <= 0 ? a[i++] : b[j++]);
            while (i < a.Count) both.Add(a[i++]);
            while (j < b.Count) both.Add(b[j++]);
            return both;
        }

        private static int Compared(Label a, Label b) =>
            a.Cents != b.Cents ? a.Cents.CompareTo(b.Cents) : a.Grams != b.Grams ? a.Grams.CompareTo(b.Grams) : b.Worth != a.Worth ? b.Worth.CompareTo(a.Worth) : a.Parts.CompareTo(b.Parts);
    }

    /// <summary>Which worth so many grams have brought so far; asked in the order of money.</summary>
    private sealed class Staircase
    {
        private readonly List<double> _grams = [], _worth = [];

        /// <summary>Takes up a choice that none before beats in grams and worth; false where one does.</summary>
        public bool Adds(double grams, double worth)
        {
            int at = _grams.BinarySearch(grams), before = at >= 0 ? at : ~at - 1;
            if (before >= 0 && _worth[before] >= worth) return false;
            int from = at >= 0 ? at : before + 1, to = from;
            while (to < _worth.Count && _worth[to] <= worth) to++;
            _grams.RemoveRange(from, to - from);
            _worth.RemoveRange(from, to - from);
            _grams.Insert(from, grams);
            _worth.Insert(from, worth);
            return true;
        }
    }
}
