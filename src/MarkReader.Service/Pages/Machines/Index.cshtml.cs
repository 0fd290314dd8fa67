using System.Globalization;
using System.Text;
using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
using MarkReader.Service.Texts;
using MarkReader.Service.Uploads;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace MarkReader.Service.Pages.Machines;

/// <summary>The machines that are kept, machines to start from, and a machine from a file.</summary>
/// <remarks>Forms carry no token; <see cref="LocalOnly"/> refuses what other sites send.</remarks>
[IgnoreAntiforgeryToken]
internal sealed class IndexModel(MachineStore machines, TimeProvider clock) : PageModel
{
    private const int Shown = 20;

    public IReadOnlyList<MachineOverview> Kept { get; private set; } = [];

    public string? Next { get; private set; }

    public DateTimeOffset Now { get; } = clock.GetUtcNow();

    /// <summary>What is wrong with the list.</summary>
    public Failure? Failure { get; private set; }

    /// <summary>What is wrong with the file that was sent.</summary>
    public Failure? FileWrong { get; private set; }

    /// <summary>The machine that is kept already with the very same document as the file's.</summary>
    public MachineEntry? Same { get; private set; }

    public void OnGet(long? before) => List(before);

    /// <summary>Keeps the machine of a file.</summary>
    public async Task<IActionResult> OnPostFileAsync()
    {
        if (!(await ReadAsync()).TryGet(out MachineDocument? document, out Failure? failure) || !machines.FindSame(document).TryGet(out SameMachine? same, out failure))
            return Refused(failure);
        if (same.Entry is { } there)
        {
            Same = there;
            Response.StatusCode = StatusCodes.Status409Conflict;
            List(null);
            return Page();
        }

        return Added(document);
    }

    /// <summary>Keeps a machine a second time, which was asked for after its file came twice.</summary>
    public async Task<IActionResult> OnPostCopyAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return Refused(failure);
        if (!long.TryParse(form.Text("machine"), NumberStyles.None, CultureInfo.InvariantCulture, out long id))
            return Refused(new(ServiceFailures.FieldMissing, ServiceTexts.Get("index.formDoesNotSayWhich"), ServiceTexts.Get("index.chooseFileAgain")));
        return machines.Find(id).TryGet(out KeptMachine? kept, out failure) && MachineFile.Read(Encoding.UTF8.GetBytes(kept.Text)).TryGet(out MachineDocument? document, out failure)
            ? Added(document)
            : Refused(failure);
    }

    private IActionResult Added(MachineDocument document) => machines.Add(document).TryGet(out KeptMachine? kept, out Failure? failure)
        ? Redirect(FormattableString.Invariant($"/machines/{kept.Entry.Id}?kept=1"))
        : Refused(failure);

    private PageResult Refused(Failure failure)
    {
        FileWrong = failure;
        Response.StatusCode = ProblemMap.StatusOf(failure.Code);
        List(null);
        return Page();
    }

    private async Task<Outcome<MachineDocument>> ReadAsync()
    {
        if (!(await UploadForm.ReadAsync(Request)).TryGet(out UploadForm? form, out Failure? failure))
            return failure;
        if (form.File("file") is not { } file)
            return new Failure(ServiceFailures.FieldMissing, ServiceTexts.Get("index.noFileWasChosen"), ServiceTexts.Get("index.chooseMachineFileAsAnother"));
        // One byte more than may be says enough.
        byte[] bytes = new byte[Math.Min(file.Length, MachineFile.MostBytes + 1)];
        await using Stream stream = file.OpenReadStream();
        await stream.ReadExactlyAsync(bytes, HttpContext.RequestAborted);
        return MachineFile.Read(bytes);
    }

    private void List(long? before)
    {
        if (machines.Overview(before, Shown).TryGet(out Page<MachineOverview>? page, out Failure? failure))
            (Kept, Next) = (page.Items, page.Next);
        else
            Failure = failure;
    }
}
