using System.Collections.Immutable;
using System.Text.Json;

namespace PodLayout.Benchmarks.Quality;

/// <summary>What the fast instances came to when it was last agreed.</summary>
/// <param name="Because">Why the record was renewed, the latest last.</param>
/// <param name="Instances">The instances, in order.</param>
internal sealed record QualityRecord(ImmutableArray<string> Because, ImmutableArray<RecordedInstance> Instances)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Where it lies.</summary>
    public static string FilePath => Repository.Path("benchmarks", "quality-record.json");

    /// <summary>The record; one of nothing when there is none yet.</summary>
    public static QualityRecord Read() => File.Exists(FilePath)
        ? JsonSerializer.Deserialize<QualityRecord>(File.ReadAllText(FilePath), Json)! : new([], []);

    /// <summary>Writes it.</summary>
    public void Write() => File.WriteAllText(FilePath, JsonSerializer.Serialize(this, Json) + "\n");
}

/// <summary>An instance of the record: only what does not depend on the machine.</summary>
/// <param name="Name">The instance.</param>
/// <param name="Pods">Pods; null when no layout is possible.</param>
/// <param name="LeftMm">What they leave unsupported, mm.</param>
/// <param name="IsProven">Whether both were proven.</param>
/// <param name="Nodes">Boxes of offsets examined.</param>
/// <param name="Rows">Support rows made.</param>
/// <param name="Pairs">Seat-point pairs asked for.</param>
internal sealed record RecordedInstance(string Name, int? Pods, double LeftMm, bool IsProven, int Nodes, long Rows, long Pairs);
