namespace Coolproof.Evidence.Model;

/// <summary>What all members' deviations asked for go with (<see cref="MemberEvidence.Follows"/>), one after another in memory.</summary>
internal sealed class AskTerms
{
    private readonly int[] _from, _to, _parameter;
    private readonly double[] _slope;
    private readonly HashSet<DeviationGroup> _leading;

    /// <summary>The terms of a model.</summary>
    public AskTerms(DayModel model)
    {
        (_from, _to) = (new int[model.Dimension], new int[model.Dimension]);
        List<AskTerm> terms = [];
        foreach (DeviationGroup group in model.Groups)
        {
            for (int i = 0; i < group.Evidence.Length; i++)
            {
                _from[group.Members[i]] = terms.Count;
                terms.AddRange(group.Evidence[i].Follows);
                _to[group.Members[i]] = terms.Count;
            }
        }
        _parameter = [.. terms.Select(t => t.Parameter)];
        _slope = [.. terms.Select(t => t.Slope)];
        HashSet<int> followed = [.. terms.Where(t => t.IsMember).Select(t => t.Parameter)];
        _leading = [.. model.Groups.Where(g => g.Members.Any(followed.Contains))];
        Plain = [.. terms.Where(t => !t.IsMember).Select(t => t.Parameter).Distinct()];
    }

    /// <summary>Parameters followed that are no members of groups: followed are their own values, not deviations.</summary>
    public int[] Plain { get; }

    /// <summary>Whether members of other groups follow some of a group's members.</summary>
    public bool Leads(DeviationGroup group) => _leading.Contains(group);

    /// <summary>Sum of a member's terms.</summary>
    /// <param name="member">The member.</param>
    /// <param name="value">Deviations of members and values of plain parameters, by index of parameter.</param>
    public double Sum(int member, double[] value)
    {
        // Two sums: each addition would wait for the one before.
        double even = 0, odd = 0;
        int k = _from[member], to = _to[member];
        for (; k + 1 < to; k += 2)
        {
            even += _slope[k] * value[_parameter[k]];
            odd += _slope[k + 1] * value[_parameter[k + 1]];
        }
        return k < to ? even + odd + _slope[k] * value[_parameter[k]] : even + odd;
    }

    /// <summary>Adds the derivative by a member's sum to those by the values.</summary>
    public void Backward(int member, double bar, double[] valueBar)
    {
        for (int k = _from[member]; k < _to[member]; k++)
            valueBar[_parameter[k]] += bar * _slope[k];
    }
}
