using System.Globalization;
using System.Text.Json;
using MarkReader.Application.Advising;
using MarkReader.Application.Reports;
using MarkReader.Cameras.Models;
using MarkReader.Cameras.Profiles;
using MarkReader.Quantities;

namespace MarkReader.Application.Cameras;

/// <summary>Camera profiles as JSON, to be kept and handed on.</summary>
public static class CameraProfileFile
{
    /// <summary>Largest file, bytes.</summary>
    public const int MostBytes = 64 << 10;

    /// <summary>Longest name, UTF-16 units.</summary>
    public const int LongestName = 80;

    private static string Hint => CameraTexts.Get("cameraProfileFile.giveFileThatCommandCamera");

    private static readonly JsonDocumentOptions s_json = new() { MaxDepth = JsonText.MostDepth };

    /// <summary>Whether a text can be a camera's name.</summary>
    public static bool IsName(string name) => name.Length is > 0 and <= LongestName && !string.IsNullOrWhiteSpace(name) && !name.Any(char.IsControl);

    /// <summary>Whether two profiles say the same, whatever they are called.</summary>
    internal static bool SameContent(this CameraProfile one, CameraProfile other) => Write(one with { Name = "" }) == Write(other with { Name = "" });

    public static string Write(CameraProfile p) => ReportJson.Write(new ProfileDocument(
        p.Name,
        p.Made.ToString("O", CultureInfo.InvariantCulture),
        new(p.Traits.Sensor.Width, p.Traits.Sensor.Height, p.Traits.FocalLength, p.Traits.FocalLength35, p.Traits.Zoom, p.Traits.ModelDigest),
        Number(p, [p.Camera.FocalX, p.Camera.FocalY, p.Camera.Principal.X, p.Camera.Principal.Y, p.Camera.Lens.K1, p.Camera.Lens.K2, p.Camera.Lens.K3, p.Camera.Lens.P1, p.Camera.Lens.P2]),
        p.LensDoubtPx,
        p.ResidualPx,
        p.Views));

    /// <summary>The profile, when every number can be one.</summary>
    public static Outcome<CameraProfile> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > MostBytes)
            return NoProfile;
        using JsonDocument? document = JsonText.Parse(bytes, s_json, out string unreadable);
        if (document is null)
            return BeginsAsObject(bytes) ? Refusal(unreadable) : NoProfile;
        // Other files of this program and its tools are JSON, too.
        if (document.RootElement is not { ValueKind: JsonValueKind.Object } profile || !profile.TryGetProperty("parameters", out _) || !profile.TryGetProperty("photo", out _))
            return NoProfile;
        JsonFields fields = new(CameraFailures.Unreadable);
        JsonObject root = fields.Object(document.RootElement, CameraTexts.Get("cameraProfileFile.cameraProfile"), "name", "made", "photo", "parameters", "lensDoubtPx", "residualPx", "views");
        string name = root.Text("name");
        string made = root.Text("made");
        JsonObject photo = fields.Object(root.Find("photo") ?? default, CameraTexts.Get("cameraProfileFile.photoCameraProfile"), "width", "height", "focalLength", "focalLength35", "zoom", "modelDigest");
        (double width, double height) = (photo.Number("width"), photo.Number("height"));
        double? focal = photo.Has("focalLength") ? photo.Number("focalLength") : null;
        int? focal35 = photo.Has("focalLength35") ? (int)Math.Clamp(photo.Number("focalLength35"), 0, 10_000) : null;
        double zoom = photo.Number("zoom", 1);
        string? digest = photo.Has("modelDigest") ? photo.Text("modelDigest") : null;
        (double Value, double Uncertainty)[] p = [.. root.List("parameters", required: true).Select(e =>
        {
            JsonObject o = fields.Object(e, CameraTexts.Get("cameraProfileFile.parameterCameraProfile"), "name", "value", "standardUncertainty");
            return (o.Number("value"), o.Number("standardUncertainty"));
        })];
        (double doubt, double residual, double views) = (root.Number("lensDoubtPx"), root.Number("residualPx"), root.Number("views"));
        if (fields.Wrong is { } wrong)
            return wrong;
        if (!DateTimeOffset.TryParse(made, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset moment)
            || !IsName(name)
            || p.Length != CameraProfile.Parameters
            || width is not (>= 100 and <= 100_000) || height is not (>= 100 and <= 100_000)
            || p.Any(x => x.Uncertainty < 0)
            || p[0].Value < 0.1 * width || p[0].Value > 20 * width || p[1].Value < 0.1 * width || p[1].Value > 20 * width
            || Math.Abs(p[2].Value - (width / 2)) > width / 2 || Math.Abs(p[3].Value - (height / 2)) > height / 2
            || p[4..].Any(x => Math.Abs(x.Value) > 10)
            || doubt is not (>= 0 and <= 1000) || residual is not (>= 0 and <= 1000) || views is not (>= 1 and <= 1000))
        {
            return Refusal(CameraTexts.Get("cameraProfileFile.hasValuesThatNoCamera"));
        }

        PhotoSize size = new((int)width, (int)height);
        CameraModel camera = new(size, p[0].Value, p[1].Value, new(p[2].Value, p[3].Value), new(p[4].Value, p[5].Value, p[6].Value, p[7].Value, p[8].Value));
        return new CameraProfile(name, moment, new(size, focal, focal35, zoom, digest), camera, [.. p.Select(x => x.Uncertainty)], doubt, residual, (int)views);
    }

    /// <summary>The refusal of a file that is something else.</summary>
    public static Failure NoProfile => new(CameraFailures.Unreadable, CameraTexts.Get("cameraProfileFile.noProfile"), Hint);

    private static bool BeginsAsObject(ReadOnlyMemory<byte> bytes) => JsonText.WithoutMark(bytes).Span.TrimStart(" \t\r\n"u8).StartsWith("{"u8);

    private static Failure Refusal(string what) => new(CameraFailures.Unreadable, CameraTexts.Word("cameraProfileFile.cameraProfile2", what), Hint);

    private static IReadOnlyList<ParameterDocument> Number(CameraProfile p, double[] values) =>
        [.. values.Select((v, i) => new ParameterDocument(MarkReader.Cameras.Calibration.CalibratedCamera.Names[i], v, p.StandardUncertainties[i]))];

    private sealed record ProfileDocument(string Name, string Made, PhotoDocument Photo, IReadOnlyList<ParameterDocument> Parameters, double LensDoubtPx, double ResidualPx, int Views);

    private sealed record PhotoDocument(int Width, int Height, double? FocalLength, int? FocalLength35, double Zoom, string? ModelDigest);

    private sealed record ParameterDocument(string Name, double Value, double StandardUncertainty);
}
