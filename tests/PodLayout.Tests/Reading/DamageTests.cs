using System.Text;
using PodLayout.Findings;

namespace PodLayout.Tests.Reading;

public class DamageTests
{
    private static readonly string[] Names = ["slot-R2010-binary", "blocks-R12-binary", "blocks-R2000", "splines-R2010", "loose-R12", "fit-R2000"];

    [Fact]
    public void Damaged_bytes_never_lead_to_an_exception_nor_to_a_refusal_without_a_remedy()
    {
        var random = new Random(4711);
        foreach (var name in Names)
        {
            var whole = Drawings.Ezdxf(name);
            for (var round = 0; round < 60; round++)
            {
                var bytes = (byte[])whole.Clone();
                for (var hits = random.Next(1, 12); hits > 0; hits--)
                    bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
                AssertHandled(bytes);
            }
        }
    }

    [Fact]
    public void Swapped_and_dropped_groups_never_lead_to_an_exception()
    {
        var random = new Random(815);
        string[] values = ["0", "-1", "1e300", "-1e-300", "2147483648", "NaN", "", "LINE", "ENDSEC", "7,5", "1e7"];
        foreach (var name in Names.Where(n => !n.Contains("binary")))
        {
            var lines = Encoding.Latin1.GetString(Drawings.Ezdxf(name)).Split('\n');
            var entities = Array.FindIndex(lines, l => l.Trim() == "ENTITIES");
            for (var round = 0; round < 150; round++)
            {
                var text = lines.ToList();
                for (var hits = random.Next(1, 6); hits > 0; hits--)
                {
                    var at = entities + 1 + 2 * random.Next(Math.Min(150, (text.Count - entities) / 2 - 2));
                    if (random.Next(3) == 0)
                        text.RemoveRange(at, 2);
                    else
                        text[at + 1] = values[random.Next(values.Length)];
                }

                AssertHandled(Encoding.Latin1.GetBytes(string.Join('\n', text)));
            }
        }
    }

    [Fact]
    public void Damaged_SVG_never_leads_to_an_exception()
    {
        const string Whole = "<svg width='400mm' height='300mm' viewBox='0 0 400 300'><g id='a' transform='rotate(30 5 5) scale(2,3)'><path d='M0 0C40 0 80 40 80 80S40 160 0 160a5 6 7 0 1 8 9z'/><rect x='5' width='50' height='40' rx='2'/></g><use href='#a' x='20'/></svg>";
        var random = new Random(42);
        for (var round = 0; round < 600; round++)
        {
            var text = Whole.ToCharArray();
            for (var hits = random.Next(1, 5); hits > 0; hits--)
                text[random.Next(20, text.Length)] = Whole[random.Next(Whole.Length)];
            AssertHandled(Encoding.UTF8.GetBytes(text));
        }
    }

    private static void AssertHandled(byte[] bytes)
    {
        var outcome = Drawings.Part(bytes);
        Assert.All(outcome.Findings.Where(f => f.Severity == Severity.Refused), f => Assert.False(string.IsNullOrEmpty(f.Remedy)));
        if (outcome.Succeeded)
            Assert.All(outcome.Value.Holes.Prepend(outcome.Value.Outline), r => Assert.True(r.SignedAreaMm2 > 0));
    }
}
