package fasten_test

import (
	"math"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// The wet service factors by how a joint was made and is used, NDS Table 11.3.3
// as quoted.
func TestWetService(t *testing.T) {
	wet, dry := fasten.Service{Seasoned: true}, fasten.Service{Dry: true, Seasoned: true}
	green := fasten.Service{Dry: true}
	for _, c := range []struct {
		name    string
		service fasten.Service
		sideway float64
		out     float64 // NaN: bolts have none
	}{
		{"16d common nail", fasten.Service{}, 0.7, 0.25},
		{"16d common nail", wet, 0.7, 0.25},
		{"16d common nail", green, 0.7, 0.25},
		{"16d common nail", fasten.Service{Soaked: true}, 0.7, 1},
		{"16d common nail", dry, 1, 1},
		{"No.10 x 3 wood screw", fasten.Service{}, 0.7, 0.7},
		{"No.10 x 3 wood screw", green, 0.7, 1},
		{"3/8 x 5 lag screw", fasten.Service{}, 0.7, 0.7},
		{"3/8 x 5 lag screw", green, 0.4, 1},
		{"3/8 x 5 lag screw", dry, 1, 1},
		{"1/4 x 4 lag screw", green, 0.4, 1}, // 1/4 in belongs to the thick
		{"1/2 bolt", green, 0.4, math.NaN()},
		{"1/2 bolt", wet, 0.7, math.NaN()},
	} {
		j := bolted()
		j.Fastener, j.Service, j.Main.Thickness = must(fasten.Lookup(c.name)), c.service, 5.5*in
		j.Rows, j.Between = 2, 2*in
		if got := factor(t, must(j.Lateral(lumber.TenYears)), "CM"); got != c.sideway {
			t.Errorf("%s, %+v: lateral CM %g, want %g", c.name, c.service, got, c.sideway)
		}
		if math.IsNaN(c.out) {
			continue
		}
		notes := strings.Join(must(j.Pull(lumber.TenYears))[0].Notes, " ")
		if smooth := c.out == 0.25; strings.Contains(notes, "no fastener to pull") != smooth {
			t.Errorf("%s, %+v: %q", c.name, c.service, notes)
		}
		if got := factor(t, must(j.Pull(lumber.TenYears))[0], "CM"); got != c.out {
			t.Errorf("%s, %+v: withdrawal CM %g, want %g", c.name, c.service, got, c.out)
		}
	}
	// Made wet, used dry: a single fastener, or a single row along the grain, is spared.
	j := bolted()
	j.Service = green
	if got := factor(t, must(j.Lateral(lumber.TenYears)), "CM"); got != 1 {
		t.Errorf("one bolt: CM %g", got)
	}
	j.PerRow, j.Spacing = 3, 2*in
	if got := factor(t, must(j.Lateral(lumber.TenYears)), "CM"); got != 1 {
		t.Errorf("one row along the grain: CM %g", got)
	}
	j.Side.Angle = math.Pi / 2
	if got := factor(t, must(j.Lateral(lumber.TenYears)), "CM"); got != 0.4 {
		t.Errorf("one row across the grain of a piece: CM %g", got)
	}
	ring := bolted()
	ring.Fastener = fasten.Fastener{Kind: fasten.RingNail, Diameter: 0.148 * in, Length: 3 * in, Head: 0.3 * in}
	if got := factor(t, must(ring.Pull(lumber.TenYears))[0], "CM"); got != 1 {
		t.Errorf("ring shank: CM %g", got)
	}
}

// Temperature and duration, each at both sides of its steps.
func TestTemperatureAndDuration(t *testing.T) {
	for _, c := range []struct {
		fahrenheit float64
		dry        bool
		want       float64
	}{
		{-40, false, 1},
		{100, false, 1},
		{100.1, false, 0.7},
		{125, true, 0.8},
		{125.1, true, 0.7},
		{150, false, 0.5},
	} {
		j := bolted()
		j.Service = fasten.Service{Dry: c.dry, Seasoned: c.dry, Temperature: measure.Fahrenheit(c.fahrenheit)}
		if got := factor(t, must(j.Lateral(lumber.TenYears)), "Ct"); got != c.want {
			t.Errorf("%g °F, dry %v: Ct %g, want %g", c.fahrenheit, c.dry, got, c.want)
		}
	}
	for d, want := range map[lumber.Duration]float64{lumber.Permanent: 0.9, lumber.TenYears: 1, lumber.Snow: 1.15, lumber.SevenDays: 1.25, lumber.TenMinutes: 1.6} {
		if got := factor(t, must(bolted().Lateral(d)), "CD"); got != want {
			t.Errorf("%v: CD %g, want %g", d, got, want)
		}
	}
	// Nothing lasts shorter than ten minutes: impact is no duration of a joint.
	if _, err := bolted().Lateral(lumber.TenMinutes + 1); err == nil {
		t.Error("a shorter duration than ten minutes is accepted")
	}
}

// Distances of a 1/2 in bolt, in: full, reduced, too little, unknown.
func TestGeometry(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(j *fasten.Joint)
		delta  float64
		short  string // check that must be short
		asks   bool   // the lateral check has no answer
	}{
		{"full", func(*fasten.Joint) {}, 1, "", false},
		{"end at 7D", func(j *fasten.Joint) { j.Main.End = 3.5 * in }, 1, "", false},
		{"end at 5D", func(j *fasten.Joint) { j.Main.End = 2.5 * in }, 5.0 / 7, "", false},
		{"end at 3.5D", func(j *fasten.Joint) { j.Main.End = 1.75 * in }, 0.5, "", false},
		{"end below 3.5D", func(j *fasten.Joint) { j.Main.End = 1.74 * in }, 0, "end distance, main", false},
		{"hardwood at 5D", func(j *fasten.Joint) { j.Main.End, j.Main.Hardwood = 2.5*in, true }, 1, "", false},
		{"hardwood at 2.5D", func(j *fasten.Joint) { j.Main.End, j.Main.Hardwood = 1.25*in, true }, 0.5, "", false},
		{"hardwood below 2.5D", func(j *fasten.Joint) { j.Main.End, j.Main.Hardwood = 1.2*in, true }, 0, "end distance, main", false},
		{"rows 5 in apart", func(j *fasten.Joint) {
			j.Rows, j.Between, j.Main.Edge, j.Side.Edge = 2, 5*in, 1*in, 1*in
		}, 1, "", false},
		{"1/4 in bolt below 3.5D", func(j *fasten.Joint) { j.Fastener, j.Main.End = must(fasten.Lookup("1/4 bolt")), 0.8*in }, 0, "end distance, main", false},
		{"pressed away at 4D", func(j *fasten.Joint) { j.Main.End, j.Main.Away = 2*in, true }, 1, "", false},
		{"pressed away at 2D", func(j *fasten.Joint) { j.Main.End, j.Main.Away = 1*in, true }, 0.5, "", false},
		{"across at 2D", func(j *fasten.Joint) { j.Side.End, j.Side.Angle = 1*in, math.Pi/2 }, 0.5, "", false},
		{"oblique at 3D", func(j *fasten.Joint) { j.Side.End, j.Side.Angle = 1.5*in, 0.5 }, 0, "end distance, side", false},
		{"edge below 1.5D", func(j *fasten.Joint) { j.Main.Edge = 0.7 * in }, 0, "edge distance, main", false},
		{"loaded edge below 4D", func(j *fasten.Joint) { j.Side.Edge, j.Side.Angle = 1.9*in, math.Pi/2 }, 0, "edge distance, side", false},
		{"other edge", func(j *fasten.Joint) { j.Side.Edge = 6.6 * in }, 0, "distance from the other edge, side", false},
		{"spacing 3D", func(j *fasten.Joint) { j.PerRow, j.Spacing = 2, 1.5*in }, 0.75, "", false},
		{"spacing below 3D", func(j *fasten.Joint) { j.PerRow, j.Spacing = 2, 1.4*in }, 0, "spacing in the row", false},
		{"rows 1.5D", func(j *fasten.Joint) { j.Rows, j.Between = 2, 0.75*in }, 1, "", false},
		{"rows too close", func(j *fasten.Joint) { j.Rows, j.Between = 2, 0.7*in }, 0, "spacing of rows", false},
		{"rows across", func(j *fasten.Joint) {
			j.Rows, j.Between, j.Main.Angle, j.Main.Edge, j.Side.Angle = 2, 1.5*in, math.Pi/2, 3*in, math.Pi/2
		}, 0, "spacing of rows", false}, // l/D = 3: (5·1.5 + 10·0.5)/8 = 1.5625 in
		{"rows far apart", func(j *fasten.Joint) {
			j.Rows, j.Between, j.Main.Edge, j.Side.Edge = 2, 5.1*in, 1*in, 1*in
		}, 0, "spread across the grain, main", false},
		{"end unknown", func(j *fasten.Joint) { j.Main.End = 0 }, 1, "", true},
		{"edge unknown", func(j *fasten.Joint) { j.Side.Edge = 0 }, 1, "", true},
		{"width unknown", func(j *fasten.Joint) { j.Side.Width = 0 }, 1, "", true},
		{"rows unknown", func(j *fasten.Joint) { j.Rows = 2 }, 1, "", true},
	} {
		j := bolted()
		c.change(&j)
		l := must(j.Lateral(lumber.TenYears))
		if got := factor(t, l, "CΔ"); math.Abs(got-c.delta) > 1e-9 {
			t.Errorf("%s: CΔ %g, want %g", c.name, got, c.delta)
		}
		if c.short != "" {
			if v := find(t, must(j.Geometry()), c.short).Verdict(); v != measure.Short {
				t.Errorf("%s: %s %v, want short", c.name, c.short, v)
			}
		}
		v := find(t, must(j.Check(fasten.Demand{Lateral: 1}, lumber.TenYears)), "lateral").Verdict()
		want := measure.Holds
		if c.asks {
			want = measure.NoAnswer
		} else if c.delta == 0 {
			want = measure.Short
		}
		if v != want {
			t.Errorf("%s: lateral %v, want %v", c.name, v, want)
		}
	}
	// Both branches of the row spacing's rule by l/D, across the grain.
	for _, c := range []struct{ thick, want float64 }{{0.75, 1.25}, {1.01, (5*1.01 + 5) / 8}, {2.99, (5*2.99 + 5) / 8}, {3.01, 2.5}, {3.5, 2.5}} {
		j := bolted()
		j.Main.Thickness, j.Side.Thickness = c.thick*in, c.thick*in
		j.Main.Angle, j.Side.Angle, j.Rows, j.Between = math.Pi/2, math.Pi/2, 2, 4*in
		if got := find(t, must(j.Geometry()), "spacing of rows").Limit / in; math.Abs(got-c.want) > 1e-6 {
			t.Errorf("pieces of %g in: rows %g in apart, want %g", c.thick, got, c.want)
		}
	}
	// Two side pieces count together.
	j := bolted()
	j.Main.Thickness, j.Side.Thickness, j.Double, j.Rows, j.Between = 5.5*in, 1*in, true, 2, 4*in
	j.Main.Angle, j.Side.Angle = math.Pi/2, math.Pi/2
	if got := find(t, must(j.Geometry()), "spacing of rows").Limit / in; math.Abs(got-(5*2+5)/8.0) > 1e-6 {
		t.Errorf("two side pieces of 1 in: rows %g in apart", got)
	}
	// Slender bolts along the grain: half the row spacing from the edge.
	j = bolted()
	j.Main.Thickness, j.Side.Thickness, j.Rows, j.Between = 3.5*in, 3.5*in, 2, 4*in
	if got := find(t, must(j.Geometry()), "edge distance, main").Limit / in; math.Abs(got-2) > 1e-9 {
		t.Errorf("l/D 7: edge %g in, want half of 4", got)
	}
	// Thin fasteners have advice in place of rules.
	j = bolted()
	j.Fastener, j.Main.End, j.Main.Edge, j.PerRow, j.Spacing, j.Rows, j.Between = must(fasten.Lookup("16d common nail")), 1*in, 0.2*in, 2, 0.5*in, 2, 0.2*in
	j.Main.Thickness = 3.5 * in
	if g := must(j.Geometry()); len(g) != 0 {
		t.Errorf("nails have rules: %v", g)
	}
	notes := strings.Join(must(j.Lateral(lumber.TenYears)).Notes, "; ")
	for _, part := range []string{"end distance, main", "edge distance, main", "spacing in the row", "spacing of rows"} {
		if !strings.Contains(notes, part) {
			t.Errorf("no advice on the %s: %q", part, notes)
		}
	}
	j.Prebored, j.Main.Away, j.Main.End = true, true, 5*0.162*in
	if n := strings.Join(must(j.Lateral(lumber.TenYears)).Notes, "; "); strings.Contains(n, "end distance, main") {
		t.Errorf("bored and pressed away at 5D still advised: %q", n)
	}
}

