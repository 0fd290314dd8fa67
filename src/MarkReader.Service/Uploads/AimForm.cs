using MarkReader.Alignment.Legs;
using MarkReader.Application.Aiming;
using MarkReader.Application.Inputs;
using MarkReader.Application.Measuring;
using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>Reads the form for an aim, field by field, and collects everything that is wrong with it.</summary>
internal sealed class AimForm
{
    private readonly UploadForm _form;
    private readonly List<FieldFailure> _failures = [];

    // A page says in what unit and with what sign its fields are typed; other senders mean mm.
    private readonly Figures _typed;

    private AimForm(UploadForm form) => (_form, _typed) = (form, new(Preferences.Named(form.Text("display"))));

    /// <summary>The order, or null and at least one failure, in the order of the fields on the page.</summary>
    public static (AimOrder? Order, IReadOnlyList<FieldFailure> Failures) Read(UploadForm form)
    {
        AimForm reading = new(form);
        AimOrder order = reading.Read();
        return reading._failures.Count == 0 ? (order, []) : (null, reading._failures);
    }

    /// <summary>The photos that the form brings or names, whatever else is wrong with it.</summary>
    public static IReadOnlyList<PhotoSource> Photos(UploadForm form)
    {
        string[] fields = IsBoth(form) ? ["photo"] : ["near", "far"];
        return [.. fields.Select(field => Source(form, field)).OfType<PhotoSource>()];
    }

    private static bool IsBoth(UploadForm form) => form.Text("shows") switch
    {
        "both" => true,
        "two" => false,
        _ => form.File("photo") is not null || form.Text("photoId") is not null,
    };

    private static PhotoSource? Source(UploadForm form, string field) =>
        form.File(field) is { } file ? new(field, file, null)
        : form.Text(field + "Id") is { } id ? new(field, null, id)
        : null;

    private AimOrder Read()
    {
        bool both = IsBoth(_form);
        PhotoSource near = Photo(both ? "photo" : "near", both ? ServiceTexts.Get("aimForm.photoWithBothMarks") : ServiceTexts.Get("aimForm.nearPhoto"));
        PhotoSource? far = both ? null : Photo("far", ServiceTexts.Get("aimForm.farPhoto"));
        (PixelPoint? nearAt, PixelPoint? farAt) = (Place(both ? "photoNearAt" : "nearAt"), Place(both ? "photoFarAt" : "farAt"));
        bool named = both && (nearAt ?? farAt) is not null;
        if (named && (nearAt is null || farAt is null))
            Refuse("photo", ServiceFailures.FieldMissing, ServiceTexts.Say("aimForm.onlyMarkNamedInPhoto", nearAt is null ? "far" : "near"), ServiceTexts.Get("aimForm.tapBothMarksOrNone"));
        FirstMark? first = both && !named ? First() : null;
        if (near.Id is not null && near.Id == far?.Id)
            Refuse("far", ServiceFailures.FieldInvalid, ServiceTexts.Get("aimForm.nearAndFarPhotoSame"), ServiceTexts.Get("aimForm.choosePhotoFarMarkOr"));
        return new(near, far, first, Leg(), Card(), nearAt, farAt);
    }

    private LegInput Leg()
    {
        double scale = Unit();
        double? near = Number("nearPath", ServiceTexts.Get("aimForm.nearPathLength"), scale != 1);
        double? far = Number("farPath", ServiceTexts.Get("aimForm.farPathLength"), scale != 1);
        LegInput leg = new(
            scale * (near ?? 0),
            scale * (far ?? 0),
            Number("pathUncertainty", null) ?? LegInput.DefaultPathUncertainty,
            Number("incidenceDegrees", null) ?? 0,
            Millimetres("pivotOffset") ?? 0,
            Millimetres("pivotUncertainty") ?? 0);
        if (near is not null && far is not null && LegChecks.NearAndFar(leg.NearPath, leg.FarPath, leg.PathUncertainty) is { } paths)
            _failures.Add(new(FieldOf(paths.Code, leg), paths));
        if (LegChecks.Incidence(leg.IncidenceDegrees) is { } incidence)
            _failures.Add(new("incidenceDegrees", incidence));
        if (near is not null && LegChecks.Pivot(leg.PivotOffset, leg.PivotUncertainty, leg.NearPath) is { } pivot)
            _failures.Add(new(pivot.Code == LegFailures.PivotUncertaintyInvalid ? "pivotUncertainty" : "pivotOffset", pivot));
        return leg;
    }

