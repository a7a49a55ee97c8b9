namespace PodLayout.Jobs.Written;

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
