using MarkReader.Quantities;
using MarkReader.Service.Display;
using MarkReader.Service.Problems;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages;

/// <summary>A page with a form that sends a set of photos, of which one thing is made and kept, and with a list of those that are kept. A refused form comes back with what was typed and with its photos.</summary>
/// <typeparam name="T">What is kept.</typeparam>
internal abstract class PhotoSetModel<T>(HeldPhotos held, Figures figures) : PageModel
    where T : class
{
    private UploadForm? _form;
    private FieldFailure? _wrong;

    /// <summary>What is wrong with the list.</summary>
    public Failure? Failure { get; protected set; }

    /// <summary>A form that came back stays in the unit in which it was typed.</summary>
    public Figures Figures { get; private set; } = figures;

    /// <summary>A form that is sent twice makes one thing.</summary>
    public string Key { get; } = Guid.NewGuid().ToString("N");

    /// <summary>Photos of a form that was refused; null when there are none.</summary>
    public HeldSet? Held { get; private set; }

    /// <summary>What was typed in a field; null when nothing was.</summary>
    public virtual string? Text(string field) => _form?.Text(field);

    public Failure? WrongIn(string field) => _wrong?.Field == field ? _wrong.Failure : null;

    public async Task<IActionResult> OnPostAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refuse(new("photos", failure));
        _form = form;
        if (form.Text("display") is { } typed)
            Figures = new(Preferences.Named(typed));
        FormPhotos photos = FormPhotos.Of(HttpContext, form, held);
        (T? kept, FieldFailure? wrong) = photos.Gone is { } gone ? (null, new FieldFailure("photos", gone)) : await KeepAsync(form, photos.All);
        if (kept is null)
        {
            Held = await photos.HoldAsync(photos.All);
            return Refuse(wrong!);
        }

        photos.LetGo();
        return Redirect(AddressOf(kept));
    }

    /// <summary>Makes and keeps the thing, or says why not and in which field.</summary>
    protected abstract Task<(T? Kept, FieldFailure? Wrong)> KeepAsync(UploadForm form, IReadOnlyList<IFormFile> photos);

    /// <summary>The page of what was kept just now.</summary>
    protected abstract string AddressOf(T kept);

    /// <summary>Reads the list.</summary>
    /// <param name="before">Number of the thing before which it starts; null: the newest.</param>
    protected abstract void List(long? before);

    protected void Show(long? before)
    {
        Held ??= HeldCookie.Read(Request, held) is [var there, ..] ? there : null;
        List(before);
    }

    private PageResult Refuse(FieldFailure wrong)
    {
        _wrong = wrong;
        Response.StatusCode = ProblemMap.StatusOf(wrong.Failure.Code);
        Show(null);
        return Page();
    }
}
