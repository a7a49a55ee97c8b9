using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>
/// Every style by name. Meaning is carried by width, dash, hatch and symbol; the colours (black, greys, one blue, one orange
/// that differ in lightness too) only help, so that a grey print loses nothing.
/// </summary>
public static class PictureStyles
{
    private const string Ink = "#111111";
    private const string Paper = "#ffffff";
    private const string Blue = "#005a8f";
    private const string Orange = "#b84a00";
    private const string Grain = "#b09a78";

    /// <summary>All styles in a fixed order.</summary>
    public static ImmutableArray<PictureStyle> All { get; } =
    [
        Filled("paper", Paper),
        new("board", Ink, 0.35, [], "#f6f6f4"),
        Line("groove", "#bcbcb8", 0.09),
        Line("groove-fifth", "#9a9a96", 0.16),
        Line("usable", "#555555", 0.3, 0.4, 1.1),
        new("port-plugged", "#777777", 0.16, [], Paper),
        new("port-dead", "#333333", 0.2, [], Paper),
        new("port-open-ring", Ink, 0.28, [], Paper),
        Filled("port-open", Ink),
        new("obstacle", Ink, 0.3, [], "#dddddd"),
        Line("obstacle-hatch", Ink, 0.14),
        Line("obstacle-clearance", "#555555", 0.12, 0.5, 0.5),
        Line("avoided", Ink, 0.3, 1.6, 0.7),
        Line("avoided-hatch", "#555555", 0.12),
        Filled("part-fill", "#fbf6ec"),
        Line("part-edge", Ink, 0.5),
        Line("blank-edge", Ink, 0.35, 5, 1.1),
        Line("left-out", "#444444", 0.13, 0.9, 0.6),
        Line("skin-edge", Ink, 1.1),
        Line("skin-core", Paper, 0.6, 1.8, 1.8),
        Line("grain-arrow", "#5c4a2c", 0.4),
        Filled("grain-head", "#5c4a2c"),
        Line("defect-edge", Ink, 0.25),
        Line("defect-hatch", Ink, 0.16),
        Line("cut-edge", Ink, 0.3, 1.2, 0.4),
        Line("cut-edge-small", Ink, 0.3),
        Line("cut-hatch", "#444444", 0.12),
        Line("floor-edge", Ink, 0.25, 0.3, 0.4),
        Line("floor-hatch", "#777777", 0.12, 1.2, 0.8),
        Line("piece-edge", Ink, 0.35, 2.4, 0.6, 0.5, 0.6),
        Line("tip", Orange, 0.2, 0.8, 0.4),
        new("pod", Blue, 0.55, [], Paper),
        Filled("pod-stays", "#dddddd"),
        Line("port-to-plug", Ink, 0.75),
        Line("fault-frame", Ink, 0.9, 1.8, 0.9),
        Line("fault-frame-small", Ink, 0.75, 1.1, 0.6),
        Filled("fault-ground", Ink),
        Filled("fault-words", Paper, true),
        new("pod-kept", Blue, 1.2, [], Paper),
        new("before", "#555555", 0.45, [1.6, 0.9], Paper),
        Line("before-cross", "#555555", 0.3),
        Filled("before-name", "#333333"),
        new("tick-box", Ink, 0.45, [], Paper),
        Line("row-rule", "#999999", 0.15),
        Line("page-rule", Ink, 0.4),
        Line("seal", Blue, 0.16, 0.9, 0.5),
        Filled("pod-turned", Blue),
        Filled("pod-id", Ink, true),
        Filled("pod-type", Ink),
        Filled("port-name", Ink),
        Filled("knockout", Paper),
        Line("support-low", "#777777", 0.16),
        Line("support-middle", "#444444", 0.22),
        Line("support-high", Orange, 0.4),
        Line("limit", Orange, 0.2, 2, 0.7, 0.4, 0.7),
        Line("worst", Orange, 0.35),
        Filled("worst-label", Orange, true),
        new("load-frame", Ink, 0.12, [], Paper),
        Filled("load-bar", Ink),
        new("weakest-ring", Ink, 0.3, [], Paper),
        Line("weakest-halo", Paper, 1.5),
        Line("weakest-arrow", Ink, 0.5),
        Filled("weakest-head", Ink),
        Line("unsupported", Orange, 1.1, 2.2, 1),
        Line("unsupported-spot", Orange, 0.8),
        Line("closer-corner", Ink, 0.7),
        new("stretch-flag", Ink, 0.3, [], Paper),
        Filled("stretch-number", Ink, true),
        Line("leader", Ink, 0.2),
        Filled("number", "#333333"),
        Filled("number-fifth", Ink, true),
        Line("datum", Ink, 0.4),
        Filled("datum-fill", Ink),
        new("zero", Paper, 0.25, [], Ink),
        Filled("text", Ink),
        Filled("text-bold", Ink, true),
        Filled("heading", Ink, true),
        Line("rule", Ink, 0.25),
        Line("warning-frame", Ink, 0.8),
        new("bar-light", Ink, 0.2, [], Paper),
        Filled("groove-cut", "#dededa"),
        new("bore", Ink, 0.2, [], Paper),
        Filled("bore-deep", "#555555"),
        Line("engraving", Ink, 0.18),
        Line("seam", Ink, 0.6, 3, 1),
        Line("zone", "#555555", 0.3, 4, 1, 0.8, 1),
        Line("flip-line", Orange, 0.22, 6, 1, 1, 1),
        Line("vacuum-extent", Blue, 0.2, 1.2, 0.8),
        Line("vacuum-hatch", "#9fb6c6", 0.1),
        new("channel", Blue, 0.2, [], "#cfdde6"),
        new("gasket", Ink, 0.2, [], "#8a8a86"),
        new("stock", Ink, 0.45, [], "#f3ead8"),
        Line("stock-hatch", Grain, 0.12),
        Line("stock-break", "#777777", 0.2, 2, 0.8),
        Line("dimension", Ink, 0.15),
        Line("extension", "#777777", 0.1),
        Line("plug", Orange, 0.3, 1.4, 0.7),
    ];

    private static readonly ImmutableDictionary<string, PictureStyle> ByName =
        All.ToImmutableDictionary(s => s.Name, StringComparer.Ordinal);

    /// <summary>The style of this name; throws when there is none.</summary>
    public static PictureStyle Of(string name) => ByName[name];

    private static PictureStyle Line(string name, string colour, double widthMm, params ReadOnlySpan<double> dashMm) =>
        new(name, colour, widthMm, [.. dashMm], null);

    private static PictureStyle Filled(string name, string colour, bool isBold = false) =>
        new(name, null, 0, [], colour, isBold);
}
