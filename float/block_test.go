package float

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// corners returns the wet volume by inclusion and exclusion over the corners:
//
//	V = Σ ± max(0, depth of the corner)³/(6 |n₁ n₂ n₃|)
//
// exact, but useless where a component of n is small.
func corners(b Block, h float64, n r3.Vec) float64 {
	sum := 0.0
	for i := range 8 {
		sign, at := 1.0, h
		for k, f := range [3]float64{n.X * b.Length / 2, n.Y * b.Width / 2, n.Z * b.Height / 2} {
			if i>>k&1 == 1 {
				at += math.Abs(f)
				sign = -sign
			} else {
				at -= math.Abs(f)
			}
		}
		if at < 0 {
			sum += sign * math.Pow(-at, 3)
		}
	}
	return sum / (6 * math.Abs(n.X*n.Y*n.Z))
}

func TestBlockVolume(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 1))
	for range 2000 {
		b := Block{0.5 + rng.Float64(), 0.5 + rng.Float64(), 0.5 + rng.Float64()}
		n := r3.Unit(r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()})
		if min(math.Abs(n.X), math.Abs(n.Y), math.Abs(n.Z)) < 0.05 {
			continue
		}
		h := rng.NormFloat64() * 0.4
		got, want := b.Wet(h, n).Volume, corners(b, h, n)
		if math.Abs(got-want) > 1e-11 {
			t.Fatalf("%+v at %v, %v: %v, want %v", b, h, n, got, want)
		}
	}
}

// The first moments, and the waterplane, in small cubes.
func TestBlockAgainstCubes(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 1))
	const cells = 70
	for run := range 25 {
		b := Block{0.5 + rng.Float64(), 0.5 + rng.Float64(), 0.5 + rng.Float64()}
		n := r3.Unit(r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64() * math.Pow(0.1, float64(run%3)), Z: rng.NormFloat64()})
		h := rng.NormFloat64() * 0.2
		var want Wet
		cell := b.Volume() / (cells * cells * cells)
		for i := range cells {
			for j := range cells {
				for k := range cells {
					p := r3.Vec{
						X: b.Length * ((float64(i)+0.5)/cells - 0.5),
						Y: b.Width * ((float64(j)+0.5)/cells - 0.5),
						Z: b.Height * ((float64(k)+0.5)/cells - 0.5),
					}
					if h+r3.Dot(n, p) < 0 {
						want.Volume += cell
						want.VolumeMoment = r3.Add(want.VolumeMoment, r3.Scale(cell, p))
					}
				}
			}
		}
		got := b.Wet(h, n)
		// The waterplane is what the volume and its moments lose as the block rises.
		const step = 1e-5
		up, down := b.Wet(h+step, n), b.Wet(h-step, n)
		want.Plane = (down.Volume - up.Volume) / (2 * step)
		want.PlaneMoment = r3.Scale(1/(2*step), r3.Sub(down.VolumeMoment, up.VolumeMoment))
		near := func(name string, a, b, tolerance float64) {
			if !(math.Abs(a-b) <= tolerance) {
				t.Errorf("run %d: %s %v, want %v", run, name, a, b)
			}
		}
		near("volume", got.Volume, want.Volume, 3e-3)
		near("moment x", got.VolumeMoment.X, want.VolumeMoment.X, 3e-3)
		near("moment y", got.VolumeMoment.Y, want.VolumeMoment.Y, 3e-3)
		near("moment z", got.VolumeMoment.Z, want.VolumeMoment.Z, 3e-3)
		near("plane", got.Plane, want.Plane, 1e-6)
		near("plane moment x", got.PlaneMoment.X, want.PlaneMoment.X, 1e-6)
		near("plane moment y", got.PlaneMoment.Y, want.PlaneMoment.Y, 1e-6)
		near("plane moment z", got.PlaneMoment.Z, want.PlaneMoment.Z, 1e-6)
		// The second moments likewise, from the first ones as n turns:
		// d(∫r dV)/dn = -∫ r rᵀ dA.
		dirs := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
		for i, e := range dirs {
			// Wet brings the plane to a unit normal; the region stays the same.
			p, q := b.Wet(h, r3.Add(n, r3.Scale(step, e))), b.Wet(h, r3.Sub(n, r3.Scale(step, e)))
			d := r3.Scale(1/(2*step), r3.Sub(q.VolumeMoment, p.VolumeMoment))
			for j, v := range [3]float64{d.X, d.Y, d.Z} {
				near("plane inertia", got.along(e, dirs[j]), v, 1e-6)
				_ = i
			}
		}
	}
}

// A corner dipped by very little keeps its digits: V = d³/(6 n₁ n₂ n₃).
func TestBlockCorner(t *testing.T) {
	b := Block{1, 2, 0.5}
	n := r3.Vec{X: 0.36, Y: 0.48, Z: 0.8}
	reach := 0.36*0.5 + 0.48*1 + 0.8*0.25
	for _, d := range []float64{1e-2, 1e-4, 1e-6} {
		depth := reach - (reach - d)
		got := b.Wet(reach-d, n).Volume
		want := depth * depth * depth / (6 * 0.36 * 0.48 * 0.8)
		if math.Abs(got-want) > 1e-12*want*0.1/d*10 {
			t.Errorf("depth %v: %v, want %v", d, got, want)
		}
	}
	// Hardly tilted is level.
	flat, tilted := b.Wet(0.1, r3.Vec{Z: 1}), b.Wet(0.1, r3.Unit(r3.Vec{X: 1e-12, Y: -1e-13, Z: 1}))
	if math.Abs(flat.Volume-2*0.15) > 1e-15 || math.Abs(tilted.Volume-flat.Volume) > 1e-15 {
		t.Errorf("%v and %v, want 0.3", flat.Volume, tilted.Volume)
	}
	// dB/d(tilt) = -I/V: 2·1³/12 about y for a tilt toward x.
	if got, want := tilted.VolumeMoment.X, -1e-12*2*1/12; math.Abs(got-want) > 1e-17 {
		t.Errorf("moment %v, want %v", got, want)
	}
}
