package dock

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// finger is an invented narrow dock, 4 ft by 20 ft on six drums across.
const finger = `{ "name": "Finger (invented)",
  "frame": { "length": "20 ft", "width": "4 ft",
    "joists": { "size": "2x6", "species": "Southern Pine", "grade": "No.2", "incised": "no", "spacing": "24 in" },
    "rims": { "size": "2x6", "species": "Southern Pine", "grade": "No.2", "incised": "no", "plies": 2 },
    "decking": { "size": "2x6", "species": "Southern Pine", "grade": "No.2", "incised": "no", "gap": "1/4 in" },
    "hardware": "30 lb" },
  "floats": [ { "name": "drum", "shape": "drum", "girth": "6 ft 1 in", "length": "36-1/2 in", "mass": "22 lb", "material": "steel",
    "lies": "across", "bears": "between joists", "bays": [1, 3, 5, 6, 8, 10], "marks": ["2 ft"] } ],
  "people": [ { "who": "adult", "count": 1, "mass": "185 lb" } ],
  "site": { "water": "lake", "temperature": "60 F" } }`

func mustBuild(t testing.TB, name, text string) *Dock {
	t.Helper()
	d, err := Read(name, strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func demoDock(t testing.TB, name string) *Dock {
	t.Helper()
	r, err := plan.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read(name, r)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func mustRaft(t testing.TB, d *Dock) *raft {
	t.Helper()
	r, err := d.raft()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// finished returns the presses of the deck and of what is fixed to it.
func finished(d *Dock) ([]press, error) {
	deck, err := d.deck()
	return append(d.fixed(), deck), err
}

// stiffer returns the raft with members so stiff that it hardly bends.
func stiffer(r *raft, by float64) *raft {
	for i := range r.grid.Members {
		r.grid.Members[i].EI *= by
		r.grid.Members[i].GJ *= by
	}
	return r
}

// TestStiffRaft: with very stiff members the raft takes package float's rigid
// attitude, at small angles: under its own weight and with a load toward each
// edge, on a broad dock, on blocks and on a narrow finger. Without the heights of
// weights and of buoyancy it would stand too stiffly, twofold on the finger.
func TestStiffRaft(t *testing.T) {
	for _, c := range []struct {
		d       *Dock
		without [2]float64 // share of the heel that a raft without heights has
	}{
		{demoDock(t, "swim"), [2]float64{0.85, 0.97}},
		{demoDock(t, "work"), [2]float64{0.85, 0.97}},
		{mustBuild(t, "finger", finger), [2]float64{0.15, 0.25}},
	} {
		d := c.d
		r := stiffer(mustRaft(t, d), 1e6)
		base, _, err := d.platform()
		if err != nil {
			t.Fatal(err)
		}
		fixed, err := finished(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range [][2]float64{{0, 0}, {0.1, d.width / 4}, {-0.3, -d.width / 4}, {d.length / 4, 0.1}, {-d.length / 4, 0}} {
			push := float.Weight{Mass: 0.01 * base.Weights[0].Mass, At: r3.Vec{X: at[0], Y: at[1], Z: d.deckTop() + 1}}
			l, err := r.laden(append(fixed, d.spot(push.At.X, push.At.Y, push.Mass, push.At.Z))...)
			if err != nil {
				t.Fatal(err)
			}
			got, err := l.afloat(lake{}, nil)
			if err != nil {
				t.Fatal(err)
			}
			want, err := base.With(push).Settle()
			if err != nil {
				t.Fatal(err)
			}
			if m := want.Mass * measure.Gravity; math.Abs(l.weight-m) > 1e-9*m {
				t.Errorf("%s: weighs %g N, as a platform %g N", d.plan.File, l.weight, m)
			}
			heel, trim := -got.Move[0][1], got.Move[0][2]
			// Level at the middle, from any node by the rigid turn.
			n := r.grid.Nodes[0]
			level := got.Move[0][0] + n[0]*trim + n[1]*heel
			name := fmt.Sprintf("%s, pushed at %.1f, %.1f", d.plan.File, at[0], at[1])
			angle := math.Hypot(want.Heel, want.Trim)
			if math.Abs(level-want.Level) > 5e-4 || math.Abs(heel-want.Heel) > 2e-3*angle+2e-6 || math.Abs(trim-want.Trim) > 2e-3*angle+2e-6 {
				t.Errorf("%s: level %g, heel %g, trim %g, float has %g, %g, %g", name, level, heel, trim, want.Level, want.Heel, want.Trim)
			}
			if math.Abs(want.Heel) < 1e-4 {
				continue
			}
			flat := l.Grillage
			for i := range r.feet {
				flat.Seats = append(flat.Seats, r.feet[i].seat)
			}
			f, err := flat.Solve()
			if err != nil {
				t.Fatal(err)
			}
			if share := -f.Move[0][1] / want.Heel; share < c.without[0] || share > c.without[1] {
				t.Errorf("%s: without heights it heels by %.3f of float's", name, share)
			}
		}
	}
}

// TestRaftCapsizes: a finger with too much too high is no mechanism but capsizes,
// as package float has it.
func TestRaftCapsizes(t *testing.T) {
	d := mustBuild(t, "finger", finger)
	r := mustRaft(t, d)
	fixed, err := finished(d)
	if err != nil {
		t.Fatal(err)
	}
	base, _, err := d.platform()
	if err != nil {
		t.Fatal(err)
	}
	high := float.Weight{Mass: 300, At: r3.Vec{Z: 3}}
	if _, err := base.With(high).Settle(); !errors.Is(err, float.ErrCapsizes) {
		t.Fatalf("the platform: %v", err)
	}
	l, err := r.laden(append(fixed, d.spot(0, 0, high.Mass, high.At.Z))...)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := l.afloat(lake{}, nil); !errors.Is(err, float.ErrCapsizes) {
		t.Errorf("the raft: %v, %v", got, err)
	}
}

// TestDrumAsSupport: package float's units satisfy package frame's contract, a
// strapped drum hanging on where it leaves the water, a captive one letting go.
func TestDrumAsSupport(t *testing.T) {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.59, Length: 0.93}, Mass: 10}
	for _, captive := range []bool{false, true} {
		drum.Captive = captive
		push, err := drum.Support(1000)
		if err != nil {
			t.Fatal(err)
		}
		// A stiff bar on three drums, loaded at one end: the other end rises.
		g := frame.Grillage{
			Nodes: [][2]float64{{0, 0}, {2, 0}, {4, 0}},
			Members: []frame.Member{
				{I: 0, J: 1, EI: 1e8, GJ: 1e8}, {I: 1, J: 2, EI: 1e8, GJ: 1e8},
			},
			Forces: [][3]float64{{-1900, 0, 0}, {}, {}},
		}
		for i := range 3 {
			g.Seats = append(g.Seats, frame.Seat{Support: push, Nodes: []int{i}})
		}
		g.Seats = append(g.Seats, frame.Seat{Support: frame.Spring(0), Nodes: []int{1}})
		// Hold the bar against rolling, which three points in a line do not.
		g.Nodes = append(g.Nodes, [2]float64{2, 1})
		g.Members = append(g.Members, frame.Member{I: 1, J: 3, EI: 1e8, GJ: 1e8})
		g.Forces = append(g.Forces, [3]float64{})
		g.Seats = append(g.Seats, frame.Seat{Nodes: []int{3}, Support: frame.Spring(1e-3)})
		s, err := g.Solve()
		if err != nil {
			t.Fatal(err)
		}
		var sum float64
		for _, p := range s.Push {
			sum += p
		}
		if math.Abs(sum-1900) > 1e-6*1900 {
			t.Errorf("captive %v: the drums push %g N in all", captive, sum)
		}
		if far := s.Push[2]; captive && far != 0 || !captive && math.Abs(far+10*measure.Gravity) > 1e-6 {
			t.Errorf("captive %v: the far drum pushes %g N", captive, far)
		}
	}
}

func BenchmarkRide(b *testing.B) {
	d := demoDock(b, "swim")
	r := mustRaft(b, d)
	fixed, err := finished(d)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		l, err := r.laden(fixed...)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := l.afloat(lake{}, nil); err != nil {
			b.Fatal(err)
		}
	}
}
