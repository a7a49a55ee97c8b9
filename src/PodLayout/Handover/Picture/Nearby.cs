using System.Runtime.InteropServices;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>
/// What is drawn on a sheet or in a part of it, and what a place there lies on. A sheet has thousands of signs, and a word that looks
/// for a place asks thousands of times: it asks what is near.
/// </summary>
/// <param name="Content">The board and the part.</param>
/// <param name="Taken">Places that are taken.</param>
/// <param name="Words">Words.</param>
/// <param name="Ports">Signs of ports.</param>
/// <param name="Leaders">Lines from words to what they name.</param>
/// <param name="Lines">Lines that words are kept off; pods may hide some.</param>
internal sealed record Nearby(
    Box2 Content, List<Box2> Taken, List<Box2> Words, List<Box2> Ports, List<(Point2 A, Point2 B)> Leaders,
    List<(Point2 A, Point2 B, bool IsUnderPods)> Lines)
{
    /// <summary>What of it reaches into a box.</summary>
    public Nearby Within(Box2 reach) => new(
        Content, Taken.FindAll(reach.Touches), Words.FindAll(reach.Touches), Ports.FindAll(reach.Touches),
        Leaders.FindAll(l => EdgePath.Touches(reach, l.A, l.B)), Lines.FindAll(l => EdgePath.Touches(reach, l.A, l.B)));

    /// <summary>Whether a box lies on the board and on nothing that is taken.</summary>
    public bool IsFree(Box2 box) => Content.Contains(box) && IsUntaken(box);

    /// <summary>Whether nothing that keeps text off stands on a place, which may lie off the board.</summary>
    public bool IsUntaken(Box2 box) => !Any(Taken, box);

    /// <summary>Whether a word stands on a place.</summary>
    public bool HasWord(Box2 box) => Any(Words, box);

    /// <summary>Whether a word stands on a straight line.</summary>
    public bool HasWord(Point2 from, Point2 to) => Any(Words, from, to);

    /// <summary>Whether the sign of a port lies under a box.</summary>
    public bool IsOnPort(Box2 box) => Any(Ports, box);

    /// <summary>Whether the sign of a port lies under a straight line.</summary>
    public bool IsOnPort(Point2 from, Point2 to) => Any(Ports, from, to);

    /// <summary>Whether a straight line crosses one that leads from a word to what it names.</summary>
    public bool CrossesLeader(Point2 from, Point2 to)
    {
        foreach (var (a, b) in CollectionsMarshal.AsSpan(Leaders))
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
        foreach (var (a, b, _) in CollectionsMarshal.AsSpan(Lines))
        {
            if (EdgePath.Touches(box, a, b))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Any(List<Box2> boxes, Box2 box)
    {
        foreach (var b in CollectionsMarshal.AsSpan(boxes))
        {
            if (b.Touches(box))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Any(List<Box2> boxes, Point2 from, Point2 to)
    {
        foreach (var b in CollectionsMarshal.AsSpan(boxes))
        {
            if (EdgePath.Touches(b, from, to))
            {
                return true;
            }
        }

        return false;
    }
}
