package fasten_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

var (
	durations = []lumber.Duration{lumber.Permanent, lumber.TenYears, lumber.Snow, lumber.SevenDays, lumber.TenMinutes}
	names     = []string{"1/2 bolt", "3/4 bolt", "1/4 bolt", "3/8 x 6 lag screw", "1/2 x 6 lag screw", "1/4 x 5 lag screw", "No.10 x 3 wood screw", "No.14 x 4 wood screw", "16d common nail", "20d common nail", "60d common nail"}
)

// wooden returns a random joint of wood to wood with all distances generous.
func wooden(r *rand.Rand) fasten.Joint {
	g := 0.31 + 0.42*r.Float64()
	value := func(x float64) lumber.Value { return lumber.Value{Printed: x, Unit: measure.PSI} }
	w := lumber.Grade{
		G: lumber.Value{Printed: g, Unit: 1}, E: value(1.4e6), Fv: value(150), Ft: value(450), FcPerp: value(425),
		Emin: value(5.1e5), Fb: value(850), Fc: value(1400), Table: "4A", Name: "No.2",
	}
	p := fasten.Piece{Grade: w, Thickness: 5.5 * in, Width: 9.25 * in, End: 12 * in, Edge: 4.5 * in}
	j := fasten.Joint{Fastener: must(fasten.Lookup(names[r.IntN(len(names))])), Main: p, Side: p, PerRow: 1 + r.IntN(3), Spacing: 4 * in}
	j.Side.Thickness = 1.5 * in
	j.Main.Angle, j.Side.Angle = r.Float64()*math.Pi/2, r.Float64()*math.Pi/2
	return j
}

func each(n int, seed uint64, do func(r *rand.Rand, j fasten.Joint)) {
	r := rand.New(rand.NewPCG(seed, 7))
	for range n {
		do(r, wooden(r))
	}
}

// Denser wood, a straighter load, deeper penetration and a body instead of a root
// never carry less; Z is the least of the modes and the lower of the two rules.
func TestYieldDirections(t *testing.T) {
	each(2000, 1, func(r *rand.Rand, j fasten.Joint) {
		y := must(j.Yield())
		least := math.Inf(1)
		for _, m := range y.Modes {
			if math.Abs(m.Z-m.Load/m.Rd) > 1e-9 {
				t.Fatal("a mode's value is not its load over Rd")
			}
			least = math.Min(least, m.Z)
		}
		if y.Equations != least || y.Z > y.Equations || y.Z > y.Table || !(y.Z > 0) {
			t.Fatalf("Z %g, equations %g, table %g, least mode %g", y.Z, y.Equations, y.Table, least)
		}
		if !(y.Share > 0 && y.Share <= 1) || j.Fastener.Kind == fasten.Bolt && y.Share != 1 {
			t.Fatalf("share %g of the tables' penetration", y.Share)
		}
		more := func(why string, z float64) {
			t.Helper()
			if z < y.Z*(1-1e-12) {
				t.Fatalf("%s weakens %+v from %g to %g", why, j, y.Z, z)
			}
		}
		k := j
		k.Main.Grade.G.Printed = math.Min(0.73, k.Main.Grade.G.Printed+0.05)
		k.Side.Grade.G = k.Main.Grade.G
		more("denser wood", must(k.Yield()).Z)
		k = j
		k.Main.Angle *= r.Float64()
		more("a load nearer the grain", must(k.Yield()).Z)
		k = j
		k.Fastener.Length += 1 * in * r.Float64()
		if j.Fastener.Kind != fasten.Bolt {
			more("a longer fastener", must(k.Yield()).Z)
		}
		k = j
		k.Shank = true
		more("a bolt's full body", must(k.Yield()).Z)
		k = j
		k.Double = true
		if j.Fastener.Kind == fasten.Bolt {
			more("double shear", must(k.Yield()).Z)
		}
	})
}

