package fasten_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

var lake = fasten.Exposure{Treatment: "MCA", Fresh: true, Drains: true}

// A bolt reaches through grip, two washers, a lock nut and two threads: 3 in of
// wood and 1/2 in make 3 + 2·0.109 + 0.5625 + 2/13 = 3.934 in, and 4 in is sold.
func TestScheduleLength(t *testing.T) {
	for _, c := range []struct {
		main, side, gap, own float64
		double, compound     bool
		needed, length       float64
		long                 bool
	}{
		{1.5, 1.5, 0, 0, false, false, 3.934, 4, true},
		{1.5, 1.5, 0.5, 0, false, false, 4.434, 4.5, true},
		{3.5, 1.5, 0, 0, false, false, 5.934, 6, true},
		{3.5, 1.5, 0.1, 0, false, false, 6.034, 7, true},
		{3.5, 1.5, 0, 0, true, false, 7.434, 8, true},
		{1.5, 1.5, 0, 3.5, false, false, 3.934, 3.5, false},
		{1.5, 1.5, 0, 0, false, true, 3.809, 4, true},
	} {
		j := bolted()
		j.Main.Thickness, j.Side.Thickness, j.Gap, j.Double = c.main*in, c.side*in, c.gap*in, c.double
		j.Fastener.Length = c.own * in
		rows, _, err := fasten.Schedule([]fasten.Place{{Joint: j, Finish: "hdg", Compound: c.compound}}, lake)
		if err != nil {
			t.Fatal(err)
		}
		r := rows[0]
		if math.Abs(r.Needed/in-c.needed) > 0.001 || math.Abs(r.Length/in-c.length) > 1e-9 {
			t.Errorf("%+v: needs %.3f, takes %.3f in", c, r.Needed/in, r.Length/in)
		}
		if v := find(t, r.Checks, "bolt long enough").Verdict(); (v == measure.Holds) != c.long {
			t.Errorf("%+v: long enough: %v", c, v)
		}
		if v := find(t, r.Checks, "nut kept").Verdict(); (v == measure.Holds) == c.compound {
			t.Errorf("%+v: compound: %v", c, v)
		}
		if r.Place != "place 1" {
			t.Errorf("a place without a name is called %q", r.Place)
		}
	}
	j := bolted()
	j.Main.Thickness = 21.5 * in
	rows, _, err := fasten.Schedule([]fasten.Place{{Joint: j, Finish: "hdg"}}, lake)
	if err != nil || math.Abs(rows[0].Length/in-24) > 1e-9 {
		t.Errorf("the longest bolt: %v, %v", rows, err)
	}
	j.Main.Thickness = 22 * in // 24.4 in would do
	if _, _, err := fasten.Schedule([]fasten.Place{{Joint: j}}, lake); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no bolt is sold so long: %v", err)
	}
}

// The tail points off the drum, whichever piece it lies against.
func TestScheduleTail(t *testing.T) {
	for _, c := range []struct {
		main, side bool
		says       string
	}{
		{true, false, "nut at the side piece"},
		{false, true, "nut at the main piece"},
		{true, true, "both sides"},
		{false, false, "no drum named"},
	} {
		j := bolted()
		j.DrumAtMain, j.DrumAtSide = c.main, c.side
		rows, _, err := fasten.Schedule([]fasten.Place{{Joint: j, Finish: "hdg"}}, lake)
		if err != nil || !strings.Contains(rows[0].Tail, c.says) {
			t.Errorf("%+v: %q, %v", c, rows[0].Tail, err)
		}
	}
}

