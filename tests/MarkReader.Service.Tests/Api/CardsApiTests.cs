using System.Net;
using System.Text;
using System.Text.Json;
using MarkReader.Service.Tests.Support;

namespace MarkReader.Service.Tests.Api;

public sealed class CardsApiTests(Site site) : IClassFixture<Site>
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/api/cards/plate.pdf", "application/pdf", "%PDF-")]
    [InlineData("/api/cards/bed.pdf?paper=letter", "application/pdf", "%PDF-")]
    [InlineData("/api/cards/plate.svg", "image/svg+xml", "<svg")]
    [InlineData("/api/cards/bed.png", "image/png", "PNG")]
    public async Task A_card_is_given_in_each_format(string address, string mediaType, string start)
    {
        using HttpResponseMessage card = await site.Client.GetAsync(address, Cancellation);
        Assert.Equal(HttpStatusCode.OK, card.StatusCode);
        Assert.Equal(mediaType, card.Content.Headers.ContentType?.MediaType);
        byte[] bytes = await card.Content.ReadAsByteArrayAsync(Cancellation);
        Assert.Contains(start, Encoding.Latin1.GetString(bytes, 0, 200), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_paper_decides_the_page()
    {
        byte[] letter = await site.Client.GetByteArrayAsync("/api/cards/plate.pdf?paper=letter", Cancellation);
        byte[] a4 = await site.Client.GetByteArrayAsync("/api/cards/plate.pdf?paper=a4", Cancellation);
        Assert.Contains("/MediaBox [0 0 612 792]", Encoding.Latin1.GetString(letter), StringComparison.Ordinal);
        Assert.DoesNotContain("/MediaBox [0 0 612 792]", Encoding.Latin1.GetString(a4), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/cards/chart.pdf", HttpStatusCode.NotFound, "NOT_FOUND")]
    [InlineData("/api/cards/plate.doc", HttpStatusCode.BadRequest, "CARD_FORMAT_UNKNOWN")]
    [InlineData("/api/cards/plate.pdf?paper=a0", HttpStatusCode.BadRequest, "PAPER_UNKNOWN")]
    public async Task A_card_that_cannot_be_had_is_refused(string address, HttpStatusCode status, string code) =>
        await (await site.Client.GetAsync(address, Cancellation)).ProblemAsync(status, code);

    [Fact]
    public async Task Every_kind_is_listed()
    {
        JsonElement cards = await (await site.Client.GetAsync("/api/cards", Cancellation)).JsonAsync();
        Assert.Equal(["bed", "plate"], cards.GetProperty("cards").EnumerateArray().Select(card => card.Text("kind")).Order());
    }
}
