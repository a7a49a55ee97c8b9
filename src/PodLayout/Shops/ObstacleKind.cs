namespace PodLayout.Shops;

/// <summary>Why pods stay clear of a spot of the board.</summary>
public enum ObstacleKind
{
    /// <summary>A locator pin.</summary>
    Pin,

    /// <summary>A stop or clamp.</summary>
    Stop,

    /// <summary>A spot where the board no longer seals.</summary>
    Damage,

    /// <summary>An area that the job keeps clear.</summary>
    Avoided,
}
