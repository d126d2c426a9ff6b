package fasten_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// deckScrew holds a 1 in board on a joist.
func deckScrew() fasten.Joint {
	j := bolted()
	j.Fastener = must(fasten.Lookup("No.10 x 3 wood screw"))
	j.Main.Thickness, j.Side.Thickness = 7.25*in, 1*in
	j.Main.Width, j.Main.Edge = 1.5*in, 0.75*in
	return j
}

// Each way of being pulled apart, worked by hand in pounds.
func TestPullWays(t *testing.T) {
	dry := fasten.Service{Dry: true, Seasoned: true}
	for _, c := range []struct {
		name   string
		change func(j *fasten.Joint)
		way    string
		want   float64 // lbf
	}{
		// 2850 · 0.25 · 0.19 on 2 in of thread, all of it in the joist.
		{"screw", func(*fasten.Joint) {}, "withdrawal", 270.75},
		// The same over a gap of 1/2 in: 1.5 in left.
		{"screw over a gap", func(j *fasten.Joint) { j.Gap = 0.5 * in }, "withdrawal", 203.0625},
		// 690 π 0.363 · 0.25 · 2.5 · 0.363 would need 0.9075 in: the board is 1 in.
		{"head", func(*fasten.Joint) {}, "head pull-through", 690 * math.Pi * 0.363 * 0.25 * 0.9075},
		// The same equation below 2.5 heads of thickness.
		{"head, thin board", func(j *fasten.Joint) { j.Side.Thickness = 0.5 * in }, "head pull-through", 690 * math.Pi * 0.363 * 0.25 * 0.5},
		// 1380 G^2.5 D on 2.5 in.
		{"nail", func(j *fasten.Joint) { j.Fastener = must(fasten.Lookup("16d common nail")) }, "withdrawal", 1380 * math.Pow(0.5, 2.5) * 0.162 * 2.5},
		// A nail with only its last inch threaded, 2850 being for screws: rings.
		{"ring nail", func(j *fasten.Joint) {
			j.Fastener = fasten.Fastener{Kind: fasten.RingNail, Diameter: 0.162 * in, Length: 3.5 * in, Head: 0.34 * in, Thread: 1 * in}
		}, "withdrawal", 1800 * 0.25 * 0.162},
		// Lag 1/2 x 4 through 1 in: thread 2.5 in with a point of 5/16.
		{"lag", func(j *fasten.Joint) { j.Fastener = must(fasten.Lookup("1/2 x 4 lag screw")) }, "withdrawal", 1800 * math.Pow(0.5, 1.5) * math.Pow(0.5, 0.75) * 2.1875},
		{"lag's steel", func(j *fasten.Joint) { j.Fastener = must(fasten.Lookup("1/2 x 4 lag screw")) }, "steel in tension", 20000 * math.Pi / 4 * 0.371 * 0.371},
		{"lag's washer", func(j *fasten.Joint) { j.Fastener, j.Side.Thickness = must(fasten.Lookup("1/2 x 5 lag screw")), 1.5*in }, "washer on the side", 625 * math.Pi / 4 * (1.375*1.375 - 0.5625*0.5625)},
		{"bolt's plate", func(j *fasten.Joint) { j.Fastener, j.Washer, j.Hole = must(fasten.Lookup("1/2 bolt")), 3*in, 0.55*in }, "washer on the main", 625 * math.Pi / 4 * (9 - 0.3025)},
		{"lag in end grain", func(j *fasten.Joint) { j.Fastener, j.Main.EndGrain = must(fasten.Lookup("1/2 x 4 lag screw")), true }, "withdrawal", 0.75 * 1800 * math.Pow(0.5, 1.5) * math.Pow(0.5, 0.75) * 2.1875},
		{"screw in end grain", func(j *fasten.Joint) { j.Main.EndGrain = true }, "withdrawal", 0},
		{"nail in end grain", func(j *fasten.Joint) { j.Fastener, j.Main.EndGrain = must(fasten.Lookup("16d common nail")), true }, "withdrawal", 0},
		// Toe-nail: min(L - L/(3 cos 30), tm/cos 30) = 2.1529 in, times 0.67.
		{"toe-nail", func(j *fasten.Joint) {
			j.Fastener, j.Toe, j.Side.Thickness = must(fasten.Lookup("16d common nail")), true, 1.5*in
		}, "withdrawal", 1380 * math.Pow(0.5, 2.5) * 0.162 * (3.5 - 3.5/(3*math.Cos(math.Pi/6))) * 0.67},
	} {
		j := deckScrew()
		j.Service = dry
		c.change(&j)
		all := must(j.Pull(lumber.TenYears))
		found := false
		for _, p := range all {
			if strings.HasPrefix(p.Name, c.way) {
				found = true
				if p.Err != nil || math.Abs(p.Value/lb-c.want) > 1e-6*(1+c.want) {
					t.Errorf("%s: %v, want %.4f lbf", c.name, p, c.want)
				}
			}
		}
		if !found {
			t.Errorf("%s: no %s in %v", c.name, c.way, all)
		}
	}
}

