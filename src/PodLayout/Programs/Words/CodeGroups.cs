namespace PodLayout.Programs.Words;

/// <summary>
/// The modal groups of NIST's RS274/NGC (NISTIR 6556, 2000, section 3.4, table 4): two words of one group never stand on one line.
/// </summary>
internal static class CodeGroups
{
    /// <summary>Group of words that act on their line alone.</summary>
    public const int NonModal = 0;

    /// <summary>Group of the words that move the tip.</summary>
    public const int Motion = 1;

    private const int CycleEnd = 800;

    /// <summary>The group of a G word in tenths; null when the word is not read.</summary>
    public static int? OfG(int tenths) => tenths switch
    {
        0 or 10 or 20 or 30 or 730 or (>= 800 and <= 890 and not 809) when tenths % 10 == 0 => Motion,
        40 or 100 or 280 or 300 or 520 or 530 or 920 or 921 or 922 or 923 => NonModal,
        170 or 180 or 190 => 2,
        900 or 910 => 3,
        901 or 911 => 4,
        930 or 940 or 950 => 5,
        200 or 210 or 700 or 710 => 6,
        400 or 410 or 420 => 7,
        430 or 490 => 8,
        980 or 990 => 10,
        540 or 550 or 560 or 570 or 580 or 590 or 591 or 592 or 593 => 12,
        610 or 611 or 640 => 13,
        // These change nothing about where the tip goes: exact stop, cancelled polar or turned coordinates, speed modes.
        90 => 14,
        150 => 15,
        690 => 16,
        960 or 970 => 17,
        _ => null,
    };

    /// <summary>
    /// Headers end what a cycle left over (G80) on the line that says how the tool moves from there: which of the two motions
    /// stays in force; null where they contradict each other.
    /// </summary>
    public static int? EndsCycle(int first, int second) => (first, second) switch
    {
        (CycleEnd, _) => second,
        (_, CycleEnd) when first <= 30 => first,
        _ => null,
    };

    /// <summary>The group of an M word; null when it is not read.</summary>
    public static int? OfM(int number) => number switch
    {
        0 or 1 or 2 or 30 or 60 => 4,
        6 => 6,
        3 or 4 or 5 => 7,
        7 or 8 or 9 => 8,
        48 or 49 => 9,
        _ => null,
    };

    /// <summary>M words that call or repeat other parts of a program: what they do cannot be left out.</summary>
    public static bool CallsOtherLines(int m) => m is >= 96 and <= 99;

    /// <summary>A G word in tenths as it is written.</summary>
    public static string NameOfG(int tenths) => tenths % 10 == 0
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"G{tenths / 10}")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"G{tenths / 10}.{tenths % 10}");
}
