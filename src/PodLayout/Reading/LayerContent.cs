namespace PodLayout.Reading;

/// <summary>What a layer of the drawing holds.</summary>
/// <param name="Name">Name of the layer.</param>
/// <param name="Pieces">Lines and curves read from it.</param>
/// <param name="Rings">Closed rings on it.</param>
/// <param name="OpenContours">Lines on it that do not close.</param>
/// <param name="LeftOut">Whether the layer is frozen or switched off, so that nothing of it was read.</param>
public sealed record LayerContent(string Name, int Pieces, int Rings, int OpenContours, bool LeftOut)
{
    /// <summary>Words written on it.</summary>
    public int Texts { get; init; }
}
