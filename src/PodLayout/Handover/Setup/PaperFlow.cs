namespace PodLayout.Handover.Setup;

/// <summary>
/// Fills pages with runs. What fits on a page is not parted; of what is longer two pieces at least stand on each side; what leads to
/// something (a heading, the words above a table) stands with all of it where one page has room for both, else with its beginning.
/// </summary>
internal static class PaperFlow
{
    // Sums of heights are taken in different orders, mm.
    private const double RoundingMm = 1e-6;

    // The last runs stand together as far as they are no taller than this, so that the last page is not one of a line, mm.
    private const double TailMm = 45;

    public static void Fill(PaperDraft draft, IReadOnlyList<PaperRun> runs)
    {
        List<List<PaperRun>> bundles = [[]];
        foreach (var run in runs)
        {
            bundles[^1].Add(run);
            if (!run.LeadsOn)
            {
                bundles.Add([]);
            }
        }

        bundles.RemoveAll(b => b.Count == 0);
        while (bundles.Count > 1 && Height([.. bundles[^2], .. bundles[^1]]) <= TailMm)
        {
            bundles[^2].AddRange(bundles[^1]);
            bundles.RemoveAt(bundles.Count - 1);
        }

        foreach (var bundle in bundles)
        {
            Bundle(draft, bundle);
        }
    }

    private static double Height(IReadOnlyList<PaperRun> runs) => runs.Sum(r => r.HeightMm + r.GapMm) - runs[^1].GapMm;

    private static void Bundle(PaperDraft draft, List<PaperRun> runs)
    {
        var whole = Height(runs);
        if (whole <= draft.FullRoom)
        {
            draft.Need(whole - RoundingMm);
        }

        var (isOnTop, begun) = (false, -1);
        for (var i = 0; i < runs.Count; i++)
        {
            // What has been seen to with the run that leads to it is not taken to another page.
            if (whole > draft.FullRoom && i > begun)
            {
                (var least, begun) = Beginning(runs, i, draft.Room, draft.FullRoom);
                draft.Need(least - RoundingMm);
            }

            isOnTop = draft.Room >= draft.FullRoom || (i > 0 && isOnTop);
            isOnTop &= Run(draft, runs[i], isOnTop);
            draft.Down(runs[i].GapMm);
        }
    }

    // With the beginning of what it leads to, and of what that leads to, as far as a page has room for them; and the last of those.
    // Where a page has no room for all of that, its first pieces stand under what leads to it: on a page of its own it would leave
    // the one before nearly empty.
    private static (double Mm, int Last) Beginning(List<PaperRun> runs, int index, double roomMm, double pageMm)
    {
        var least = runs[index].BeginningMm(pageMm);
        if (index > 0 && least > roomMm)
        {
            return (runs[index].LeastMm(pageMm), index);
        }

        var next = index + 1;
        for (; next < runs.Count && runs[next - 1].HeightMm <= pageMm; next++)
        {
            var (run, before) = (runs[next], least + runs[next - 1].GapMm);
            if (before + run.BeginningMm(pageMm) > pageMm)
            {
                return before + run.LeastMm(pageMm) <= pageMm ? (before + run.LeastMm(pageMm), next)
                    // A whole page has room for at least one piece of it: better than none.
                    : before + run.HeadMm + run.Pieces[0].HeightMm <= pageMm ? (pageMm, next) : (least, next - 1);
            }

            least = before + run.BeginningMm(pageMm);
        }

        return (least, next - 1);
    }

    // Whether all of it stands on the page that it began on.
    private static bool Run(PaperDraft draft, PaperRun run, bool isOnTop)
    {
        var pages = draft.Count;
        for (var next = 0; next < run.Pieces.Length;)
        {
            var count = Fitting(draft, run, next, isOnTop || draft.Room >= draft.FullRoom);
            if (count == 0 && draft.NewPage())
            {
                continue;
            }

            if (run.Head is { } head)
            {
                Draw(draft, head);
            }

            // A single piece that is taller than a page stands alone on one.
            for (var end = next + Math.Max(1, count); next < end; next++)
            {
                Draw(draft, run.Pieces[next]);
            }

            isOnTop = false;
        }

        return draft.Count == pages;
    }

    // How many of the pieces from the next one on stand on this page: none where too few would while another page has room for
    // more, and not all but too few.
    private static int Fitting(PaperDraft draft, PaperRun run, int next, bool isOnTop)
    {
        var (count, room, left) = (0, draft.Room - run.HeadMm + RoundingMm, run.Pieces.Length - next);
        for (; count < left && run.Pieces[next + count].HeightMm <= room; count++)
        {
            room -= run.Pieces[next + count].HeightMm;
        }

        if (count == left)
        {
            return count;
        }

        var together = run.TogetherFrom(next, draft.FullRoom);
        var kept = Math.Min(count, left - together);
        return kept >= together ? kept : isOnTop ? count : 0;
    }

    private static void Draw(PaperDraft draft, PaperPiece piece)
    {
        piece.Draw(draft);
        draft.Down(piece.HeightMm);
    }
}