// Like things are bought together, with spares; what goes with what is listed.
func TestScheduleBuy(t *testing.T) {
	bolt, lag, screw := bolted(), bolted(), deckScrew()
	bolt.PerRow, bolt.Spacing = 2, 2*in
	plate := bolt
	plate.Washer, plate.Gap, plate.Loose = 3*in, 0.25*in, true
	lag.Fastener, lag.Main.Thickness = must(fasten.Lookup("3/8 x 4 lag screw")), 5.5*in
	rows, buy, err := fasten.Schedule([]fasten.Place{
		{Name: "a", Joint: bolt, Alike: 10, Finish: "hot-dip galvanized"},
		{Name: "b", Joint: bolt, Alike: 1, Finish: "HDG"},
		{Name: "c", Joint: plate, Finish: "304"},
		{Name: "d", Joint: lag, Alike: 4, Finish: "hdg"},
		{Name: "e", Joint: screw, Alike: 300, Finish: ""},
	}, lake)
	if err != nil {
		t.Fatal(err)
	}
	want := []fasten.Item{
		{What: "1/2 bolt, 4 in long, hot-dip galvanized A153", Count: 25},
		{What: "lock nut 1/2 in, hot-dip galvanized A153", Count: 25},
		{What: "washer 1/2 in, 1-3/8 in across, hot-dip galvanized A153", Count: 49},
		{What: "1/2 bolt, 4-1/2 in long, stainless 304", Count: 4},
		{What: "lock nut 1/2 in, stainless 304", Count: 4},
		{What: "plate washer for 1/2 in, 3 in across, stainless 304", Count: 6},
		{What: "washer 1/2 in as spacer, stainless 304", Count: 8},
		{What: "3/8 lag screw, 4 in long, hot-dip galvanized A153", Count: 6},
		{What: "washer 3/8 in, 1 in across, hot-dip galvanized A153", Count: 6},
		{What: "No.10 wood screw, 3 in long, finish not known", Count: 330},
	}
	if diff := cmp.Diff(want, buy); diff != "" {
		t.Errorf("to buy (-want +got):\n%s", diff)
	}
	if !strings.Contains(strings.Join(rows[2].Notes, ""), "loose") {
		t.Errorf("a loose joint earns no warning: %q", rows[2].Notes)
	}
	if v := find(t, rows[4].Checks, "coating").Verdict(); v != measure.NoAnswer {
		t.Errorf("unknown coating: %v", v)
	}
	if v := find(t, rows[0].Checks, "washers under").Verdict(); v != measure.Holds {
		t.Errorf("washers: %v", v)
	}
	both := bolted()
	both.Double, both.Gap = true, 0.1*in // a washer at each of two gaps
	_, buy, err = fasten.Schedule([]fasten.Place{{Joint: both, Alike: 10, Finish: "304"}}, lake)
	if err != nil || buy[3] != (fasten.Item{What: "washer 1/2 in as spacer, stainless 304", Count: 22}) {
		t.Errorf("spacers of two gaps: %v, %v", buy, err)
	}
	long := bolted()
	long.Fastener.Length = 7 * in
	rows, _, err = fasten.Schedule([]fasten.Place{{Joint: long, Finish: "hdg"}}, lake)
	if err != nil || !strings.Contains(strings.Join(rows[0].Notes, ""), "cut it off") {
		t.Errorf("a long tail earns no remark: %q, %v", rows[0].Notes, err)
	}
}

// Holes by kind and by how dense the wood is.
func TestScheduleDrills(t *testing.T) {
	for _, c := range []struct {
		fastener string
		g        float64
		holes    string  // sizes in 1/64 in
		lo, hi   float64 // of the last, in
	}{
		{"1/2 bolt", 0.5, "36", 0.5 + 1.0/32, 0.5 + 1.0/16},
		{"1/2 x 5 lag screw", 0.5, "32 18", 0.2, 0.35},
		{"1/2 x 5 lag screw", 0.55, "32 22", 0.3, 0.375},
		{"1/2 x 5 lag screw", 0.67, "32 24", 0.325, 0.425},
		{"No.10 x 3 wood screw", 0.5, "7", 0, 0.7 * 0.152},
		{"No.10 x 3 wood screw", 0.55, "7", 0.7 * 0.152, 0.7 * 0.152},
		{"No.10 x 3 wood screw", 0.67, "9", 0.9 * 0.152, 0.9 * 0.152},
		{"16d common nail", 0.55, "8", 0, 0.75 * 0.162},
		{"16d common nail", 0.67, "9", 0, 0.9 * 0.162},
	} {
		j := bolted()
		j.Fastener, j.Main.Thickness = must(fasten.Lookup(c.fastener)), 5.5*in
		j.Main.Grade, j.Side.Grade = wood(c.g), wood(0.42)
		rows, _, err := fasten.Schedule([]fasten.Place{{Joint: j, Finish: "304"}}, lake)
		if err != nil {
			t.Fatal(err)
		}
		var sizes []string
		for _, d := range rows[0].Drills {
			sizes = append(sizes, fmt.Sprintf("%.0f", d.Size/in*64))
			if d.Source == nil || d.Size > d.To+in/64 || d.Size < d.From-in/64 {
				t.Errorf("%s: hole %+v outside its rule", c.fastener, d)
			}
		}
		last := rows[0].Drills[len(sizes)-1]
		if math.Abs(last.From/in-c.lo) > 1e-9 || math.Abs(last.To/in-c.hi) > 1e-9 {
			t.Errorf("%s in %g: %g to %g in, want %g to %g", c.fastener, c.g, last.From/in, last.To/in, c.lo, c.hi)
		}
		if got := strings.Join(sizes, " "); got != c.holes {
			t.Errorf("%s in %g: holes %s, want %s", c.fastener, c.g, got, c.holes)
		}
	}
}

