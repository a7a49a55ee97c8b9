using System.Collections.Immutable;
using PodLayout.Handover.Setup;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Cards of blocks at random. Every word of theirs says where it belongs, as "b12w3": word 3 of block 12.</summary>
internal static class RandomCards
{
    public static SetupCard Of(Random random)
    {
        var count = 0;
        string Words(int most) => string.Join(' ', Enumerable.Range(0, 1 + random.Next(most)).Select(w => $"b{count}w{w}"));
        CardBlock Block()
        {
            count++;
            switch (random.Next(8))
            {
                case 0 or 1:
                    return new CardBlock.Words(Words(60), random.Next(3) == 0);
                case 2:
                    return new CardBlock.Words(Words(random.Next(12) == 0 ? 3000 : 200), random.Next(3) == 0);
                case 3:
                    return new CardBlock.Facts([.. Enumerable.Range(0, 1 + random.Next(14)).Select(r => ($"b{count}r{r}", random.Next(4) == 0 ? "" : Words(30)))]);
                case 4:
                    return new CardBlock.Steps([.. Enumerable.Range(0, 1 + random.Next(12)).Select(r => ($"S{r}", $"b{count}r{r} " + Words(25)))]);
                case 5:
                    return new CardBlock.Lines([.. Enumerable.Range(0, 1 + random.Next(5)).Select(r => $"b{count}r{r}")]);
                default:
                    var columns = 1 + random.Next(7);
                    var tallest = random.Next(4) == 0 ? 40 : 3;
                    return new CardBlock.Table(
                        "", random.Next(2) == 0 ? $"b{count}t" : null, [.. Enumerable.Range(0, columns).Select(c => $"b{count}h{c}")],
                        [
                            .. Enumerable.Range(0, 1 + random.Next(random.Next(3) == 0 ? 80 : 12)).Select(r => new CardRow(
                                $"R{r}", [.. Enumerable.Range(0, columns).Select(c => c == 0 ? $"b{count}r{r}" : Words(tallest))])),
                        ]);
            }
        }

        var head = new CardBlock.Facts([("Wood", "ash"), ("Face", "up")]);
        return new(
            "Title", ["Edition"], head, [], new(null, []),
            [
                .. Enumerable.Range(0, 1 + random.Next(9)).Select(s => new CardSection(
                    $"s{s}", $"head{s}", [.. Enumerable.Range(0, 1 + random.Next(5)).Select(_ => Block())])),
            ],
            new([], []));
    }

    /// <summary>A card of these blocks alone.</summary>
    public static SetupCard Alone(ImmutableArray<CardBlock> blocks) => new(
        "Title", ["Edition"], new([]), [], new(null, []), [new("s", "head", blocks)], new([], []));

    /// <summary>All words of a block, in the order in which they are printed; a tick's heading first.</summary>
    public static ImmutableArray<string> Words(CardBlock block) =>
    [
        .. (block switch
        {
            CardBlock.Words words => [words.Text],
            CardBlock.Facts facts => facts.Rows.SelectMany(r => new[] { r.Name, r.Value }),
            CardBlock.Steps steps => steps.Items.Select(i => i.Text),
            CardBlock.Lines lines => lines.Names,
            CardBlock.Table table => table.Rows.SelectMany(r => r.Cells),
            _ => throw new ArgumentOutOfRangeException(nameof(block)),
        }).SelectMany(t => t.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
    ];
}
