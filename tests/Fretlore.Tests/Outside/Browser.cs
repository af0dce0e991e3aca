using System.Net;
using System.Text.RegularExpressions;

namespace Fretlore.Tests.Outside;

/// <summary>Chromium without a window: what it makes of a page.</summary>
internal static partial class Browser
{
    /// <summary>Opens a page and returns the text of its element with the id <c>out</c> after a time of the page's own clock.</summary>
    public static string Read(string html, int milliseconds = 5000, string hash = "")
    {
        var folder = Directory.CreateTempSubdirectory("fretlore-page-").FullName;
        try
        {
            var page = Path.Combine(folder, "page.html");
            File.WriteAllText(page, html);
            var document = OutsideProgram.Run("chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync", "--window-size=1280,720", "--user-data-dir=" + Path.Combine(folder, "profile"),
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"--virtual-time-budget={milliseconds}"), "--dump-dom", new Uri(page) + hash);
            var found = Out().Match(document);
            Assert.True(found.Success, "The page has no element called out:\n" + document);
            return WebUtility.HtmlDecode(found.Groups[1].Value);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [GeneratedRegex("<pre id=\"out\">(.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Out();
}
