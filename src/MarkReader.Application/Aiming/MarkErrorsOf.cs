using MarkReader.Alignment.Legs;
using MarkReader.Imaging.Marks;
using MarkReader.Imaging.Pipeline;
using MarkReader.Quantities;

namespace MarkReader.Application.Aiming;

/// <summary>Hands a mark with its budget from the photo to the leg, telling which errors the marks of a leg have in common.</summary>
/// <remarks>
/// Both photos show one print and one tape: the errors of the rulers' lengths (along u and along v) and of the tape's height move both marks.
/// All other components are taken as independent between the marks. In two photos they are. Marks of one photo also share the
/// view of the card: marks close to each other are then moved nearly alike, which moves the aim point less than the independent errors
/// that are stated, because the aim point weights them with 1 + r and −r; the statement errs on the side of caution.
/// </remarks>
public static class MarkErrorsOf
{
    public const string AlongU = "u", AlongV = "v", Tape = "tape";

    public static Observation Observation(Station station, Mark mark, CameraStand camera, TapeHeight tape) =>
        new(station, mark.Centre.Point, Errors(mark, camera, tape));

    public static MarkErrors Errors(Mark mark, CameraStand camera, TapeHeight tape)
    {
        List<UncertaintyComponent> own = [];
        List<SharedError> shared = [];
        foreach (UncertaintyComponent component in mark.Budget)
        {
            SharedError[] parts = Shared(component, mark.Centre.Point, camera, tape);
            shared.AddRange(parts);
            Covariance2 rest = parts.Aggregate(component.Covariance, Less);
            if (parts.Length == 0 || rest.Uu + rest.Vv > 0)
                own.Add(component with { Covariance = rest });
        }

        return new(own, shared);
    }

    private static SharedError[] Shared(UncertaintyComponent component, CardPoint place, CameraStand camera, TapeHeight tape)
    {
        Covariance2 c = component.Covariance;
        return component.Source switch
        {
            // A print that is longer than was read moves every mark away from the printed centre.
            UncertaintySource.PrintScale =>
            [
                new(component.Source, AlongU, new(Math.CopySign(Math.Sqrt(c.Uu), place.U), 0)),
                new(component.Source, AlongV, new(0, Math.CopySign(Math.Sqrt(c.Vv), place.V))),
            ],
            UncertaintySource.Parallax => [new(component.Source, Tape, tape.StandardUncertainty.Millimetres * camera.PerTapeHeight(place))],
            _ => [],
        };
    }

    // What rounding leaves below zero is nothing.
    private static Covariance2 Less(Covariance2 whole, SharedError part)
    {
        double floor = 1e-9 * (whole.Uu + whole.Vv);
        double uu = Math.Max(0, whole.Uu - part.Covariance.Uu), vv = Math.Max(0, whole.Vv - part.Covariance.Vv), uv = whole.Uv - part.Covariance.Uv;
        if (uu + vv <= floor)
            return Covariance2.Isotropic(0);
        double most = Math.Sqrt(uu * vv);
        return new(uu, Math.Clamp(uv, -most, most), vv);
    }
}