// What a joint carries never grows as it gets wetter, hotter, longer loaded, or
// as its distances shrink; drying from wet is the worst for a group of bolts.
func TestCapacityCaution(t *testing.T) {
	carry := func(j fasten.Joint, d lumber.Duration) []float64 {
		c := must(j.Lateral(d))
		if c.Err != nil {
			t.Fatal(c.Err)
		}
		out := []float64{c.Value}
		for _, p := range must(j.Pull(d)) {
			if p.Err == nil {
				out = append(out, p.Value)
			}
		}
		return out
	}
	each(1500, 2, func(r *rand.Rand, j fasten.Joint) {
		j.Service = fasten.Service{Dry: r.IntN(2) == 0, Seasoned: r.IntN(2) == 0, Temperature: 60 * r.Float64()}
		d := r.IntN(len(durations))
		now := carry(j, durations[d])
		less := func(why string, k fasten.Joint, d lumber.Duration) {
			t.Helper()
			for i, x := range carry(k, d) {
				if x > now[i]*(1+1e-12) {
					t.Fatalf("%s strengthens a joint from %g to %g: %+v", why, now[i], x, k)
				}
			}
		}
		if d > 0 {
			less("a longer load", j, durations[d-1])
		}
		k := j
		k.Temperature += (65 - k.Temperature) * r.Float64()
		less("heat", k, durations[d])
		k = j
		k.Dry = false
		if j.Seasoned {
			less("water", k, durations[d])
		}
		k = j
		k.Seasoned = false
		less("making it wet", k, durations[d])
		k = j
		k.Main.End *= r.Float64()
		less("a shorter end", k, durations[d])
		k = j
		k.Spacing *= r.Float64()
		if j.PerRow > 1 && inches(j.Fastener.Diameter) < 0.25 {
			less("closer spacing", k, durations[d])
		}
	})
}

func inches(x float64) float64 { return x / in }

// Cg is at most 1, falls with the number in a row, rises with stiffer members,
// and knows no main from side.
func TestGroupAction(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 2000 {
		d, s := (0.25+0.75*r.Float64())*in, (2+4*r.Float64())*in
		m, side := math.Pow(10, 5+4*r.Float64()), math.Pow(10, 5+4*r.Float64())
		last := 1.0
		for n := 1; n <= 12; n++ {
			f := must(fasten.GroupAction(n, d, s, m, side, false))
			if !(f.Value > 0 && f.Value <= last+1e-12) {
				t.Fatalf("Cg of %d is %g, of one less %g", n, f.Value, last)
			}
			if g := must(fasten.GroupAction(n, d, s, side, m, false)).Value; math.Abs(g-f.Value) > 1e-12 {
				t.Fatalf("Cg %g, with main and side changed about %g", f.Value, g)
			}
			if g := must(fasten.GroupAction(n, d, s, 2*m, 2*side, false)).Value; g < f.Value-1e-12 {
				t.Fatalf("Cg falls from %g to %g with stiffer members", f.Value, g)
			}
			last = f.Value
		}
	}
	// Stiff members share evenly: the limit, without loss of digits.
	if f := must(fasten.GroupAction(10, 0.5*in, 3*in, 1e12, 1e12, false)); math.Abs(f.Value-1) > 1e-3 {
		t.Errorf("Cg between rigid members is %g", f.Value)
	}
	if f := must(fasten.GroupAction(4, 0.2*in, 3*in, 1e5, 1e5, true)); f.Value != 1 {
		t.Errorf("Cg of thin fasteners is %g", f.Value)
	}
}

// Under a load along the surface or square to it the combined rule is the plain
// value, and between the two it lies between.
func TestCombined(t *testing.T) {
	for _, k := range []fasten.Kind{fasten.LagScrew, fasten.WoodScrew, fasten.Nail, fasten.RingNail} {
		f := fasten.Fastener{Kind: k}
		if z := must(f.Combined(300, 500, 0)); math.Abs(z-300) > 1e-9 {
			t.Errorf("%v along the surface: %g", k, z)
		}
		if z := must(f.Combined(300, 500, math.Pi/2)); math.Abs(z-500) > 1e-9 {
			t.Errorf("%v square to it: %g", k, z)
		}
		z := must(f.Combined(300, 500, 0.7))
		if screw := k == fasten.LagScrew || k == fasten.WoodScrew; screw && !(z > 300 && z < 500) || !screw && !(z < 300) {
			t.Errorf("%v at a slant: %g", k, z)
		}
		if z := must(f.Combined(0, 500, 0.7)); z != 0 {
			t.Errorf("%v without lateral strength: %g", k, z)
		}
		if z := must(f.Combined(0, 0, 0)); z != 0 {
			t.Errorf("%v without strength: %g", k, z)
		}
	}
}

