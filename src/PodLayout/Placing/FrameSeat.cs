namespace PodLayout.Placing;

/// <summary>
/// A seat in a frame: a pod on grooves counted from the groove that the part's pivot lies behind, so that the same seat serves
/// wherever the part lies in whole pitches.
/// </summary>
/// <param name="Pose">Index of the pose.</param>
/// <param name="Column">Groove of its left edge, counted from the pivot's.</param>
/// <param name="Row">Groove of its lower edge, counted from the pivot's.</param>
public readonly record struct FrameSeat(int Pose, int Column, int Row);
