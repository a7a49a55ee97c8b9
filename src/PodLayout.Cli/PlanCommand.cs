using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Handover.Setup;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.JsonFiles;
using PodLayout.Remedies;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.Cli;

/// <summary><c>plan</c>: from a job file, or a drawing and options, to the layout and its files.</summary>
internal static class PlanCommand
{
    public static Command Make(Terminal terminal, Action<Func<CancellationToken, int>> run)
    {
        Argument<string> input = new("FILE") { Description = "A job file (.json), or a drawing (.dxf, .svg) together with --thickness." };
        PlanOptions members = new();
        Option<string?> outFolder = new("--out") { HelpName = "DIR", Description = "Folder for the results; without it only the summary is printed." };
        Option<string?> threads = new("--threads") { HelpName = "N", Description = "Threads to use; the result does not depend on it. All cores when not given." };
        Option<string?> timeLimit = new("--time-limit") { HelpName = "S", Description = "Seconds after which the best layout so far is taken; reading counts." };
        Option<string?> from = new("--from") { HelpName = "FILE", Description = "A layout.json whose pods stand on the board now: with as few pods, a layout that moves fewest of them is preferred." };
        Option<bool> card = new("--card") { Description = "Make the setup card too: card.html, card.pdf, layout.dxf." };
        CardOptionsGiven cardOptions = new();
        Option<bool> tries = new("--try") { Description = "Where part of the wood stays unsupported: plan what may mend it (the part turned, ports, pods, margins, limits) and tell what each came to." };
        Option<string?> take = new("--take") { HelpName = "N", Description = "Try, and make the way out of this number the plan." };
        Option<bool> explain = new("--explain") { Description = "Print what the holding factor assumes." };
        Option<bool> progress = new("--progress") { Description = "Tell on stderr where the search stands, even when stderr is no terminal." };
        Command command = new("plan", "Finds the fewest pods that support a part, and hands over where they stand and which ports to open.") { input };
        foreach (var option in (IEnumerable<Option>)[.. members.All, from, outFolder, card, .. cardOptions.All, tries, take, explain, threads, timeLimit, progress])
        {
            command.Add(option);
        }

        command.SetAction(parsed => run(cancellation =>
        {
            var begun = terminal.Clock.GetTimestamp();
            var effort = EffortOf(threads, parsed.GetValue(threads), timeLimit, parsed.GetValue(timeLimit));
            var cardAsked = CardAsked(cardOptions, card, outFolder, parsed);
            var way = WayAsked(take, parsed.GetValue(take), parsed.GetValue(tries));
            var asked = Interruptible.Run(() => effort.Then(_ => cardAsked).Then(_ => way).Then(_ => members.Read(parsed)).Then(given => Job(parsed.GetRequiredValue(input), given.Members))
                .Then(job => Standing(parsed.GetValue(from), job)), cancellation);
            return asked.Succeeded
                ? Plan(asked.Value, asked.Findings, Left(effort.Value!, terminal.Clock.GetElapsedTime(begun)), new(parsed.GetValue(outFolder), parsed.GetValue(card) ? cardAsked.Value : null, parsed.GetValue(explain), way.Value!.Number), parsed.GetValue(progress), terminal, cancellation)
                : terminal.Refuse(asked.Findings);
        }));
        return command;
    }

    // 0 where all are only tried, -1 where none is.
    private sealed record WayAskedFor(int Number);

