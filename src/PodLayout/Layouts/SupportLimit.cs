namespace PodLayout.Layouts;

/// <summary>Which limit holds at a point that must be supported.</summary>
public enum SupportLimit
{
    /// <summary>The overhang limit: on the outline and the holes.</summary>
    Edge,

    /// <summary>The interior span.</summary>
    Interior,

    /// <summary>The span of thin floors.</summary>
    ThinFloor,
}
