
namespace PodLayout.Reading.Dxf;

/// <summary>Sorts the groups of a DXF file into header, layers, blocks and entities.</summary>
internal sealed class DxfSections
{
    private readonly List<Tag> _tags;
    private readonly DrawingFindings _findings;
    private readonly Dictionary<string, string> _header = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, DxfLayer> _layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, DxfBlock> _blocks = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<DxfEntity> _entities = [];

    /// <summary>Names in the table of block records by handle, for blocks that do not name themselves.</summary>
    private readonly Dictionary<string, string> _recordNames = new(StringComparer.OrdinalIgnoreCase);
    private int _at;

    private DxfSections(List<Tag> tags, DrawingFindings findings)
    {
        _tags = tags;
        _findings = findings;
    }

    /// <summary>The file's sections; null with a refusal when it is no DXF file or breaks off inside a section.</summary>
    public static DxfFile? Read(List<Tag> tags, DrawingFindings findings) => new DxfSections(tags, findings).Read();

    /// <summary>A header variable found by a look through the first groups, before the text's coding is known.</summary>
    public static string Peek(List<Tag> tags, string variable)
    {
        for (var i = 0; i + 1 < tags.Count; i++)
        {
            if (tags[i].Code == 9 && tags[i].Value.Equals(variable, StringComparison.OrdinalIgnoreCase))
                return tags[i + 1].Value;
            if (tags[i] is { Code: 0, Value: "ENDSEC" })
                break;
        }

        return "";
    }

    private DxfFile? Read()
    {
        var sections = 0;
        while (_at < _tags.Count)
        {
            var tag = _tags[_at++];
            if (IsStart(tag, "EOF"))
                return Whole(sections, ended: true);
            if (!IsStart(tag, "SECTION"))
                continue;
            sections++;
            var name = _at < _tags.Count && _tags[_at].Code == 2 ? _tags[_at++].Value.ToUpperInvariant() : "";
            if (!ReadSection(name))
            {
                _findings.Refuse(
                    "dxf-truncated", $"The file ends inside the section {name}, without its end mark.",
                    "Export or copy the file again.", tag.Line);
                return null;
            }
        }

        return Whole(sections, ended: false);
    }

    private DxfFile? Whole(int sections, bool ended)
    {
        if (sections == 0)
        {
            _findings.Refuse("dxf-no-section", "The file holds no section, so it is no DXF drawing.", "Export the drawing as DXF again.");
            return null;
        }

        if (!ended)
            _findings.Warn("dxf-no-end", "The file has no end-of-file mark, though its last section is whole; something may be missing.", "Compare the picture with the drawing.");
        return new(_header, _layers, _blocks, _entities);
    }

    private static bool IsStart(Tag tag, string name) =>
        tag.Code == 0 && tag.Value.Equals(name, StringComparison.OrdinalIgnoreCase);

    private bool ReadSection(string name) => name switch
    {
        "HEADER" => ReadHeader(),
        "TABLES" => ReadTables(),
        "BLOCKS" => ReadBlocks(),
        "ENTITIES" => ReadEntities(_entities, "ENDSEC"),
        _ => ReadEntities([], "ENDSEC"),
    };

    private bool ReadHeader()
    {
        string? variable = null;
        for (; _at < _tags.Count; _at++)
        {
            var tag = _tags[_at];
            if (IsStart(tag, "ENDSEC"))
            {
                _at++;
                return true;
            }

            if (tag.Code == 9)
                variable = tag.Value;
            else if (variable is not null)
                _header.TryAdd(variable, tag.Value);
        }

        return false;
    }

    private bool ReadTables()
    {
        var rows = new List<DxfEntity>();
        if (!ReadEntities(rows, "ENDSEC"))
            return false;
        foreach (var row in rows.Where(r => r.Kind == "LAYER"))
        {
            var name = TextEncoding.Unescaped(row.Text(2) ?? "");
            _layers.TryAdd(name, new(name, (row.Integer(70, 0) & 1) != 0, row.Integer(62, 7) < 0));
        }

        foreach (var row in rows.Where(r => r.Kind == "BLOCK_RECORD"))
            _recordNames.TryAdd(row.Text(5) ?? "", row.Text(2) ?? "");

        return true;
    }

    private bool ReadBlocks()
    {
        while (_at < _tags.Count)
        {
            var tag = _tags[_at++];
            if (IsStart(tag, "ENDSEC"))
                return true;
            if (!IsStart(tag, "BLOCK"))
                continue;
            var head = new DxfEntity("BLOCK", tag.Line);
            ReadTags(head);
            var entities = new List<DxfEntity>();
            if (!ReadEntities(entities, "ENDBLK"))
                return false;
            AddBlock(head, entities);
        }

        return false;
    }

    private void AddBlock(DxfEntity head, List<DxfEntity> entities)
    {
        string?[] names = [head.Text(2), head.Text(3), _recordNames.GetValueOrDefault(head.Text(330) ?? "")];
        var name = TextEncoding.Unescaped(names.FirstOrDefault(n => !string.IsNullOrEmpty(n)) ?? "");
        var numbers = new NumberReader(_findings);
        var block = new DxfBlock(name, numbers.Point(head, 10), (head.Integer(70, 0) & 4) != 0, entities);
        if (name.Length == 0)
            _findings.Note("dxf-block-unnamed", "A block has no name, so nothing can draw it.", head.Line);
        else if (!_blocks.TryAdd(name, block))
            _findings.Warn("dxf-block-twice", $"Block {name} is defined twice; the first definition is used.", null, head.Line);
    }

    private bool ReadEntities(List<DxfEntity> into, string end)
    {
        DxfEntity? owner = null;
        while (_at < _tags.Count)
        {
            var tag = _tags[_at++];
            if (tag.Code != 0)
                continue;
            var kind = tag.Value.ToUpperInvariant();
            if (kind == end)
                return true;
            if ((kind is "EOF" or "SECTION") && end == "ENDSEC")
            {
                // The next section or the end of file shows that nothing broke off: only the mark is missing.
                _findings.Mended("dxf-no-section-end", "A section has no end mark; it was ended where the next thing begins.", tag.Line);
                _at--;
                return true;
            }

            if (kind is "EOF" or "ENDSEC" or "SECTION")
                return false;
            var entity = new DxfEntity(kind, tag.Line);
            ReadTags(entity);
            if (kind == "SEQEND")
                owner = null;
            else if (owner is not null && (kind is "VERTEX" or "ATTRIB"))
                owner.Parts.Add(entity);
            else
                into.Add(entity);
            if (kind == "POLYLINE" || (kind == "INSERT" && entity.Integer(66, 0) != 0))
                owner = entity;
            else if (kind is not ("VERTEX" or "ATTRIB"))
                owner = null;
        }

        return false;
    }

    private void ReadTags(DxfEntity entity)
    {
        // Groups in braces (102) are other programs' data, and an embedded object (101) repeats codes with other meanings.
        bool inBraces = false, embedded = false;
        for (; _at < _tags.Count && _tags[_at].Code != 0; _at++)
        {
            var tag = _tags[_at];
            if (tag.Code == 102)
                inBraces = tag.Value.StartsWith('{');
            embedded |= tag.Code == 101;
            if (!inBraces && !embedded && tag.Code is not (102 or 999) && tag.Code < 1000)
                entity.Tags.Add(tag);
        }
    }
}
