using System.Globalization;
using System.Text.RegularExpressions;
using MarkReader.Service.Guide;
using MarkReader.Service.Texts;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Localization;

namespace MarkReader.Service.Pages;

/// <summary>A first visit in words and pictures: what the program itself says, and between it what a person does at the machine.</summary>
internal sealed partial class GuideModel(GuideBook book, IStringLocalizer<GuideTexts> texts, IStringLocalizer<VisitTexts> program) : PageModel
{
    public GuideBook Book => book;

    public string Title(GuideChapter chapter) => texts[$"chapter.{chapter.Name}.title"];

    public string Alt(GuideChapter chapter) => texts[$"chapter.{chapter.Name}.alt", chapter.Heading];

    /// <summary>The paragraphs around what the program says; buttons they speak of are named as the program names them now.</summary>
    public string[] Paragraphs(GuideChapter chapter) => Named().Replace(texts[$"chapter.{chapter.Name}.text"], name => name.Groups[1].Value == "machine"
        ? book.Machine.ToString(CultureInfo.InvariantCulture)
        : program[name.Groups[1].Value]).Split('|');

    [GeneratedRegex(@"\{([a-zA-Z.]+)\}")]
    private static partial Regex Named();
}