// Toe-nails keep their wet service factor of 1 in withdrawal.
func TestToeNail(t *testing.T) {
	j := deckScrew()
	j.Fastener, j.Toe, j.Side.Thickness, j.Main.Thickness = must(fasten.Lookup("16d common nail")), true, 1.5*in, 1.5*in
	all := must(j.Pull(lumber.TenYears))
	if len(all) != 1 || factor(t, all[0], "CM") != 1 || factor(t, all[0], "Ctn") != 0.67 {
		t.Errorf("%v", all)
	}
	l := must(j.Lateral(lumber.TenYears))
	if factor(t, l, "Ctn") != 0.83 || factor(t, l, "CM") != 0.7 {
		t.Errorf("%v", l)
	}
	y := must(j.Yield())
	if math.Abs(y.InSide/in-3.5/3) > 1e-9 || math.Abs(y.InMain/in-1.5) > 1e-9 {
		t.Errorf("toe-nail bears on %g and %g in", y.InSide/in, y.InMain/in)
	}
	j.Main.Thickness = 3.5 * in
	if y = must(j.Yield()); math.Abs(y.InMain/in-(3.5*math.Cos(math.Pi/6)-3.5/3)) > 1e-9 {
		t.Errorf("toe-nail bears on %g in of a thick piece", y.InMain/in)
	}
}

// A head, a washer or a grade that is not known gives no answer, not a number.
func TestPullUnknown(t *testing.T) {
	j := deckScrew()
	j.Fastener.Head = 0
	c := find(t, must(j.Check(fasten.Demand{Withdrawal: 100}, lumber.TenYears)), "head pull-through")
	if c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("%v", c)
	}
	j = bolted()
	j.Side.Grade = wood(0.5)
	c = find(t, must(j.Check(fasten.Demand{Withdrawal: 100}, lumber.TenYears)), "washer on the side")
	if c.Verdict() != measure.NoAnswer {
		t.Errorf("%v", c)
	}
	j.Side.EndGrain = true
	c = find(t, must(j.Check(fasten.Demand{Withdrawal: 100}, lumber.TenYears)), "washer on the side")
	if !errors.Is(c.Err, measure.ErrNotComputed) {
		t.Errorf("%v", c)
	}
	j = bolted()
	j.Washer = 0.4 * in
	c = find(t, must(j.Check(fasten.Demand{Withdrawal: 100}, lumber.TenYears)), "washer on the side")
	if !errors.Is(c.Err, measure.ErrRange) {
		t.Errorf("washer smaller than its hole: %v", c)
	}
	j = bolted()
	j.Hole = 0.4 * in
	c = find(t, must(j.Check(fasten.Demand{Withdrawal: 100}, lumber.TenYears)), "washer on the side")
	if !errors.Is(c.Err, measure.ErrRange) {
		t.Errorf("hole smaller than the bolt: %v", c)
	}
	for _, bad := range []fasten.Fastener{{}, {Kind: fasten.Bolt, Diameter: 0.5 * in}, {Kind: fasten.Nail, Diameter: -1}} {
		if _, err := bad.Withdrawal(0.5); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
	if _, err := must(fasten.Lookup("1/2 lag screw")).Withdrawal(0.9); !errors.Is(err, measure.ErrRange) {
		t.Errorf("G 0.9: %v", err)
	}
	for _, x := range [][3]float64{{0, 0.02, 0.5}, {0.01, -1, 0.5}, {0.01, 0.02, math.NaN()}} {
		if _, err := fasten.PullThrough(x[0], x[1], x[2]); err == nil {
			t.Errorf("%v: no error", x)
		}
	}
}

