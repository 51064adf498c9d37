using System.Collections.Generic;

namespace InscriptionLab.Vision.Cells;

/// <summary>The circles inside a rim.</summary>
/// <param name="Chosen">Clear aperture and stop, as far as they were seen.</param>
/// <param name="Others">Circles as well traced that were given no role, the largest first.</param>
internal sealed record InnerFinds(List<InnerCircle> Chosen, List<InnerCircle> Others);
