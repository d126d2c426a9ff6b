package dock

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// Mooring and Local run their topics alone.
func Mooring(d *Dock) []measure.Check { return d.mooring() }
func Local(d *Dock) []measure.Check   { return d.local() }

// BruteForce returns the worst pull at the fitting of a line by single rests, each
// found afresh: at the survey's levels and directions, and at finer ones.
func BruteForce(t testing.TB, d *Dock, line int) (coarse, fine float64) {
	t.Helper()
	h, _, err := d.hold()
	if err != nil {
		t.Fatal(err)
	}
	worst := func(levels, directions int) float64 {
		most := 0.0
		for i := range levels {
			level := h.levels[0] + (h.levels[2]-h.levels[0])*float64(i)/float64(levels-1)
			for k := range directions {
				load, err := h.load(false)(2 * math.Pi * float64(k) / float64(directions))
				if err != nil {
					t.Fatal(err)
				}
				p, err := h.Rest(level, load)
				if err != nil {
					t.Fatal(err)
				}
				most = max(most, p.Hangs[line].Tension())
			}
		}
		return most
	}
	return worst(3, 16), worst(13, 48)
}

// The frame is pulled at its corners by the mooring where there is one, its worst
// with any one line lost; else by loads.cleat.
func TestLinePull(t *testing.T) {
	if pull, whose := build(emptyPlan()).linePull(); pull != 1234 || !strings.Contains(whose, "loads.cleat") {
		t.Errorf("no mooring: %g N%s", pull, whose)
	}
	r, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read("swim", r)
	if err != nil {
		t.Fatal(err)
	}
	whole, _ := BruteForce(t, d, 2)
	most, whose := d.linePull()
	if strings.Contains(whose, "loads.cleat") {
		t.Errorf("the storm's pull is said to be %s", whose)
	}
	if !(most > whole) || most > 3*whole {
		t.Errorf("with a line lost %g N, with all %g N", most, whole)
	}
	met, err := d.situations()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range met {
		if len(s.inputs) == 1 && s.inputs[0] == "loads.cleat" && math.Abs(math.Hypot(s.pulls[0].x, s.pulls[0].y)-most) > 1e-6 {
			t.Errorf("%s pulls %v, the mooring %g N", s.Name, s.pulls[0], most)
		}
	}
}

func emptyPlan() *plan.Plan {
	p := &plan.Plan{}
	p.Loads.Cleat.Value = 1234
	return p
}

// One topic of the demo: some milliseconds, since a report runs it often.
func BenchmarkMooring(b *testing.B) {
	r, err := plan.Demo("swim")
	if err != nil {
		b.Fatal(err)
	}
	d, err := Read("swim", r)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if len(d.mooring()) == 0 {
			b.Fatal("nothing")
		}
	}
}

// The waterplane of floats spread over a rectangle, by the textbook's bh³/12: hung by an
// end the dock turns about the long lever, by a side about the short one.
func TestWaterplane(t *testing.T) {
	d := varied(t)
	drum := 36.5 * 73 / math.Pi * measure.Inch * measure.Inch
	const long, wide = 24 * measure.Foot, 10 * measure.Foot
	box := func(b, h float64) float64 { return b * h * h * h / 12 * 18 * drum / (long * wide) }
	for _, c := range []struct {
		atSide bool
		want   [4]float64
	}{
		{false, [4]float64{18 * drum, box(wide, long), box(long, wide), long / 2}},
		{true, [4]float64{18 * drum, box(long, wide), box(wide, long), wide / 2}},
	} {
		area, along, across, arm := d.waterplane(c.atSide)
		for i, got := range [4]float64{area, along, across, arm} {
			if math.Abs(got/c.want[i]-1) > 1e-9 {
				t.Errorf("at a side %v: number %d is %g, by hand %g", c.atSide, i, got, c.want[i])
			}
		}
	}
}
