using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Surveys;

/// <summary>Counts findings: by photo, by object, and by the name under which objects are offered.</summary>
internal sealed class ObjectFindings
{
    private const string Agrees = "agrees";
    private const string Differs = "differs";
    private const string Undecided = "undecided";
    private const string NothingRead = "nothing-read";

    private static readonly string[] Outcomes = [Agrees, Differs, Undecided, NothingRead];

    private readonly Dictionary<string, int> _photos = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (string OfferedAs, HashSet<string> Outcomes, int Photos)> _objects = new(StringComparer.Ordinal);

    /// <summary>Counts one row; a file with the same bytes as another counts for its object but not as a photo.</summary>
    internal void Add(SurveyRow row)
    {
        if (row.Outcome == SurveyRow.Unusable)
        {
            return;
        }

        if (row.SameAs.Length == 0)
        {
            _photos[row.Outcome] = _photos.GetValueOrDefault(row.Outcome) + 1;
        }

        if (!_objects.TryGetValue(row.ObjectKey, out var known))
        {
            known = (row.OfferedAs, new HashSet<string>(StringComparer.Ordinal), 0);
        }

        known.Outcomes.Add(row.Outcome);
        _objects[row.ObjectKey] = known with { OfferedAs = known.OfferedAs.Length > 0 ? known.OfferedAs : row.OfferedAs, Photos = known.Photos + 1 };
    }

    /// <summary>Gives each object with its finding over all its photos, in the order of their names.</summary>
    internal IEnumerable<(string ObjectKey, string OfferedAs, string Outcome, int Photos)> Objects() =>
        _objects.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => (pair.Key, pair.Value.OfferedAs, Over(pair.Value.Outcomes), pair.Value.Photos));

    /// <summary>Gives the counts.</summary>
    internal ImmutableArray<FindingCount> Counts()
    {
        var objects = Objects().ToList();
        var counts = ImmutableArray.CreateBuilder<FindingCount>();
        counts.AddRange(Count("photos", _photos.GetValueOrDefault, _photos.Values.Sum()));
        counts.AddRange(Count("objects", outcome => objects.Count(item => item.Outcome == outcome), objects.Count));
        foreach (var offered in objects.Where(item => item.OfferedAs.Length > 0).GroupBy(item => item.OfferedAs, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            var group = offered.ToList();
            counts.AddRange(Count($"offered as {offered.Key}", outcome => group.Count(item => item.Outcome == outcome), group.Count));
        }

        return counts.ToImmutable();
    }

    /// <summary>Gives the finding over all photos of one object: photos that contradict each other leave it undecided; one that decides outweighs those that cannot tell.</summary>
    internal static string Over(IReadOnlySet<string> outcomes) => (outcomes.Contains(Agrees), outcomes.Contains(Differs)) switch
    {
        (true, true) => Undecided,
        (true, false) => Agrees,
        (false, true) => Differs,
        _ => outcomes.Contains(Undecided) ? Undecided : NothingRead,
    };

    private static IEnumerable<FindingCount> Count(string group, Func<string, int> count, int of) =>
        Outcomes.Select(outcome => new FindingCount(group, outcome, count(outcome), of, WilsonInterval.Of(count(outcome), of)));
}
