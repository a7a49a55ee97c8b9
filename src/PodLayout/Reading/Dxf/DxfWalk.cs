using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Dxf;

/// <summary>Goes through the entities, into blocks, and collects what is drawn; counts what is left out and why.</summary>
internal sealed class DxfWalk(DxfFile file, LengthUnit unit, ReadingOptions options, DrawingFindings findings)
{
    /// <summary>More lines than any part has; arrays of blocks in damaged files ask for billions.</summary>
    private const int MostPaths = 1_000_000;

    /// <summary>Blocks within blocks deeper than any drawing has them.</summary>
    private const int DeepestBlock = 100;

    /// <summary>Seen from above, a line may shorten by this share before it counts as tilted (0.8 degrees).</summary>
    private const double FlatShare = 1e-4;

    private readonly DxfCurves _curves = new(options.ChordToleranceMm, findings);
    private readonly ImmutableArray<DrawnPath>.Builder _paths = ImmutableArray.CreateBuilder<DrawnPath>();
    private readonly SortedDictionary<string, int> _leftOut = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _texts = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _missingBlocks = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _open = [];
    private readonly HashSet<string> _isOpen = new(StringComparer.OrdinalIgnoreCase);
    private long _visited;

    public ImmutableArray<DrawnPath> Read()
    {
        var toMm = Affine3.Scale(unit.MmPerUnit, unit.MmPerUnit, unit.MmPerUnit);
        Walk(file.Entities, toMm, null);
        foreach (var (what, count) in _leftOut)
        {
            if (what.StartsWith('!'))
                findings.Warn("dxf-kind-unread", $"Left out: {count} {what[1..]}.", "If it is an edge of the part, explode it into lines, arcs or polylines.");
            else
                findings.Note("dxf-left-out", $"Left out: {count} {what}.");
        }

        return _paths.ToImmutable();
    }

