namespace PodLayout.Shops;

/// <summary>How the back channels are to be laid.</summary>
public enum ChannelWish
{
    /// <summary>The way that the checks prefer.</summary>
    Best,

    /// <summary>One channel for each row of ports.</summary>
    Rows,

    /// <summary>One channel for each column of ports.</summary>
    Columns,

    /// <summary>A channel for each row, and a header across that joins them.</summary>
    CombOfRows,

    /// <summary>A channel for each column, and a header across that joins them.</summary>
    CombOfColumns,
}
