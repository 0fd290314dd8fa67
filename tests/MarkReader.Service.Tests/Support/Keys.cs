using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace MarkReader.Service.Tests.Support;

/// <summary>A page operated by keyboard alone: Tab, Enter, Space, arrows and typing. Whatever gets the focus on the way must show it, in view.</summary>
internal sealed class Keys
{
    private const int Most = 250;

    /// <summary>What has the focus, by id, by name and in words; and what is wrong with how it is shown.</summary>
    private const string Focus =
        """
        () => {
          const at = document.activeElement;
          if (at === document.body) return ['', '', '', ''];
          const words = (at.labels?.[0] ?? at).textContent.trim().replace(/\s+/g, ' ');
          const ring = at.matches('.unseen, .choice input') ? at.closest('label') : at;
          const style = getComputedStyle(ring), box = ring.getBoundingClientRect();
          let wrong = '';
          if (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2) wrong = 'the focus is not seen';
          const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
          if (box.bottom <= 0 || box.top >= innerHeight) wrong = 'out of view';
          else if (y > 0 && y < innerHeight) {
            const over = document.elementFromPoint(x, y);
            if (over && !ring.contains(over) && !over.contains(ring) && !over.closest('label')?.contains(ring)) wrong = `under ${over.outerHTML.slice(0, 80)}`;
          }
          return [at.id, at.name ?? '', words, wrong];
        }
        """;

    private readonly IPage _page;
    private TaskCompletionSource<IFileChooser> _chooser = new();

    public Keys(IPage page)
    {
        _page = page;
        // From the start: when it is asked for with the key press, the browser may be quicker with a dialog of its own.
        page.FileChooser += (_, chooser) => _chooser.TrySetResult(chooser);
    }

    /// <summary>Tabs on from where the focus is.</summary>
    /// <param name="wanted">An id, a name, or all the words of a control; the first of them when it ends with "…".</param>
    public async Task ReachAsync(string wanted)
    {
        List<string> met = [];
        await _page.WaitForLoadStateAsync();
        for (int step = 0; step < Most; step++)
        {
            await _page.Keyboard.PressAsync("Tab");
            string[] at = await _page.EvaluateAsync<string[]>(Focus);
            Assert.True(at[3].Length == 0, $"{at[0]} {at[2]}: {at[3]}");
            if (wanted.EndsWith('…') ? at[2].StartsWith(wanted[..^1], StringComparison.Ordinal) : Array.IndexOf(at, wanted, 0, 3) >= 0)
                return;
            met.Add(at[0].Length > 0 ? at[0] : at[2]);
        }

        Assert.Fail($"'{wanted}' is not reached by Tab; these are: {string.Join(", ", met.Distinct())}");
    }

    public async Task PressAsync(string wanted, string key = "Enter")
    {
        await ReachAsync(wanted);
        await _page.Keyboard.PressAsync(key);
    }

    /// <summary>Presses what leads to another _page.</summary>
    public async Task FollowAsync(string wanted)
    {
        await ReachAsync(wanted);
        TaskCompletionSource loaded = new(TaskCreationOptions.RunContinuationsAsynchronously);
        void Loaded(object? sender, IPage there) => loaded.TrySetResult();
        _page.Load += Loaded;
        await _page.Keyboard.PressAsync("Enter");
        await loaded.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        _page.Load -= Loaded;
    }

    /// <summary>Types over what stands in a field.</summary>
    public async Task TypeAsync(string field, string text)
    {
        await ReachAsync(field);
        await _page.Keyboard.PressAsync("Control+a");
        await _page.Keyboard.TypeAsync(text);
    }

    /// <summary>Opens the chooser of a field for files.</summary>
    public async Task ChooseAsync(string field, FilePayload file)
    {
        await ReachAsync(field);
        _chooser = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await _page.Keyboard.PressAsync("Enter");
        IFileChooser chooser = await _chooser.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        await chooser.SetFilesAsync(file);
    }

    public async Task<FilePayload> DownloadAsync(string link)
    {
        await ReachAsync(link);
        IDownload download = await _page.RunAndWaitForDownloadAsync(() => _page.Keyboard.PressAsync("Enter"));
        return new() { Name = download.SuggestedFilename, MimeType = "application/octet-stream", Buffer = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken) };
    }

    public Task ShouldBeAtAsync(string heading) => Expect(_page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(heading);
}
