using Microsoft.Playwright;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>
/// Debian's Chromium, driven by Playwright. A test that needs it is skipped, with the reason, where it is not installed; the checks
/// of the repository install it.
/// </summary>
internal sealed class Browser : IAsyncDisposable
{
    private const string Chromium = "/usr/bin/chromium";

    private readonly IPlaywright playwright;
    private readonly string profile;

    private Browser(IPlaywright playwright, IBrowserContext context, string profile)
    {
        this.playwright = playwright;
        this.profile = profile;
        Context = context;
    }

    public IBrowserContext Context { get; }

    /// <summary>What the pages of this browser asked for beside their own file, and what they said on the console.</summary>
    public List<string> Complaints { get; } = [];

    public static async Task<Browser> Start(int width, int height, ColorScheme scheme = ColorScheme.Light, bool hasTouch = false)
    {
        Assert.SkipUnless(File.Exists(Chromium), $"{Chromium} is not installed.");
        var playwright = await Playwright.CreateAsync();
        var profile = Directory.CreateTempSubdirectory("podlayout-browser-").FullName;
        var context = await playwright.Chromium.LaunchPersistentContextAsync(profile, new()
        {
            ExecutablePath = Chromium,
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = scheme,
            HasTouch = hasTouch,
        });
        return new(playwright, context, profile);
    }

    /// <summary>Opens a file, and listens.</summary>
    public async Task<IPage> Open(string file)
    {
        var page = await Context.NewPageAsync();
        var address = new Uri(file).AbsoluteUri;
        page.Request += (_, r) => Note(r.Url.Split('#')[0] == address, "asked for " + r.Url);
        page.Console += (_, m) => Note(m.Type is not ("error" or "warning"), "said " + m.Text);
        page.PageError += (_, e) => Note(false, "failed: " + e);
        await page.GotoAsync(address);
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await Context.CloseAsync();
        playwright.Dispose();
        Directory.Delete(profile, recursive: true);
    }

    private void Note(bool isFine, string what)
    {
        if (!isFine)
        {
            Complaints.Add(what);
        }
    }
}
