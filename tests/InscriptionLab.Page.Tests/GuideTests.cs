using System;
using System.Linq;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Guides;
using InscriptionLab.App.Tests.Guides;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class GuideTests(OpenPage page) : IClassFixture<OpenPage>
{
    [Fact]
    public async Task The_page_is_told_every_guide_and_that_another_is_not_there()
    {
        var list = await page.Client.GetFromJsonAsync<JsonElement>("/api/guides", TestContext.Current.CancellationToken);
        using var other = await page.Client.GetAsync(new Uri("/api/guides/weather", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(GuideShelf.Names, list.EnumerateArray().Select(guide => guide.GetProperty("name").GetString()));
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
        Assert.Contains("weather", await other.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_command_of_the_documents_that_opens_the_page_is_understood()
    {
        var commands = DocumentCommands.All().Where(command => command.Arguments[0] == "serve").ToArray();

        Assert.True(commands.Length >= 3);
        Assert.All(commands, command => Assert.True(ServeArguments.TryParse(command.Arguments[1..], out _, out var problem), $"{command.Document}: {string.Join(' ', command.Arguments)}: {problem}"));
    }
}
