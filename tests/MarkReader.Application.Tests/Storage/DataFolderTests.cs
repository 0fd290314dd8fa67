using MarkReader.Application.Storage;
using MarkReader.Quantities;

namespace MarkReader.Application.Tests.Storage;

public sealed class DataFolderTests
{
    [Fact]
    public void The_named_folder_comes_before_all_others()
    {
        DataFolder folder = Locate(("MARKREADER_DATA", "/srv/marks"), ("XDG_DATA_HOME", "/share"), ("HOME", "/home/user"));
        Assert.Equal("/srv/marks", folder.Root);
    }

    [Fact]
    public void Without_a_name_it_lies_in_the_shared_data_of_the_user()
    {
        Assert.Equal("/share/markreader", Locate(("XDG_DATA_HOME", "/share"), ("HOME", "/home/user")).Root);
        Assert.Equal("/home/user/.local/share/markreader", Locate(("HOME", "/home/user")).Root);
    }

    [Fact]
    public void A_relative_shared_folder_is_ignored() =>
        Assert.Equal("/home/user/.local/share/markreader", Locate(("XDG_DATA_HOME", "share"), ("HOME", "/home/user")).Root);

    [Fact]
    public void A_file_in_the_way_is_refused_with_what_to_do()
    {
        using TemporaryFolder temporary = new();
        Directory.CreateDirectory(Path.GetDirectoryName(temporary.Folder.Root)!);
        File.WriteAllText(temporary.Folder.Root + ".file", "in the way");
        DataFolder folder = new(temporary.Folder.Root + ".file");
        try
        {
            Assert.False(Database.Open(folder).TryGet(out _, out Failure? failure));
            Assert.Equal(StorageFailures.DataFolderUnusable, failure.Code);
            Assert.Contains(folder.Root, failure.Message, StringComparison.Ordinal);
            Assert.Contains("MARKREADER_DATA", failure.Hint, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(folder.Root);
        }
    }

    private static DataFolder Locate(params (string Name, string Value)[] environment) =>
        DataFolder.Locate(name => environment.FirstOrDefault(variable => variable.Name == name).Value);
}
