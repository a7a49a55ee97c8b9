namespace PodLayout.Reading;

/// <summary>What a file is, by its content.</summary>
internal enum FileKind
{
    Empty, Dxf, Svg, Dwg, Picture, Pdf, Archive, Unknown,
}
