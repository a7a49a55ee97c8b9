using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Shops;

namespace PodLayout.Seats;

/// <summary>A pod type as it stands: turned by a quarter or not.</summary>
/// <param name="TypeIndex">Index of the type in <see cref="Shop.Pods"/>.</param>
/// <param name="Type">The type.</param>
/// <param name="Turned">Whether it is turned by a quarter.</param>
/// <param name="Columns">Groove cells its body covers along X.</param>
/// <param name="Rows">Groove cells its body covers along Y.</param>
public sealed record PodPose(int TypeIndex, PodType Type, bool Turned, int Columns, int Rows)
{
    /// <summary>Which of the part's grounds it stands under, as an index of <see cref="SeatGround.Of"/>; 0 for the part.</summary>
    public int Ground { get; init; }

    /// <summary>Extent of the body along the board's X, mm.</summary>
    public double ExtentXMm => Turned ? Type.Footprint.ExtentYMm : Type.Footprint.ExtentXMm;

    /// <summary>Extent of the body along the board's Y, mm.</summary>
    public double ExtentYMm => Turned ? Type.Footprint.ExtentXMm : Type.Footprint.ExtentYMm;

    /// <summary>Whether the body is a disc.</summary>
    public bool IsRound => Type.Footprint is PodFootprint.Round;

    /// <summary>The poses of one height under each ground of a job's part, the part's own first.</summary>
    public static ImmutableArray<PodPose> Of(Job job, double heightMm) =>
    [
        .. Enumerable.Range(0, SeatGround.Of(job.Part.Shape).Length)
            .SelectMany(ground => Of(job.Shop, heightMm).Select(pose => pose with { Ground = ground })),
    ];

    /// <summary>All poses of the shop's pods that stand on one height, in order of type, unturned first.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="heightMm">Only pods of this height: a part does not lie level on mixed ones.</param>
    public static ImmutableArray<PodPose> Of(Shop shop, double heightMm)
    {
        var pitch = shop.Board.PitchMm;
        return
        [
            .. from indexed in shop.Pods.Select((type, index) => (type, index))
               where indexed.type.HeightMm == heightMm && indexed.type.Stock > 0
               let footprint = indexed.type.Footprint
               let columns = (int)Math.Round(footprint.ExtentXMm / pitch)
               let rows = (int)Math.Round(footprint.ExtentYMm / pitch)
               from turned in indexed.type.MayTurn && columns != rows ? [false, true] : new[] { false }
               select new PodPose(indexed.index, indexed.type, turned, turned ? rows : columns, turned ? columns : rows),
        ];
    }

    /// <summary>The box around the body of a pod that stands on these grooves, board coordinates.</summary>
    public Box2 BodyOn(GridBoard board, int column, int row)
    {
        double x = board.ColumnXMm(column), y = board.RowYMm(row);
        return new(x, y, x + ExtentXMm, y + ExtentYMm);
    }
}
