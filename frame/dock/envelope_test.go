package dock

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// small returns an invented small dock: the frame's own fields, its floats, and a
// chest at a place.
func small(t testing.TB, frame, floats, along, across string) *Dock {
	t.Helper()
	return mustBuild(t, "small", fmt.Sprintf(`{ "name": "Small (invented)", "units": "si",
  "frame": { %s, "decking": { "size": "2x6", "species": "Hem-Fir", "gap": "3 mm", "screw": "No.10 x 3 wood screw" }, "hardware": "12 kg" },
  "floats": [ { "name": "float", "mass": "11 kg", %s } ],
  "weights": [ { "name": "chest", "mass": "30 kg", "along": "%s", "across": "%s", "above": "0.3 m" } ],
  "people": [ { "who": "adult", "count": 2, "mass": "84 kg" } ],
  "loads": { "flotation": "0.4 kPa", "snow": "0.5 kPa" },
  "site": { "water": "lake", "temperature": "15 C", "wave_height": "0.15 m", "ten_crests": "22 s" } }`, frame, floats, along, across))
}

const (
	woodAcross = `"length": "4 m", "width": "3 m", "joists": { "size": "2x8", "species": "Hem-Fir", "incised": "no", "spacing": "0.6 m" }, "rims": { "size": "2x8", "species": "Hem-Fir", "incised": "no", "plies": 2 }`
	woodAlong  = `"length": "4.2 m", "width": "3 m", "joists_run": "along", "joists": { "size": "2x8", "species": "Hem-Fir", "incised": "no", "spacing": "0.6 m" }, "rims": { "size": "2x10", "species": "Hem-Fir", "incised": "no" }`
	drumsOf    = `"shape": "drum", "girth": "1.85 m", "length": "0.92 m"`
	blocksOf   = `"shape": "block", "length": "1.2 m", "width": "0.8 m", "height": "0.4 m"`
	corners4   = `"places": [ {"along": "0.7 m", "across": "0.6 m"}, {"along": "0.7 m", "across": "2.4 m"}, {"along": "3.3 m", "across": "0.6 m"}, {"along": "3.3 m", "across": "2.4 m"} ]`
	eight      = `"places": [ {"along": "0.6 m", "across": "0.5 m"}, {"along": "0.6 m", "across": "2.5 m"}, {"along": "1.5 m", "across": "0.5 m"}, {"along": "1.5 m", "across": "2.5 m"}, {"along": "2.5 m", "across": "0.5 m"}, {"along": "2.5 m", "across": "2.5 m"}, {"along": "3.4 m", "across": "0.5 m"}, {"along": "3.4 m", "across": "2.5 m"} ]`
)

// docks are the demo plans and seven small frames.
func docks(t testing.TB) map[string]*Dock {
	return map[string]*Dock{
		"swim": demoDock(t, "swim"),
		"work": demoDock(t, "work"),

		"drums under":          small(t, woodAcross, drumsOf+`, "lies": "along", "bears": "under joists", `+eight, "1 m", "1 m"),
		"drums in bays":        small(t, woodAcross, drumsOf+`, "lies": "across", "bears": "between joists", "bays": [1, 3, 4, 6], "marks": ["0.56 m", "1.5 m", "2.44 m"]`, "2 m", "1.5 m"),
		"blocks under":         small(t, woodAcross, blocksOf+`, "lies": "along", "bears": "under joists", `+corners4, "2 m", "1.5 m"),
		"drums under boards":   small(t, strings.Replace(woodAcross, "0.6 m", "0.66 m", 1), drumsOf+`, "lies": "across", "bears": "between joists", "bays": [1, 3, 4, 6], "marks": ["0.56 m", "1.5 m", "2.44 m"]`, "2 m", "1.5 m"),
		"blocks in bays":       small(t, strings.Replace(woodAcross, "0.6 m", "0.9 m", 1), blocksOf+`, "lies": "across", "bears": "between joists", "bays": [1, 3, 4], "marks": ["0.7 m", "2.3 m"]`, "2 m", "1.5 m"),
		"joists along":         small(t, woodAlong, drumsOf+`, "lies": "across", "bears": "under joists", `+eight, "3 m", "1.4 m"),
		"joists along, blocks": small(t, woodAlong, blocksOf+`, "lies": "across", "bears": "under joists", `+eight, "2 m", "1 m"),
	}
}

