namespace PodLayout.Jobs.Written;

/// <summary>What a layer holds, as written.</summary>
internal enum WrittenLayerRole
{
    Outline,
    Hole,
    Defect,
    Ignore,
}

/// <summary>A unit of length, as written.</summary>
internal enum WrittenUnit
{
    Mm,
    Cm,
    M,
    In,
    Ft,
    Um,
    Mil,
}
