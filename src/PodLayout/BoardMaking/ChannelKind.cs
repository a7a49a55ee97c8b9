namespace PodLayout.BoardMaking;

/// <summary>How the channels of a zone are laid.</summary>
public enum ChannelKind
{
    /// <summary>One for each row of ports.</summary>
    Rows,

    /// <summary>One for each column of ports.</summary>
    Columns,

    /// <summary>One for each row, and a header across.</summary>
    CombOfRows,

    /// <summary>One for each column, and a header across.</summary>
    CombOfColumns,
}
