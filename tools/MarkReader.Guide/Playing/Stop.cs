using MarkReader.Service.Guide;
using Microsoft.Playwright;

namespace MarkReader.Guide.Playing;

/// <summary>The page as it stands at a chapter of the guide.</summary>
/// <param name="Chapter">What it says; without a picture.</param>
/// <param name="Panel">The part of the page that the chapter is about.</param>
/// <param name="From">Where the picture begins; the panel's top without it.</param>
internal sealed record Stop(GuideChapter Chapter, ILocator Panel, ILocator? From = null);
