using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Threading.Tasks;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Pictures;
using Xunit;

namespace InscriptionLab.App.Tests.Trust;

/// <summary>The program decodes photos in a process of its own: what happens there costs one photo at most.</summary>
public sealed class DecoderProcessTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void It_gives_the_same_pixels_as_decoding_here()
    {
        using var decoder = PhotoDecoding.Process();
        foreach (var name in (string[])[SampleImages.Blank, SampleImages.NoTube])
        {
            var file = SampleImages.PathOf(name);
            var there = new PhotoReader(new PhotoLimits(), decoder).Read(file);
            var here = new PhotoReader(new PhotoLimits()).Read(file);
            Assert.True(there.Colour.Pixels.SequenceEqual(here.Colour.Pixels));
            Assert.True(there.Gray.Pixels.SequenceEqual(here.Gray.Pixels));
            Assert.Equal(here.Lens, there.Lens);
        }
    }

    [Fact]
    public void A_decoder_that_dies_costs_one_photo_and_the_next_gets_a_new_one()
    {
        using var decoder = new DecoderProcess("/bin/sh", "-c", $"[ -e {_folder.File("once")} ] && exec {Path.Combine(AppContext.BaseDirectory, "inscriptionlab")} {PhotoDecoding.Word}; touch {_folder.File("once")}; kill -SEGV $$");
        var reader = new PhotoReader(new PhotoLimits(), decoder);
        var refused = Assert.Throws<InscriptionLabException>(() => reader.Read(SampleImages.PathOf(SampleImages.Blank)));
        Assert.Contains("blank.jpg", refused.Message, StringComparison.Ordinal);
        Assert.False(refused.MayPass);
        Assert.Equal(1400, reader.Read(SampleImages.PathOf(SampleImages.Blank)).Colour.Width);
    }

    [Fact]
    public void A_decoder_that_takes_too_long_says_so_and_the_next_photo_gets_a_new_one()
    {
        var file = SampleImages.PathOf(SampleImages.Blank);
        using (var slow = new DecoderProcess("/bin/sh", "-c", "exec sleep 600") { Patience = TimeSpan.FromMilliseconds(500) })
        {
            var reader = new PhotoReader(new PhotoLimits(), slow);
            var late = Assert.Throws<InscriptionLabException>(() => reader.Read(file));
            Assert.Equal($"{file}: the photo took longer than 0.5 seconds to decode; try again when the machine has less to do.", late.Message);
            Assert.True(late.MayPass);
        }

        using var decoder = new DecoderProcess("/bin/sh", "-c", $"[ -e {_folder.File("once")} ] && exec {Path.Combine(AppContext.BaseDirectory, "inscriptionlab")} {PhotoDecoding.Word}; touch {_folder.File("once")}; exec sleep 600") { Patience = TimeSpan.FromSeconds(5) };
        var next = new PhotoReader(new PhotoLimits(), decoder);
        Assert.True(Assert.Throws<InscriptionLabException>(() => next.Read(file)).MayPass);
        Assert.Equal(1400, next.Read(file).Colour.Width);
    }

    [Fact]
    public void A_decoder_that_is_killed_between_photos_is_started_again()
    {
        using var decoder = new DecoderProcess("/bin/sh", "-c", $"echo $$ > {_folder.File("id")}; exec {Path.Combine(AppContext.BaseDirectory, "inscriptionlab")} {PhotoDecoding.Word}");
        var reader = new PhotoReader(new PhotoLimits(), decoder);
        reader.Read(SampleImages.PathOf(SampleImages.Blank));
        using (var child = Process.GetProcessById(int.Parse(File.ReadAllText(_folder.File("id")), CultureInfo.InvariantCulture)))
        {
            child.Kill();
            child.WaitForExit();
        }

        Assert.Equal(1400, reader.Read(SampleImages.PathOf(SampleImages.Blank)).Colour.Width);
    }

    [Fact]
    public void Several_threads_wait_for_each_other()
    {
        using var decoder = PhotoDecoding.Process();
        var reader = new PhotoReader(new PhotoLimits(), decoder);
        var widths = new int[8];
        Parallel.For(0, widths.Length, at => widths[at] = reader.Read(SampleImages.PathOf(SampleImages.Blank)).Colour.Width);
        Assert.All(widths, width => Assert.Equal(1400, width));
    }

    /// <summary>36 megapixels are 108 MB in the library and 108 MB as they are handed on: more than 300 MB hold beside the runtime, and nothing beside the bound that the program sets itself.</summary>
    [Fact]
    public void A_photo_that_needs_more_memory_than_allowed_costs_one_sentence_and_the_next_is_read()
    {
        var large = _folder.File("large.jpg");
        File.WriteAllBytes(large, PictureEncoder.ToJpeg(new ColourImage(6000, 6000, new byte[6000 * 6000 * 3]), 6000));
        using (var bounded = new DecoderProcess(Path.Combine(AppContext.BaseDirectory, "inscriptionlab"), PhotoDecoding.Word, "300000000"))
        {
            var reader = new PhotoReader(new PhotoLimits(), bounded);
            Assert.Equal(1400, reader.Read(SampleImages.PathOf(SampleImages.Blank)).Colour.Width);
            var refused = Assert.Throws<InscriptionLabException>(() => reader.Read(large));
            Assert.Contains("large.jpg", refused.Message, StringComparison.Ordinal);
            Assert.DoesNotContain('\n', refused.Message);
            Assert.Equal(1400, reader.Read(SampleImages.PathOf(SampleImages.Blank)).Colour.Width);
        }

        using var decoder = PhotoDecoding.Process();
        Assert.Equal(6000, new PhotoReader(new PhotoLimits(), decoder).Read(large).Colour.Width);
    }

    [Theory]
    [InlineData(3UL * 1024 * 1024 * 1024, "decode-photos")]
    [InlineData(300_000_000UL, "decode-photos", "300000000")]
    [InlineData(3UL * 1024 * 1024 * 1024, "decode-photos", "99000000000")]
    [InlineData(null, "decode-photos", "much")]
    [InlineData(null, "examine")]
    public void The_bound_of_its_memory_can_only_be_made_lower(ulong? most, params string[] arguments) => Assert.Equal(most, PhotoDecoding.Asked(arguments));

    [Fact]
    public void A_program_that_is_not_there_costs_one_sentence()
    {
        using var decoder = new DecoderProcess(_folder.File("gone"));
        var refused = Assert.Throws<InscriptionLabException>(() => new PhotoReader(new PhotoLimits(), decoder).Read(SampleImages.PathOf(SampleImages.Blank)));
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
    }
}
