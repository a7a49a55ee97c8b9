using System.Collections.Immutable;
using System.Diagnostics;
using PodLayout;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;

static Ring Super(double a, double b, double n, int count) => new([.. Enumerable.Range(0, count).Select(i => {
    var t = 2 * Math.PI * i / count; double c = Math.Cos(t), s = Math.Sin(t);
    return new Point2(a * Math.Sign(c) * Math.Pow(Math.Abs(c), 2 / n), b * Math.Sign(s) * Math.Pow(Math.Abs(s), 2 / n)); })]);
static Ring Circle(double x, double y, double r, int n) => new([.. Enumerable.Range(0, n).Select(i => new Point2(x + r * Math.Cos(2 * Math.PI * i / n), y + r * Math.Sin(2 * Math.PI * i / n)))]);
var oval = new PartShape(Super(600, 300, 2.6, 720), [Circle(220, 40, 60, 172)], []);
var u = new PartShape(new([new(0, 0), new(700, 0), new(700, 500), new(560, 500), new(560, 140), new(140, 140), new(140, 500), new(0, 500)]), [], []);
var ports = from r in Enumerable.Range(0, 30) from c in Enumerable.Range(0, 30) select new Port($"{c}-{r}", new(15 + 120 * c, 15 + 120 * r), PortState.Working);
GridBoard Board(bool free) => new("b", 2000, 1500, 30, 6, 7, default, new(0, 0, 2000, 1500), free ? [.. from r in Enumerable.Range(0, 50) from c in Enumerable.Range(0, 70) select new Port("", new(15 + 30 * c, 15 + 30 * r), PortState.Working)] : [.. ports], 8, 1, []);
PodType Pod(double w, double l, bool t) => new($"{w}x{l}", new PodFootprint.Rectangle(w, l), 0, 0, 50, t, 99, 1);
var which = args[0]; var limit = double.Parse(args[1]);
var shop = new Shop("s", Board(args.Contains("free")), [Pod(120, 120, false), Pod(120, 60, true), Pod(60, 60, false)], 0);
var job = new Job("j", new Part("p", which == "oval" ? oval : u, 30, "", 0), shop, new(8, 8), new(limit, limit, null, 10, 30), new PlacementWish.Search([0]));
for (var rep = 0; rep < 3; rep++)
{
    var sw = Stopwatch.StartNew();
    var reach = ReachMap.Of(job.Part, job.Support);
    Console.WriteLine($"reach {sw.ElapsedMilliseconds} ms, {reach.Points.Length} points");
    var poses = PodPose.Of(shop, 50);
    var frame = new PlacingFrame(job, reach, poses, 0, 0);
    Console.WriteLine($"frame {sw.ElapsedMilliseconds} ms");
    var search = new PlacingSearch(job, new Effort(2, null), 0.5, null, new Show(sw), default);
    var end = search.Run(reach, poses, [0]);
    Console.WriteLine($"{sw.ElapsedMilliseconds} ms: pods {end.Best?.Seats.Length} bound {end.FewestPossible} open {end.OpenToleranceMm} nodes {end.Nodes} worst {end.Best?.WorstShare:0.000}");
}
sealed class Show(Stopwatch sw) : IProgress<Progress> { public void Report(Progress p) { if (p.Placements < 20 || p.Placements % 20 == 0) Console.WriteLine($"  {sw.ElapsedMilliseconds} {p}"); } }
