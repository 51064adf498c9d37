using System.Net;
using Xunit;

namespace InscriptionLab.Page.Tests;

/// <summary>The command line of serve.</summary>
public sealed class ServeArgumentsTests
{
    [Fact]
    public void Without_arguments_only_this_machine_is_served()
    {
        Assert.True(ServeArguments.TryParse([], out var request, out _));
        Assert.True(request.ThisMachineOnly);
        Assert.Equal(ServeRequest.UsualPort, request.Port);
    }

    [Fact]
    public void Options_are_read_with_a_space_or_an_equals_sign()
    {
        Assert.True(ServeArguments.TryParse(["--port", "0", "--address=0.0.0.0", "--name", "bench.local", "--reference=list.csv"], out var request, out _));
        Assert.Equal(0, request.Port);
        Assert.Equal(IPAddress.Any, request.Address);
        Assert.Equal(["bench.local"], request.Names);
        Assert.Equal("list.csv", request.References);
    }

    [Theory]
    [InlineData("--port", "70000")]
    [InlineData("--port", "-1")]
    [InlineData("--port", "eighty")]
    [InlineData("--address", "somewhere")]
    [InlineData("--name", "bench.local")]
    [InlineData("--name", "two words")]
    [InlineData("--colour", "red")]
    [InlineData("photo.jpg", "")]
    public void What_is_not_understood_gets_one_sentence(string option, string value)
    {
        Assert.False(ServeArguments.TryParse([option, value], out _, out var problem));
        Assert.EndsWith(".", problem, System.StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }
}
