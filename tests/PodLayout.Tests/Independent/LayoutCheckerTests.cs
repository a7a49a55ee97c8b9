using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Tests.Independent;

/// <summary>The checker itself: silent on what is right, and it finds each rule broken.</summary>
public class LayoutCheckerTests
{
    private static readonly PlanResult Oval = HandMade.Oval();

    [Fact]
    public void Layouts_that_are_right_pass()
    {
        foreach (var result in new[] { Oval, HandMade.Ell(), HandMade.Door() })
        {
            Assert.Empty(LayoutChecker.Check(result).Violations);
        }
    }

    [Fact]
    public void A_missing_layout_is_found() => Finds("layout", HandMade.NoLayout());

    [Fact]
    public void A_part_that_does_not_lie_as_asked_is_found() =>
        Finds("placement", Oval with { Job = Oval.Job with { Placement = new PlacementWish.Given(new(601, 300), 0) } });

    [Fact]
    public void A_seal_too_near_the_edge_is_found() =>
        Finds("seal in wood", WithPod(0, p => Moved(p, 0, -2)));

    [Fact]
    public void A_seal_on_a_defect_is_found() => Finds("seal in wood", Oval with
    {
        Job = Oval.Job with
        {
            Part = Oval.Job.Part with
            {
                // A spot that lies wholly under a seal: no line crosses another.
                Shape = Oval.Job.Part.Shape with { Defects = [HandMade.Circle(-165, -75, 5, 24)] },
            },
        },
    });

    [Fact]
    public void A_body_too_near_a_hole_is_found()
    {
        var job = Oval.Job with { Margins = new(0, 7.5) };
        Finds("body clear of cuts", Oval with { Job = job });
        Assert.Empty(LayoutChecker.Check(Oval with { Job = job with { Margins = new(0, 7.4) } }).Violations);
    }

    [Fact]
    public void Bodies_that_overlap_are_found() => Finds("apart", WithPod(3, p => Moved(p, -1, 0)));

    [Fact]
    public void Bodies_nearer_than_the_gap_are_found() =>
        Finds("apart", Oval with { Job = Oval.Job with { Shop = Oval.Job.Shop with { PodGapMm = 1 } } });

    [Fact]
    public void A_body_off_the_lattice_is_found() =>
        Finds("lattice", WithPod(0, p => p with { Centre = p.Centre + new Point2(0.1, 0) }));

    [Fact]
    public void A_body_outside_the_usable_area_is_found() =>
        Finds("usable area", WithBoard(b => b with { UsableArea = new(376, 5, 1195, 595) }));

    [Fact]
    public void A_body_on_an_obstacle_is_found() => Finds("obstacle", WithBoard(b => b with
    {
        Obstacles = [new("pin", ObstacleKind.Pin, new ObstacleShape.Disc(new(370, 160), 10), 5)],
    }));

    [Fact]
    public void A_dead_port_is_found() => Finds("port works", WithPod(1, p => p with
    {
        OpenPorts = [p.OpenPorts[0] with { State = PortState.Dead }],
    }));

    [Fact]
    public void A_port_of_another_board_is_found() =>
        Finds("port known", WithPod(1, p => p with { OpenPorts = [p.OpenPorts[0] with { Name = "99" }] }));

    [Fact]
    public void A_port_too_near_the_lower_seal_is_found() =>
        Finds("port in seal", WithBoard(b => b with { PortMarginMm = 3.1 }));

    [Fact]
    public void Too_few_ports_are_found() => Finds("ports enough", WithPod(1, p => p with { OpenPorts = [] }));

    [Fact]
    public void A_port_for_two_pods_is_found() =>
        Finds("port once", WithPod(1, p => p with { OpenPorts = Oval.Layout!.Pods[0].OpenPorts }));

    [Fact]
    public void A_port_that_cannot_be_plugged_under_a_seal_line_is_found() => Finds("no port under a seal line", WithBoard(b => b with
    {
        Ports = b.Ports.Add(new("leak", new(495, 200), PortState.StuckOpen)),
    }));

    [Fact]
    public void A_port_that_cannot_be_plugged_well_inside_a_seal_is_no_fault() => Assert.Empty(LayoutChecker.Check(WithBoard(b => b with
    {
        Ports = b.Ports.Add(new("leak", new(435, 225), PortState.StuckOpen)),
    })).Violations);

    [Fact]
    public void More_pods_than_in_stock_are_found() => Finds("stock", WithType(HandMade.Square, HandMade.Square with { Stock = 4 }));

    [Fact]
    public void A_turned_pod_that_may_not_be_is_found() => Finds("turn", WithType(HandMade.Narrow, HandMade.Narrow with { MayTurn = false }));

    [Fact]
    public void Pods_of_two_heights_are_found() => Finds("height", WithType(HandMade.Small, HandMade.Small with { HeightMm = 75 }));

    [Fact]
    public void A_pod_of_no_type_in_stock_is_found() => Finds("type", WithPod(0, p => p with { Type = p.Type with { Name = "other" } }));

    [Fact]
    public void An_edge_point_beyond_its_limit_is_found() => Finds("edge point within its limit", HandMade.Measured(
        Oval with { Layout = Oval.Layout! with { Pods = Oval.Layout.Pods.RemoveAt(5) } }));

    [Fact]
    public void An_interior_point_beyond_its_limit_is_found() => Finds("interior point within its limit", HandMade.MakeOval(55));

    [Fact]
    public void A_share_that_is_too_good_is_found() => Finds("edge point share", Oval with
    {
        Layout = Oval.Layout! with
        {
            SupportPoints = Oval.Layout.SupportPoints.SetItem(0, Oval.Layout.SupportPoints[0] with { ShareOfLimit = 0.01 }),
        },
    });

    [Fact]
    public void A_point_left_out_is_found() => Finds("edge points listed", Oval with
    {
        Layout = Oval.Layout! with { SupportPoints = Oval.Layout.SupportPoints.RemoveAt(3) },
    });

    [Fact]
    public void A_bound_above_the_number_of_pods_is_found() => Finds("proof", Oval with
    {
        Layout = Oval.Layout! with { Proof = Oval.Layout.Proof with { FewestPodsPossible = 8 } },
    });

    private static void Finds(string rule, PlanResult broken) => Assert.Contains(
        LayoutChecker.Check(broken).Violations, v => v.StartsWith(rule + ":", StringComparison.Ordinal));

    private static PlacedPod Moved(PlacedPod pod, int columns, int rows) => pod with
    {
        Column = pod.Column + columns,
        Row = pod.Row + rows,
        Centre = pod.Centre + new Point2(30 * columns, 30 * rows),
    };

    private static PlanResult WithPod(int index, Func<PlacedPod, PlacedPod> change) => Oval with
    {
        Layout = Oval.Layout! with { Pods = Oval.Layout.Pods.SetItem(index, change(Oval.Layout.Pods[index])) },
    };

    private static PlanResult WithBoard(Func<GridBoard, GridBoard> change) => Oval with
    {
        Job = Oval.Job with { Shop = Oval.Job.Shop with { Board = change(Oval.Job.Shop.Board) } },
    };

    private static PlanResult WithType(PodType old, PodType changed) => Oval with
    {
        Job = Oval.Job with { Shop = Oval.Job.Shop with { Pods = Oval.Job.Shop.Pods.Replace(old, changed) } },
        Layout = Oval.Layout! with
        {
            Pods = [.. Oval.Layout.Pods.Select(p => p.Type == old ? p with { Type = changed } : p)],
        },
    };
}
