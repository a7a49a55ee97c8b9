using System.Text;
using PodLayout.Geometry;
using PodLayout.Handover.Setup;
using PodLayout.Holding;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Layouts that cards are made of, from the smallest board to the largest.</summary>
internal static class Cards
{
    public const string Hostile = "<b>\"Tisch\" & 'Stuhl'</b> </style></script><script>fetch('http://x')</script> =1+1; \u202Eevil\u202C \u05e9\u05d5\u05dc\u05d7\u05df \u0637\u0627\u0648\u0644\u0629 \U0001FA91\U0001F600 \u0001 ]]> \\ ) (";

    private static readonly Dictionary<string, Func<PlanResult>> ByName = new(StringComparer.Ordinal)
    {
        ["oval"] = HandMade.Oval,
        ["ell"] = HandMade.Ell,
        ["door"] = HandMade.Door,
        ["standing"] = Standing,
        ["hostile"] = () => Renamed(HandMade.Oval(), Hostile + new string('w', 200)),
        ["small"] = () => Grid(300, 300, 4, HandMade.Small),
        ["tall"] = () => Grid(600, 1800, 24, HandMade.Square),
        ["wide-60"] = () => Grid(3600, 1500, 60, HandMade.Small),
        ["dense-60"] = () => Grid(1200, 1200, 60, HandMade.Small),
        ["block"] = () => CrowdedCards.Plan("square block of small pods with no gap"),
        ["inches"] = Inches,
        ["crest"] = Crest,
        ["washed"] = Washed,
    };

    public static IEnumerable<string> Names => ByName.Keys;

    public static CardOptions Options { get; } = new() { Date = "2026-11-25", Revision = "B", Face = PartFace.Down };

    public static PlanResult Plan(string name) => ByName[name]();

    public static byte[] File(PlanResult plan, string file, CardOptions? options = null) =>
        CardFiles.Of(plan, options ?? Options, LayoutDoubts.None).Single(f => f.Name == file).Content;

    public static string Text(PlanResult plan, string file, CardOptions? options = null) => Encoding.UTF8.GetString(File(plan, file, options));

    /// <summary>Every name that a user can give, replaced.</summary>
    public static PlanResult Renamed(PlanResult plan, string name)
    {
        var (job, board) = (plan.Job, plan.Job.Shop.Board);
        PodType Type(PodType t) => t with { Name = name + t.Name };
        Port Port(Port p) => p with { Name = p.Name + "<" + p.Name };
        board = board with
        {
            Name = name,
            Ports = [.. board.Ports.Select(Port)],
            Obstacles = [.. board.Obstacles.Select(o => o with { Name = name })],
        };
        return plan with
        {
            Job = job with
            {
                Name = name,
                Part = job.Part with { Name = name, Species = name },
                Shop = job.Shop with
                {
                    Name = name,
                    Board = board,
                    Pods = [.. job.Shop.Pods.Select(Type)],
                    Zones = [new(name, new(0, 0, board.WidthMm, board.LengthMm))],
                },
                ProgramZero = new(name, ZZero.PartFace, new(5, 5)),
            },
            Layout = plan.Layout! with
            {
                Pods = [.. plan.Layout.Pods.Select(p => p with { Type = Type(p.Type), OpenPorts = [.. p.OpenPorts.Select(Port)] })],
            },
        };
    }

    // The oval on a board where some pods stand already, two where they are wanted.
    private static PlanResult Standing()
    {
        var oval = HandMade.Oval();
        var shop = oval.Job.Shop with
        {
            Zones = [new("left zone", new(0, 0, 600, 600)), new("right zone", new(600, 0, 1200, 600)), new("store", new(0, 600, 1, 601))],
        };
        return oval with
        {
            Job = oval.Job with
            {
                Shop = shop,
                ProgramZero = new("oval.nc", ZZero.PartFace, new(-300, -200)),
                Standing = new(
                    [new("120x120", false, 17, 4), new("120x120", false, 12, 5), new("120x120", false, 3, 3), new("60x60", false, 30, 16), new("round 120", false, 33, 1)],
                    new(new(600, 300), 0))
                {
                    OpenPorts = ["5-2", "4-2", "1-1"],
                },
            },
        };
    }

