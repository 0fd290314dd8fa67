using MarkReader.Application.Advising;
using MarkReader.Application.Records;
using MarkReader.Application.VisitLog.Bundles;
using MarkReader.CommandLine.Commands;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Input;

/// <summary>The visit that a call names: a visit file, or a whole visit in a ZIP file.</summary>
internal static class VisitInput
{
    /// <summary>Its record.</summary>
    /// <param name="by">Who did the work, in place of the name in the file; null to keep that.</param>
    public static Outcome<VisitRecord> Record(string path, string? by)
    {
        if (!IsBundle(path))
        {
            return InputFile.Read(path, VisitFile.MostBytes, CommandTexts.Get("common.visitFile"), CommandTexts.Get("common.giveOneVisitOnly")).TryGet(out InputFile? file, out Failure? failure)
                && RecordSource.Read(file.Bytes).TryGet(out RecordSource? source, out failure)
                    ? RecordMaker.Make(Signed(source, by), new NoRecordPhotos(), TimeProvider.System.GetUtcNow())
                    : failure;
        }

        try
        {
            using FileStream zip = File.OpenRead(path);
            if (!VisitBundle.Open(zip).TryGet(out VisitBundle? bundle, out Failure? failure))
                return failure;
            using (bundle)
                return RecordMaker.Make(Signed(bundle.Visit.Source, by), bundle, TimeProvider.System.GetUtcNow());
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Failure(CommandLineFailures.FileUnreadable, CommandTexts.Word("visitInput.cannotBeRead", path), CommandTexts.Get("common.checkPermissions"));
        }
    }

    private static RecordSource Signed(RecordSource source, string? by) => by is null ? source : source with { DoneBy = by };

    // What cannot be read here is refused where it is read.
    private static bool IsBundle(string path)
    {
        try
        {
            using FileStream file = File.OpenRead(path);
            byte[] start = new byte[4];
            return VisitBundle.Is(start.AsSpan(0, file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return false;
        }
    }
}
