namespace PodLayout.Reading.Dxf;

/// <summary>A group of a DXF file: a code that says what the value is, and the value as text.</summary>
/// <param name="Code">Group code.</param>
/// <param name="Value">Value; numbers of a binary file in round-trip form.</param>
/// <param name="Line">Line of the code from 1; null in a binary file.</param>
internal readonly record struct Tag(int Code, string Value, int? Line);
