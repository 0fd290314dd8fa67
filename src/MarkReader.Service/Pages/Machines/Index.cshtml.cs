using MarkReader.Application.Machines;
using MarkReader.Application.Storage;
using MarkReader.Quantities;
using MarkReader.Service.Hosting;
using MarkReader.Service.Problems;
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

    public void OnGet(long? before) => List(before);

    /// <summary>Keeps the machine of a file.</summary>
    public async Task<IActionResult> OnPostFileAsync()
    {
        if ((await ReadAsync()).TryGet(out MachineDocument? document, out Failure? failure) && machines.Add(document).TryGet(out KeptMachine? kept, out failure))
            return Redirect(FormattableString.Invariant($"/machines/{kept.Entry.Id}?kept=1"));
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
            return new Failure(ServiceFailures.FieldMissing, "no file was chosen", "choose a machine's file, as another service gave it out");
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
