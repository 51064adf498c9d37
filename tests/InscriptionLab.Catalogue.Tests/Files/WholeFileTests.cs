using System;
using System.IO;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Files;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Files;

public sealed class WholeFileTests
{
    private static readonly CancellationToken Cancel = TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_there_stays_and_nothing_lies_beside_it_where_writing_ends_in_the_middle()
    {
        using var scratch = new Scratch();
        var file = Path.Combine(scratch.Folder, "photos.parquet");
        await WholeFile.WriteAsync(file, stream => stream.WriteAsync(new byte[] { 1, 2, 3 }, Cancel).AsTask());

        await Assert.ThrowsAsync<InvalidOperationException>(() => WholeFile.WriteAsync(file, async stream =>
        {
            await stream.WriteAsync(new byte[] { 9 }, Cancel);
            throw new InvalidOperationException();
        }));

        Assert.Equal([1, 2, 3], await File.ReadAllBytesAsync(file, Cancel));
        Assert.Equal([file], Directory.GetFiles(scratch.Folder));
    }

    /// <summary>FIPS 180-2, appendix B.1: the hash of the three letters "abc".</summary>
    [Fact]
    public void The_hash_of_a_file_is_that_of_the_standard()
    {
        using var scratch = new Scratch();
        var file = Path.Combine(scratch.Folder, "abc");
        File.WriteAllText(file, "abc");

        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", FileHash.Of(file));
    }
}
