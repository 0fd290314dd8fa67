using System.Text.Json;
using MarkReader.Guide.Playing;
using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide.Pictures;

/// <summary>Takes pictures of parts of pages.</summary>
internal static class Camera
{
    // Long parts, and those with a table that scrolls sideways, end before it where nothing is cut through.
    private const string Frame =
        """
        async (panel, from) => {
          await document.fonts.ready;
          const margin = 8, most = 860;
          const box = panel.getBoundingClientRect(), top = from === null ? box.top : from - margin;
          const left = Math.max(0, box.left - margin), right = Math.min(box.right + margin, document.documentElement.clientWidth);
          const leaves = [...panel.querySelectorAll('h1, h2, h3, p, li, dt, dd, th, td, summary, button, label, img, svg')]
            .map((e) => ({ ends: !e.matches('h1, h2, h3'), box: e.getBoundingClientRect(), seen: e.checkVisibility() })).filter((leaf) => leaf.seen && leaf.box.height > 1);
          const limit = Math.min(top + most, ...leaves.filter((leaf) => leaf.box.right > right + 1).map((leaf) => leaf.box.top));
          let bottom = box.bottom + margin;
          if (bottom > limit) {
            const ends = leaves.filter((leaf) => leaf.ends).map((leaf) => leaf.box.bottom)
              .filter((end) => end <= limit && !leaves.some(({ box }) => box.top < end - 1 && box.bottom > end + 1));
            bottom = ends.length ? Math.max(...ends) + 2 : limit;
          }
          return { left, top: Math.max(0, top - (from === null ? margin : 0)) + scrollY, right, bottom: bottom + scrollY };
        }
        """;

    /// <summary>A picture of the part of the page that the chapter is about.</summary>
    public static async Task<byte[]> TakeAsync(IPage page, Stop stop)
    {
        double? from = stop.From is null ? null : await stop.From.EvaluateAsync<double>("(e) => e.getBoundingClientRect().top");
        JsonElement frame = (await stop.Panel.EvaluateAsync(Frame, from))!.Value;
        float At(string side) => (float)frame.GetProperty(side).GetDouble();
        return await page.ScreenshotAsync(new()
        {
            FullPage = true,
            Clip = new() { X = At("left"), Y = At("top"), Width = At("right") - At("left"), Height = At("bottom") - At("top") },
            Animations = ScreenshotAnimations.Disabled,
            Caret = ScreenshotCaret.Hide,
        });
    }

    /// <summary>Takes the chapter's picture, makes it small, and keeps it under the chapter's name.</summary>
    public static async Task<GuideChapter> KeepAsync(IPage page, Stop stop, string folder)
    {
        SmallPicture picture = SmallPicture.Of(await TakeAsync(page, stop));
        string file = stop.Chapter.Name + ".png";
        await File.WriteAllBytesAsync(Path.Combine(folder, file), picture.Png);
        return stop.Chapter with { Picture = new(file, picture.Width, picture.Height) };
    }
}
