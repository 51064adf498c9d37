using System;
using System.IO;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Models;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class ModelShelfTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("models");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_model_whose_hash_and_shape_fit_is_loaded_and_runs()
    {
        Put(Identity, Hash(Identity));
        using var network = new ModelShelf(_folder.FullName).Open("m.onnx", ("x", [1, 2]), ["y"]);

        Assert.Equal([3, 4], network.Run([3, 4], [1, 2])[0].Numbers);
    }

    [Fact]
    public void A_folder_without_its_list_says_so() => Says("the list of models is not there", () => _ = new ModelShelf(_folder.FullName));

    [Fact]
    public void A_list_that_is_no_list_says_so()
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "models.json"), "{ \"models\": 3 }");
        Says("cannot be understood", () => _ = new ModelShelf(_folder.FullName));
    }

    [Fact]
    public void An_absent_model_says_so()
    {
        Put(Identity, Hash(Identity));
        File.Delete(Path.Combine(_folder.FullName, "m.onnx"));
        Says("the model is not there", () => Open(("x", [1, 2])));
    }

    [Fact]
    public void A_changed_model_says_so()
    {
        Put(Identity, Hash([1, 2, 3]));
        Says("was changed or is damaged", () => Open(("x", [1, 2])));
    }

    [Fact]
    public void A_model_of_another_shape_says_so()
    {
        Put(Identity, Hash(Identity));
        Says("takes or gives something else", () => Open(("x", [1, 3])));
    }

    [Fact]
    public void A_file_that_is_no_model_says_so()
    {
        byte[] junk = [1, 2, 3, 4, 5];
        Put(junk, Hash(junk));
        Says("cannot be loaded", () => Open(("x", [1, 2])));
    }

    [Fact]
    public void A_model_that_is_not_listed_says_so()
    {
        Put(Identity, Hash(Identity));
        Says("is not listed", () => new ModelShelf(_folder.FullName).Open("other.onnx", ("x", [1, 2]), ["y"]).Dispose());
    }

    /// <summary>A network y = x for x of shape 1 x 2, written out field by field after onnx.proto3 (ONNX operator set 13).</summary>
    private static byte[] Identity { get; } = Join(
        Number(1, 8),
        Part(7, Join(
            Part(1, Join(Text(1, "x"), Text(2, "y"), Text(4, "Identity"))),
            Text(2, "g"),
            Part(11, Value("x")),
            Part(12, Value("y")))),
        Part(8, Number(2, 13)));

    private static byte[] Value(string name)
    {
        var shape = Part(2, Join(Part(1, Number(1, 1)), Part(1, Number(1, 2))));
        return Join(Text(1, name), Part(2, Part(1, Join(Number(1, 1), shape))));
    }

    private static byte[] Number(int field, byte value) => [(byte)(field << 3), value];

    private static byte[] Text(int field, string text) => Part(field, Encoding.UTF8.GetBytes(text));

    private static byte[] Part(int field, byte[] content) => [(byte)((field << 3) | 2), checked((byte)content.Length), .. content];

    private static byte[] Join(params byte[][] parts) => [.. System.Linq.Enumerable.SelectMany(parts, part => part)];

    private static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static void Says(string words, Action action) =>
        Assert.Contains(words, Assert.Throws<InscriptionLabException>(action).Message, StringComparison.Ordinal);

    private void Open((string, System.Collections.Immutable.ImmutableArray<int>) input) => new ModelShelf(_folder.FullName).Open("m.onnx", input, ["y"]).Dispose();

    private void Put(byte[] model, string hash)
    {
        File.WriteAllBytes(Path.Combine(_folder.FullName, "m.onnx"), model);
        File.WriteAllText(Path.Combine(_folder.FullName, "models.json"), JsonSerializer.Serialize(new { models = new { one = new { file = "m.onnx", sha256 = hash } } }));
    }
}
