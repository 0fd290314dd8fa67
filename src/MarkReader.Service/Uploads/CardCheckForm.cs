using System.Text;
using MarkReader.Application.CardChecks;
using MarkReader.Application.Inputs;
using MarkReader.Application.Measuring;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>The form for a check of a printed card: photos, camera, and what was read off its rulers.</summary>
/// <param name="Name">What the check is called; empty for nothing.</param>
/// <param name="Camera">Number of the camera whose profile is used.</param>
internal sealed record CardCheckForm(IReadOnlyList<IFormFile> Photos, string Name, long Camera, CardCheckInput Input)
{
    /// <summary>The first thing that is wrong is the refusal.</summary>
    public static (CardCheckForm? Form, FieldFailure? Wrong) Read(UploadForm form, IReadOnlyList<IFormFile> photos)
    {
        // A page says in what unit and with what sign its fields are typed; other senders mean mm.
        Figures typed = new(Preferences.Named(form.Text("display")));
        double unit = typed.Preferences.Inches ? Length.MillimetresPerInch : 1;
        Dictionary<string, double?> lengths = [];
        foreach (string field in (string[])["rulerU", "rulerV", "rulerUncertainty", "tolerance"])
        {
            if (form.Text(field) is not { } text)
                lengths[field] = null;
            else if (typed.ReadNumber(text, typed.Preferences.Inches).TryGet(out Number? number, out Failure? failure))
                lengths[field] = unit * number.Value;
            else
                return (null, new(field, failure));
        }

        if (photos.Count == 0)
            return (null, new("photos", new(ServiceFailures.FieldMissing, ServiceTexts.Get("visit.noPhotoWasChosen"), ServiceTexts.Get("cardCheck.choosePhotos"))));
        if (!long.TryParse(form.Text("camera"), out long camera))
            return (null, new("camera", new(ServiceFailures.FieldMissing, ServiceTexts.Get("cardCheck.noCamera"), ServiceTexts.Get("cardCheck.chooseCamera"))));
        // A form always sends the rulers' uncertainty; it says nothing without their lengths.
        double? uncertainty = lengths["rulerU"] is null && lengths["rulerV"] is null ? null : lengths["rulerUncertainty"];
        return (new(photos, form.Text("name") ?? "", camera, new(lengths["rulerU"], lengths["rulerV"], uncertainty, lengths["tolerance"])), null);
    }

    /// <summary>The field that a refusal concerns.</summary>
    public string FieldOf(Failure failure) => failure.Code == CardCheckInputFailures.LimitInvalid ? "tolerance"
        : failure.Code == ReadingFailures.RulerUncertaintyInvalid ? "rulerUncertainty"
        : failure.Code == ReadingFailures.RulerMissing && Input.RulerV is null ? "rulerV"
        : failure.Code == ReadingFailures.RulerMissing || failure.Code == ReadingFailures.RulerInvalid || failure.Code.Name == "RULER_READING" ? "rulerU"
        : failure.Code == CardCheckInputFailures.NameInvalid ? "name"
        : failure.Code == StorageFailures.NotKept ? "camera"
        : "photos";

    /// <summary>The key of a request with this form.</summary>
    /// <param name="digests">Of the photos.</param>
    public Outcome<RequestKey> KeyOf(string key, IEnumerable<string> digests) =>
        RequestKey.Of(key, Encoding.UTF8.GetBytes(FormattableString.Invariant($"{Camera} {Input.RulerU} {Input.RulerV} {Input.RulerUncertainty} {Input.Limit} {Name} {string.Join(' ', digests)}")));
}
