package frame_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame"
)

// FuzzInfluenceLines: the influence lines of shear and deflection are what one newton set
// down at a place does at the other, from either side where they jump; and the
// extremes of a stretch are no less than what is found in it.
func FuzzInfluenceLines(f *testing.F) {
	f.Add(uint64(1), 0.3, 0.7, 0.1, 0.9)
	f.Add(uint64(4), 0.5, 0.5, 0.9, 0.1)
	f.Add(uint64(2), 0.0, 1.0, -5.0, 5e-324)
	f.Add(uint64(3), math.NaN(), 0.5, math.NaN(), math.Inf(1))
	f.Fuzz(func(t *testing.T, seed uint64, x, a, from, to float64) {
		b := randomBeam(rand.New(rand.NewPCG(seed, 11)), linear)
		b.Loads = nil
		x, a, from, to = x*b.Length, a*b.Length, from*b.Length, to*b.Length
		shear, err := b.ShearInfluence(x)
		if err != nil {
			known(t, err)
			if x >= 0 && x <= b.Length {
				t.Fatal(err)
			}
			return
		}
		sag, err := b.DeflectionInfluence(x)
		if err != nil {
			t.Fatal(err)
		}
		if !(a >= 0 && a <= b.Length) {
			if !math.IsNaN(a) && (shear.Before(a) != shear.Before(math.Min(math.Max(a, 0), b.Length)) || math.IsNaN(sag.Before(a))) {
				t.Fatalf("off the beam, at %g, not the nearer end's", a)
			}
			return
		}
		b.Loads = []frame.Load{frame.Point(a, 1)}
		l := solve(t, b)
		near(t, "deflection", sag.At(a), l.At(x).Deflection, 1e-7*(math.Abs(l.At(x).Deflection)+sizes(l).Deflection))
		near(t, "deflection before", sag.Before(a), sag.At(a), 1e-7*(math.Abs(sag.At(a))+sizes(l).Deflection))
		if math.Abs(a-x) > 1e-6*b.Length {
			near(t, "shear", shear.At(a), l.At(x).Shear, 1e-6*(1+sizes(l).Shear))
			near(t, "shear before", shear.Before(a), l.Before(x).Shear, 1e-6*(1+sizes(l).Shear)+jumpAt(b, x))
		}
		if d := l.Before(from); math.IsNaN(from) != math.IsNaN(d.Moment) {
			t.Fatalf("before %g: %v", from, d)
		}
		if math.IsNaN(from) || math.IsNaN(to) {
			return
		}
		e := l.ExtremesWithin(from, to)
		whole := l.Extremes()
		if e.Sag.Moment > whole.Sag.Moment+1e-9*sizes(l).Moment || e.Hog.Moment < whole.Hog.Moment-1e-9*sizes(l).Moment {
			t.Fatalf("%g to %g has more than the whole: %v, %v", from, to, e, whole)
		}
		if from < to {
			mid := l.At(math.Min(math.Max((from+to)/2, 0), b.Length))
			if from >= 0 && to <= b.Length && (mid.Moment > e.Sag.Moment+1e-9*sizes(l).Moment || mid.Moment < e.Hog.Moment-1e-9*sizes(l).Moment) {
				t.Fatalf("%v between %g and %g, beyond %v", mid, from, to, e)
			}
		}
	})
}

// jumpAt is what the shear may jump by at a support that stands at a place.
func jumpAt(b frame.Beam, x float64) float64 {
	for _, r := range b.Rests {
		if math.Abs(r.At-x) <= 1e-9*b.Length {
			return math.Inf(1)
		}
	}
	return 0
}
