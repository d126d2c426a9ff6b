package dock

import (
	"math"
	"testing"

	"example.org/floewright/frame/rack"
)

// TestFlatAddsUp: the sums of single pushes are what the frame gives under all of
// a situation's pulls at once, with every set of stiffnesses.
func TestFlatAddsUp(t *testing.T) {
	for name, d := range docks(t) {
		f, err := d.flat()
		if err != nil {
			t.Fatal(err)
		}
		far := 2*len(d.centres) - 1
		pulls := []pull{{node: 0, x: -900, y: 300}, {node: far, x: 250}, {node: far, y: -600}, {rim: true, side: 1, across: -220}}
		if err := f.solve([]Situation{{pulls: pulls}}); err != nil {
			t.Fatal(name, err)
		}
		got := f.meet(pulls)
		want := flatRide{joints: make([]flatJoint, len(got.joints)), weak: make([]flatPeak, len(got.weak))}
		for _, fr := range f.frames {
			fr.Drag = rack.Drag{Nodes: f.floats}
			fr.Forces = []rack.Force{{Node: 0, X: -900, Y: 300}, {Node: far, X: 250, Y: -600}}
			fr.Members = append([]rack.Member(nil), fr.Members...)
			fr.Members[1].Loads = []rack.Load{rack.Uniform(0, d.centres[len(d.centres)-1]-d.centres[0], 0, -220)}
			s, err := fr.Solve()
			if err != nil {
				t.Fatal(name, err)
			}
			for i, j := range s.Joints[4:] {
				w := &want.joints[i]
				w.pull, w.slide = math.Max(w.pull, j.Pull.Most), math.Max(w.slide, math.Abs(j.Across.Most))
			}
			for i, x := range s.Worst {
				want.weak[i].moment = math.Max(want.weak[i].moment, math.Max(x.Right.Moment, -x.Left.Moment))
			}
		}
		for i, j := range got.joints {
			if w := want.joints[i]; math.Abs(j.pull-w.pull) > 1e-5 || math.Abs(j.slide-w.slide) > 1e-5 {
				t.Errorf("%s: joint %d %v, at once %v", name, i, j, w)
			}
		}
		for i, w := range got.weak {
			// Under the spread push a moment may turn between the points, by little.
			if m := want.weak[i].moment; w.moment > m*(1+1e-6)+1e-6 || w.moment < 0.97*m {
				t.Errorf("%s: member %d %g N·m, at once %g N·m", name, i, w.moment, m)
			}
		}
	}
}

// TestFlatByHand: a pull square to the end joist, at its end, is carried off by the
// floats; what the joist hands on through its joint is the pull less what hangs on
// the rim's node itself.
func TestFlatByHand(t *testing.T) {
	d := docks(t)["blocks under"]
	f, err := d.flat()
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, p := range f.floats {
		sum += p
	}
	if math.Abs(sum-1) > 0.2 { // floats that hang on joists by a lever count at their nodes
		t.Errorf("the floats hold %g of what is left over", sum)
	}
	// Both ends of the middle joist pulled apart: only that joist and the rims know.
	k := len(d.centres) / 2
	pulls := []pull{{node: 2 * k, y: -1000}, {node: 2*k + 1, y: 1000}}
	if err := f.solve([]Situation{{pulls: pulls}}); err != nil {
		t.Fatal(err)
	}
	r := f.meet(pulls)
	if p := r.joints[2*k]; p.pull < 300 || p.pull > 1000 {
		t.Errorf("1000 N pull the joist off with %g N", p.pull)
	}
	if math.Abs(r.joints[2*k].pull-r.joints[2*k+1].pull) > 1e-6 {
		t.Errorf("its ends with %g N and %g N", r.joints[2*k].pull, r.joints[2*k+1].pull)
	}
}
