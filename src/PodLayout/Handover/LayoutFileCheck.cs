using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover.Format;

namespace PodLayout.Handover;

/// <summary>Contradictions inside a layout file whose members are all of the right type.</summary>
internal static class LayoutFileCheck
{
    private const int MostNamed = 12;

    /// <summary>The first one; null when there is none. Whether the layout keeps its rules is not asked here.</summary>
    /// <param name="fileName">Name for messages.</param>
    /// <param name="file">What was read.</param>
    /// <param name="isEdited">
    /// Whether a person may have changed it: members that only repeat or follow from others are then not looked at.
    /// </param>
    public static Finding? FirstContradiction(string fileName, LayoutFile file, bool isEdited = false)
    {
        var found = Given(file).Concat(isEdited ? [] : Derived(file)).FirstOrDefault();
        return found == default ? null : new Finding(
            "layout-contradicts-itself", Severity.Refused, FindingKind.Request, found.Message, new Place.InJson(fileName, found.Path),
            "Mend this member, or write the file again with the plan command.");
    }

    private static IEnumerable<(string Path, string Message)> Given(LayoutFile file) =>
        [.. Mark(file), .. Shapes(file), .. Areas(file), .. Board(file.Shop.Board), .. PodTypes(file.Shop), .. Asked(file), .. Pods(file), .. Together(file), .. Holding(file)];

    private static IEnumerable<(string Path, string Message)> Mark(LayoutFile file)
    {
        if (file.Mark is { } mark && !LayoutMark.IsPlain(mark))
        {
            yield return ("$.mark", "The plan's mark has eight digits from 0 to 9 and a to f; this is none.");
        }
    }

    // An outer ring, then the holes in it, then the next outer ring: what is drawn in another order bounds nothing.
    private static IEnumerable<(string Path, string Message)> Areas(LayoutFile file)
    {
        foreach (var (path, shape) in new[] { ("$.part.inDrawing", file.Part.InDrawing), ("$.part.onBoard", file.Part.OnBoard) })
        {
            var areas = shape is null ? [] : shape.Hazards.Select((h, i) => ($"{path}.hazards[{i}].ringsMm", h.RingsMm))
                .Concat(shape.Floors.Select((f, i) => ($"{path}.floors[{i}].ringsMm", f.RingsMm)))
                .Concat((shape.WeakFloors ?? []).Select((f, i) => ($"{path}.weakFloors[{i}].ringsMm", f.RingsMm)));
            foreach (var (areaPath, rings) in areas.Where(a => a.RingsMm.All(r => r.Length >= 3)))
            {
                if (!Region.CanBeBounded([.. rings.Select(ring => new Ring([.. ring.Select(p => new Point2(p.X, p.Y))]))]))
                {
                    yield return (areaPath, "These rings bound no area: an outer ring (counter-clockwise) was expected, followed by the holes within it (clockwise), and rings that do not cross.");
                }
            }
        }
    }

    private static IEnumerable<(string Path, string Message)> Shapes(LayoutFile file)
    {
        foreach (var (path, shape) in new[] { ("$.part.inDrawing", file.Part.InDrawing), ("$.part.onBoard", file.Part.OnBoard) })
        {
            if (shape is null)
            {
                continue;
            }

            var rings = shape.HolesMm.Select((r, i) => ($"{path}.holesMm[{i}]", r))
                .Concat(shape.DefectsMm.Select((r, i) => ($"{path}.defectsMm[{i}]", r)))
                .Concat(shape.Hazards.SelectMany((h, i) => h.RingsMm.Select((r, k) => ($"{path}.hazards[{i}].ringsMm[{k}]", r))))
                .Concat(shape.Avoided.Select((a, i) => ($"{path}.avoided[{i}].ringMm", a.RingMm)))
                .Concat(shape.Floors.SelectMany((f, i) => f.RingsMm.Select((r, k) => ($"{path}.floors[{i}].ringsMm[{k}]", r))))
                .Concat((shape.WeakFloors ?? []).SelectMany((f, i) => f.RingsMm.Select((r, k) => ($"{path}.weakFloors[{i}].ringsMm[{k}]", r))))
                .Concat(shape.Held.SelectMany((h, i) => h.HolesMm.Prepend(h.OutlineMm).Select(
                    (r, k) => (k == 0 ? $"{path}.held[{i}].outlineMm" : $"{path}.held[{i}].holesMm[{k - 1}]", r))))
                .Concat((shape.BlankMm ?? []).Select((r, i) => ($"{path}.blankMm[{i}]", r)))
                .Prepend(($"{path}.outlineMm", shape.OutlineMm));
            foreach (var (ringPath, ring) in rings)
            {
                if (ring.Length < 3)
                {
                    yield return (ringPath, $"A ring needs at least 3 points; {ring.Length} were found.");
                }
            }

            foreach (var (line, i) in (shape.LeftOutLinesMm ?? []).Select((l, i) => (l, i)).Where(l => l.l.Length < 2))
            {
                yield return ($"{path}.leftOutLinesMm[{i}]", $"A line needs at least 2 points; {line.Length} were found.");
            }
        }
    }

