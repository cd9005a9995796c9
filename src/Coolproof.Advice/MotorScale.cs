namespace Coolproof.Advice;

/// <summary>What turns heat flows over core capacity into watts: temperatures tell nothing of it, the motor's mass does.</summary>
internal static class MotorScale
{
    /// <summary>Capacity of winding and laminations of a motor of 165 g, J/K (copper 385, silicon steel 460 J/kgK; docs/model.md).</summary>
    public const double CoreJPerK = 50;
}