// rideAll solves every situation of a dock.
func rideAll(t testing.TB, r *raft) ([]Situation, []*ride) {
	t.Helper()
	met, err := r.dock.situations()
	if err != nil {
		t.Fatal(err)
	}
	rides := make([]*ride, len(met))
	for i := range met {
		if met[i].pulls != nil {
			continue
		}
		if rides[i], err = r.meet(&met[i], rides[0], nil); err != nil {
			t.Logf("%s: %s: %v", r.dock.plan.Name.Value, met[i].Name, err)
		}
	}
	if rides[0] == nil {
		t.Fatal("it does not float with nobody aboard")
	}
	return met, rides
}

// TestSituationsBalance: in every situation the pushes carry the weight, and their
// moments about both axes are the loads'.
func TestSituationsBalance(t *testing.T) {
	for name, d := range docks(t) {
		met, rides := rideAll(t, mustRaft(t, d))
		solved, tried := 0, 0
		for i, r := range rides {
			if met[i].pulls == nil {
				tried++
			}
			if r == nil {
				continue
			}
			solved++
			var sum, arm [3]float64 // of force, of x and of y times force
			size := r.weight * d.length
			add := func(into *[3]float64, x, y, f float64) {
				into[0], into[1], into[2] = into[0]+f, into[1]+x*f, into[2]+y*f
			}
			for _, w := range r.stiff {
				add(&arm, w.At.X, w.At.Y, w.Mass*measure.Gravity)
			}
			for k := range r.feet {
				f := &r.feet[k]
				// Where the joists take it, which is not quite where a wide float has it.
				for j, n := range f.seat.Nodes {
					at := r.Nodes[n]
					add(&arm, at[0], at[1], f.seat.Share[j]*f.part.Mass*measure.Gravity)
					add(&sum, at[0], at[1], f.seat.Share[j]*r.push[k])
				}
			}
			for k := len(r.feet); met[i].ground != nil && k < len(r.Push); k++ { // the pry bar
				at := r.Nodes[met[i].ground(r.laden, rides[0])[k].Nodes[0]]
				add(&sum, at[0], at[1], r.Push[k])
			}
			// Afloat, the heights' moments are small beside; they are in the rigid route.
			slack := 1e-9
			if met[i].ground == nil {
				slack = 0.05
			}
			for k := range sum {
				lim := 1e-9 * r.weight
				if k > 0 {
					// Loads beyond the rims' axes go to the rims: within half a rim.
					lim = slack*size + r.weight*float64(d.rimPlies)*d.rim.section.Width
				}
				if math.Abs(sum[k]-arm[k]) > lim {
					t.Errorf("%s, %s: pushes %g, loads %g (%d)", name, met[i].Name, sum[k], arm[k], k)
				}
			}
			if r.Residual > 1e-9 {
				t.Errorf("%s, %s: imbalance %g", name, met[i].Name, r.Residual)
			}
		}
		if solved < tried*3/4 {
			t.Errorf("%s: only %d of %d situations have a rest", name, solved, tried)
		}
	}
}

