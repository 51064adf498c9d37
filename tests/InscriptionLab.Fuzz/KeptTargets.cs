using System;
using System.IO;
using System.IO.Hashing;
using System.Linq;
using System.Text;
using InscriptionLab.App.Records;
using InscriptionLab.Cataloguing;
using InscriptionLab.Likeness;
using InscriptionLab.Surveys;
using InscriptionLab.Surveys.Queue;

namespace InscriptionLab.Fuzz;

/// <summary>What the program keeps and reads again, and that somebody else may have written: records, archives, journals, messages.</summary>
internal static class KeptTargets
{
    private const string PatternMark = "\n";

    private static readonly string[][] Line = [["T", "F"], ["O"], ["L", "I"], ["L"], [" "], ["?"], ["E", "O"], ["R"]];

    private static Catalogue? _catalogue;

    internal static void Record(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        var content = RecordContent.Parse(text);
        foreach (var line in content.Lines)
        {
            _ = RecordLine.LettersOf(line.LettersJson);
        }

        // Which of the three kinds a record is, its reader knows; here each must refuse what is not its own.
        foreach (var read in (Action<string>[])[one => JsonLines.PhotoOf(one), one => JsonLines.SetOf(one), one => JsonLines.MeasureOf(one)])
        {
            Trial.Run(_ => read(text), input);
        }
    }

    /// <summary>A whole catalogue; what was taken must pass the catalogue's own check and be exported again.</summary>
    internal static void Archive(byte[] input)
    {
        _catalogue ??= Catalogue.Open(Scratch.PathOf("catalogue.db"), TimeProvider.System);
        using var text = new StreamReader(new MemoryStream(input), Encoding.UTF8);
        _catalogue.Archive.Import(text);
        using var again = new StringWriter();
        var taken = _catalogue;
        _catalogue = null;
        taken.Archive.Export(again);
        _ = taken.Search.Find(new SearchQuery { Near = "tolliver" });
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        foreach (var file in Directory.GetFiles(Path.GetDirectoryName(Scratch.PathOf("catalogue.db"))!, "catalogue.db*"))
        {
            File.Delete(file);
        }
    }

    /// <summary>A journal whose lines all have the right check sum, so that what they say is looked at.</summary>
    internal static void Journal(byte[] input)
    {
        using var file = new MemoryStream();
        foreach (var line in Encoding.Latin1.GetString(input).Split('\n'))
        {
            var bytes = Encoding.Latin1.GetBytes(line);
            file.Write(Encoding.ASCII.GetBytes($"{Crc32.HashToUInt32(bytes):x8} "));
            file.Write(bytes);
            file.WriteByte((byte)'\n');
        }

        var path = Scratch.Write("journal", file.ToArray());
        using var journal = SurveyJournal.Open(path, "given", new SurveyOptions(), TimeProvider.System);
        _ = journal.Read("a.jpg");
        _ = journal.BegunInVain("a.jpg");
    }

    internal static void Sidecar(byte[] input) => _ = ObjectSidecar.Read(Scratch.Write("objects.csv", input)).Find("a.jpg", "a.jpg");

    internal static void Job(byte[] input) => _ = PhotoJob.From(input);

    internal static void MarkPicture(byte[] input) => _ = GrayPng.Read(input);

    /// <summary>A pattern, and behind a line end a text that is sought nearly.</summary>
    internal static void Search(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        var parts = text.Split(PatternMark, 2);
        _ = NearText.Edits(Folding.Of(parts[^1]), "TOLLIVER LONDON");
        _ = new LetterPattern(parts[0]).IsIn([.. Line.Select(place => place)]);
    }
}
