using System.Globalization;

namespace PodLayout.Findings;

/// <summary>Where a finding is: in a file, in a drawing, or at a member of a JSON file.</summary>
public abstract record Place
{
    /// <summary>A file, and the line in it (1-based) where known.</summary>
    /// <param name="File">Name as the user gave it.</param>
    /// <param name="Line">Line number from 1; null where lines mean nothing.</param>
    public sealed record InFile(string File, int? Line = null) : Place
    {
        /// <inheritdoc/>
        public override string ToString() => Line is { } line
            ? string.Create(CultureInfo.InvariantCulture, $"{File}:{line}") : File;
    }

    /// <summary>A point of a drawing, in millimetres in the drawing's own coordinates.</summary>
    /// <param name="File">Name as the user gave it.</param>
    /// <param name="XMm">X in mm.</param>
    /// <param name="YMm">Y in mm.</param>
    /// <param name="Entity">What stands there (for instance "LWPOLYLINE on layer CUT"); null where nothing in particular.</param>
    public sealed record InDrawing(string File, double XMm, double YMm, string? Entity = null) : Place
    {
        /// <summary>Whether it is told in inches, as the drawing is made in.</summary>
        public bool InInches { get; init; }

        /// <inheritdoc/>
        public override string ToString() => InInches
            ? string.Create(CultureInfo.InvariantCulture, $"{File} at ({XMm / 25.4:0.####}, {YMm / 25.4:0.####}) in{(Entity is null ? "" : ", " + Entity)}")
            : string.Create(CultureInfo.InvariantCulture, $"{File} at ({XMm:0.###}, {YMm:0.###}) mm{(Entity is null ? "" : ", " + Entity)}");
    }

    /// <summary>A member of a JSON file.</summary>
    /// <param name="File">Name as the user gave it.</param>
    /// <param name="Path">JSON path, for instance <c>$.pods[1].widthMm</c>.</param>
    public sealed record InJson(string File, string Path) : Place
    {
        /// <inheritdoc/>
        public override string ToString() => $"{File} {Path}";
    }

    /// <summary>An option of the command.</summary>
    /// <param name="Name">The option as typed.</param>
    public sealed record InOption(string Name) : Place
    {
        /// <inheritdoc/>
        public override string ToString() => Name;
    }
}
