using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>
/// What is drawn in a part of a sheet: for many questions about places there, until something is added. A sheet has thousands of
/// signs, and a word that looks for a place asks thousands of times.
/// </summary>
/// <param name="Content">The board and the part.</param>
/// <param name="Taken">Places that are taken.</param>
/// <param name="Words">Words.</param>
/// <param name="Ports">Signs of ports.</param>
/// <param name="Leaders">Lines from words to what they name.</param>
/// <param name="Lines">Lines that words are kept off.</param>
internal sealed record Nearby(
    Box2 Content, Box2[] Taken, Box2[] Words, Box2[] Ports, (Point2 A, Point2 B)[] Leaders, (Point2 A, Point2 B)[] Lines)
{
    /// <summary>Whether a box lies on the board and on nothing that is taken.</summary>
    public bool IsFree(Box2 box) => Content.Contains(box) && !Any(Taken, box);

    /// <summary>Whether a word stands on a place.</summary>
    public bool HasWord(Box2 box) => Any(Words, box);

    /// <summary>Whether a word stands on a line.</summary>
    public bool HasWord(Point2 from, Point2 to) => Any(Words, from, to);

    /// <summary>Whether the sign of a port lies under a box.</summary>
    public bool IsOnPort(Box2 box) => Any(Ports, box);

    /// <summary>Whether the sign of a port lies under a straight line.</summary>
    public bool IsOnPort(Point2 from, Point2 to) => Any(Ports, from, to);

    /// <summary>Whether a straight line crosses one that leads from a word to what it names.</summary>
    public bool CrossesLeader(Point2 from, Point2 to)
    {
        foreach (var (a, b) in Leaders)
        {
            if (EdgePath.Cross(from, to, a, b))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a line that words are kept off touches a box.</summary>
    public bool IsCrossed(Box2 box)
    {
        foreach (var (a, b) in Lines)
        {
            if (EdgePath.Touches(box, a, b))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Any(Box2[] boxes, Box2 box)
    {
        foreach (var b in boxes)
        {
            if (b.Touches(box))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Any(Box2[] boxes, Point2 from, Point2 to)
    {
        foreach (var b in boxes)
        {
            if (EdgePath.Touches(b, from, to))
            {
                return true;
            }
        }

        return false;
    }
}
