using System.Text.Json;

namespace PodLayout.JsonFiles;

/// <summary>A member of the job that was given on the command line and goes before the one in the file.</summary>
/// <param name="Option">The option as typed, for messages.</param>
/// <param name="Member">Name of the job's member.</param>
/// <param name="Key">For a member that is a map (the layers): the entry; null for the whole member.</param>
/// <param name="Value">What was given.</param>
public sealed record MemberOverride(string Option, string Member, string? Key, JsonElement Value);
