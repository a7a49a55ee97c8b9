namespace PodLayout.Handover.Format;

/// <summary>Where a finding is: the members that do not apply are null.</summary>
/// <param name="File">A file, as the user named it.</param>
/// <param name="Line">Line in it, from 1.</param>
/// <param name="AtMm">A point of a drawing, in the drawing's coordinates.</param>
/// <param name="Entity">What stands there.</param>
/// <param name="JsonPath">A member of a JSON file.</param>
/// <param name="Option">An option of the command.</param>
public sealed record PlaceEntry(
    string? File, int? Line, XyMm? AtMm, string? Entity, string? JsonPath, string? Option);