// Group action needs the spacing, widths and stiffnesses it is made of.
func TestGroupNeeds(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(j *fasten.Joint)
		says   string
	}{
		{"spacing", func(j *fasten.Joint) { j.Spacing = 0 }, "Spacing"},
		{"width", func(j *fasten.Joint) { j.Side.Width = 0 }, "Width"},
		{"stiffness", func(j *fasten.Joint) { j.Main.Grade.E = lumber.Value{} }, "Grade.E"},
		{"concrete", func(j *fasten.Joint) { j.Main.Material = fasten.Concrete }, "concrete"},
	} {
		j := bolted()
		j.PerRow, j.Spacing, j.Shank = 3, 2*in, true
		c.change(&j)
		l := must(j.Lateral(lumber.TenYears))
		if l.Err == nil || !strings.Contains(l.Err.Error(), c.says) || l.Value != 0 || !strings.Contains(l.String(), "no answer") {
			t.Errorf("%s: %v", c.name, l)
		}
	}
	// Fasteners of 1/4 in are grouped, thinner ones are not.
	q := bolted()
	q.Fastener, q.PerRow, q.Spacing = must(fasten.Lookup("1/4 bolt")), 8, 2*in
	if got := factor(t, must(q.Lateral(lumber.TenYears)), "Cg"); !(got < 1 && got > 0.8) {
		t.Errorf("Cg of eight 1/4 in bolts is %g", got)
	}
	// Across the grain a piece counts by the width of the group: two rows 3 in apart,
	// and one row by 3D.
	a := bolted()
	a.Side.Angle, a.PerRow, a.Spacing, a.Rows, a.Between = math.Pi/2, 2, 2*in, 2, 3*in
	along := a.Main.Grade.E.SI() * 1.5 * in * 7.25 * in
	for rows, wide := range map[int]float64{2: 3, 1: 1.5} {
		a.Rows = rows
		want := must(fasten.GroupAction(2, 0.5*in, 2*in, along, along/7.25*wide, false)).Value
		if got := factor(t, must(a.Lateral(lumber.TenYears)), "Cg"); math.Abs(got-want) > 1e-12 {
			t.Errorf("%d rows across the grain: Cg %g, want %g", rows, got, want)
		}
	}
	// Steel sides are stiffer against slip and in themselves: no less than the equation says.
	j := bolted()
	j.Side.Material, j.Side.Thickness, j.PerRow, j.Spacing, j.Double = fasten.Plate, 0.25*in, 4, 2*in, true
	got := factor(t, must(j.Lateral(lumber.TenYears)), "Cg")
	e := j.Main.Grade.E.SI() * 1.5 * in * 7.25 * in
	want := must(fasten.GroupAction(4, 0.5*in, 2*in, e, 2*30e6*measure.PSI*0.25*in*7.25*in, true)).Value
	if math.Abs(got-want) > 1e-12 {
		t.Errorf("Cg of two steel plates %g, want %g", got, want)
	}
	for _, bad := range [][4]float64{{0, 1, 1, 1}, {2, math.NaN(), 1, 1}, {2, 0.01, -1, 1}, {2, 0.01, 0.1, 0}} {
		if _, err := fasten.GroupAction(int(bad[0]), bad[1], bad[2], bad[3], 1e6, false); err == nil {
			t.Errorf("GroupAction of %v gives no error", bad)
		}
	}
}