// rigidForces returns the force up that is left at level and slopes v, and its moments
// by x and by y, and fills in the pushes.
func rigidForces(g *frame.Grillage, v [3]float64, push []float64) (f [3]float64) {
	for _, m := range g.Members {
		a, b := g.Nodes[m.I], g.Nodes[m.J]
		h := math.Hypot(b[0]-a[0], b[1]-a[1])
		for _, l := range m.Loads {
			p, x := l.P, l.From
			if l.To > l.From {
				p, x = l.Q*(l.To-l.From), (l.From+l.To)/2
			}
			s := x / h
			f[0], f[1], f[2] = f[0]-p, f[1]-p*(a[0]+s*(b[0]-a[0])), f[2]-p*(a[1]+s*(b[1]-a[1]))
		}
	}
	for _, p := range g.Weights {
		n := g.Nodes[p.Node]
		f[0], f[1], f[2] = f[0]-p.Force, f[1]-p.Force*n[0], f[2]-p.Force*n[1]
	}
	for i, p := range g.Forces {
		n := g.Nodes[i]
		f[0], f[1], f[2] = f[0]+p[0], f[1]+p[0]*n[0], f[2]+p[0]*n[1]
	}
	for i := range g.Seats {
		s := &g.Seats[i]
		var sink, x, y float64
		for k, n := range s.Nodes {
			part := 1.0
			if s.Share != nil {
				part = s.Share[k]
			}
			x, y = x+part*g.Nodes[n][0], y+part*g.Nodes[n][1]
		}
		sink = s.Level - (v[0] + v[1]*x + v[2]*y)
		p, _, _ := s.Support(sink)
		push[i] = p
		f[0], f[1], f[2] = f[0]+p, f[1]+p*x, f[2]+p*y
	}
	return f
}

// rigidRest finds level and slopes of a body that does not bend on the seats of a
// grillage whose energy is convex, by damped steps with slopes from differences: a
// route of its own. Heights are not looked at.
func rigidRest(g *frame.Grillage) (push []float64) {
	var v [3]float64
	push = make([]float64, len(g.Seats))
	out := func(v [3]float64) [3]float64 { return rigidForces(g, v, push) }
	alone := *g
	alone.Seats = nil
	energy := func(v [3]float64) (e float64) {
		load := rigidForces(&alone, v, nil)
		for c := range v {
			e -= load[c] * v[c]
		}
		for i := range g.Seats {
			s := &g.Seats[i]
			sink := s.Level
			for k, n := range s.Nodes {
				part := 1.0
				if s.Share != nil {
					part = s.Share[k]
				}
				sink -= part * (v[0] + v[1]*g.Nodes[n][0] + v[2]*g.Nodes[n][1])
			}
			_, _, u := s.Support(sink)
			e += u
		}
		return e
	}
	// Convex: damped steps that lower the energy, one after the other.
	damp, now := 1e3, energy(v)
	for range 500 {
		f := out(v)
		var j [3][4]float64
		for c := range 3 {
			const h = 1e-7
			up, down := v, v
			up[c], down[c] = up[c]+h, down[c]-h
			fu, fd := out(up), out(down)
			for r := range 3 {
				j[r][c] = (fd[r] - fu[r]) / (2 * h)
			}
			j[c][c] += damp
			j[c][3] = f[c]
		}
		next := v
		for c := range 3 {
			for r := range 3 {
				if r != c {
					m := j[r][c] / j[c][c]
					for k := c; k < 4; k++ {
						j[r][k] -= m * j[c][k]
					}
				}
			}
		}
		for c := range 3 {
			next[c] += j[c][3] / j[c][c]
		}
		if e := energy(next); e <= now {
			v, now, damp = next, e, math.Max(damp/4, 1e-3)
		} else {
			damp *= 4
		}
		if damp > 1e16 {
			break
		}
	}
	out(v)
	return push
}

// TestSituationsRigid: with stiff members every situation gives the pushes that a
// body gets that does not bend, by another route.
func TestSituationsRigid(t *testing.T) {
	for name, d := range docks(t) {
		r := stiffer(mustRaft(t, d), 1e4)
		met, rides := rideAll(t, r)
		for i, ride := range rides {
			if ride == nil {
				continue
			}
			if met[i].ground == nil {
				continue // TestStiffRaft and TestRidesLikeFloat
			}
			g := ride.Grillage
			g.Seats = met[i].ground(ride.laden, rides[0])
			push := rigidRest(&g)
			for k := range push {
				if math.Abs(push[k]-ride.Push[k]) > 0.02*ride.weight {
					t.Errorf("%s, %s: seat %d pushes %.0f N, rigid %.0f N of %.0f N", name, met[i].Name, k, ride.Push[k], push[k], ride.weight)
				}
			}
		}
	}
}

