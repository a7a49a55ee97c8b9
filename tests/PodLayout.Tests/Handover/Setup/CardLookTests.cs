namespace PodLayout.Tests.Handover.Setup;

/// <summary>Cards to look at: with PODLAYOUT_SHOW=FOLDER every card of these tests is written there.</summary>
public class CardLookTests
{
    [Fact]
    public void The_same_card_is_the_same_bytes_and_the_page_stays_small()
    {
        var folder = Environment.GetEnvironmentVariable("PODLAYOUT_SHOW");
        foreach (var (name, plan) in Cards.Names.Select(n => (n, Cards.Plan(n))).Concat(CrowdedCards.Names.Select(n => (n, CrowdedCards.Plan(n)))))
        {
            var files = PodLayout.Handover.Setup.CardFiles.Of(plan, Cards.Options, PodLayout.Handover.Setup.LayoutDoubts.None);
            var again = PodLayout.Handover.Setup.CardFiles.Of(plan, Cards.Options, PodLayout.Handover.Setup.LayoutDoubts.None);
            Assert.Equal(files.Select(f => Convert.ToHexString(f.Content)), again.Select(f => Convert.ToHexString(f.Content)));
            Assert.True(files.Single(f => f.Name == "card.html").Content.Length < 500_000, name);
            if (folder is not null)
            {
                Directory.CreateDirectory(Path.Combine(folder, name));
                File.WriteAllText(Path.Combine(folder, name, "layout.json"), PodLayout.Handover.LayoutJson.Write(plan));
                foreach (var (file, content) in files)
                {
                    File.WriteAllBytes(Path.Combine(folder, name, file), content);
                }
            }
        }
    }
}
