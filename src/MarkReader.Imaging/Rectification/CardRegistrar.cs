using MarkReader.Cards;
using MarkReader.Imaging.Fiducials;
using MarkReader.Imaging.Photos;
using MarkReader.Imaging.Texts;
using MarkReader.Quantities;

namespace MarkReader.Imaging.Rectification;

/// <summary>Fourth stage: fits the view of the card to its printed edges.</summary>
/// <remarks>
/// Lens distortion and a bent card are taken up only where the photo shows them (F-test against the fit that allows both); else they
/// stay as uncertainty, with the prior of an ordinary phone and of paper taped down.
/// </remarks>
internal static class CardRegistrar
{
    private const int LeastSections = 30;

    /// <summary>Passes after which the view has settled, even of a bent card seen through an unusual lens; three do for most photos.</summary>
    private const int MostPasses = 8;

    /// <summary>A view that moves by less has settled, px.</summary>
    private const double Settled = 0.01;

    /// <summary>Half width of the search for an edge in cells of a marker, while the view is rough and after.</summary>
    private const double WideReach = 0.8;
    private const double NarrowReach = 0.65;

    /// <summary>A model is too simple when the fuller one improves the fit by this many times what chance would.</summary>
    private const double Evidence = 6;

    /// <param name="lens">The camera's profile, if there is one.</param>
    public static Outcome<RegisteredCard> Register(GreyPhoto photo, FoundCard card, KnownLens? lens = null) =>
        Register(photo, card.Kind, card.Rough, lens).TryGet(out RegisteredPrint? print, out Failure? failure)
            ? new RegisteredCard(card.Kind, print.View, print.Edges, print.Residual, print.Misfit) { LensDiffers = print.LensDiffers }
            : failure;

    /// <summary>The same for any print.</summary>
    /// <param name="evenLight">Whether the fall of the light over the print is taken out.</param>
    public static Outcome<RegisteredPrint> Register(GreyPhoto photo, IPrint print, Homography rough, KnownLens? lens = null, bool evenLight = false)
    {
        EdgeSampler sampler = new(photo, print);
        CardView view = CardView.FromHomography(rough, Math.Max(print.Width, print.Height) / 2, photo.Size, lens?.Focal ?? CameraPlace.FocalOf(photo.Header, photo.Size), lens?.Model);
        ViewPrior usual = lens?.Prior ?? ViewPrior.Usual;
        List<EdgeMeasurement> edges = [];
        FittedView? fit = null;
        bool anyLens = false;
        CardView measured = view;
        LightField? light = null;
        for (int pass = 0; pass < MostPasses; pass++)
        {
            edges = sampler.Measure(view, pass < 2 ? WideReach : NarrowReach, light);
            if (edges.Count < LeastSections)
                return TooFew();
            measured = view;
            if (evenLight)
                light = LightField.Of(edges, view, photo.Size);
            ViewFit fits = new(view, edges);
            (fit, anyLens) = Simplest(fits, usual);
            double moved = view.LargestMove(fit.View);
            view = fit.View;
            if (pass >= 2 && moved < Settled)
                break;
        }

        EdgeMeasurement[] used = [.. edges.Where((_, i) => fit!.Weights[i] > 0)];
        if (used.Length < LeastSections)
            return TooFew();
        double residual = Math.Sqrt(fit!.Residuals.Where((_, i) => fit.Weights[i] > 0).Average(Square));
        double misfit = Math.Sqrt(Math.Max(0, Square(residual) - used.Average(e => e.Variance + Square(ViewFit.Floor))));
        return new RegisteredPrint(view, used, [.. used.Select(e => measured.ToPhoto(e.Card) + (e.Offset * e.Normal))], residual, misfit) { LensDiffers = lens is not null && anyLens };
    }

    /// <summary>The simplest of the models that fits nearly as well as the one that allows any lens and any bend.</summary>
    private static (FittedView Fit, bool AnyLens) Simplest(ViewFit fits, ViewPrior usual)
    {
        FittedView any = fits.Run(usual.AnyLens.AnyCard);
        foreach ((ViewPrior prior, int fewer, bool lens) in (ReadOnlySpan<(ViewPrior, int, bool)>)[(usual, 7, false), (usual.AnyLens, 3, true), (usual.AnyCard, 4, false)])
        {
            FittedView simple = fits.Run(prior);
            double worse = 0;
            for (int i = 0; i < any.Residuals.Length; i++)
                worse += any.Weights[i] * (Square(simple.Residuals[i]) - Square(any.Residuals[i]));
            if (worse < Evidence * fewer * any.UnitVariance)
                return (simple, lens);
        }

        return (any, true);
    }

    private static Failure TooFew() => new(
        CardFailures.Unsharp, ImagingTexts.Get("cardRegistrar.cardPrintedEdgesCannotBe"), ImagingTexts.Get("cardRegistrar.holdPhoneStillAndNearer"));

    private static double Square(double x) => x * x;
}
