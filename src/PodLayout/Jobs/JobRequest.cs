using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;

namespace PodLayout.Jobs;

/// <summary>A job as asked and checked, before its drawing and its shop are read.</summary>
/// <param name="Name">What the shop calls the job.</param>
/// <param name="DrawingPath">The drawing, as written: a path from the job file's folder, or from the working folder when an option gave it.</param>
/// <param name="ShopPath">The shop's file, likewise; null for the built-in shop.</param>
/// <param name="Reading">How the drawing is to be read.</param>
/// <param name="Layers">What the drawing's layers hold.</param>
/// <param name="ThicknessMm">Thickness of the part.</param>
/// <param name="Species">The wood, in free words.</param>
/// <param name="GrainDeg">Direction of the grain in the drawing, degrees counter-clockwise from X.</param>
/// <param name="Margins">Distances to keep.</param>
/// <param name="Support">How far the part may reach beyond its pods.</param>
/// <param name="Placement">Where it should lie.</param>
public sealed record JobRequest(
    string Name,
    string DrawingPath,
    string? ShopPath,
    ReadingOptions Reading,
    LayerRoles Layers,
    double ThicknessMm,
    string Species,
    double GrainDeg,
    Margins Margins,
    SupportRules Support,
    PlacementWish Placement)
{
    /// <summary>What is said of cuts, of the program and of the blank.</summary>
    public CutRequest Cuts { get; init; } = CutRequest.None;

    /// <summary>What is said of the wood and of how firmly the part is held.</summary>
    public HoldingRequest Holding { get; init; } = HoldingRequest.None;

    /// <summary>Name of the job's file, for messages.</summary>
    public string File { get; init; } = "";

    /// <summary>Pods that must stand in the layout.</summary>
    public ImmutableArray<RequestedPod> Keep { get; init; } = [];

    /// <summary>Areas of the board where no pod may stand.</summary>
    public ImmutableArray<Obstacle> Avoid { get; init; } = [];

    /// <summary>Spots of the part under which no pod may stand.</summary>
    public ImmutableArray<AvoidedSpot> AvoidOnPart { get; init; } = [];

    /// <summary>The job, now that its part and its shop are known. Areas of the board to avoid become obstacles of its board.</summary>
    public Outcome<Job> With(PartShape shape, Shop shop)
    {
        var kept = ImmutableArray.CreateBuilder<KeptPod>(Keep.Length);
        for (var i = 0; i < Keep.Length; i++)
        {
            var asked = Keep[i];
            if (shop.Pods.FirstOrDefault(p => string.Equals(p.Name, asked.Pod, StringComparison.OrdinalIgnoreCase)) is not { } type)
            {
                var near = NearestName.To(asked.Pod, shop.Pods.Select(p => p.Name));
                return Outcome<Job>.Refuse(new Finding(
                    "kept-pod-unknown", Severity.Refused, FindingKind.Request, $"found \"{asked.Pod}\", which is no pod type of the shop.",
                    new Place.InJson(File, string.Create(CultureInfo.InvariantCulture, $"$.keep[{i}].pod")),
                    near is null ? $"The shop has {string.Join(", ", shop.Pods.Select(p => $"\"{p.Name}\""))}." : $"Did you mean \"{near}\"?"));
            }

            // A body that looks the same turned by a quarter is not turned.
            var looksTheSame = type.Footprint.ExtentXMm == type.Footprint.ExtentYMm;
            kept.Add(new(type, asked.Turned && !looksTheSame, asked.Column, asked.Row));
        }

        var board = shop.Board with { Obstacles = shop.Board.Obstacles.AddRange(Avoid) };
        var part = new Part(Name, shape with { Avoided = AvoidOnPart }, ThicknessMm, Species, GrainDeg)
        {
            Wood = Holding.Wood,
            DensityKgPerM3 = Holding.Wood.WeightKgPerM3,
        };
        return Holding.Applied(shop with { Board = board }, File).Then(held => Outcome<Job>.Of(
            new Job(Name, part, held, Margins, Support, Placement)
            {
                Keep = kept.ToImmutable(),
                Holding = new(shop.Holding.LeastFactor, held.Holding.LeastFactor < shop.Holding.LeastFactor ? Holding.AcceptLessBecause : null),
            }));
    }
}
