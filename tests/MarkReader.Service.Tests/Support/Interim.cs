using System.Globalization;
using Microsoft.Data.Sqlite;

namespace MarkReader.Service.Tests.Support;

/// <summary>Changes what a site has kept of a set, as an earlier version of the program would have measured it.</summary>
internal static class Interim
{
    /// <summary>Makes an earlier version the one that kept a set, with the first mark of one of its photos elsewhere.</summary>
    /// <param name="photo">The photo's place in the order of names, from 0.</param>
    /// <param name="moved">By how much u was less, mm.</param>
    public static void Age(this Site site, long set, int photo = 0, double moved = 0)
    {
        using SqliteConnection connection = new($"Data Source={Path.Combine(site.Data, "markreader.db")};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        string mark = string.Create(CultureInfo.InvariantCulture, $"$.photos[{photo}].marks[0].u");
        command.CommandText = string.Create(
            CultureInfo.InvariantCulture,
            $"UPDATE interim_sets SET record = json_set(record, '$.program', '0.9.0', '{mark}', json_extract(record, '{mark}') - {moved:R}) WHERE id = {set}");
        Assert.Equal(1, command.ExecuteNonQuery());
    }
}
