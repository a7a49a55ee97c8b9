using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>How a program's coordinates stand to the part and the pods, and what its tools are.</summary>
/// <param name="Tools">The tools by number.</param>
/// <param name="ZZero">Where its Z zero lies.</param>
/// <param name="ThicknessMm">Thickness of the part.</param>
/// <param name="PodHeightMm">From the board's face to the part's underside.</param>
/// <param name="LowestTipMm">
/// A tip lower than this above the part's underside endangers what lies beneath, mm; negative where a scratch is allowed.
/// </param>
/// <param name="Offset">Where the program's X and Y zero lies in the drawing.</param>
public sealed record ProgramSetting(
    ImmutableSortedDictionary<int, Tool> Tools,
    ZZero ZZero,
    double ThicknessMm,
    double PodHeightMm,
    double LowestTipMm,
    Point2 Offset)
{
    /// <summary>The program's Z at the part's underside, which is the pods' face.</summary>
    public double UndersideZMm => ZZero switch
    {
        ZZero.PartFace => -ThicknessMm,
        ZZero.BoardFace => PodHeightMm,
        _ => 0,
    };

    /// <summary>The program's Z at the part's upper face.</summary>
    public double FaceZMm => UndersideZMm + ThicknessMm;

    /// <summary>The program's Z at the board's face.</summary>
    public double BoardZMm => UndersideZMm - PodHeightMm;
}
