package moor_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/floewright/float/moor"
)

// plainRest finds where lines hold a dock as one writes it first: each line from its own
// formulas afresh, Newton's steps with a Jacobian by differences, no step over 0.2.
func plainRest(m *moor.Mooring, level float64, load moor.Load) (at [3]float64, ok bool) {
	left := func(at [3]float64) (sum [3]float64, ok bool) {
		s, c := math.Sincos(at[2])
		sum = [3]float64{load.X, load.Y, load.Turn}
		for i := range m.Ties {
			t := &m.Ties[i]
			x, y := c*t.At[0]-s*t.At[1], s*t.At[0]+c*t.At[1]
			dx, dy := t.Foot[0]-at[0]-x, t.Foot[1]-at[1]-y
			reach := math.Hypot(dx, dy)
			h, err := t.Line.At(reach, level+t.Height-t.FootZ, moor.Hang{})
			if err != nil {
				return sum, false
			}
			fx, fy := h.Pull*dx/reach, h.Pull*dy/reach
			sum[0], sum[1], sum[2] = sum[0]+fx, sum[1]+fy, sum[2]+x*fy-y*fx
		}
		return sum, true
	}
	const d = 1e-6
	for range 100 {
		now, ok := left(at)
		if !ok {
			return at, false
		}
		j := mat.NewDense(3, 3, nil)
		for k := range 3 {
			to := at
			to[k] += d
			then, ok := left(to)
			if !ok {
				return at, false
			}
			for i := range 3 {
				j.Set(i, k, (then[i]-now[i])/d)
			}
		}
		var step mat.VecDense
		if step.SolveVec(j, mat.NewVecDense(3, now[:])) != nil {
			return at, false
		}
		most := mat.Norm(&step, math.Inf(1))
		for k := range 3 {
			at[k] -= step.AtVec(k) * min(1, 0.2/most)
		}
		if most < 1e-8 {
			return at, true
		}
	}
	return at, false
}

func surveyed() (m *moor.Mooring, levels []float64, storm moor.Storm, directions int) {
	for k := range 20 {
		levels = append(levels, -0.8+0.06*float64(k))
	}
	return sixLines(), levels, steady(2500), 72
}

// BenchmarkSurvey moors six lines over 72 directions and 20 levels, with all their checks.
// Under 60 ms.
func BenchmarkSurvey(b *testing.B) {
	m, levels, storm, directions := surveyed()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Survey(levels, storm, directions); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSurveyPlain is the baseline: the same rests without a check.
func BenchmarkSurveyPlain(b *testing.B) {
	m, levels, storm, directions := surveyed()
	b.ReportAllocs()
	for b.Loop() {
		for _, level := range levels {
			for k := range directions {
				load, err := storm(2 * math.Pi * float64(k) / float64(directions))
				if err != nil {
					b.Fatal(err)
				}
				if _, ok := plainRest(m, level, load); !ok {
					b.Fatalf("no rest at %g m, direction %d", level, k)
				}
			}
		}
	}
}

// TestPlainRest: the dock rests where the baseline has it.
func TestPlainRest(t *testing.T) {
	m, levels, storm, directions := surveyed()
	for _, level := range levels {
		for k := range directions {
			load, err := storm(2 * math.Pi * float64(k) / float64(directions))
			if err != nil {
				t.Fatal(err)
			}
			want, ok := plainRest(m, level, load)
			if !ok {
				t.Fatalf("no rest at %g m, direction %d", level, k)
			}
			p, err := m.Rest(level, load)
			if err != nil {
				t.Fatal(err)
			}
			for i, got := range [3]float64{p.X, p.Y, p.Turn} {
				if !(math.Abs(got-want[i]) <= 1e-6) {
					t.Errorf("%g m, direction %d: coordinate %d is %.9f, plainly %.9f", level, k, i, got, want[i])
				}
			}
		}
	}
}
