using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using PodLayout.Choice;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks;

/// <summary>Each step of the job by itself, on the oval top with a limit of 60 mm.</summary>
[MemoryDiagnoser]
public class StepBenchmarks
{
    private readonly Job _job = Cases.Oval(60);
    private ImmutableArray<PodPose> _poses;
    private ReachMap _reach = null!;
    private PlacingFrame _frame = null!;
    private ImmutableArray<FrameSeat> _seats;
    private OnePlacement _placement = null!;
    private CoverProblem _problem = null!;
    private ImmutableArray<int[]> _needed;

    /// <summary>Makes what the steps begin with.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        _poses = PodPose.Of(_job.Shop, _job.Shop.Pods[0].HeightMm);
        _reach = ReachMap.Of(_job.Part, _job.Support);
        _frame = new(_job, _reach, _poses, 0, 0);
        _seats = _frame.PossibleSeats(OffsetBox.WholePitch(_job.Shop.Board.PitchMm));
        _placement = OnePlacement.At(_job, Cases.OvalAt);
        _problem = _placement.Whole();
        _needed = [.. CoverReduction.NeededPoints(_problem.Supporters, _problem.SeatCount).Select(p => _problem.Supporters[p])];
    }

    /// <summary>Where each pod may stand under the part.</summary>
    [Benchmark]
    public double SeatRegions()
    {
        var wood = ClearWood.Of(_job.Part.Shape, _job.Margins);
        return _poses.Sum(pose => SeatRegion.Of(wood, pose, Tolerances.ContactMm).Centres.AreaMm2);
    }

    /// <summary>Points to support and the paths from them through the wood.</summary>
    [Benchmark]
    public ReachMap ReachMapOfPart() => ReachMap.Of(_job.Part, _job.Support);

    /// <summary>Which places of the board take which pod.</summary>
    [Benchmark]
    public BoardSeats SeatsOfBoard() => BoardSeats.Of(_poses[0], _job.Shop.Board);

    /// <summary>The support rows of all offsets at once.</summary>
    [Benchmark]
    public int BoxReachRows()
    {
        var reach = new BoxReach(_frame, _seats, OffsetBox.WholePitch(_job.Shop.Board.PitchMm));
        return Enumerable.Range(0, _frame.Reach.PointCount).Sum(p => reach.SupportersOf(p).Length);
    }

    /// <summary>The linear relaxation of one placement.</summary>
    [Benchmark]
    public int Relaxation() => CoverRelaxation.Solve(_needed, _problem.SeatCount).Bound;

    /// <summary>The exact model of one placement, with all its rows.</summary>
    [Benchmark]
    public int ExactModel() => CoverModel.Solve(_problem, _problem.SeatCount, default, CancellationToken.None).LowerBound;

    /// <summary>One placement as the search settles it: relaxation first, rows as needed.</summary>
    [Benchmark]
    public int OnePlacementSettled() => FewestPods.Of(
        _placement.Question, _placement.Ground.FirstPoints, _problem.SeatCount, CancellationToken.None).LowerBound;

    /// <summary>The whole search over all offsets.</summary>
    [Benchmark]
    public PlanResult WholeSearch() => Planning.Plan(_job, new(Environment.ProcessorCount, null), null, CancellationToken.None);
}