// Lateral load and pull together never allow more than either alone would.
func TestBoth(t *testing.T) {
	for _, name := range []string{"1/2 x 5 lag screw", "No.10 x 3 wood screw", "16d common nail", "1/2 bolt"} {
		j := deckScrew()
		j.Fastener = must(fasten.Lookup(name))
		j.Side.Thickness = 1.5 * in
		d := fasten.Demand{Lateral: 60 * lb, Withdrawal: 40 * lb}
		checks := must(j.Check(d, lumber.TenYears))
		c := find(t, checks, "lateral and pull together")
		if math.Abs(c.Value-math.Hypot(60, 40)*lb) > 1e-6 || !(c.Limit > 0) || c.Err != nil {
			t.Errorf("%s: %v", name, c)
		}
		lateral := find(t, checks, "lateral").Limit
		if nearly := find(t, must(j.Check(fasten.Demand{Lateral: 60 * lb, Withdrawal: 1e-9}, lumber.TenYears)), "lateral and pull").Limit; math.Abs(nearly-lateral) > 1e-6*lateral {
			t.Errorf("%s: hardly any pull: %g, lateral alone %g", name, nearly, lateral)
		}
	}
	j := deckScrew()
	j.Fastener.Head = 0
	if c := find(t, must(j.Check(fasten.Demand{Lateral: 1, Withdrawal: 1}, lumber.TenYears)), "lateral and pull"); c.Verdict() != measure.NoAnswer {
		t.Errorf("%v", c)
	}
	if _, err := must(fasten.Lookup("1/2 bolt")).Combined(1, 1, 0.5); !errors.Is(err, measure.ErrName) {
		t.Errorf("bolts: %v", err)
	}
	if _, err := j.Fastener.Combined(1, -1, 0.5); !errors.Is(err, measure.ErrRange) {
		t.Errorf("negative withdrawal: %v", err)
	}
	// A lag screw that is pulled has distances of its own.
	j = deckScrew()
	j.Fastener, j.PerRow, j.Spacing, j.Main.End = must(fasten.Lookup("1/2 x 5 lag screw")), 2, 1.5*in, 1.9*in
	checks := must(j.Check(fasten.Demand{Withdrawal: 1}, lumber.TenYears))
	for name, want := range map[string]struct {
		least   float64
		verdict measure.Verdict
	}{
		"pulled: end distance":  {2, measure.Short},
		"pulled: spacing":       {2, measure.Short},
		"pulled: edge distance": {0.75, measure.Holds},
	} {
		if c := find(t, checks, name); c.Verdict() != want.verdict || math.Abs(c.Limit/in-want.least) > 1e-9 {
			t.Errorf("%v, want at least %g in and %v", c, want.least, want.verdict)
		}
	}
	// In double shear it is the far side piece that holds it.
	j.Double, j.Fastener.Length, j.Main.Thickness, j.Side.Thickness = true, 6.5*in, 1.5*in, 2.5*in
	j.Side.End = 1.5 * in
	if c := find(t, must(j.Check(fasten.Demand{Withdrawal: 1}, lumber.TenYears)), "pulled: end distance"); math.Abs(c.Value/in-1.5) > 1e-9 {
		t.Errorf("held by the far piece: %v", c)
	}
	j.Side.EndGrain = true
	for _, c := range must(j.Check(fasten.Demand{Withdrawal: 1}, lumber.TenYears)) {
		if strings.HasPrefix(c.Name, "pulled") {
			t.Errorf("end grain has no such distances: %v", c)
		}
	}
}

