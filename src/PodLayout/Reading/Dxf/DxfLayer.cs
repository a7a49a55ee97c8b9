namespace PodLayout.Reading.Dxf;

/// <summary>A layer of the layer table.</summary>
/// <param name="Name">Name.</param>
/// <param name="IsFrozen">Nothing on it is shown, nor what inserts on it draw.</param>
/// <param name="IsOff">Nothing on it is shown.</param>
internal sealed record DxfLayer(string Name, bool IsFrozen, bool IsOff);
