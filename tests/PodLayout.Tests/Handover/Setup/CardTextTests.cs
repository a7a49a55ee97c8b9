using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PodLayout.Findings;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Holding;
using PodLayout.Reading;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Text from the user stays text in every output.</summary>
public class CardTextTests
{
    [Fact]
    public void No_name_becomes_markup_or_a_script_on_the_page()
    {
        var page = Cards.Text(Cards.Plan("hostile"), "card.html");
        Assert.Single(Regex.Matches(page, "<script"));
        Assert.Single(Regex.Matches(page, "</script"));
        Assert.Single(Regex.Matches(page, "</style"));
        Assert.DoesNotContain("<b>", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain('\u202E', page);
        Assert.DoesNotContain('\u0001', page);
        Assert.Contains("&lt;b&gt;&quot;Tisch&quot; &amp; &#39;Stuhl&#39;", page, StringComparison.Ordinal);
        Assert.Contains("\U0001FA91", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_row_says_of_its_fault_stands_where_it_says_on_paper_and_on_the_screen()
    {
        LayoutDoubts doubts = new(true, ["off the lattice"], ["It is off."], ["P2 (its seal is cut)"]) { Faults = [new(0, Counts: true), new(1, Counts: false)] };
        var page = Encoding.UTF8.GetString(CardFiles.Of(HandMade.Ell(), Cards.Options, doubts).Single(f => f.Name == "card.html").Content);
        var rows = PageTables.Rows(page, "Pods in placing order").ToDictionary(r => r["Pod"], r => r["Fault"]);
        Assert.Equal(("breaks a rule: see section 7", "does not hold: see section 7"), (rows["P1"], rows["P2"]));
        var section = Regex.Match(page, @"<h2[^>]*>7\. .*?</section>", RegexOptions.Singleline).Value;
        Assert.Contains("off the lattice", section, StringComparison.Ordinal);
        Assert.Contains("P2 (its seal is cut)", section, StringComparison.Ordinal);
    }

    [Fact]
    public void What_pins_and_stops_were_looked_at_is_said()
    {
        var page = Cards.Text(HandMade.Ell(), "card.html");
        Assert.Contains("None of the pins and stops among the obstacles of the shop file lies within 60 mm of the part.", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("oval")]
    [InlineData("inches")]
    [InlineData("washed")]
    public void Short_headings_stand_on_one_line_in_print_and_cells_are_apart(string name)
    {
        var unit = name == "inches" ? "in" : "mm";
        var file = Cards.File(Cards.Plan(name), "card.pdf");
        var heads = PaperText.Lines(file).Select(l => l.Select(c => c.Replace('\u00a0', ' ')).ToList()).Where(l => l.Contains("Column") && l.Contains("Row")).ToList();
        Assert.True(heads.Count >= 2);
        Assert.All(heads.Where(h => !h.Contains("It becomes")), h => Assert.True(h.Contains($"X {unit}") && h.Contains($"Y {unit}"), string.Join('|', h)));
        using var document = UglyToad.PdfPig.PdfDocument.Open(file);
        foreach (var page in document.GetPages().Skip(1))
        {
            // A space is 1.3 mm wide in tables: between cells there is at least twice as much, 7 points of 1/72 in.
            foreach (var turn in page.GetWords().Where(w => w.Text is "-" or "turned").ToList())
            {
                var row = page.GetWords().Where(w => Math.Abs(w.Letters[0].StartBaseLine.Y - turn.Letters[0].StartBaseLine.Y) < 0.5 && w != turn).ToList();
                if (!row.Exists(w => Regex.IsMatch(w.Text, "^P[0-9]+$")))
                {
                    continue;
                }

                Assert.DoesNotContain(row, w => w.BoundingBox.Right < turn.BoundingBox.Left && turn.BoundingBox.Left - w.BoundingBox.Right < 7);
                Assert.DoesNotContain(row, w => w.BoundingBox.Left > turn.BoundingBox.Right && w.BoundingBox.Left - turn.BoundingBox.Right < 7);
            }
        }
    }

    [Fact]
    public void The_pictures_on_the_page_are_well_formed_whatever_the_names()
    {
        var page = Cards.Text(Cards.Plan("hostile"), "card.html");
        var pictures = Regex.Matches(page, "<svg.*?</svg>", RegexOptions.Singleline);
        Assert.Equal(3, pictures.Count);
        foreach (Match picture in pictures)
        {
            var root = XDocument.Parse(picture.Value).Root!;
            Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "script" or "b");
        }
    }

    [Fact]
    public void Print_and_drawing_are_read_by_others_whatever_the_names()
    {
        var plan = Cards.Plan("hostile");
        var words = PaperText.All(Cards.File(plan, "card.pdf"));
        Assert.Contains("<b>\"Tisch\"", words, StringComparison.Ordinal);
        Assert.Contains("\U0001FA91", words, StringComparison.Ordinal);

        // Right-to-left words stand on the page from right to left; each letter is still known.
        Assert.Contains("\u05df\u05d7\u05dc\u05d5\u05e9", words, StringComparison.Ordinal);
        Assert.Contains("\u0629\u0644\u0648\u0627\u0637", words, StringComparison.Ordinal);
        var read = Ezdxf.Read(Cards.Text(plan, "layout.dxf"), "Handover", "Setup", "layout_back.py");
        Assert.Equal((0, 0), ((int)read["errors"]!, (int)read["fixes"]!));
        Assert.True(DrawingReader.Read("layout.dxf", Cards.File(plan, "layout.dxf"), ReadingOptions.Default).Succeeded);
    }

    [Theory]
    [InlineData("pods.csv")]
    [InlineData("ports.csv")]
    public void No_cell_of_a_table_starts_a_formula(string file)
    {
        foreach (var start in new[] { "=1+1", "+1", "-1", "@x", "\t=1", ";=1", "\uff1d1", " =1", "\"=1", "\r\n=1" })
        {
            var text = Cards.Text(Cards.Renamed(HandMade.Ell(), start), file);

            // Whatever a spreadsheet takes for the end of a cell: no cell begins with a sign, but for numbers.
            foreach (var cell in Regex.Split(text, "[,;\t\r\n]"))
            {
                var plain = cell.Trim(' ', '"', '\u00a0');
                Assert.False(plain.Length > 0 && "=+-@\uff1d".Contains(plain[0], StringComparison.Ordinal) && !double.TryParse(plain, out _), cell);
            }
        }
    }

    [Fact]
    public void No_output_calls_anything_safe()
    {
        foreach (var name in Cards.Names)
        {
            var plan = Cards.Plan(name);
            Assert.DoesNotMatch("(?i)\\b(un)?safe", Regex.Replace(Cards.Text(plan, "card.html"), "<style>.*?</style>|<script>.*?</script>", "", RegexOptions.Singleline));
            Assert.DoesNotContain("safe", PaperText.All(Cards.File(plan, "card.pdf")), StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void What_is_not_computed_and_not_given_is_said_to_be_so()
    {
        var page = Cards.Text(Cards.Plan("oval"), "card.html", new CardOptions());
        Assert.Contains("<dt>Holding factor</dt><dd><bdi>not computed</bdi></dd>", page, StringComparison.Ordinal);
        Assert.Contains("<dt>Gauge reading to reach before the spindle starts</dt><dd><bdi>not computed</bdi></dd>", page, StringComparison.Ordinal);
        Assert.Contains("not stated: ask the programmer, write here: ____", page, StringComparison.Ordinal);
        Assert.Contains("none named in the job", page, StringComparison.Ordinal);
        Assert.Contains("The job states no blank: which pieces come loose is not known here.", page, StringComparison.Ordinal);
        Assert.Contains("the shop&#39;s own gauge reading, written in section 7, is reached", page, StringComparison.Ordinal);
        Assert.Contains("names no zones of the table", page, StringComparison.Ordinal);
        Assert.Contains("Revision: ________", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_now_is_taken_up_moved_set_down_plugged_and_opened()
    {
        var page = Cards.Text(Cards.Plan("standing"), "card.html");
        var up = PageTables.Rows(page, "Pods to take up");

        // Two of five stay; the third square one goes to the nearest place of its type, the small one to the only one.
        Assert.Equal(["120x120", "60x60", "round 120"], up.Select(r => r["Take up"]));
        Assert.Equal(["P3", "P7", "nothing: to the shelf"], up.Select(r => r["It becomes"]));
        Assert.Equal(["1-1"], PageTables.Rows(page, "Ports to plug").Select(r => r["Plug port"]));
        var now = PageTables.Rows(page, "Pods in placing order").ToDictionary(r => r["Pod"], r => r["Now"]);
        Assert.Equal(("stays", "stays", "from column 4, row 4", "set down", "from column 31, row 17"), (now["P1"], now["P2"], now["P3"], now["P4"], now["P7"]));
        var ports = PageTables.Rows(page, "Ports to open").ToDictionary(r => r["Port"], r => r["Now"]);
        Assert.Equal(("open already", "open"), (ports["5-2"], ports["7-2"]));
        var valves = PageTables.Rows(page, "Valves of the table's zones").ToDictionary(r => r["Zone"], r => r["Valve"]);
        Assert.Equal(("OPEN", "OPEN", "closed"), (valves["left zone"], valves["right zone"], valves["store"]));
    }

    [Fact]
    public void Heights_and_work_offset_follow_from_pods_part_and_program()
    {
        // Pods of 100 mm, part of 32 mm, zero on the part's face; the program's zero (-300, -200) in the drawing whose zero lies at (600, 300).
        var page = Cards.Text(Cards.Plan("standing"), "card.html");
        foreach (var fact in new[]
        {
            "<dt>Pod face over the board&#39;s face</dt><dd><bdi>100 mm", "<dt>Part&#39;s upper face over the board&#39;s face</dt><dd><bdi>132 mm",
            "<dt>Program&#39;s X and Y zero, from the datum</dt><dd><bdi>X 300, Y 100 mm", "<dt>Z of the part&#39;s upper face</dt><dd><bdi>0 mm",
            "<dt>Z of the pod face</dt><dd><bdi>-32 mm", "<dt>Z of the board&#39;s face</dt><dd><bdi>-132 mm",
        })
        {
            Assert.Contains(fact, page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Rules_that_are_broken_stand_at_the_head_of_page_and_print()
    {
        var files = CardFiles.Of(HandMade.Ell(), Cards.Options, Broken("P1 reaches over the edge.")).ToDictionary(f => f.Name, f => f.Content);
        Assert.Contains("<p><bdi>Breach: P1 reaches over the edge.</bdi></p>", Encoding.UTF8.GetString(files["card.html"]), StringComparison.Ordinal);
        var many = CardFiles.Of(HandMade.Ell(), Cards.Options, Broken([.. Enumerable.Range(0, 200).Select(i => $"Rule {i} is broken by a long way and at many places of the part.")])).ToDictionary(f => f.Name, f => f.Content);
        Assert.Contains("And 190 more", Encoding.UTF8.GetString(many["card.html"]), StringComparison.Ordinal);
        Assert.Contains(PaperText.Lines(files["card.pdf"]), l => string.Concat(l).StartsWith("Breach: P1", StringComparison.Ordinal));
    }

    [Fact]
    public void Ports_are_opened_before_the_pods_that_cover_them_are_set()
    {
        var page = Cards.Text(Cards.Plan("standing"), "card.html");
        Assert.True(page.IndexOf("2. <bdi>Open the ports", StringComparison.Ordinal) is > 0 and var ports && ports < page.IndexOf("3. <bdi>Set the pods", StringComparison.Ordinal));
        Assert.Contains("8. <bdi>Offcuts and warnings", page, StringComparison.Ordinal);
        Assert.Contains("<span class=\"whole\">9-2</span> cannot be plugged: tape or cover it.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void No_two_words_of_a_table_overlap_in_print()
    {
        foreach (var name in Cards.Names.Where(n => n != "hostile"))
        {
            using var document = UglyToad.PdfPig.PdfDocument.Open(Cards.File(Cards.Plan(name), "card.pdf"));
            foreach (var page in document.GetPages().Skip(1))
            {
                foreach (var line in page.Letters.GroupBy(l => Math.Round(l.StartBaseLine.Y, 1)))
                {
                    var letters = line.OrderBy(l => l.StartBaseLine.X).ToList();
                    for (var i = 1; i < letters.Count; i++)
                    {
                        // Points: letters of one word touch, of two cells they are well apart.
                        Assert.True(letters[i].StartBaseLine.X >= letters[i - 1].EndBaseLine.X - 0.5, $"{name} page {page.Number}: {string.Concat(letters.Select(l => l.Value))}");
                    }
                }
            }

            Assert.DoesNotContain(PaperText.Lines(Cards.File(Cards.Plan(name), "card.pdf")).SelectMany(l => l), w => w.Contains("Pluggedport", StringComparison.Ordinal));
        }
    }

    private static LayoutDoubts Broken(params string[] breaches) => new(true, ["clear of obstacles (P1)"], [.. breaches], []);

    [Fact]
    public void What_must_be_known_first_stands_at_the_head_and_what_it_rests_on_at_the_end()
    {
        // 1 inHg is 3.386389 kPa (NIST Special Publication 811, appendix B.8): 70 kPa are 20.67 inHg.
        var plan = HandMade.Ell();
        plan = plan with
        {
            Findings = [new("wood-unknown", Severity.Warning, FindingKind.Request, "the wood is not known.", null)],
            Layout = plan.Layout! with
            {
                Holding = new(3.2, 2, 1.5, null, null, [.. plan.Layout.Pods.Select(_ => new PodHold(70, 500, 1, 2.5))], 70, 101.3, 50, 40, ["Beech of 717 kg/m3."]),
            },
        };
        var page = Cards.Text(plan, "card.html");
        var head = page[page.IndexOf("<header>", StringComparison.Ordinal)..page.IndexOf("</header>", StringComparison.Ordinal)];
        Assert.Contains("<bdi>at least 70 kPa (20.7 inHg)</bdi>", head, StringComparison.Ordinal);
        Assert.Contains("<bdi>3.2 (target 2, least 1.5)</bdi>", head, StringComparison.Ordinal);
        Assert.Contains("its centre of mass lies 50 mm inside them", page, StringComparison.Ordinal);
        Assert.Contains("1 warning stands in section 8: read before setting up.", head, StringComparison.Ordinal);
        Assert.True(page.IndexOf("Beech of 717", StringComparison.Ordinal) > page.IndexOf("Checked by", StringComparison.Ordinal));
        Assert.Contains("<bdi>at least 20.7 inHg (70 kPa)</bdi>", Cards.Text(plan, "card.html", Cards.Options with { InInches = true }), StringComparison.Ordinal);
        var print = PaperText.Lines(Cards.File(plan, "card.pdf")).Select(l => string.Concat(l)).Take(90).ToList();
        Assert.Contains(print, l => l.Contains("at least 70", StringComparison.Ordinal));
        Assert.Contains(print, l => Regex.IsMatch(l, "1 warning stands in section 8 on page [3-9]: read"));
    }

    [Fact]
    public void Sections_stand_in_their_order_so_that_what_is_said_of_them_elsewhere_finds_them()
    {
        foreach (var name in Cards.Names)
        {
            var card = SetupCard.Of(Cards.Plan(name), Cards.Options, LayoutDoubts.None);
            Assert.Equal(CardSection.Order, card.Sections.Select(s => s.Id));
        }

        Assert.Equal("section 7", CardSection.Named(CardSection.Holding));
    }

    [Theory]
    [InlineData(true, 215.9, 279.4)]
    [InlineData(false, 210, 297)]
    public void Pages_have_the_size_of_the_paper_and_nothing_lies_off_them(bool isLetter, double width, double height)
    {
        var options = Cards.Options with { Paper = isLetter ? PaperSize.Letter : PaperSize.A4 };
        foreach (var name in Cards.Names)
        {
            using var document = UglyToad.PdfPig.PdfDocument.Open(Cards.File(Cards.Plan(name), "card.pdf", options));
            var number = 0;
            foreach (var page in document.GetPages())
            {
                double[] sides = [page.Width / 72 * 25.4, page.Height / 72 * 25.4];
                Assert.Equal(width, sides.Min(), 1e-3);
                Assert.Equal(height, sides.Max(), 1e-3);
                Assert.All(page.Letters, l => Assert.True(
                    l.StartBaseLine.X >= 0 && l.EndBaseLine.X <= page.Width && l.StartBaseLine.Y >= 0 && l.StartBaseLine.Y <= page.Height, $"{name}: {l.Value}"));
                Assert.Contains($"page {++number} of {document.NumberOfPages}", string.Concat(page.Letters.Select(l => l.Value)), StringComparison.Ordinal);
            }
        }
    }
}