// TestRidesLikeFloat: afloat, a stiff raft's floats push as package float has it in
// every situation on flat water, but for what large angles add.
func TestRidesLikeFloat(t *testing.T) {
	for name, d := range docks(t) {
		r := stiffer(mustRaft(t, d), 1e4)
		base, _, err := d.platform()
		if err != nil {
			t.Fatal(err)
		}
		met, rides := rideAll(t, r)
		for i, ride := range rides {
			if ride == nil || met[i].ground != nil || met[i].lake.level != nil {
				continue
			}
			p := *base
			p.Weights = ride.stiff
			p.Units = append(p.Units[:0:0], base.Units...)
			if k := met[i].lake.lost; k > 0 {
				p.Units[k-1].Flooded = true
			}
			s, err := p.Settle()
			if err != nil {
				t.Errorf("%s, %s: %v", name, met[i].Name, err)
				continue
			}
			var out Outcome
			out.fill(ride)
			lim := (0.005 + 0.4*s.Tilt()*s.Tilt() + 0.02*s.Tilt()) * ride.weight
			for k := range out.Push {
				u, err := s.Unit(k)
				if err != nil {
					t.Fatal(err)
				}
				got := out.Push[k] - base.Units[k].Mass*measure.Gravity
				if math.Abs(got-u.Push) > lim {
					t.Errorf("%s, %s: float %d pushes %.0f N, by float %.0f N of %.0f N at %.1f deg", name, met[i].Name, k+1, got, u.Push, ride.weight, s.Tilt()/degree)
				}
			}
		}
	}
}

// TestEnvelopeCovers: no situation goes beyond the envelope.
func TestEnvelopeCovers(t *testing.T) {
	for name, d := range docks(t) {
		e, err := d.Envelope(context.Background())
		if err != nil {
			t.Fatal(name, err)
		}
		r := mustRaft(t, d)
		met, rides := rideAll(t, r)
		for i := range met {
			if met[i].pulls != nil && e.Situations[i].Err != nil {
				t.Errorf("%s, %s: %v", name, met[i].Name, e.Situations[i].Err)
			}
		}
		joist, err := d.capacities(d.joist, 1, d.clear)
		if err != nil {
			t.Fatal(err)
		}
		for i, ride := range rides {
			if met[i].pulls == nil && (ride == nil) != (e.Situations[i].Err != nil) {
				t.Errorf("%s, %s: %v", name, met[i].Name, e.Situations[i].Err)
			}
			if ride == nil {
				continue
			}
			for k := range d.centres {
				for end, f := range ride.endForces(k) {
					j := e.Joints[2*k+end]
					if f > j.Carries.Value*(1+1e-6)+1e-3 || -f > j.Holds.Value*(1+1e-6)+1e-3 {
						t.Errorf("%s, %s: %s carries %g N, beyond %v", name, met[i].Name, j.Name, f, j)
					}
				}
				w, st := e.Members[k], &r.strips[k]
				for m := 1; m < len(st.at); m++ {
					x := ride.Lines[st.first+m-1].Extremes()
					now := x.Sag.Moment / joist.by[met[i].Duration].sag
					worst := w.Sag.Value / joist.by[met[w.Sag.Situation].Duration].sag
					if now > worst*(1+1e-6)+1e-9 {
						t.Errorf("%s, %s: %s sags with %g of what it takes, beyond %g", name, met[i].Name, w.Name, now, worst)
					}
				}
			}
			for k, f := range e.Situations[i].Push {
				own := d.floats[k].set.Mass.Value * measure.Gravity
				if b := e.Bearings[k]; f-own > b.Push.Value*(1+1e-6)+1e-3 || own-f > b.Hangs.Value*(1+1e-6)+1e-3 {
					t.Errorf("%s, %s: %s pushes %g N, beyond %v", name, met[i].Name, b.Name, f, b)
				}
			}
		}
	}
}