    // A rail of 500 x 120 mm on a large board, on small pods of which two are turned, cut out of a blank 20 mm larger all round.
    private static PlanResult Crest()
    {
        PodType narrow = new("60x30", new PodFootprint.Rectangle(60, 30), 5, 6, 60, true, 20, 1);
        var board = HandMade.Board(1500, 1050) with { PortDiameterMm = 8 };
        Ring outline = new(
            [new(0, 0), new(40, 0), new(120, 28), new(250, 40), new(380, 28), new(460, 0), new(500, 0), new(500, 60), new(380, 105), new(250, 120), new(120, 105), new(0, 60)]);
        PartShape shape = new(outline, [], []) { Blank = [HandMade.Rectangle(-20, -20, 520, 140)] };
        var job = HandMade.Job(new("Crest rail", shape, 28, "cherry", 0), board, new(600, 240), 0, new(200, 200, null, 20, 50));
        job = job with { Shop = job.Shop with { Pods = [.. job.Shop.Pods.Append(narrow)] } };
        return HandMade.Plan(job, [(narrow, true, 21, 8), (narrow, true, 33, 8), (HandMade.Narrow, false, 26, 9)]);
    }

    // Some pods stand already, one holds an offcut: the table of pods has every column that it can have.
    private static PlanResult Washed()
    {
        var standing = Standing();
        return standing with { Layout = standing.Layout! with { Pods = [.. standing.Layout.Pods.Select((p, i) => i == 3 ? p with { Holds = "offcut 1" } : p)] } };
    }

    private static PlanResult Inches()
    {
        var oval = HandMade.Oval();
        return oval with { Job = oval.Job with { Shop = oval.Job.Shop with { WorksInInches = true } } };
    }

    /// <summary>As if it had been computed: the pods bear more and more.</summary>
    public static PlanResult Held(PlanResult plan, Point2 at = default, Point2 push = default) => plan with
    {
        Layout = plan.Layout! with
        {
            Holding = new(
                3, 2, 1.5, null, new(at, 10, new(push.X, push.Y, 1), "outline", FailureMode.Slides, 4),
                [.. plan.Layout.Pods.Select((_, i) => new PodHold(70, 500, 100 + i, 2))], 70, 101.3, 50, 40, []),
        },
    };

    /// <summary>So many pods of one type in rows, under a plate that leaves a margin all round.</summary>
    public static PlanResult Grid(double width, double length, int count, PodType type)
    {
        var board = HandMade.Board(width, length, 60);
        var (x, y) = ((int)(type.Footprint.ExtentXMm / 30), (int)(type.Footprint.ExtentYMm / 30));
        var seats =
            from row in Enumerable.Range(0, (int)((length - 60) / 30 - y) + 1)
            from column in Enumerable.Range(0, (int)((width - 60) / 30 - x) + 1)
            where HandMade.Pod(board, type, false, column, row).OpenPorts.Length > 0
            select (Column: column, Row: row);
        List<PlacedPod> chosen = [];
        List<(int Column, int Row)> taken = [];
        foreach (var (column, row) in seats)
        {
            if (chosen.Count < count && !taken.Exists(t => Math.Abs(t.Column - column) < x && Math.Abs(t.Row - row) < y))
            {
                taken.Add((column, row));
                chosen.Add(HandMade.Pod(board, type, false, column, row));
            }
        }

        var part = new Part("Plate", new(HandMade.Rectangle(0, 0, width - 40, length - 40), [], []), 20, "ash", 0);
        return new(
            HandMade.Job(part, board, new(20, 20), 0, new(400, 400, null, 50, 100)),
            new(new(new(20, 20), 0), [.. chosen], [], new(ProofScope.ThisPlacement, 1, 0, "Placed by hand: nothing is proven.")),
            [], [], false, new(1, 0, 1));
    }
}