    private static IEnumerable<(string Path, string Message)> Board(BoardEntry board)
    {
        foreach (var (name, value) in new[]
        {
            ("widthMm", board.WidthMm), ("lengthMm", board.LengthMm), ("pitchMm", board.PitchMm),
            ("portDiameterMm", board.PortDiameterMm),
        })
        {
            if (value <= 0)
            {
                yield return ($"$.shop.board.{name}", "A length greater than 0 was expected.");
            }
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < board.Ports.Length; i++)
        {
            if (!names.Add(board.Ports[i].Name))
            {
                yield return ($"$.shop.board.ports[{i}].name", "Another port has the same name.");
            }
        }

        for (var i = 0; i < board.Obstacles.Length; i++)
        {
            var o = board.Obstacles[i];
            var isDisc = o is { CentreMm: not null, DiameterMm: not null, Extent: null };
            var isRectangle = o is { CentreMm: null, DiameterMm: null, Extent: not null };
            if (!isDisc && !isRectangle)
            {
                yield return ($"$.shop.board.obstacles[{i}]", "Either centreMm and diameterMm or extent was expected.");
            }
        }
    }

    private static IEnumerable<(string Path, string Message)> PodTypes(ShopEntry shop)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < shop.PodTypes.Length; i++)
        {
            var type = shop.PodTypes[i];
            if (!names.Add(type.Name))
            {
                yield return ($"$.shop.podTypes[{i}].name", "Another pod type has the same name.");
            }

            var isRectangle = type is { WidthMm: > 0, LengthMm: > 0, DiameterMm: null };
            var isRound = type is { WidthMm: null, LengthMm: null, DiameterMm: > 0 };
            if (!isRectangle && !isRound)
            {
                yield return ($"$.shop.podTypes[{i}]", "Either widthMm and lengthMm or diameterMm, greater than 0, was expected.");
            }
        }
    }

    private static IEnumerable<(string Path, string Message)> Asked(LayoutFile file)
    {
        var asked = file.Asked;
        if (new[] { asked.Given is not null, !asked.SearchAnglesDeg.IsEmpty, asked.SearchAngle is not null }.Count(given => given) != 1)
        {
            yield return ("$.asked", "One of a given placement, at least one angle to search, and an interval of angles was expected.");
        }

        for (var i = 0; i < file.Asked.Keep.Length; i++)
        {
            if (!file.Shop.PodTypes.Any(t => t.Name == file.Asked.Keep[i].Pod))
            {
                yield return ($"$.asked.keep[{i}].pod", Unknown("pod type", file.Asked.Keep[i].Pod, file.Shop.PodTypes.Select(t => t.Name)));
            }
        }
    }

    // A name that no other is near to is answered with all there are.
    private static string Unknown(string what, string name, IEnumerable<string> known) =>
        $"The shop in this file has no {what} \"{name}\"; " + (NearestName.To(name, known) is { } near
            ? $"the nearest is \"{near}\"." : $"it has {string.Join(", ", known.Take(MostNamed).Select(k => $"\"{k}\""))}{(known.Skip(MostNamed).Any() ? ", ..." : "")}.");

    private static IEnumerable<(string Path, string Message)> Pods(LayoutFile file)
    {
        var types = file.Shop.PodTypes.Select(t => t.Name).ToHashSet(StringComparer.Ordinal);
        var ports = file.Shop.Board.Ports.Select(p => p.Name).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < file.Pods.Length; i++)
        {
            var pod = file.Pods[i];
            if (!types.Contains(pod.Type))
            {
                yield return ($"$.pods[{i}].type", Unknown("pod type", pod.Type, types));
            }

            for (var k = 0; k < pod.OpenPorts.Length; k++)
            {
                if (!ports.Contains(pod.OpenPorts[k]))
                {
                    yield return ($"$.pods[{i}].openPorts[{k}]", "The board in this file has no port of this name.");
                }
            }
        }
    }

    private static IEnumerable<(string Path, string Message)> Derived(LayoutFile file)
    {
        for (var i = 0; i < file.Pods.Length; i++)
        {
            if (file.Pods[i].Id != LayoutFiling.PodId(i))
            {
                yield return ($"$.pods[{i}].id", $"\"{LayoutFiling.PodId(i)}\" was expected: pods are numbered in placing order.");
            }
        }

        var ids = file.Pods.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var points = file.Support?.Points ?? [];
        for (var i = 0; i < points.Length; i++)
        {
            if (!ids.Contains(points[i].Pod))
            {
                yield return ($"$.support.points[{i}].pod", "There is no pod with this id.");
            }
        }

        var fed = file.Pods.SelectMany(p => p.OpenPorts).ToHashSet(StringComparer.Ordinal);
        if (!fed.SetEquals(file.OpenPorts))
        {
            yield return ("$.openPorts", "These are not the ports that the pods name.");
        }
    }

    private static IEnumerable<(string Path, string Message)> Holding(LayoutFile file)
    {
        if (file.Holding is not { } held)
        {
            yield break;
        }

        if (file.Placement is null)
        {
            yield return ("$.holding", "It must be null when placement is null.");
        }

        if (HoldingGivenFiling.FirstWrong(held, "$.holding") is { } wrong)
        {
            yield return wrong;
        }
    }

    private static IEnumerable<(string Path, string Message)> Together(LayoutFile file)
    {
        var parts = new (string Path, bool Present)[]
        {
            ("$.support", file.Support is not null),
            ("$.proof", file.Proof is not null),
            ("$.part.onBoard", file.Part.OnBoard is not null),
        };
        foreach (var (path, present) in parts)
        {
            if (present != (file.Placement is not null))
            {
                yield return (path, "It must be null exactly when placement is null.");
            }
        }

        if (file.Placement is null && !file.Pods.IsEmpty)
        {
            yield return ("$.pods", "Pods without a placement of the part.");
        }
    }
}
