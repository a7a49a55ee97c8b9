using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Dxf;

/// <summary>A block: entities that an INSERT draws, about a base point.</summary>
/// <param name="Name">Name; may be empty in damaged files.</param>
/// <param name="Base">The point that comes to lie at the insertion point.</param>
/// <param name="IsExternal">Whether it stands for another file.</param>
/// <param name="Entities">What it draws.</param>
internal sealed record DxfBlock(string Name, Point3 Base, bool IsExternal, List<DxfEntity> Entities);