// TestHeavierCrowd: the same crowd, heavier, presses no float under it less.
func TestHeavierCrowd(t *testing.T) {
	for name, text := range map[string]string{"swim": "", "small": "x"} {
		var light, heavy *Dock
		if text == "" {
			light = demoDock(t, "swim")
			heavy = demoDock(t, "swim")
			for i := range heavy.plan.People {
				heavy.plan.People[i].Mass.Value *= 1.25
			}
		} else {
			light, heavy = docks(t)["drums in bays"], docks(t)["drums in bays"]
			heavy.plan.People[0].Mass.Value *= 1.25
		}
		a, err := light.Envelope(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		b, err := heavy.Envelope(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Situations {
			o, p := &a.Situations[i], &b.Situations[i]
			if o.Err != nil || p.Err != nil || !strings.Contains(o.Name, "everyone") || o.Weight == p.Weight {
				continue
			}
			deepest := 0
			for k := range o.Push {
				if o.Push[k] > o.Push[deepest] {
					deepest = k
				}
			}
			if p.Push[deepest] < o.Push[deepest]-1e-6*o.Weight {
				t.Errorf("%s, %s: a heavier crowd lowers the push of the float under it from %g N to %g N", name, o.Name, o.Push[deepest], p.Push[deepest])
			}
		}
		for k := range a.Bearings {
			if b.Bearings[k].Push.Value < a.Bearings[k].Push.Value*(1-1e-9) {
				t.Errorf("%s: %s pushes less under heavier people: %g N, %g N", name, a.Bearings[k].Name, b.Bearings[k].Push.Value, a.Bearings[k].Push.Value)
			}
		}
	}
}

// TestMirrorImage: a dock mirrored across its width has mirrored results.
func TestMirrorImage(t *testing.T) {
	const blocks = blocksOf + `, "lies": "along", "bears": "under joists", `
	left := `"places": [ {"along": "0.7 m", "across": "0.5 m"}, {"along": "0.7 m", "across": "2.4 m"}, {"along": "3.3 m", "across": "0.5 m"}, {"along": "3.3 m", "across": "2.4 m"} ]`
	right := `"places": [ {"along": "0.7 m", "across": "2.5 m"}, {"along": "0.7 m", "across": "0.6 m"}, {"along": "3.3 m", "across": "2.5 m"}, {"along": "3.3 m", "across": "0.6 m"} ]`
	a, err := small(t, woodAcross, blocks+left, "1.2 m", "1.1 m").Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	b, err := small(t, woodAcross, blocks+right, "1.2 m", "1.9 m").Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	n := len(a.Members)
	values := func(w Worst) []float64 { return []float64{w.Sag.Value, w.Hog.Value, w.Shear.Value, w.Weak.Value} }
	near := cmpopts.EquateApprox(1e-6, 1e-3)
	for i := range n {
		k := i // joists are their own mirror image, the rims each other's
		if i >= n-2 {
			k = 2*n - 3 - i
		}
		if diff := cmp.Diff(values(a.Members[i]), values(b.Members[k]), near); diff != "" {
			t.Errorf("%s:\n%s", a.Members[i].Name, diff)
		}
	}
	for i := range a.Joints {
		x, y := a.Joints[i], b.Joints[i^1]
		if diff := cmp.Diff([]float64{x.Carries.Value, x.Holds.Value, x.Swing, x.Pull.Value, x.Slides.Value}, []float64{y.Carries.Value, y.Holds.Value, y.Swing, y.Pull.Value, y.Slides.Value}, near); diff != "" {
			t.Errorf("%s:\n%s", x.Name, diff)
		}
	}
	for i := range a.Bearings {
		x, y := a.Bearings[i], b.Bearings[i]
		if diff := cmp.Diff([]float64{x.Push.Value, x.Hangs.Value}, []float64{y.Push.Value, y.Hangs.Value}, near); diff != "" {
			t.Errorf("%s:\n%s", x.Name, diff)
		}
	}
	if diff := cmp.Diff([]float64{a.Comfort.Sag.Value, a.Comfort.Twist.Value, a.Comfort.Dip}, []float64{b.Comfort.Sag.Value, b.Comfort.Twist.Value, b.Comfort.Dip}, near); diff != "" {
		t.Error(diff)
	}
}

func TestEnvelopeRefuses(t *testing.T) {
	var zero Dock
	if _, err := zero.Envelope(context.Background()); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("the zero dock: %v", err)
	}
	d := mustBuild(t, "bare", strings.Replace(finger, `"people": [ { "who": "adult", "count": 1, "mass": "185 lb" } ],`, "", 1))
	if _, err := d.Envelope(context.Background()); !errors.Is(err, measure.ErrUnknown) || !strings.Contains(err.Error(), "people") {
		t.Errorf("without people: %v", err)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := demoDock(t, "swim").Envelope(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
}

// eightBlocks is an invented dock of 10 by 24 ft on eight foam blocks.
const eightBlocks = `{ "name": "Eight blocks (invented)",
  "frame": { "length": "24 ft", "width": "10 ft",
    "joists": { "size": "2x8", "species": "Southern Pine", "grade": "No.2", "incised": "no", "spacing": "24 in" },
    "rims": { "size": "2x10", "species": "Southern Pine", "grade": "No.1", "incised": "no", "plies": 2 },
    "decking": { "size": "2x6", "species": "Southern Pine", "grade": "No.2", "incised": "no", "gap": "1/4 in" },
    "hardware": "90 lb" },
  "floats": [ { "name": "block", "shape": "block", "length": "5 ft", "width": "3 ft", "height": "20 in", "mass": "60 lb",
    "lies": "along", "bears": "under joists", "tied": "yes", "places": [
      { "along": "3 ft", "across": "2 ft" }, { "along": "9 ft", "across": "2 ft" }, { "along": "15 ft", "across": "2 ft" }, { "along": "21 ft", "across": "2 ft" },
      { "along": "3 ft", "across": "8 ft" }, { "along": "9 ft", "across": "8 ft" }, { "along": "15 ft", "across": "8 ft" }, { "along": "21 ft", "across": "8 ft" } ] } ],
  "people": [ { "who": "adult", "count": 4, "mass": "185 lb" } ],
  "site": { "water": "lake", "temperature": "60 F" } }`

// BenchmarkRides is every situation of the same docks that has a rest of its own, one after
// another on one core: each begun at the empty dock's, as the envelope does, and as baseline
// each from nothing.
func BenchmarkRides(b *testing.B) {
	for _, c := range []struct {
		name string
		d    *Dock
	}{{"floats=8", mustBuild(b, "eight", eightBlocks)}, {"floats=18", demoDock(b, "swim")}} {
		met, err := c.d.situations()
		if err != nil {
			b.Fatal(err)
		}
		var none *base
		r, err := none.raftOf(c.d)
		if err != nil {
			b.Fatal(err)
		}
		for _, from := range []string{"near", "nothing"} {
			b.Run(c.name+"/from="+from, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					var empty *ride
					n := 0
					for i := range met {
						if met[i].pulls != nil {
							continue
						}
						near := empty
						if from == "nothing" || met[i].ground != nil {
							near = nil
						}
						out, err := r.meet(&met[i], empty, near)
						if err == nil {
							n++
						}
						if i == 0 {
							empty = out
						}
					}
					if n < 50 {
						b.Fatalf("%d situations come to rest", n)
					}
				}
			})
		}
	}
}

// BenchmarkEnvelope is every situation of a dock of 10 by 24 ft, on eight blocks and
// on eighteen drums.
func BenchmarkEnvelope(b *testing.B) {
	for _, c := range []struct {
		name string
		d    *Dock
	}{{"floats=8", mustBuild(b, "eight", eightBlocks)}, {"floats=18", demoDock(b, "swim")}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				e, err := c.d.Envelope(context.Background())
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(len(e.Situations)), "situations")
			}
		})
	}
}
