using System.Text.Json;
using MarkReader.Guide.Playing;
using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide.Pictures;

/// <summary>Takes pictures of parts of pages.</summary>
internal static class Camera
{
    // Long parts end where nothing is cut through.
    private const string Frame =
        """
        async (panel, from) => {
          await document.fonts.ready;
          const margin = 8, most = 860;
          const box = panel.getBoundingClientRect(), top = from === null ? box.top : from - margin;
          let bottom = box.bottom;
          if (bottom > top + most) {
            const leaves = [...panel.querySelectorAll('h1, h2, h3, p, li, summary, button, label, img, svg, tr')].map((e) => e.getBoundingClientRect()).filter((b) => b.height > 1);
            const ends = leaves.map((b) => b.bottom).filter((end) => end <= top + most && !leaves.some((b) => b.top < end - 1 && b.bottom > end + 1));
            bottom = ends.length ? Math.max(...ends) : top + most;
          }
          const left = Math.max(0, box.left - margin);
          return { left, top: Math.max(0, top - (from === null ? margin : 0)) + scrollY, right: Math.min(box.right + margin, document.documentElement.clientWidth), bottom: bottom + margin + scrollY };
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
