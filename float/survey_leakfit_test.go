package float

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestEvidence compares the evidence for a leak with its definition, the mean of the
// likelihood over all amounts that the drum can hold, summed over 2,000 of them: the
// right drum to 5 %, the wrong ones, far out, to 2 % of the logarithm.
func TestEvidence(t *testing.T) {
	plan := &Platform{Density: 1000, Weights: []Weight{{Mass: 420, At: r3.Vec{Z: -0.1}}}}
	for _, x := range []float64{-1.9, -0.6, 0.6, 1.9} {
		for _, y := range []float64{-0.85, 0.85} {
			plan.Units = append(plan.Units, Unit{Body: Cylinder{Diameter: 0.57, Length: 0.85}, At: r3.Vec{X: x, Y: y, Z: -0.45}, Mass: 18})
		}
	}
	leaky := plan.With()
	leaky.Units[2].Leak = 0.05
	s, err := leaky.Settle()
	if err != nil {
		t.Fatal(err)
	}
	// Two millimetres of level and some in the slopes, by one standard deviation.
	f := leakFit{
		plan: plan, target: [3]float64{s.Level + 0.001, s.Up.X - 0.0004, s.Up.Y + 0.0005},
		inverse: matrix3{{1 / 4e-6, 0, 0}, {0, 1 / 1e-6, 0}, {0, 0, 1 / 1e-6}},
	}
	for _, i := range []int{2, 3, 4} {
		h, ok := f.try([]int{i})
		if !ok {
			t.Fatal("does not float")
		}
		const n = 2000
		sum := 0.0
		for k := range n {
			e, ok := f.off([]int{i}, []float64{(float64(k) + 0.5) / n * f.most(i)})
			if ok {
				sum += math.Exp(-f.inverse.quadratic(e)/2) / n
			}
		}
		if d := math.Log(sum) - h.evidence; math.Abs(d) > 0.05+0.02*math.Abs(h.evidence) {
			t.Errorf("drum %d: evidence exp %.3f, summed exp %.3f", i, h.evidence, math.Log(sum))
		}
	}
}
