using MarkReader.Application.Cameras;
using MarkReader.Cameras.Calibration;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;

namespace MarkReader.Service.Pages.Cameras;

/// <summary>A profile's numbers as a person can picture them.</summary>
/// <param name="Focal95">Half width of the focal length's interval of 95 % (k = 1.96), px.</param>
/// <param name="FieldDegrees">Angle that the picture's longer side spans.</param>
/// <param name="BendPx">How far the lens moves the corner that it moves most, px.</param>
public sealed record CameraFigures(double Focal95, double FieldDegrees, double BendPx)
{
    internal static CameraFigures Of(CameraProfile profile)
    {
        (double width, double height) = (profile.Camera.Photo.Width, profile.Camera.Photo.Height);
        (double side, double focal) = width >= height ? (width, profile.Camera.FocalX) : (height, profile.Camera.FocalY);
        PixelPoint[] corners = [new(0, 0), new(width - 1, 0), new(0, height - 1), new(width - 1, height - 1)];
        return new(
            Normal95.Factor * profile.StandardUncertainties[0],
            Angle.FromRadians(2 * Math.Atan(side / (2 * focal))).Degrees,
            corners.Select(c => profile.Camera.Ideal(c) - c).Max(d => Math.Sqrt((d.X * d.X) + (d.Y * d.Y))));
    }

    /// <summary>Decimals of a parameter: px to hundredths, mm to 1e-4, coefficients of distortion to 1e-5, what is smaller to 1e-6.</summary>
    public static int Places(string parameter) => parameter switch
    {
        "fx" or "fy" or "cx" or "cy" => 2,
        "bendUu" or "bendUv" or "bendVv" or "spread" => 4,
        "k1" or "k2" or "k3" => 5,
        _ => 6,
    };

    /// <summary>The intrinsic parameters of a profile that came without its calibration's report.</summary>
    internal static IReadOnlyList<CameraParameterReport> ParametersOf(CameraProfile p)
    {
        double[] values = [p.Camera.FocalX, p.Camera.FocalY, p.Camera.Principal.X, p.Camera.Principal.Y, p.Camera.Lens.K1, p.Camera.Lens.K2, p.Camera.Lens.K3, p.Camera.Lens.P1, p.Camera.Lens.P2];
        return [.. values.Select((v, i) => new CameraParameterReport(CalibratedCamera.Names[i], v, p.StandardUncertainties[i]))];
    }
}
