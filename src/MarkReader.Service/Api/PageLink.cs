using System.Globalization;
using MarkReader.Application.Storage;

namespace MarkReader.Service.Api;

internal static class PageLink
{
    /// <summary>The address of the page after this one; null when this is the last.</summary>
    /// <param name="path">Address of the list.</param>
    /// <param name="limit">Items on a page, as asked for.</param>
    /// <param name="more">Further parts of the query, each with its ampersand.</param>
    public static string? Following<T>(this Page<T> page, string path, int limit, string more = "") =>
        page.Next is null ? null : string.Create(CultureInfo.InvariantCulture, $"{path}?before={page.Next}&limit={limit}{more}");
}
