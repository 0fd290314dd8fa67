using MarkReader.Alignment.Frames;
using MarkReader.Alignment.Screws;
using MarkReader.Application.Inputs;
using MarkReader.Application.Texts;
using MarkReader.Quantities;

namespace MarkReader.Application.Screws;

/// <summary>Two components along u and v that were read, finite.</summary>
public sealed record Components(double U, double V);

/// <summary>A corner that was read.</summary>
public sealed record NamedCorner(FrameCorner Corner);

/// <summary>Reads a frame and a slope as people write them.</summary>
public static class FrameTexts
{
    /// <summary>Two numbers, like 1.1,-0.2.</summary>
    public static Outcome<Components> Components(string text) => PairText.Read(text) is { } pair
        ? new Components(pair.X, pair.Y)
        : new Failure(ScrewInputFailures.ComponentsUnreadable, InputTexts.Word("frameTexts.notComponentAlongUAnd", PairText.Shown(text)), InputTexts.Get("frameTexts.writeTwoNumbersWithPoints"));

    /// <summary>A corner: lowerLeft, lowerRight, upperLeft or upperRight, without regard to case, blanks and hyphens.</summary>
    public static Outcome<NamedCorner> Corner(string text)
    {
        string name = text.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal);
        FrameCorner[] named = [.. Enum.GetValues<FrameCorner>().Where(c => c.ToString().Equals(name, StringComparison.OrdinalIgnoreCase))];
        return named is [var corner]
            ? new NamedCorner(corner)
            : new Failure(ScrewInputFailures.CornerUnknown, InputTexts.Word("frameTexts.noCornerFrame", PairText.Shown(text)), InputTexts.Get("frameTexts.useLowerleftLowerrightUpperleftOr"));
    }

    /// <summary>A screw's name and corner, like A=lowerRight.</summary>
    public static Outcome<ScrewCorner> Screw(string text)
    {
        if (Named(text) is not { } named)
            return new Failure(ScrewInputFailures.ScrewUnreadable, InputTexts.Word("frameTexts.notScrewWithCorner", PairText.Shown(text)), InputTexts.Get("frameTexts.writeScrewNameEqualsSign"));
        return Corner(named.Value).TryGet(out NamedCorner? corner, out Failure? failure) ? new ScrewCorner(named.Name, corner.Corner) : failure;
    }

    /// <summary>A response from an earlier visit: mrad per turn along u and v and their standard uncertainty, like A=46.5,-0.8,1.2.</summary>
    public static Outcome<KnownResponse> Response(string text)
    {
        double[] numbers = Named(text) is { } named
            ? [.. ListText.Items(named.Value).Select(item => NumberText.Read(item.Replace(',', '.')).TryGet(out Number? number, out _) ? number.Value : double.NaN)]
            : [];
        return numbers.Length == 3 && numbers.All(double.IsFinite)
            ? new KnownResponse(Named(text)!.Value.Name, numbers[0], numbers[1], numbers[2])
            : new Failure(ScrewInputFailures.ResponseUnreadable, InputTexts.Word("frameTexts.notScrewWithResponse", PairText.Shown(text)), InputTexts.Get("frameTexts.writeScrewNameEqualsSign2"));
    }

    private static (string Name, string Value)? Named(string text)
    {
        int equals = text.LastIndexOf('=');
        return equals > 0 ? (text[..equals].Trim(), text[(equals + 1)..].Trim()) : null;
    }
}
