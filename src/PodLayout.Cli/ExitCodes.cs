using PodLayout.Findings;
using PodLayout.Layouts;

namespace PodLayout.Cli;

/// <summary>The exit codes and what they mean: the one table that the program, its help and its tests go by.</summary>
internal static class ExitCodes
{
    public const int LayoutFound = 0;
    public const int BadCommandLine = 2;
    public const int BadRequest = 3;
    public const int BadDrawing = 4;
    public const int BadFile = 5;
    public const int NoLayout = 6;
    public const int OutOfTime = 7;
    public const int RuleBroken = 8;
    public const int DoesNotHold = 9;
    public const int PartUnsupported = 10;
    public const int InternalError = 70;
    public const int Interrupted = 130;

    public static IReadOnlyList<(int Code, string Meaning)> All { get; } =
    [
        (LayoutFound, "done; for plan: a layout was found (with a time limit, perhaps not proven to be the fewest pods)"),
        (BadCommandLine, "the command line is wrong"),
        (BadRequest, "the job, shop or layout file is wrong"),
        (BadDrawing, "the drawing or the posted program is wrong"),
        (BadFile, "a file cannot be read or written"),
        (NoLayout, "no layout is possible for what was asked"),
        (OutOfTime, "the time limit came before any layout was found"),
        (RuleBroken, "check, card: the layout breaks at least one of its rules"),
        (DoesNotHold, "plan: a layout is shown, but it does not hold: something is held below the least factor; do not cut on it"),
        (PartUnsupported, "plan, check, card: a layout that leaves part of the wood beyond its limits, as little as can be; the rest is supported"),
        (InternalError, "a fault of the program (PODLAYOUT_TRACE=1 shows where)"),
        (Interrupted, "interrupted; the best layout found so far is written, if there is one"),
    ];

    /// <summary>The code of a refusal.</summary>
    public static int Of(Finding refusal) => refusal.Kind switch
    {
        FindingKind.Request when refusal.Place is Place.InOption => BadCommandLine,
        FindingKind.Request => BadRequest,
        FindingKind.Drawing or FindingKind.Program => BadDrawing,
        FindingKind.File => BadFile,
        FindingKind.NoLayout => NoLayout,
        FindingKind.BrokenRule => RuleBroken,
        _ => InternalError,
    };

    /// <summary>The code of a plan. A time limit that was reached is not an interruption: the user asked for it.</summary>
    public static int Of(PlanResult result, bool userInterrupted) => result switch
    {
        { Interrupted: true } when userInterrupted => Interrupted,
        { DoesNotHold: true } => DoesNotHold,
        { IsPartial: true } => PartUnsupported,
        { Layout: not null } => LayoutFound,
        { Interrupted: true } => OutOfTime,
        _ => NoLayout,
    };
}
