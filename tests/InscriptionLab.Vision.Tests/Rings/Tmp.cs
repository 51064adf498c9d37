using System; using System.Diagnostics; using System.Linq; using System.Threading; using InscriptionLab.Outcomes; using InscriptionLab.Strips; using InscriptionLab.Vision.Rings; using InscriptionLab.Vision.Tests.Rendering; using OpenCvSharp; using Xunit;
namespace InscriptionLab.Vision.Tests.Rings;
public sealed class TmpTests { 
[Fact(Explicit = true)] public void Find() { var n=0; foreach (var r in RingCases.Take(24,7)) { var p=r.Draw(); var t=Stopwatch.StartNew(); var o=new RingFinder().Run(p, CancellationToken.None); var ms=t.ElapsedMilliseconds; var e=r.Scene.EllipseOf(1);
 var s=$"{n++} {ms}ms tilt {r.Scene.Tilt*57.3:0} inner {r.Scene.Inner:0.00} closed {r.Closed} true ({e.Centre.X:0.0},{e.Centre.Y:0.0}) {e.SemiMajor.Pixels:0.0} {e.SemiMinor.Pixels:0.0}";
 if (o is Outcome<RingFace>.Found f) { var g=f.Value; var pl=g.Plane; double worst=0; for(int k=0;k<36;k++){ var q=r.Scene.Project((1+r.Scene.Inner)/2, k*Math.PI/18); var a=pl.ToPlane(q)!.Value; worst=Math.Max(worst, Math.Abs(a.Radius-(1+r.Scene.Inner)/2)); } Console.WriteLine(s+$" got ({g.Outer.Centre.X:0.0},{g.Outer.Centre.Y:0.0}) {g.Outer.SemiMajor.Pixels:0.0} {g.Outer.SemiMinor.Pixels:0.0} in {pl.InnerRadius:0.000} midradiuserr {worst:0.000} {string.Join(' ',g.Notes)}"); } else Console.WriteLine(s+" NONE"); } }
[Fact(Explicit = true)] public void Sheet() { var f = System.IO.Directory.GetFiles("/tmp/rings", "ring*.jpg").OrderBy(x=>x, System.StringComparer.Ordinal).ToArray();
 using var sheet = new Mat(4*360, 6*433, MatType.CV_8UC3, Scalar.All(0));
 for (var i=0;i<24;i++) { using var m = Cv2.ImRead(f[i]); using var s = new Mat(); Cv2.Resize(m, s, new Size(433,360), 0, 0, InterpolationFlags.Area); s.CopyTo(new Mat(sheet, new Rect((i%6)*433,(i/6)*360,433,360))); }
 Cv2.ImWrite("/tmp/rings/sheet.png", sheet); using var one = Cv2.ImRead(f[3]); Cv2.ImWrite("/tmp/rings/r3.png", one); } }
