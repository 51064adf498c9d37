using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Likeness;
using Microsoft.Data.Sqlite;

namespace InscriptionLab.Benchmarks;

/// <summary>
/// A catalogue file with as many marks as asked for: how long it takes to open it, to ask the first question by likeness (which loads every embedding) and
/// later ones. The file is new and may lie in the system's memory; the marks' pictures have the size of those of real lines, the embeddings are drawn at random,
/// because the search compares every one whatever they say.
/// </summary>
internal static class LikenessAtScale
{
    /// <summary>Bytes of a mark's picture: the mean of 61 lines of sample photos.</summary>
    private const int PictureBytes = 16_000;

    private const int Questions = 20;
    private const int Asked = 25;

    internal static void Run(int marks, TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("inscriptionlab-bench-").FullName;
        try
        {
            var file = Path.Combine(folder, "marks.db");
            Catalogue.Open(file, TimeProvider.System);
            Fill(file, marks);
            SqliteConnection.ClearAllPools();
            var clock = Stopwatch.StartNew();
            var catalogue = Catalogue.Open(file, TimeProvider.System);
            var open = clock.Elapsed.TotalMilliseconds;
            var first = Ask(catalogue, 1);
            var later = Enumerable.Range(2, Questions).Select(number => Ask(catalogue, number * (marks / (Questions + 3)))).Order().ToArray();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"catalogue of {marks} marks, {new FileInfo(file).Length / 1e6:0} MB: opened in {open:0} ms, first question by likeness {first:0} ms, {Questions} later ones {later[Questions / 2]:0} ms in the median, {later[^1]:0} ms at most; load {File.ReadAllText("/proc/loadavg").Split(' ')[0]}"));
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Asks as the page does: the line's embedding, the index, the likest.</summary>
    private static double Ask(Catalogue catalogue, long examination)
    {
        var clock = Stopwatch.StartNew();
        var line = catalogue.Likeness.LineOf(examination, 0)!.Value;
        var likest = catalogue.Likeness.Load().Nearest([.. catalogue.Likeness.Of(line)!], Asked);
        return likest[0].Id == line ? clock.Elapsed.TotalMilliseconds : throw new InvalidOperationException("A mark is most like itself.");
    }

    private static void Fill(string file, int marks)
    {
        var random = new Random(17);
        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var transaction = connection.BeginTransaction();
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = """
            INSERT INTO objects (id, key, created_at) VALUES (@id, 'object ' || @id, 0);
            INSERT INTO photos (id, object_id, sha256, file, width, height, added_at) VALUES (@id, @id, 'photo ' || @id, 'photo.jpg', 1600, 1200, 0);
            INSERT INTO examinations (id, uid, photo_id, kind, made_at, added_at, program, model, list, list_sha256, fingerprint, outcome, record_sha256, record) VALUES (@id, 'uid ' || @id, @id, 'examination', 0, 0, '', '', '', '', 'print ' || @id, 'agrees', '', @record);
            INSERT INTO lines (id, examination_id, position, text, folded, letters) VALUES (@id, @id, 0, 'Kesselbrandt', 'kesselbrandt', '[]');
            INSERT INTO marks (id, line_id, embedding, boxes, picture) VALUES (@id, @id, @embedding, '[]', @picture);
            INSERT INTO changes (made_at, by_whom, kind, target, sentence) VALUES (0, 'survey', 'added', @id, 'photo.jpg was added.');
            """;
        var (id, embedding, picture) = (command.Parameters.Add("@id", SqliteType.Integer), command.Parameters.Add("@embedding", SqliteType.Blob), command.Parameters.Add("@picture", SqliteType.Blob));
        command.Parameters.AddWithValue("@record", new string('r', 6000));
        var dimensions = new MarkEmbedder(new MarkEmbedderOptions()).Dimensions;
        picture.Value = new byte[PictureBytes];
        for (var number = 1; number <= marks; number++)
        {
            var bytes = new byte[dimensions];
            random.NextBytes(bytes);
            (id.Value, embedding.Value) = (number, bytes);
            command.ExecuteNonQuery();
        }

        transaction.Commit();
    }
}