// Appendix E by hand: two rows of two 1/2 in bolts, 2x8 of Douglas Fir-Larch No.2
// dry, Ft 575 and CF 1.2, Fv 180 psi.
func TestTearing(t *testing.T) {
	j := bolted()
	j.Service = fasten.Service{Dry: true, Seasoned: true}
	j.PerRow, j.Spacing, j.Rows, j.Between, j.Main.Edge, j.Side.Edge = 2, 2*in, 2, 3*in, 2*in, 2*in
	ft, fv := 575*1.2, 180.0
	checks := must(j.Check(fasten.Demand{Lateral: 1000 * lb}, lumber.TenYears))
	for name, want := range map[string]float64{
		"section left by the holes, main": ft * 1.5 * (7.25 - 2*0.5625),
		"rows tearing out, main":          2 * 2 * fv * 1.5 * 2,
		"group tearing out, main":         2*fv*1.5*2 + ft*1.5*(3-0.5625),
	} {
		c := find(t, checks, name)
		if math.Abs(c.Limit/lb-want) > 1e-6*want || c.Value != 1000*lb || c.Err != nil {
			t.Errorf("%v, want %.1f lbf", c, want)
		}
	}
	j.Double = true
	checks = must(j.Check(fasten.Demand{Lateral: 1000 * lb}, lumber.TenYears))
	if c := find(t, checks, "rows tearing out, side"); c.Value != 500*lb {
		t.Errorf("each of two side pieces takes half: %v", c)
	}
	thin := bolted()
	thin.Fastener = must(fasten.Lookup("1/4 bolt"))
	find(t, must(thin.Check(fasten.Demand{Lateral: 1}, lumber.TenYears)), "rows tearing out, main")
	j.Main.Away = true
	for _, c := range must(j.Check(fasten.Demand{Lateral: 1}, lumber.TenYears)) {
		if strings.Contains(c.Name, "tearing out, main") {
			t.Errorf("a piece under compression tears: %v", c)
		}
	}
	// What is missing is asked for.
	j = bolted()
	j.Main.Width, j.Main.End, j.Side.Grade = 0, 0, wood(0.5)
	j.Rows = 2
	checks = must(j.Check(fasten.Demand{Lateral: 1}, lumber.TenYears))
	for _, name := range []string{"section left by the holes, main", "rows tearing out, main", "group tearing out, main", "section left by the holes, side", "rows tearing out, side", "group tearing out, side"} {
		if c := find(t, checks, name); c.Verdict() != measure.NoAnswer || c.Err == nil {
			t.Errorf("%v", c)
		}
	}
}

// A beam hung from a bolt in its lower part splits: the shear there falls with
// the cube of the depth that is left near an end, and with it alone farther in.
func TestShearAtJoint(t *testing.T) {
	at := func(edge, end float64) measure.Check {
		j := bolted()
		j.Side.Angle, j.Side.Edge, j.Side.End = math.Pi/2, edge*in, end*in
		return find(t, must(j.Check(fasten.Demand{Lateral: 300 * lb}, lumber.TenYears)), "shear at")
	}
	fv := 180 * 0.97
	for _, c := range []struct{ edge, end, want float64 }{
		{5, 10, 2.0 / 3 * fv * 1.5 * 5 * (5 / 7.25) * (5 / 7.25)},
		{2, 10, 2.0 / 3 * fv * 1.5 * 2 * (2 / 7.25) * (2 / 7.25)},
		{2, 40, 2.0 / 3 * fv * 1.5 * 2},
	} {
		k := at(c.edge, c.end)
		if math.Abs(k.Limit/lb-c.want) > 1e-9*c.want || k.Value != 300*lb {
			t.Errorf("edge %g, end %g: %v, want %.2f lbf", c.edge, c.end, k, c.want)
		}
	}
	if r := at(5, 10).Limit / at(2, 10).Limit; math.Abs(r-15.625) > 1e-9 {
		t.Errorf("depth 5 to 2 in: strength %g to 1, want the cube", r)
	}
	twice := bolted()
	twice.Side.Angle, twice.Double = math.Pi/2, true
	if c := find(t, must(twice.Check(fasten.Demand{Lateral: 300}, lumber.TenYears)), "shear at"); math.Abs(c.Value-150) > 1e-9 {
		t.Errorf("each of two side pieces takes half: %v", c)
	}
	j := bolted()
	j.Side.Angle, j.Side.End = math.Pi/2, 0
	if c := find(t, must(j.Check(fasten.Demand{Lateral: 1}, lumber.TenYears)), "shear at the joint"); c.Verdict() != measure.NoAnswer || c.Rule == nil {
		t.Errorf("%v", c)
	}
	j.Side.End, j.Side.Edge = 4*in, 9*in
	if c := find(t, must(j.Check(fasten.Demand{Lateral: 1}, lumber.TenYears)), "shear at"); c.Verdict() == measure.Holds {
		t.Errorf("fastener outside the piece: %v", c)
	}
}
