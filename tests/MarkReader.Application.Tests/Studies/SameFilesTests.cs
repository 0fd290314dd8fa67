using MarkReader.Application.Studies;
using MarkReader.Application.Tests.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Studies;

/// <summary>A photo counts once in a study, also under two names.</summary>
public sealed class SameFilesTests : IDisposable
{
    private readonly TemporaryFolder _temporary = new();

    public void Dispose() => _temporary.Dispose();

    [Fact]
    public void A_study_with_one_photo_under_two_names_is_refused_with_both_names()
    {
        string folder = Path.Combine(_temporary.Folder.Root, "study");
        Write(folder, "anna", "1.jpg", "first"u8);
        Write(folder, "anna", "2.jpg", "other"u8);
        Write(folder, "berta", "1.jpg", "third"u8);
        Write(folder, "berta", "2.jpg", "first"u8);
        Refused("'anna/1.jpg' and 'berta/2.jpg' are the same file", StudyFolder.Read(folder));
    }

    [Fact]
    public void Pulses_from_one_photo_under_two_names_are_refused_and_so_is_one_name_twice()
    {
        string folder = _temporary.Folder.Root;
        string one = Write(folder, "", "a.jpg", "first"u8), two = Write(folder, "", "b.jpg", "other"u8), copy = Write(folder, "", "c.jpg", "other"u8);
        Refused($"'{two}' and '{copy}' are the same file", RunScatter.FromPhotos([one, two, copy]));
        Refused($"'{one}' and '{one}' are the same file", RunScatter.FromPhotos([one, two, one]));
        // What only has the same length is another photo, and here none at all.
        Assert.False(RunScatter.FromPhotos([one, two]).TryGet(out _, out Failure? failure));
        Assert.Equal("PHOTO_FORMAT", failure.Code.Name);
    }

    private static void Refused<T>(string message, Outcome<T> outcome)
        where T : class
    {
        Assert.False(outcome.TryGet(out _, out Failure? failure));
        Assert.Equal((StudyInputFailures.PhotoTwice, message), (failure.Code, failure.Message));
    }

    private static string Write(string folder, string person, string name, ReadOnlySpan<byte> bytes)
    {
        string path = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, person)).FullName, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }
}
