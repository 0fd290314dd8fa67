using MarkReader.Imaging.Texts;

namespace MarkReader.Imaging.Marks;

/// <summary>Why a dark spot is not taken for a mark. ImagingTexts.resx has a few words for each, under "objection".</summary>
internal enum MarkObjection
{
    TwoInOne,
    Rough,
    RoughOutline,
    OpenOutline,
    PoorOutline,
    NoEdgeAllRound,
    NoOutline,
    Ragged,
    Long,
    NotSymmetric,
    SmokeOfMark,
    Size,
    Small,
    Large,
    OutsideZone,
    AtBorder,
    RestOfMark,
    Faint,
    NothingToFit,
    Thin,
}

/// <summary>Objections in words.</summary>
internal static class MarkObjectionWords
{
    public static string Words(this MarkObjection objection) => ImagingTexts.Get("objection." + objection);
}
