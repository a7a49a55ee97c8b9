namespace PodLayout.Findings;

/// <summary>Something a person should know about the input or the result.</summary>
/// <param name="Code">Stable code, kebab-case, for instance <c>ring-open</c>.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Message">What was found and what was expected, in one line.</param>
/// <param name="Place">Where; null where there is no single place.</param>
/// <param name="Remedy">What mends it, in one line.</param>
public sealed record Finding(
    string Code, Severity Severity, FindingKind Kind, string Message, Place? Place = null, string? Remedy = null)
{
    /// <summary>The finding in one line: place, message, remedy.</summary>
    public override string ToString()
    {
        var place = Place is null ? "" : Place + ": ";
        var remedy = Remedy is null ? "" : " " + Remedy;
        return $"{Plain.Cut(place)}{Plain.Cut(Message)}{remedy} [{Code}]".ReplaceLineEndings(" ");
    }
}