    /// <summary>How many words are written on which layer.</summary>
    public ImmutableDictionary<string, int> Texts => _texts.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);

    private void LeaveOut(DxfEntity entity, string layer)
    {
        LeaveOut(Described(entity.Kind));
        if (entity.Kind is "TEXT" or "MTEXT" or "ATTDEF" or "ATTRIB")
            _texts[layer] = _texts.GetValueOrDefault(layer) + 1;
    }

    private void LeaveOut(string what) => _leftOut[what] = _leftOut.GetValueOrDefault(what) + 1;

    private void Walk(IReadOnlyList<DxfEntity> entities, Affine3 toMm, string? insertLayer)
    {
        foreach (var entity in entities)
        {
            if (IsTooMuch(entity))
                return;
            // Layer 0 in a block stands for the layer of the insert.
            var layer = insertLayer is not null && entity.Layer == "0" ? insertLayer : entity.Layer;
            if (entity.IsInPaperSpace)
                LeaveOut("in paper space");
            else if (entity.IsInvisible)
                LeaveOut("marked invisible");
            else if (file.Layers.TryGetValue(layer, out var row) && row.IsFrozen)
                LeaveOut($"on frozen layer {row.Name}");
            else if (entity.Kind == "INSERT")
                Insert(entity, toMm, layer);
            else if (row is { IsOff: true })
                LeaveOut($"on layer {row.Name}, which is off");
            else if (DxfCurves.Draws(entity.Kind))
                Draw(entity, toMm, layer);
            else
                LeaveOut(entity, layer);
        }
    }

    /// <summary>Counts a step of the work, whether or not it draws anything: arrays of empty blocks would not end either.</summary>
    private bool IsTooMuch(DxfEntity entity)
    {
        if (findings.HasRefusal)
            return true;
        if (++_visited <= MostPaths)
            return false;
        findings.Refuse(
            "drawing-too-large", $"The drawing draws more than {MostPaths} entities or blocks (blocks inserted many times over).",
            "Delete what is not the part.", entity.Line);
        return true;
    }

    private static string Described(string kind) => kind switch
    {
        "REGION" or "BODY" or "3DSOLID" or "SURFACE" or "MLINE" or "HELIX" or "MESH" or "3DFACE" or "TRACE" =>
            $"!{kind}, a kind that is not read",
        "TEXT" or "MTEXT" or "DIMENSION" or "HATCH" or "POINT" or "SOLID" or "ATTDEF" or "ATTRIB" or "VIEWPORT"
            or "LEADER" or "MULTILEADER" or "TOLERANCE" or "IMAGE" or "WIPEOUT" or "XLINE" or "RAY" or "ACAD_TABLE"
            or "ARC_DIMENSION" or "MLEADER" or "LARGE_RADIAL_DIMENSION" or "OLE2FRAME" or "SHAPE" => $"{kind}, no edge of a part",
        _ => $"!{(kind.Length > 40 ? kind[..40] : kind)}, a kind that is not known",
    };

    private void Draw(DxfEntity entity, Affine3 toMm, string layer)
    {
        if (_curves.Read(entity, toMm) is not { } chain || findings.HasRefusal)
            return;
        foreach (var p in chain.Points)
        {
            if (Math.Abs(p.X) <= Tolerances.LargestCoordinateMm && Math.Abs(p.Y) <= Tolerances.LargestCoordinateMm)
                continue;
            findings.Refuse(
                "coordinate-too-large",
                string.Create(CultureInfo.InvariantCulture, $"{entity.Name} reaches ({p.X:G6}, {p.Y:G6}) mm; coordinates up to {Tolerances.LargestCoordinateMm:G} mm are read."),
                "Delete the entity, or move the drawing to its zero; check the unit.", entity.Line);
            return;
        }

        if (chain.ForeshorteningMm > Math.Max(options.ChordToleranceMm, FlatShare * chain.LengthMm))
        {
            findings.Warn(
                "dxf-tilted", $"{entity.Name} does not lie parallel to the XY plane; it was left out.",
                "Project the drawing onto the XY plane (flatten it) in the drawing program.", entity.Line);
            return;
        }

        _paths.Add(new(layer, [.. chain.Points.Select(p => new Point2(p.X, p.Y))], chain.Closed, entity.Name) { RadiusMm = chain.RadiusMm, CurveAreaMm2 = chain.Excess.AreaMm2, CurveLengthMm = chain.Excess.LengthMm });
    }

    private void Insert(DxfEntity entity, Affine3 toMm, string layer)
    {
        var name = TextEncoding.Unescaped(entity.Text(2) ?? "");
        if (!file.Blocks.TryGetValue(name, out var block))
        {
            if (_missingBlocks.Add(name))
                findings.Warn("dxf-block-missing", $"The drawing inserts block \"{name}\", which it does not hold; nothing was drawn for it.", "If it holds edges of the part, export the drawing with its blocks.", entity.Line);
            return;
        }

        if (block.IsExternal && block.Entities.Count == 0)
        {
            findings.Warn("dxf-block-external", $"Block {name} stands for another file, which is not read.", "Bind the reference in the drawing program.", entity.Line);
            return;
        }

        if (_open.Count > DeepestBlock)
        {
            findings.Refuse("drawing-too-large", $"Blocks are inserted within each other more than {DeepestBlock} deep.", "Explode the blocks in the drawing program.", entity.Line);
            return;
        }

        if (!_isOpen.Add(name))
        {
            findings.Refuse("dxf-block-cycle", $"Block {name} inserts itself (by way of {string.Join(", ", _open)}).", "Mend the block in the drawing program.", entity.Line);
            return;
        }

        _open.Add(name);
        foreach (var map in Placements(entity, block))
        {
            if (IsTooMuch(entity))
                break;
            Walk(block.Entities, toMm.After(map), layer);
        }

        _open.RemoveAt(_open.Count - 1);
        _isOpen.Remove(name);

        foreach (var attribute in entity.Parts)
            LeaveOut(attribute, attribute.Layer);
    }

    /// <summary>How many columns or rows. Where no count stands, or 0, it is one; anything else that is no count is told.</summary>
    private int Count(DxfEntity entity, int code)
    {
        if (entity.Text(code) is not { } text)
            return 1;
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var given) || double.IsNaN(given))
            given = -1;
        var count = (int)Math.Clamp(given, 0, int.MaxValue);
        if (given < 0 || count != given)
            findings.Warn("dxf-insert-count", $"{entity.Name} gives {Plain.Cut(text)} as the number of its {(code == 70 ? "columns" : "rows")}; {Math.Max(1, count)} was drawn.", "Compare the picture with the drawing.", entity.Line);
        return Math.Max(1, count);
    }

    /// <summary>Where the block is drawn: scaled about its base, turned, and moved; rows and columns run along the turned axes.</summary>
    private IEnumerable<Affine3> Placements(DxfEntity entity, DxfBlock block)
    {
        var n = _curves.Numbers;
        var scale = Affine3.Scale(n.Number(entity, 41, 1), n.Number(entity, 42, 1), n.Number(entity, 43, 1));
        var turn = Affine3.TurnAboutZ(n.Number(entity, 50, 0));
        var place = Affine3.FromExtrusion(n.Extrusion(entity)).After(Affine3.Move(n.Point(entity, 10)));
        var shape = scale.After(Affine3.Move(block.Base * -1));
        int columns = Count(entity, 70), rows = Count(entity, 71);
        double columnStep = n.Number(entity, 44, 0), rowStep = n.Number(entity, 45, 0);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var step = Affine3.Move(new(column * columnStep, row * rowStep, 0));
                yield return place.After(turn).After(step).After(shape);
            }
        }
    }
}
