using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using InscriptionLab.Cataloguing;
using InscriptionLab.Evidence;
using InscriptionLab.Imaging;
using InscriptionLab.Likeness;

namespace InscriptionLab.Fuzz;

/// <summary>What the search for surprises starts from: one or a few sound inputs for each target, and the regression files beside this program.</summary>
public static class Seeds
{
    private const string Record = """{"file":"a.jpg","sha256":"00","lines":[{"text":"Tolliver","baseline":[[1,2],[3,4]],"letters":[{"char":"T","probability":0.98,"alternatives":[{"char":"F","probability":0.01}],"quad":[[1,2],[3,2],[3,4],[1,4]]}]}],"tube":{"diameter_px":210.5},"finding":{"outcome":"differs","nearest":[{"form":"Tolliver","maker":"Tolliver","status":"attested","differences":[{"attested":"e","read":"o","probability":0.99}]}],"reasons":["One letter differs."]},"warnings":["Small letters."]}""";

    /// <summary>Writes them.</summary>
    /// <param name="folder">Gets one folder a target.</param>
    public static void Write(string folder)
    {
        foreach (var name in Targets.All.Keys)
        {
            var own = Directory.CreateDirectory(Path.Combine(folder, name)).FullName;
            var number = 0;
            foreach (var seed in Of(name))
            {
                File.WriteAllBytes(Path.Combine(own, $"seed-{++number}"), seed);
            }
        }
    }

    /// <summary>Gives the sound inputs of a target.</summary>
    public static IEnumerable<byte[]> Of(string name) => name switch
    {
        "list" or "list-round" => Texts(
            "form,maker,status,style,address,from,to,source,note,signature_position,signature_direction,layout,certainty,partners,successor_of,wording,letter_height_mm,letter_spacing\n\"Tolliver, LONDON\",Tolliver,attested,roman,12 Quay,1780,1800,ledger,\"a \"\"note\"\"\",second draw,toward-objective,one-line,certain,,,,2.4,0.85\n",
            "form;maker;status\nTolliver;Tolliver;attested\n",
            """{"name":"n","note":"x","forms":[{"form":"Tolliver","maker":"T","status":"attested","from":1780,"to":1800,"letter_height_mm":2.4}]}"""),
        "mapping" => Texts("""{"columns":{"form":"mark","maker":"house","from":"year"},"constants":{"status":"attested","source":"a table"},"words":{"status":{"own":"attested"}}}"""),
        "table" => Texts("mark,house,year,kind,other\nTolliver,Tolliver,about 1788,own,x\n"),
        "linked-art" => Texts("""{"items":[{"type":"HumanMadeObject","id":"https://x.example/1","_label":"a","carries":[{"content":"Tolliver\nLONDON"}],"referred_to_by":[{"classified_as":[{"id":"http://vocab.getty.edu/aat/300028705"}],"content":"Tolliver"}],"produced_by":{"part":[{"carried_out_by":[{"_label":"Tolliver"}]}],"carried_out_by":[{"identified_by":[{"content":"T"}]}],"timespan":{"begin_of_the_begin":"1780-01-01","end_of_the_end":"1800"}}},{"type":"Group","_label":"T","identified_by":[{"type":"Name","content":"Tolliver"}],"residence":[{"_label":"Quay"}],"formed_by":{"timespan":{"begin_of_the_begin":"1770"}}}]}"""),
        "history" => Texts("""{"at":"2026-01-02T03:04:05","by":"me","what":"merge","before":null,"after":{"form":"Tolliver","maker":"T","status":"attested"}}""" + "\n"),
        "checklist" => [Encoding.UTF8.GetBytes(ConstructionTable.DefaultText()[..3990]), .. Texts("feature,observation,question,part,from,to,coverage,basis,source,remark\na,b,c,d,1700,1800,0.9,record,s,r\n")],
        "construction" => Texts("feature,observation,choices,question\nsignature_direction,toward-objective,,\nsignature_position,second draw,,\nletter_height_mm,2.4,,\n"),
        "record" => Texts(Record),
        "archive" => [Archive()],
        "journal" => Texts("""{"settings":"given"}""" + "\n" + """{"begins":"a.jpg"}""" + "\n" + """{"file":"a.jpg","bytes":12,"changed_at":34,"sha256":"00","outcome":"agrees","text":"T","warnings":["w"],"perceptual_hash":17,"record":{"a":1}}""" + "\n" + """{"file":"b.jpg","sha256":"00","same":true,"fault":"cut off"}"""),
        "sidecar" => Texts("file,object,offered_as\na.jpg,one,Tolliver\n\"b,.jpg\",\"two \"\"2\"\"\",\n"),
        "job" => Texts("""{"file":"a.jpg","sha256":"00","object_key":"a","offered_as":null,"bytes":1,"changed_at":2}"""),
        "mark-picture" => [GrayPng.Write(new GrayImage(5, 3, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]))],
        "search" => Texts("to?l*r\nTölliver", "T.LL*"),
        "models" => [File.ReadAllBytes(Path.Combine(System.AppContext.BaseDirectory, "models", "models.json"))],
        "calibration" => Texts("""{"width":640,"height":480,"focal_x":500.5,"focal_y":500,"principal_x":320,"principal_y":240,"distortion":[0.1,0.2,0,0,0],"rms_pixels":0.2,"photos":9}"""),
        "photo-header" or "photo" => Photos.All,
        "values" => Texts("1,2,3,4/5,6,7,8.5", "10,20,30.5,40,-12,0.6", "upper-right:25", "135:20", "3/17", "3:10:4", "checkerboard:5mm", "rule:1/16inch", "id1", "disc:23.25mm@820,410", "points:50mm@210,640/790,655", "1 5/16", "Host=localhost;Database=c;Username=me;Port=5432"),
        "command-line" => Texts("examine\na.jpg\n--json\n-\n--prior\n3/17", "measure\na.jpg\n--scale=checkerboard:5mm", "catalogue\nsearch\n--near\nTolliver\n--edits\n2", "survey\nfolder\n--workers\n2", "thread\na.jpg\n--scale\nrule:1mm", "list\nimport\na.csv\n--mapping\nm.json"),
        "optics" => Texts("--objective\n40mm\n--stop\n1/2inch\n--through-glass\n--stop-distance\n20mm\n--focal\n600mm", "--objective\n1.6inch\n--focal\n60cm\n--magnification\n20\n--index\n1.52\n--also-written\n40mm", "--objective\n40mm\n--exit-pupil\n2mm\n--abbe\n60,36\n--eyepiece-focal\n20mm"),
        _ => [],
    };

    private static IEnumerable<byte[]> Texts(params string[] texts) => texts.Select(Encoding.UTF8.GetBytes);

    /// <summary>A catalogue with one photo in it, exported.</summary>
    private static byte[] Archive()
    {
        var catalogue = Catalogue.Open(Scratch.PathOf("seed.db"), System.TimeProvider.System);
        catalogue.Intake.Add(
            new CatalogueEntry(
                EntryKind.Examination,
                "one",
                new PhotoFacts("a.jpg", new string('0', 64), 640, 480, 17),
                new EntryVersions("0.1.0", "m", "l", new string('1', 64)),
                System.DateTimeOffset.UnixEpoch,
                Record,
                [],
                []),
            "me");
        using var text = new StringWriter();
        catalogue.Archive.Export(text);
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
