using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Checking;

/// <summary>A pod under each loose piece that pods are to hold.</summary>
internal static class PieceRules
{
    public static RuleCheck Check(Job job, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.PiecesHeld, Measure.LeastCount, 0);
        var pieces = job.Part.Shape.Held;
        for (var i = 0; i < pieces.Length; i++)
        {
            var piece = pieces[i];
            var count = layout.Pods.Count(p => p.Holds == piece.Name);
            tally.Add(count, 1, piece.Name, (i, 0), () => (
                $"No pod stands under {piece.Name} ({CheckWords.Kg(piece.MassKg)} kg), which pods are to hold.",
                "Put a pod wholly under it."));
        }

        return tally.Done("no loose piece to be held");
    }

    /// <summary>In every direction some pod of the piece reaches as far as its centre of mass.</summary>
    public static RuleCheck Balance(Job job, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.PiecesBalanced, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var pieces = job.Part.Shape.Held;
        for (var i = 0; i < pieces.Length; i++)
        {
            var (piece, mass) = (pieces[i], turn.Apply(pieces[i].CentreOfMass) + layout.Placement.ZeroOnBoard);
            ImmutableArray<PlacedPod> pods = [.. layout.Pods.Where(p => p.Holds == piece.Name)];
            if (!piece.IsBalanced || pods.IsEmpty)
            {
                continue;
            }

            var least = HeldPiece.Directions.Select(turn.Apply).Min(d => pods.Max(p => d.Dot(p.Centre - mass) + StandingBody.Of(p, 0).ReachAlong(d)));
            tally.Add(least, 0, piece.Name, (i, 0), () => (
                $"{piece.Name}: its centre of mass, at {CheckWords.At(mass)} on the board, lies {CheckWords.Mm(-least)} mm beyond its pods.",
                "Put a pod under it on the other side of its centre of mass."));
        }

        return tally.Done("no loose piece that is to rest on its pods");
    }

    /// <summary>The layout with each pod's piece worked out from where it stands.</summary>
    public static Layout Named(Job job, Layout layout)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        return layout with
        {
            Pods = [.. layout.Pods.Select(p => p with
            {
                Holds = job.Part.Shape.Held.FirstOrDefault(
                    h => h.Contains(turn.Inverse.Apply(p.Centre - layout.Placement.ZeroOnBoard)))?.Name,
            })],
        };
    }
}
