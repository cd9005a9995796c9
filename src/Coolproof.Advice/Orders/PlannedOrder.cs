namespace Coolproof.Advice.Orders;

/// <summary>An order of runs for a day and what it promises.</summary>
/// <param name="Options">Option of each run.</param>
/// <param name="StartS">Start of each run, s from the first go.</param>
/// <param name="ExpectedWidthK">Mean expected 90 % interval of the difference of two options, K.</param>
/// <param name="WidthAfterRoundK">The same after each whole round: what is known when the day is cut short there.</param>
/// <param name="Balance">Which option follows which, over the day as one sequence.</param>
/// <param name="WaitedForPackS">Seconds lost waiting for a charged pack.</param>
public sealed record PlannedOrder(
    IReadOnlyList<int> Options, IReadOnlyList<double> StartS, double ExpectedWidthK, IReadOnlyList<double> WidthAfterRoundK, Balance Balance, double WaitedForPackS);
