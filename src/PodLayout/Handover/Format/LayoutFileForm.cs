using System.Text.Json.Serialization;

namespace PodLayout.Handover.Format;

/// <summary>How the layout file is bound, worked out when the library is built: nothing is looked up while a command starts.</summary>
[JsonSerializable(typeof(LayoutFile))]
internal sealed partial class LayoutFileForm : JsonSerializerContext;
