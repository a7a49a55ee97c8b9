namespace PodLayout.Cuts;

/// <summary>On which side of the line the tool runs.</summary>
public enum CutSide
{
    /// <summary>Outside a closed line.</summary>
    Outside,

    /// <summary>Inside a closed line.</summary>
    Inside,

    /// <summary>With its centre on the line.</summary>
    On,
}
