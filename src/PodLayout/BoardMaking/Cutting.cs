namespace PodLayout.BoardMaking;

/// <summary>Tools and feeds by operation.</summary>
/// <param name="Perimeter">The perimeter, outside the line.</param>
/// <param name="PinHoles">Pin holes.</param>
/// <param name="Counterbores">Counterbores.</param>
/// <param name="Grooves">Grooves in the face.</param>
/// <param name="Chamfer">Chamfer on the grooves.</param>
/// <param name="Ports">Drilled ports.</param>
/// <param name="Numbers">Row and column numbers.</param>
/// <param name="Channels">Channels in the back.</param>
/// <param name="Gasket">Gasket groove in the back.</param>
/// <param name="ThroughMm">How far through-cuts go below the stock, mm.</param>
public sealed record Cutting(
    Cut Perimeter, Cut PinHoles, Cut Counterbores, Cut Grooves, Cut Chamfer, Cut Ports, Cut Numbers, Cut Channels, Cut Gasket,
    double ThroughMm);