    private static Outcome<WayAskedFor> WayAsked(Option option, string? take, bool tries) =>
        take is null ? Outcome<WayAskedFor>.Of(new(tries ? 0 : -1))
        : int.TryParse(take, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is >= 1 and <= 99 ? Outcome<WayAskedFor>.Of(new(number))
        : Outcome<WayAskedFor>.Refuse(PlanOptions.Bad(option, take, "the number of a way out, from 1 on"));

    // A card is of no use where nothing is written, and words about it are of none without it.
    private static Outcome<CardOptions> CardAsked(CardOptionsGiven given, Option<bool> card, Option<string?> outFolder, ParseResult parsed)
    {
        var named = given.All.FirstOrDefault(o => parsed.GetResult(o) is { Implicit: false });
        (string Given, string Needs)? alone = parsed.GetValue(card)
            ? (parsed.GetValue(outFolder) is null ? (card.Name, outFolder.Name) : null)
            : named is null ? null : (named.Name, card.Name);
        return alone is not var (option, needs) ? given.Read(parsed) : Outcome<CardOptions>.Refuse(new Finding(
            "card-nowhere", Severity.Refused, FindingKind.Request, $"given without {needs}, which it needs.",
            new Place.InOption(option), $"Add {needs}, or leave it out."));
    }

    /// <summary>Everything that is asked, read and checked.</summary>
    private static Outcome<Job> Job(string input, ImmutableArray<MemberOverride> given)
    {
        var isJob = string.Equals(Path.GetExtension(input), ".json", StringComparison.OrdinalIgnoreCase);
        var request = isJob
            ? InputFile.Read(input).Then(content => JobReading.Read(Path.GetFileName(input), content, given))
            : Thickness(input, given) ?? JobReading.FromOptions(
                [new("FILE", "drawing", null, PlanOptions.Element(input)), .. given]);
        var folder = isJob ? Path.GetDirectoryName(input) ?? "" : "";
        return request.Then(r => Shop(r, folder, given).Then(shop => Drawings.Job(r, shop, folder, input))
            .Then(job => KeptPods.Check(job, r.File)));
    }

    // The pods of an earlier layout, which stand on the board now.
    private static Outcome<Job> Standing(string? path, Job job)
    {
        if (path is null)
        {
            return Outcome<Job>.Of(job);
        }

        return InputFile.Read(path).Then(content => EditedLayout.Read(path, content)).Then(file =>
        {
            var before = LayoutJson.ToPlan(file);
            return before.Layout is { } layout
                ? Outcome<Job>.Of(job with
                {
                    Standing = new(
                        [.. layout.Pods.Select(p => new StandingPod(p.Type.Name, p.Turned, p.Column, p.Row))],
                        new(layout.Placement.ZeroOnBoard, layout.Placement.AngleDeg))
                    {
                        OpenPorts = [.. layout.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Name).Distinct(StringComparer.Ordinal)],
                    },
                })
                : Outcome<Job>.Refuse(new Finding(
                    "from-without-layout",
                    Severity.Refused,
                    FindingKind.Request,
                    "holds no layout; expected one whose pods stand on the board.",
                    new Place.InJson(path, "$.placement"),
                    "Name the layout.json that the board was set up from, or leave --from out."));
        });
    }

    private static Outcome<JobRequest>? Thickness(string input, ImmutableArray<MemberOverride> given) =>
        given.Any(m => m.Member == "thicknessMm") ? null : Outcome<JobRequest>.Refuse(new Finding(
            "thickness-missing",
            Severity.Refused,
            FindingKind.Request,
            $"missing; expected the thickness of the part, since {input} is a drawing and not a job file (.json).",
            new Place.InOption("--thickness"),
            "Add --thickness MM, or plan a job file."));

    private static Outcome<Shop> Shop(JobRequest request, string folder, ImmutableArray<MemberOverride> given)
    {
        if (request.ShopPath is null)
        {
            return Outcome<Shop>.Of(ShopReading.Default());
        }

        // A path in the job file starts from its folder; a path that was typed, from where it was typed.
        var isTyped = given.Any(m => m.Member == "shop");
        var path = isTyped ? request.ShopPath : Path.Combine(folder, request.ShopPath);
        var name = isTyped ? Path.GetFileName(path) : InputFile.NameOf(request.ShopPath);
        return InputFile.Read(path, isOfJob: !isTyped).Then(content => ShopReading.Read(name, content));
    }