func TestScheduleErrors(t *testing.T) {
	for name, p := range map[string]fasten.Place{
		"nothing":            {},
		"alike":              {Joint: bolted(), Alike: -1},
		"unknown finish":     {Joint: bolted(), Finish: "goldplated"},
		"odd bolt":           {Joint: func() fasten.Joint { j := bolted(); j.Fastener.Diameter, j.Fastener.Root = 0.55*in, 0.45*in; return j }()},
		"fastener unknown":   {Joint: func() fasten.Joint { j := bolted(); j.Fastener = fasten.Fastener{}; return j }()},
		"screw, no length":   {Joint: func() fasten.Joint { j := bolted(); j.Fastener = must(fasten.Lookup("No.10 wood screw")); return j }()},
		"bolted to concrete": {Joint: func() fasten.Joint { j := bolted(); j.Main.Material = fasten.Concrete; return j }()},
	} {
		if _, _, err := fasten.Schedule([]fasten.Place{p}, lake); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if _, _, err := fasten.Schedule([]fasten.Place{{Joint: bolted()}}, fasten.Exposure{Treatment: "tar"}); !errors.Is(err, measure.ErrName) {
		t.Errorf("treatment: %v", err)
	}
}

// Coatings against treatment and exposure.
func TestExposure(t *testing.T) {
	copperless := fasten.Exposure{Treatment: "none", Indoors: true}
	for _, c := range []struct {
		name   string
		e      fasten.Exposure
		m      fasten.Metal
		answer measure.Verdict
	}{
		{"zero value wants 316", fasten.Exposure{}, fasten.Metal{Finish: "304"}, measure.Short},
		{"zero value, 316", fasten.Exposure{}, fasten.Metal{Finish: "316"}, measure.Holds},
		{"salt", fasten.Exposure{Treatment: "CCA", Drains: true}, fasten.Metal{Finish: "hdg"}, measure.Short},
		{"wet for good", fasten.Exposure{Treatment: "CCA", Fresh: true}, fasten.Metal{Finish: "hdg"}, measure.Short},
		{"lake, hot-dip", lake, fasten.Metal{Finish: "Hot-Dip Galvanized"}, measure.Holds},
		{"lake, plated", lake, fasten.Metal{Finish: "bright zinc"}, measure.Short},
		{"lake, plain", lake, fasten.Metal{Finish: "black"}, measure.Short},
		// "Galvanized" alone may be plated: no guess.
		{"lake, galvanized", lake, fasten.Metal{Finish: "galvanized"}, measure.NoAnswer},
		{"lake, bronze", lake, fasten.Metal{Finish: "silicon bronze"}, measure.Holds},
		{"lake, mechanical bolt", lake, fasten.Metal{Finish: "B695 class 55"}, measure.NoAnswer},
		{"lake, class 55 bolt", lake, fasten.Metal{Finish: "class 55"}, measure.Holds},
		{"lake, class 55 nail", lake, fasten.Metal{Finish: "class 55", Nail: true}, measure.Short},
		{"lake, G185 hanger", lake, fasten.Metal{Finish: "G185", Connector: true}, measure.Holds},
		{"lake, G90 hanger", lake, fasten.Metal{Finish: "G90", Connector: true}, measure.Short},
		{"lake, G185 on a bolt", lake, fasten.Metal{Finish: "G185"}, measure.Short},
		{"lake, A153 hanger", lake, fasten.Metal{Finish: "A153", Connector: true}, measure.Short},
		{"lake, unknown", lake, fasten.Metal{}, measure.NoAnswer},
		{"dry room, untreated", copperless, fasten.Metal{Finish: "plain"}, measure.Holds},
		{"dry room, treatment unknown", fasten.Exposure{Indoors: true}, fasten.Metal{Finish: "plain"}, measure.Short},
	} {
		checks, err := c.e.Check(c.m)
		if err != nil {
			if !errors.Is(err, measure.ErrName) || c.answer != measure.NoAnswer {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if v := checks[0].Verdict(); v != c.answer || checks[0].Rule == nil {
			t.Errorf("%s: %v, want %v", c.name, checks[0], c.answer)
		}
	}
	// Families.
	pair := func(a, b string) measure.Verdict {
		return find(t, must(lake.Check(fasten.Metal{Part: "bolt", Finish: a}, fasten.Metal{Part: "nut", Finish: b})), "one family").Verdict()
	}
	for _, c := range []struct {
		a, b string
		want measure.Verdict
	}{
		{"hdg", "class 55", measure.Holds},
		{"304", "316", measure.Holds},
		{"hdg", "304", measure.Short},
		{"bronze", "copper", measure.Holds},
		{"hdg", "", measure.NoAnswer},
	} {
		if v := pair(c.a, c.b); v != c.want {
			t.Errorf("%s with %s: %v, want %v", c.a, c.b, v, c.want)
		}
	}
	three := must(lake.Check(fasten.Metal{Finish: "hdg"}, fasten.Metal{Finish: "304"}, fasten.Metal{}))
	if v := find(t, three, "one family").Verdict(); v != measure.Short {
		t.Errorf("two families and one unknown: %v", v)
	}
	if v := find(t, must(lake.Check(fasten.Metal{Finish: "aluminum", Connector: true})), "aluminium").Verdict(); v != measure.Short {
		t.Errorf("aluminium on copper: %v", v)
	}
	if checks := must((fasten.Exposure{Treatment: "none", Fresh: true, Drains: true}).Check(fasten.Metal{Finish: "aluminium"})); len(checks) != 1 {
		t.Errorf("aluminium on untreated wood: %v", checks)
	}
	if _, err := lake.Check(fasten.Metal{Finish: strings.Repeat("x", 200)}); !errors.Is(err, measure.ErrName) || len(err.Error()) > 600 {
		t.Errorf("long name: %v", err)
	}
	all := fasten.Finishes()
	for _, f := range all {
		if f.Source == nil || f.Source.Status == measure.Unstated || f.Family == "" {
			t.Errorf("%+v", f)
		}
		if _, err := lake.Check(fasten.Metal{Finish: f.Name}); err != nil {
			t.Errorf("%s does not find itself: %v", f.Name, err)
		}
	}
}

// Names as they are written at the yard.
func TestLookup(t *testing.T) {
	for _, c := range []struct {
		name         string
		kind         fasten.Kind
		d, root, len float64
	}{
		{"1/2 bolt", fasten.Bolt, 0.5, 0.406, 0},
		{`1/2" bolts`, fasten.Bolt, 0.5, 0.406, 0},
		{"1/2 in. x 7 in bolt", fasten.Bolt, 0.5, 0.406, 7},
		{"1/2 x 7-1/2 bolt", fasten.Bolt, 0.5, 0.406, 7.5},
		{"3/8 lag", fasten.LagScrew, 0.375, 0.265, 0},
		{"3/8 x 4 lag bolt", fasten.LagScrew, 0.375, 0.265, 4},
		{"#10 screw", fasten.WoodScrew, 0.19, 0.152, 0},
		{"No. 10 wood screws", fasten.WoodScrew, 0.19, 0.152, 0},
		{"16d common nail", fasten.Nail, 0.162, 0.162, 3.5},
		{"16D Common", fasten.Nail, 0.162, 0.162, 3.5},
		{"16d box nail", fasten.Nail, 0.135, 0.135, 3.5},
		{"10d x 1-1/2 hanger nail", fasten.Nail, 0.148, 0.148, 1.5},
		{"", 0, 0, 0, 0},
		{"16d nail", 0, 0, 0, 0},
		{"1/2 x -3 bolt", 0, 0, 0, 0},
		{strings.Repeat("1/2 bolt ", 40), 0, 0, 0, 0},
	} {
		f, err := fasten.Lookup(c.name)
		if c.kind == 0 {
			if !errors.Is(err, measure.ErrName) {
				t.Errorf("%q: %v, %v", c.name, f, err)
			}
			continue
		}
		want := []float64{c.d, c.root, c.len}
		got := []float64{f.Diameter / in, f.Root / in, f.Length / in}
		for i := range want {
			if err != nil || f.Kind != c.kind || math.Abs(got[i]-want[i]) > 1e-9 {
				t.Errorf("%q: %v %v, %v, want %v %v", c.name, f.Kind, got, err, c.kind, want)
				break
			}
		}
	}
	for k := fasten.Kind(0); k < 7; k++ {
		if k.String() == "" {
			t.Errorf("kind %d has no name", k)
		}
	}
	for m := fasten.Wood; m < 6; m++ {
		if m.String() == "" {
			t.Errorf("material %d has no name", m)
		}
	}
	if s := (fasten.Fastener{Kind: fasten.Bolt, Diameter: 0.5 * in}).String(); s != "1/2 in bolt" {
		t.Errorf("%q", s)
	}
	// A hardened nail has its own class; one outside the classes has no answer.
	f := must(fasten.Lookup("10d common nail"))
	f.Yield, f.Hardened = 0, true
	j := bolted()
	j.Fastener, j.Main.Thickness = f, 3.5*in
	if y := must(j.Yield()); math.Abs(y.Bending/measure.PSI-115000) > 1e-3 {
		t.Errorf("hardened 0.148 in nail: Fyb %g", y.Bending/measure.PSI)
	}
	j.Fastener.Diameter, j.Fastener.Root = 0.22*in, 0.22*in
	if _, err := j.Yield(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("hardened 0.22 in nail: %v", err)
	}
}