    private CardInput? Card()
    {
        CardInput input = CardFields.Read(Millimetres);
        if (!input.ApplyTo(new()).TryGet(out _, out Failure? failure))
            _failures.Add(new(CardFields.Of(failure.Code, input) ?? "form", failure));
        return input == CardInput.Nothing ? null : input;
    }

    /// <summary>The place in a field; null when it is blank.</summary>
    private PixelPoint? Place(string field)
    {
        if (_form.Text(field) is not { } text)
            return null;
        if (PlaceText.Read(text).TryGet(out Place? place, out Failure? failure))
            return place.Photo;
        _failures.Add(new(field, failure));
        return null;
    }

    private static string FieldOf(FailureCode code, LegInput leg)
    {
        if (code == LegFailures.PathUncertaintyInvalid || code == LegFailures.TravelUncertain)
            return "pathUncertainty";
        bool ofOneLength = code == LegFailures.PathNegative || code == LegFailures.PathZero || code == LegFailures.PathTooLong || code == LegFailures.PathNotANumber;
        return ofOneLength && !(leg.NearPath > 0 && leg.NearPath <= LegChecks.LongestPath) ? "nearPath" : "farPath";
    }

    private PhotoSource Photo(string field, string what)
    {
        if (Source(_form, field) is { } source)
            return source;
        Refuse(field, ServiceFailures.FieldMissing, what + ServiceTexts.Get("aimForm.missing"), ServiceTexts.Get("aimForm.takeOrChoose"));
        return new(field, null, null);
    }

    private FirstMark First()
    {
        string? text = _form.Text("first");
        if (text is null)
            Refuse("first", ServiceFailures.FieldMissing, ServiceTexts.Get("aimForm.notSaidWhichMarkNear"), ServiceTexts.Get("aimForm.chooseLeftRightUpperOr"));
        else if (!Enum.GetNames<FirstMark>().Contains(text, StringComparer.OrdinalIgnoreCase))
            Refuse("first", ServiceFailures.FieldInvalid, ServiceTexts.Get("aimForm.nearMarkSideNoneThose"), ServiceTexts.Get("aimForm.chooseLeftRightUpperOr"));
        else
            return Enum.Parse<FirstMark>(text, ignoreCase: true);
        return default;
    }

    private double Unit()
    {
        string unit = _form.Text("unit") ?? "mm";
        if (unit is not ("mm" or "in"))
            Refuse("unit", ServiceFailures.FieldInvalid, ServiceTexts.Get("aimForm.unitNeitherMmNorIn"), ServiceTexts.Get("aimForm.chooseMmOrIn"));
        return unit == "in" ? Length.FromInches(1).Millimetres : 1;
    }

    private double? Millimetres(string field) => (_typed.Preferences.Inches ? Length.MillimetresPerInch : 1) * Number(field, null, _typed.Preferences.Inches);

    /// <summary>The number in a field; null when it is blank, which is refused where <paramref name="required"/> names it.</summary>
    /// <param name="inches">Whether it is a length in inches.</param>
    private double? Number(string field, string? required, bool inches = false)
    {
        if (_form.Text(field) is not { } text)
        {
            if (required is not null)
                Refuse(field, ServiceFailures.FieldMissing, required + ServiceTexts.Get("aimForm.missing"), ServiceTexts.Get("aimForm.measureAsDrawingShowsAnd"));
            return null;
        }
        if (_typed.ReadNumber(text, inches).TryGet(out Number? number, out Failure? failure))
            return number.Value;
        _failures.Add(new(field, failure));
        return null;
    }

    private void Refuse(string field, FailureCode code, string message, string hint) => _failures.Add(new(field, new(code, message, hint)));
}