    private static Outcome<Effort> EffortOf(Option threadsOption, string? threads, Option limitOption, string? limit)
    {
        var count = Environment.ProcessorCount;
        if (threads is not null
            && !(int.TryParse(threads, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 1 and <= 1024))
        {
            return Outcome<Effort>.Refuse(PlanOptions.Bad(threadsOption, threads, "a whole number from 1 to 1024"));
        }

        if (limit is null)
        {
            return Outcome<Effort>.Of(new Effort(count, null));
        }

        return PlanOptions.NumbersOf(limit) is [> 0 and <= 1e6 and var seconds]
            ? Outcome<Effort>.Of(new Effort(count, TimeSpan.FromSeconds(seconds)))
            : Outcome<Effort>.Refuse(PlanOptions.Bad(limitOption, limit, "seconds, more than 0 and at most 1000000"));
    }

    /// <summary>The limit is for the whole command: what reading took of it is not there for the search.</summary>
    private static Effort Left(Effort asked, TimeSpan taken) =>
        asked with { TimeLimit = asked.TimeLimit is { } limit ? (limit > taken ? limit - taken : TimeSpan.Zero) : null };

    private static int Plan(
        Job job,
        ImmutableArray<Finding> found,
        Effort effort,
        Output output,
        bool progress,
        Terminal terminal,
        CancellationToken cancellation)
    {
        var outFolder = output.Folder;
        if (outFolder is not null && OutputFolder.Try(outFolder) is { } unwritable)
        {
            return terminal.Refuse([.. found, unwritable]);
        }

        // What speaks against the program or its zero may be why the search takes long: told before it, and again in the summary.
        terminal.Print(found.Where(f => f is { Severity: Severity.Warning, Kind: FindingKind.Program }));
        var lines = progress || terminal.ErrorIsTerminal ? new ProgressLines(terminal.Error, progress) : null;
        var begun = terminal.Clock.GetTimestamp();
        var planned = Planning.Plan(job, effort, lines, cancellation);
        if (output.Way >= 0 && RemedyTrial.IsOfUse(planned))
        {
            // What is cut short is nothing to go by: the trial ends with the time.
            using var timed = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            if (Left(effort, terminal.Clock.GetElapsedTime(begun)).TimeLimit is { } left)
            {
                timed.CancelAfter(left);
            }

            var tried = RemedyTrial.Of(planned, other => Planning.Plan(other, effort with { TimeLimit = null }, lines, timed.Token), timed.Token);
            planned = planned with { WaysOut = [.. tried.Select(t => t.Figures)] };
            if (output.Way > 0)
            {
                if (output.Way > tried.Length)
                {
                    terminal.Out.Write(Results.Summary(planned));
                    return terminal.Refuse([NoSuchWay(output.Way, tried.Length)]);
                }

                planned = tried[output.Way - 1] is var taken ? taken.Plan with { Findings = taken.Plan.Findings.Insert(0, Taken(taken.Words)) } : planned;
            }
        }

        // What was found on reading belongs into the handed-over files as much as what planning found. The summary says all
        // that a person must know; notes, and the one reason why there is no layout, go where a script looks for them.
        var result = planned with { Findings = found.AddRange(planned.Findings) };
        // Files come before words: a full screen or a closed one must not cost a result. That no layout is possible is a result too,
        // with a picture of where; a search cut short before it came to anything is none.
        Func<int>? said = null;
        if (outFolder is not null && (result.Layout is not null || !result.Interrupted))
        {
            var files = Results.Files(result, output.Card);
            var gone = PlanFiles.OutOfDate(outFolder, files.Select(f => f.Name), mark: null);
            var refusal = OutputFolder.Write(outFolder, files, gone);
            said = () => refusal is null ? terminal.Told(outFolder, files, gone) : terminal.Refuse([refusal]);
        }

        terminal.Print(result.Findings.Where(f => f.Severity == Severity.Note));
        terminal.Out.Write(Results.Summary(result) + (output.Explains ? HoldingWords.Explained(result) : ""));
        if (result.Layout is null && result.Findings.Any(f => f.Severity == Severity.Refused))
        {
            terminal.Refuse(result.Findings.Where(f => f.Severity == Severity.Refused));
        }

        var written = said?.Invoke() ?? ExitCodes.LayoutFound;
        return written == ExitCodes.LayoutFound ? ExitCodes.Of(result, cancellation.IsCancellationRequested) : written;
    }

    private static Finding Taken(string words) => new(
        "way-out-taken", Severity.Mended, FindingKind.Request, $"planned with a change of the job: {words}.", null, "Write it into the job or the shop, so that the next plan knows of it.");

    private static Finding NoSuchWay(int asked, int count) => new(
        "no-such-way-out", Severity.Refused, FindingKind.Request,
        string.Create(CultureInfo.InvariantCulture, $"found {asked}; {(count == 0 ? "of what was tried nothing leaves less unsupported" : $"expected a number from 1 to {count}")}."),
        new Place.InOption("--take"), count == 0 ? "Leave it out." : "Give the number of one of the ways out above.");

    /// <summary>Where results go; a folder of null for the terminal alone, a card of null for none; whether assumptions are printed; and which way out is the plan (0: none, -1: none is tried).</summary>
    private sealed record Output(string? Folder, CardOptions? Card, bool Explains, int Way);
}