// A fastener into end grain bears across the grain, counts the largest angle, and
// loses a third more.
func TestEndGrain(t *testing.T) {
	j := bolted()
	j.Fastener, j.Main.Thickness = must(fasten.Lookup("1/2 x 6 lag screw")), 8*in
	j.Service = fasten.Service{Dry: true, Seasoned: true}
	across := j
	across.Main.Angle = math.Pi / 2
	j.Main.EndGrain = true
	if a, b := must(j.Yield()).Z, must(across.Yield()).Z; a != b {
		t.Errorf("into end grain %g, across the grain %g", a, b)
	}
	l := must(j.Lateral(lumber.TenYears))
	if math.Abs(l.Value-0.67*must(across.Yield()).Z) > 1e-9 || factor(t, l, "Ceg") != 0.67 {
		t.Errorf("%v", l)
	}
}

// The advice against splitting, in diameters, for nails as driven and in bored
// holes.
func TestSplittingAdvice(t *testing.T) {
	d := 0.162 * in
	for _, c := range []struct {
		name    string
		bored   bool
		change  func(j *fasten.Joint, at float64)
		says    string
		nailing float64
	}{
		{"end, pressed toward", false, func(j *fasten.Joint, at float64) { j.Main.End = at }, "end distance, main", 15},
		{"end, pressed toward", true, func(j *fasten.Joint, at float64) { j.Main.End = at }, "end distance, main", 10},
		{"end, pressed away", false, func(j *fasten.Joint, at float64) { j.Main.End, j.Main.Away = at, true }, "end distance, main", 10},
		{"end, pressed away", true, func(j *fasten.Joint, at float64) { j.Main.End, j.Main.Away = at, true }, "end distance, main", 5},
		{"end, across", false, func(j *fasten.Joint, at float64) { j.Main.End, j.Main.Angle = at, math.Pi/2 }, "end distance, main", 10},
		{"edge", false, func(j *fasten.Joint, at float64) { j.Side.Edge = at }, "edge distance, side", 2.5},
		{"row along", false, func(j *fasten.Joint, at float64) { j.Spacing = at }, "spacing in the row", 15},
		{"row along", true, func(j *fasten.Joint, at float64) { j.Spacing = at }, "spacing in the row", 10},
		{"row across", false, func(j *fasten.Joint, at float64) {
			j.Spacing, j.Main.Angle, j.Side.Angle = at, math.Pi/2, math.Pi/2
		}, "spacing in the row", 10},
		{"row across", true, func(j *fasten.Joint, at float64) {
			j.Spacing, j.Main.Angle, j.Side.Angle = at, math.Pi/2, math.Pi/2
		}, "spacing in the row", 5},
		{"rows", false, func(j *fasten.Joint, at float64) { j.Between = at }, "spacing of rows", 5},
		{"rows", true, func(j *fasten.Joint, at float64) { j.Between = at }, "spacing of rows", 3},
	} {
		for off, warns := range map[float64]bool{0: false, -0.05: true} {
			j := bolted()
			j.Fastener, j.Main.Thickness, j.Prebored = must(fasten.Lookup("16d common nail")), 3.5*in, c.bored
			j.PerRow, j.Spacing, j.Rows, j.Between = 2, 3*in, 2, 1*in
			c.change(&j, (c.nailing+off)*d)
			notes := strings.Join(must(j.Lateral(lumber.TenYears)).Notes, "; ")
			if strings.Contains(notes, c.says) != warns {
				t.Errorf("%s, bored %v, at %g D: %q", c.name, c.bored, c.nailing+off, notes)
			}
		}
	}
	// 1/4 in and more have rules and no advice.
	j := bolted()
	j.Fastener, j.Main.End = must(fasten.Lookup("1/4 bolt")), 0.1*in
	if n := must(j.Lateral(lumber.TenYears)).Notes; len(n) != 0 {
		t.Errorf("a bolt is advised: %q", n)
	}
}
