using PodLayout.Findings;

namespace PodLayout.Handover.Format;

/// <summary>Something a person should know.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Message">What was found.</param>
/// <param name="Place">Where; null where there is no single place.</param>
/// <param name="Remedy">What mends it; null where nothing needs to be.</param>
public sealed record FindingEntry(
    string Code, Severity Severity, FindingKind Kind, string Message, PlaceEntry? Place, string? Remedy);
