package moor

import (
	"math"
	"math/rand/v2"
	"testing"
)

// some returns a line that no sum flatters, and ends that it reaches.
func some(r *rand.Rand) (l *Line, reach, rise float64) {
	l = &Line{Shore: r.IntN(2) == 0, Pieces: []Piece{{Length: 3 + 20*r.Float64(), Weight: math.Exp(5*r.Float64() - 1)}}}
	chord := l.Pieces[0].Length * (0.8 + 0.19*r.Float64())
	angle := 0.9 * r.Float64()
	if r.IntN(2) == 0 {
		l.Pieces[0].Stretch = math.Exp(4 + 8*r.Float64())
		chord *= 1.3
	}
	return l, chord * math.Cos(angle), chord * math.Sin(angle)
}

// The search starts near where it ends, so that it ends soon: the pull within a third
// of where an even line hangs free, and from there Newton gets to the last digits.
func TestGuess(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	lo, hi, lov, hiv := 1.0, 1.0, 1., 1.
	for range 2000 {
		l, reach, rise := some(r)
		sums, err := l.check()
		if err != nil {
			t.Fatal(err)
		}
		h, err := l.At(reach, rise, Hang{})
		if err != nil {
			t.Fatal(err)
		}
		if h.Pull == 0 || h.Regime == Touching {
			continue
		}
		chord := math.Hypot(reach, rise)
		g, v := l.guess(&sums, chord, reach, rise)
		lo, hi = min(lo, g/h.Pull), max(hi, g/h.Pull)
		lov, hiv = min(lov, v/h.Down), max(hiv, v/h.Down)
		var f span
		if !l.quick(&g, &v, reach, rise, 4e-16*(sums.length+chord), &f) {
			t.Errorf("%+v to %g, %g: no end", l, reach, rise)
		}
		if math.Abs(g/h.Pull-1) > 1e-9 || math.Abs(v/h.Down-1) > 1e-9 {
			t.Errorf("%+v to %g, %g: pulls %g, %g, want %g, %g", l, reach, rise, g, v, h.Pull, h.Down)
		}
		hs, vs := l.steady(&sums, reach, rise)
		if math.Abs(hs/h.Pull-1) > 1e-7 || math.Abs(vs-h.Down) > 1e-7*h.Pull {
			t.Errorf("%+v to %g, %g: bracketed pulls %g, %g, want %g, %g", l, reach, rise, hs, vs, h.Pull, h.Down)
		}
	}
	if lo < 0.6 || hi > 1.5 || lov < 0.8 || hiv > 1.25 {
		t.Errorf("starts at %.3g to %.3g of the level pull, %.3g to %.3g of the other", lo, hi, lov, hiv)
	}
}

// A step downhill solves its equations where the matrix is positive, in whatever
// units, and otherwise with as much more on its diagonal as it says.
func TestDownhill(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for n := range 3000 {
		var root, k [3][3]float64
		for i := range 3 {
			for j := range 3 {
				root[i][j] = r.NormFloat64()
			}
		}
		for i := range 3 {
			for j := range 3 {
				for m := range 3 {
					k[i][j] += root[m][i] * root[m][j]
				}
			}
		}
		arm, unit := 1+4*r.Float64(), math.Pow(10, 24*r.Float64()-12)
		negative := n%2 == 1
		for i := range 3 {
			if negative {
				k[i][i] -= 0.6 * []float64{1, 1, arm * arm}[i]
			}
			for j := range 3 {
				k[i][j] *= unit
			}
		}
		if k[0][0]+k[1][1] <= 0 {
			continue // no mooring pushes whichever way it is moved
		}
		load := [3]float64{r.NormFloat64() * unit, r.NormFloat64() * unit, r.NormFloat64() * unit}
		d := downhill(k, load, arm, 1e-3*unit, 0)
		var more [3]float64
		slope := 0.0
		for i := range 3 {
			more[i] = load[i]
			for j := range 3 {
				more[i] -= k[i][j] * d[j]
			}
			more[i] /= unit
			slope += load[i] * d[i] / unit
		}
		shift := more[0] / d[0]
		if !negative {
			shift = 0
		}
		size := math.Abs(d[0]) + math.Abs(d[1]) + math.Abs(d[2])
		tol := 1e-9 * size * (1 + math.Abs(shift)) * (1 + arm*arm)
		if math.Abs(more[0]-shift*d[0]) > tol || math.Abs(more[1]-shift*d[1]) > tol || math.Abs(more[2]-shift*arm*arm*d[2]) > tol {
			t.Fatalf("case %d: %v %v %g: %v leaves %v, shift %g", n, k, load, arm, d, more, shift)
		}
		if !(slope > 0) {
			t.Fatalf("case %d: slope %g", n, slope)
		}
	}
}
