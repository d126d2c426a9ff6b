package rack_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

// FuzzExtremes: nothing on a line of one piece is beyond its extremes, whatever its loads.
func FuzzExtremes(f *testing.F) {
	f.Add(3.0, 100.0, 40.0, -30.0, 10.0, -20.0, 50.0, 0.4)
	f.Add(1e-3, 0.0, 0.0, 0.0, 1e9, -1e9, 0.0, 1.0)
	f.Add(math.NaN(), math.Inf(1), 1.0, 5e-324, 0.0, 0.0, -1.0, 2.0)
	f.Fuzz(func(t *testing.T, length, axial, shear, moment, a, b, q, at float64) {
		l := rack.Line{EA: 1e7, EI: 1e4, Pieces: []rack.Piece{{To: length, Along: [2]float64{a, b}, Across: [2]float64{q, -q}, Start: rack.Diagram{Axial: axial, Shear: shear, Moment: moment}}}}
		for _, x := range []float64{length, axial, shear, moment, a, b, q, at} {
			if !(math.Abs(x) < 1e12) {
				_, _ = l.Extremes(), l.At(at) // they end
				return
			}
		}
		if !(length > 1e-3 && at >= 0 && at <= 1) {
			return
		}
		e, d := l.Extremes(), l.At(at*length)
		size := math.Abs(axial) + math.Abs(shear) + math.Abs(moment) + (math.Abs(a)+math.Abs(b)+math.Abs(q))*length
		tol := 1e-9 * size * (1 + length)
		if d.Axial > e.Pull.Axial+tol || d.Axial < e.Push.Axial-tol || math.Abs(d.Shear) > math.Abs(e.Shear.Shear)+tol || d.Moment > e.Right.Moment+tol || d.Moment < e.Left.Moment-tol {
			t.Fatalf("%v beyond %+v", d, e)
		}
	})
}

// FuzzBetween: a force prints with its unit and is sure only where its ends are one; the
// joint that pulls most is one of the solution's, and none pulls more.
func FuzzBetween(f *testing.F) {
	f.Add(-3.0, 900.0, 2, 0, 30.0)
	f.Add(5.0, 5.0, 99, 7, -1.0)
	f.Add(math.NaN(), math.Inf(1), -4, -1, 1e300)
	f.Fuzz(func(t *testing.T, least, most float64, kind, system int, other float64) {
		b := rack.Between{Least: least, Most: most}
		if text := b.Format(measure.Kind(kind), measure.System(system)); text == "" || strings.Contains(text, "NaN") {
			t.Fatalf("%+v prints as %q", b, text)
		}
		if p := b.Peak(); !math.IsNaN(least+most) && math.Abs(p) != math.Max(math.Abs(least), math.Abs(most)) {
			t.Fatalf("the peak of %+v is %g", b, p)
		}
		s := rack.Solution{Joints: []rack.Joint{{Place: "a", Pull: b}, {Place: "b", Pull: rack.Between{Most: other}}}}
		j, ok := s.Pull()
		if ok != (most > 0 || other > 0) || ok && (j.Pull.Most < most*(1-1e-8) || j.Pull.Most < other*(1-1e-8)) {
			t.Fatalf("%+v pulls most of %g and %g, %v", j, most, other, ok)
		}
	})
}
