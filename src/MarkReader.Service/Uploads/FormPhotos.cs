using System.Globalization;
using MarkReader.Imaging.Photos;
using MarkReader.Quantities;
using MarkReader.Service.Texts;

namespace MarkReader.Service.Uploads;

/// <summary>The photos of a page's form: those that are held for it and still ticked, then those that were chosen, each once.</summary>
internal sealed class FormPhotos
{
    /// <summary>The field of the chosen photos, that of the held set's token, and that of the numbers of those to be used.</summary>
    public const string Chosen = "photos", Token = "held", Used = "use";

    private readonly HttpContext _context;
    private readonly HeldPhotos _held;
    private readonly HeldSet? _set;

    private FormPhotos(HttpContext context, HeldPhotos held, HeldSet? set, bool gone, IReadOnlyList<IFormFile> all)
    {
        (_context, _held, _set, All) = (context, held, set, all);
        Gone = gone ? new(ServiceFailures.PhotosGone, ServiceTexts.Get("held.gone"), ServiceTexts.Get("held.goneHint")) : null;
    }

    public IReadOnlyList<IFormFile> All { get; }

    /// <summary>That photos which were held are there no longer; null when they are, or when the form names none.</summary>
    public Failure? Gone { get; }

    public static FormPhotos Of(HttpContext context, UploadForm form, HeldPhotos held)
    {
        HashSet<string> used = [.. form.Texts(Used)];
        HeldSet? set = used.Count == 0 ? null : held.Find(form.Text(Token));
        FileStream? bytes = set is null ? null : held.Open(set);
        if (bytes is not null)
            context.Response.RegisterForDispose(bytes);
        IEnumerable<IFormFile> ticked = bytes is null
            ? []
            : set!.Photos.Where((_, i) => used.Contains(Number(i))).Select(p => new FormFile(bytes, p.Offset, p.Length, Chosen, p.Name));
        return new(context, held, set, used.Count > 0 && bytes is null, [.. ticked.Concat(form.Files(Chosen)).DistinctBy(PhotoDigest.Of)]);
    }

    /// <summary>What a tick at a held photo sends.</summary>
    public static string Number(int index) => index.ToString(CultureInfo.InvariantCulture);

    /// <summary>Holds photos of it for the form that comes back; null when there are none. What is no photo never will be one and is left out. Where that cannot be, what was held stays.</summary>
    /// <param name="files">Those that may be taken later.</param>
    /// <param name="person">Whose they are; empty where that is not asked.</param>
    public async Task<HeldSet?> HoldAsync(IReadOnlyList<IFormFile> files, string person = "")
    {
        List<IFormFile> photos = [];
        foreach (IFormFile file in files)
        {
            if (PhotoHeaderReader.Read(await UploadForm.BytesAsync(file, _context.RequestAborted)).TryGet(out _, out _))
                photos.Add(file);
        }

        if (photos.Count == 0)
            return null;
        HeldSet? now = await _held.HoldAsync(photos, person, _context.RequestAborted) ?? _set;
        HeldCookie.Write(_context, _held, person, now);
        return now;
    }

    /// <summary>Says that no photo need be held any more.</summary>
    public void LetGo(string person = "") => HeldCookie.Write(_context, _held, person, null);
}