// The jerk at the end of the slack stores just the energy that the weight has
// lost: W (s + F/k) = F²/2k.
func TestJerkKeepsEnergy(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 9))
	for range 1000 {
		k, s, w := math.Pow(10, 3+4*r.Float64()), r.Float64()*0.5, 2000*r.Float64()
		f := must(fasten.Tie{Strength: 1e5, Stiffness: k, Slack: s}.Jerk(w))
		if lost, stored := w*(s+f/k), f*f/(2*k); math.Abs(lost-stored) > 1e-9*stored {
			t.Fatalf("loses %g J, stores %g J", lost, stored)
		}
	}
	if f := must(fasten.Tie{Strength: 1}.Jerk(100)); f != 200 {
		t.Errorf("a load that comes on at once is %g, want twice itself", f)
	}
}

// The pin's stresses scale with the force and fall with the diameter as they must.
func TestPinScales(t *testing.T) {
	p := fasten.Pin{Diameter: 0.02, Lug: 0.01, Leaf: 0.006, Play: 0.001}
	q := p
	q.Diameter *= 2
	s1, b1, c1, err1 := p.Stresses(1000)
	s2, b2, c2, err2 := q.Stresses(1000)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	for _, x := range [][3]float64{{s1, s2, 4}, {b1, b2, 8}, {c1, c2, 2}} {
		if math.Abs(x[0]/x[1]-x[2]) > 1e-9 {
			t.Errorf("twice the diameter: %g to %g, want %g times less", x[0], x[1], x[2])
		}
	}
	// The moment by a beam under two spread loads: F/2 at the middle of each half of
	// the lug, F/2 at the middle of each leaf.
	arm := (p.Leaf/2 + p.Play + p.Lug/2) - p.Lug/4
	if want := 32 * 500 * arm / (math.Pi * math.Pow(p.Diameter, 3)); math.Abs(b1-want) > 1e-6*want {
		t.Errorf("bending %g, by statics %g", b1, want)
	}
}

// The tables' rule is the value at their own penetration times the share, also
// where a light main piece makes that penetration govern.
func TestTableRule(t *testing.T) {
	for _, c := range []struct {
		name  string
		depth float64 // of the tables, in diameters, the point of lag screws apart
		point float64 // in
	}{
		{"1/2 lag screw", 8, 0.3125},
		{"1/4 lag screw", 8, 0.15625},
		{"No.10 wood screw", 10, 0},
		{"16d common nail", 10, 0},
	} {
		f := must(fasten.Lookup(c.name))
		d := f.Diameter / in
		for _, yield := range []float64{0, 2e9} { // a stiff fastener turns as a whole: mode II
			j := fasten.Joint{
				Fastener: f, Main: fasten.Piece{Grade: wood(0.31), Thickness: 12 * in},
				Side: fasten.Piece{Grade: wood(0.7), Thickness: 3 * in},
			}
			if yield > 0 {
				j.Fastener.Yield = yield
			}
			full, short := j, j
			full.Fastener.Length = (3 + c.depth*d + c.point) * in
			short.Fastener.Length = (3 + 0.7*c.depth*d + c.point) * in
			a, b := must(full.Yield()), must(short.Yield())
			if math.Abs(b.Share-0.7) > 1e-9 || math.Abs(b.Table-0.7*a.Equations) > 1e-9*a.Equations || b.Z != min(b.Table, b.Equations) {
				t.Errorf("%s: table rule %g, want 0.7 of %g", c.name, b.Table, a.Equations)
			}
			deep := j
			deep.Fastener.Length = full.Fastener.Length + 1*in
			if y := must(deep.Yield()); y.Share != 1 || math.Abs(y.Table-a.Equations) > 1e-9*a.Equations {
				t.Errorf("%s: deeper than the tables: %g, want %g", c.name, y.Table, a.Equations)
			}
			if yield > 0 && a.Governing != "II" && a.Governing != "IIIm" {
				t.Errorf("%s: mode %s governs: the penetration is of no matter", c.name, a.Governing)
			}
		}
	}
}
