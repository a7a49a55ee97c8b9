namespace PodLayout.Reading.Dxf;

/// <summary>The sections of a DXF file that say what the part looks like.</summary>
/// <param name="Header">Header variables, the first value of each.</param>
/// <param name="Layers">The layer table, by name without case.</param>
/// <param name="Blocks">Blocks by name without case.</param>
/// <param name="Entities">Entities outside blocks.</param>
internal sealed record DxfFile(
    IReadOnlyDictionary<string, string> Header,
    IReadOnlyDictionary<string, DxfLayer> Layers,
    IReadOnlyDictionary<string, DxfBlock> Blocks,
    IReadOnlyList<DxfEntity> Entities)
{
    public string Version => Header.GetValueOrDefault("$ACADVER", "");

    public static string CommonName(string version) => version switch
    {
        "" => "of unnamed version",
        "AC1009" => "R12",
        "AC1012" => "R13",
        "AC1014" => "R14",
        "AC1015" => "R2000",
        "AC1018" => "R2004",
        "AC1021" => "R2007",
        "AC1024" => "R2010",
        "AC1027" => "R2013",
        "AC1032" => "R2018",
        "AC1006" => "R10",
        _ => version,
    };
}
