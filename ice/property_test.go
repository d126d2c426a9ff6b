package ice_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// TestClassesAreOrdered: strictest first, with a source and a status each, and
// the default of a crossing is the first that was read.
func TestClassesAreOrdered(t *testing.T) {
	cs := ice.Classes()
	for i, c := range cs {
		if c.Source == nil || c.Source.Status == measure.Unstated || c.Printed == "" || c.Range.Source == nil {
			t.Errorf("class %s has no source, status, printed value or range", c.Name)
		}
		if i > 0 && c.A < cs[i-1].A {
			t.Errorf("class %s is stricter than %s before it", c.Name, cs[i-1].Name)
		}
	}
	i := slices.IndexFunc(cs, func(c ice.Class) bool { return c.Source.Status >= measure.Read })
	if got := cs[i].A; got != 50*measure.PSI {
		t.Errorf("the strictest class read has %g Pa, want 50 psi", got)
	}
	cs[0].A = 1 // a copy: the package's own must not change
	if ice.Classes()[0].A == 1 {
		t.Error("Classes hands out its own slice")
	}
}

// TestClassBothWays: thickness and load are inverse, and four times the load
// needs twice the thickness.
func TestClassBothWays(t *testing.T) {
	for _, c := range ice.Classes() {
		for h := 0.11; h < 0.25; h += 0.01 {
			p, err := c.Load(h)
			if err != nil {
				t.Fatal(err)
			}
			back, err := c.Thickness(p)
			if err != nil || math.Abs(back-h) > 1e-12 {
				t.Errorf("%s: %g m carries %g N, which needs %g m, %v", c.Name, h, p, back, err)
			}
			double, err := c.Thickness(4 * p)
			if err != nil || math.Abs(double-2*h) > 1e-12 {
				t.Errorf("%s: four times the load needs %g m, not twice %g, %v", c.Name, double, h, err)
			}
		}
		for _, h := range []float64{0, -1, math.NaN(), math.Inf(1), c.Range.Hi * 1.001} {
			if _, err := c.Load(h); !errors.Is(err, measure.ErrRange) {
				t.Errorf("%s, thickness %g: %v", c.Name, h, err)
			}
		}
		for _, p := range []float64{0, -1, math.NaN(), math.Inf(1), c.A * c.Range.Hi * c.Range.Hi * 1.001} {
			if _, err := c.Thickness(p); !errors.Is(err, measure.ErrRange) {
				t.Errorf("%s, load %g: %v", c.Name, p, err)
			}
		}
	}
	// Ends of the weight table: 4 in and 20 in belong to it, less gets 4 in.
	c := ice.Classes()[1]
	if h, err := c.Thickness(1); err != nil || h != 4*measure.Inch {
		t.Errorf("a light load needs %g m, %v", h, err)
	}
	if _, err := c.Load(3.99 * measure.Inch); err == nil {
		t.Error("ice thinner than the table carries a load")
	}
	own := ice.Class{Name: "own", A: 3e5, Source: &measure.Source{Title: "a guide"}}
	if p, err := own.Load(0.1); err != nil || math.Abs(p-3000) > 1e-9 {
		t.Errorf("a class of the caller's: %g N, %v", p, err)
	}
	own.A = 251 * measure.PSI
	if _, err := own.Load(0.1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a class above all reports: %v", err)
	}
}

// TestTablesBothWays reads each table by weight forth and back: a row's own
// mass and thickness come back, more mass never needs less, and more ice never
// carries less.
func TestTablesBothWays(t *testing.T) {
	rows, withMass := 0, 0
	for _, table := range ice.Tables() {
		rows += len(table.Rows)
		last := 0.0
		for m := 100.0; m < 1.1e5; m *= 1.01 {
			h, err := table.Thickness(m)
			if err != nil {
				if !errors.Is(err, measure.ErrRange) && !errors.Is(err, measure.ErrUnknown) {
					t.Errorf("%s, %g kg: %v", table.Name, m, err)
				}
				continue
			}
			withMass++
			if h < last {
				t.Errorf("%s: %g kg needs %g m, less than a lighter load", table.Name, m, h)
			}
			last = h
			if back, err := table.Load(h); err != nil || back < m {
				t.Errorf("%s: %g kg needs %g m, which carries %g kg, %v", table.Name, m, h, back, err)
			}
			if thin, err := table.Load(h - 1e-9); err == nil && thin >= m {
				t.Errorf("%s: %g m is not the least for %g kg", table.Name, h, m)
			}
		}
		last = 0
		for h := 0.02; h < 1.2; h += 0.001 {
			m, err := table.Load(h)
			if err != nil {
				continue
			}
			if m < last {
				t.Errorf("%s: %g m carries %g kg, less than thinner ice", table.Name, h, m)
			}
			last = m
		}
		for _, x := range []float64{math.NaN(), -1, 0, math.Inf(1)} {
			if _, err := table.Thickness(x); err == nil {
				t.Errorf("%s: a mass of %g kg has a thickness", table.Name, x)
			}
			if _, err := table.Load(x); err == nil {
				t.Errorf("%s: %g m of ice carry a load", table.Name, x)
			}
		}
	}
	if rows != 130 || withMass < 1000 {
		t.Errorf("%d rows, want 130; %d masses read", rows, withMass)
	}
	odd := ice.Table{Name: "odd", Rows: []ice.Row{{Mass: 100, Thickness: 0.3, Top: 0.3}, {Mass: 200, Thickness: 0.2, Top: 0.2}}}
	if _, err := odd.Load(0.25); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("a table whose lightest row is the thickest: %v", err)
	}
}

// TestEveryRowHasItsStatus: rows from memory are marked, and only they.
func TestEveryRowHasItsStatus(t *testing.T) {
	marked := 0
	for _, table := range ice.Tables() {
		for _, r := range table.Rows {
			if r.Source == nil || r.Source.Status < measure.Memory || r.Source.Status > measure.Read || r.Source.Title == "" || r.Printed == "" || r.Load == "" {
				t.Errorf("%s, %s: source %v, printed %q", table.Name, r.Load, r.Source, r.Printed)
			}
			if r.Source.Status == measure.Memory {
				marked++
			}
		}
	}
	if marked != 6 {
		t.Errorf("%d rows from memory, want the 6 of one table", marked)
	}
}

// TestNothingLessCautious: the strictest rule asks for no less than any table or
// class that was read or quoted.
func TestNothingLessCautious(t *testing.T) {
	for _, load := range loads() {
		c, err := ice.Compare(load)
		if err != nil {
			t.Fatal(err)
		}
		q, err := ice.Sheet{Water: ice.Lake}.Required(load, 0)
		if err != nil {
			t.Fatal(err)
		}
		if len(c.Opinions) < 5 {
			t.Errorf("%+v: only %d sources speak", load, len(c.Opinions))
		}
		for i, o := range c.Opinions {
			if o.Source.Status >= measure.Quoted && q.Limit < o.Thickness-1e-9 {
				t.Errorf("%+v: required %g m, but %s asks for %g m", load, q.Limit, o.Row, o.Thickness)
			}
			if i > 0 && o.Thickness > c.Opinions[i-1].Thickness {
				t.Errorf("%+v: opinion %d is out of order", load, i)
			}
		}
		if least, most := c.Spread(); !(least > 0 && least < most) {
			t.Errorf("%+v: spread %g to %g", load, least, most)
		}
	}
	if _, err := ice.Compare(ice.Crossing{Mass: -1}); err == nil {
		t.Error("a negative mass is compared")
	}
	if least, most := (ice.Comparison{}).Spread(); !math.IsNaN(least) || !math.IsNaN(most) {
		t.Error("nothing compared has a spread")
	}
}

func loads() []ice.Crossing {
	var out []ice.Crossing
	for _, m := range []float64{60, 90, 250, 363, 500, 900, 1500, 2300, 4000, 9000} {
		for _, p := range []int{0, 1, 2, 3, 4, 9} {
			for machine := ice.NoMachine; machine <= ice.Truck; machine++ {
				out = append(out, ice.Crossing{Mass: m, People: p, Machine: machine})
			}
		}
	}
	return out
}

// TestRequiredGrows: never less ice for more mass, more people, a heavier
// machine, or a load that stands.
func TestRequiredGrows(t *testing.T) {
	need := func(c ice.Crossing, hours float64) float64 {
		q, err := ice.Sheet{Water: ice.Lake}.Required(c, hours)
		if err != nil {
			t.Fatal(err)
		}
		return q.Limit
	}
	for _, c := range loads() {
		h := need(c, 0)
		for _, worse := range []ice.Crossing{
			{Mass: c.Mass * 1.7, People: c.People, Machine: c.Machine},
			{Mass: c.Mass, People: c.People + 1, Machine: c.Machine},
			{Mass: c.Mass, People: c.People, Machine: min(c.Machine+1, ice.Truck)},
		} {
			if x := need(worse, 0); x < h {
				t.Errorf("%+v needs %g m, %+v only %g m", c, h, worse, x)
			}
		}
		if x := need(c, 3); math.Abs(x-2*h) > 2e-9 {
			t.Errorf("%+v: parked needs %g m, not twice %g", c, x, h)
		}
	}
}

// TestFactors checks each factor alone on the same load.
func TestFactors(t *testing.T) {
	load := ice.Crossing{Mass: 90, People: 1}
	for name, c := range map[string]struct {
		worsen func(*ice.Sheet)
		factor float64
	}{
		"none":  {func(*ice.Sheet) {}, 1},
		"white": {func(s *ice.Sheet) { s.Holes[3].White = 0.01 }, 2},
		"hard white": {func(s *ice.Sheet) {
			s.Scheme, s.Holes[3] = ice.DoubleWhite, ice.Hole{Spot: ice.PadCorner, X: -4, Y: 3, Clear: 1, White: 0.2, Hard: true, Water: 0.1, Looked: true}
		}, 2},
		"clear alone":     {func(s *ice.Sheet) { s.Scheme, s.Holes[3].White = ice.ClearAlone, 0.01 }, 1},
		"half white":      {func(s *ice.Sheet) { s.Scheme, s.Holes[3].White = ice.HalfWhite, 0.01 }, 1},
		"thaw":            {func(s *ice.Sheet) { s.Air[1].High = 0 }, 3},
		"thaw long ago":   {func(s *ice.Sheet) { s.Air = append([]ice.Air{{High: 5, Low: 1}}, s.Air...) }, 1},
		"crack":           {func(s *ice.Sheet) { s.Cracks = ice.OneCrack }, math.Sqrt2},
		"crossing cracks": {func(s *ice.Sheet) { s.Cracks = ice.CrossingCracks }, 2},
		"all": {func(s *ice.Sheet) {
			s.Holes[0].White, s.Air[0].High, s.Cracks = 0.1, 2, ice.CrossingCracks
		}, 12},
	} {
		s := sound(1)
		c.worsen(&s)
		got := crossing(t, s, load)
		if math.Abs(got.Limit-0.15*c.factor) > 1e-9 {
			t.Errorf("%s: limit %g, want 0.15 × %g", name, got.Limit, c.factor)
		}
		product := 1.0
		for _, f := range got.Factors {
			if f.Source == nil {
				t.Errorf("%s: factor %s has no source", name, f.Name)
			}
			product *= f.Value
		}
		if math.Abs(product-c.factor) > 1e-12 {
			t.Errorf("%s: the factors listed make %g, want %g", name, product, c.factor)
		}
	}
}

// TestRiver: 15 % less load on a river, and unknown water counts as one.
func TestRiver(t *testing.T) {
	for _, w := range []ice.Water{ice.River, ice.UnknownWater} {
		q, err := ice.Sheet{Water: w}.Required(ice.Crossing{Mass: 90, People: 1}, 0)
		if r := 0.15 / q.Limit; err != nil || math.Abs(r*r-0.85) > 1e-7 {
			t.Errorf("%v: limit %g, %v", w, q.Limit, err)
		}
	}
}

// TestEffective: what counts of a hole under each scheme.
func TestEffective(t *testing.T) {
	hard := ice.Hole{Clear: 0.20, White: 0.10, Hard: true, Water: 0.02, Looked: true}
	soft, split, slush := hard, hard, hard
	soft.Hard = false
	split.Gap = 0.03
	slush.Clear, slush.White, slush.Gap = 0.05, 0.30, 0.01
	for _, c := range []struct {
		name              string
		hole              ice.Hole
		scheme            ice.Scheme
		thickness, factor float64
	}{
		{"hard", hard, ice.Strictest, 0.20, 2},
		{"hard", hard, ice.DoubleWhite, 0.30, 2},
		{"hard", hard, ice.ClearAlone, 0.20, 1},
		{"hard", hard, ice.HalfWhite, 0.25, 1},
		{"soft", soft, ice.DoubleWhite, 0.20, 2},
		{"soft", soft, ice.HalfWhite, 0.20, 1},
		{"split", split, ice.HalfWhite, 0.20, 1},
		{"split", split, ice.DoubleWhite, 0.20, 2},
		{"slush", slush, ice.HalfWhite, 0.15, 1},
		{"slush", slush, ice.DoubleWhite, 0.30, 2},
		{"slush", slush, ice.Strictest, 0.05, 2},
		{"clear", ice.Hole{Clear: 0.2, Looked: true}, ice.Strictest, 0.2, 1},
	} {
		h, f, err := c.scheme.Effective(c.hole)
		if err != nil || math.Abs(h-c.thickness) > 1e-12 || f != c.factor {
			t.Errorf("%s, %v: %g m, factor %g, %v; want %g, %g", c.name, c.scheme, h, f, err, c.thickness, c.factor)
		}
	}
	for _, c := range []struct {
		hole  ice.Hole
		s     ice.Scheme
		class error
	}{
		{ice.Hole{Clear: math.NaN()}, 0, measure.ErrUnknown},
		{ice.Hole{Clear: 1}, 0, measure.ErrUnknown},
		{ice.Hole{Clear: 1, White: 0.1}, 0, measure.ErrUnknown},
		{ice.Hole{White: 0.1, Gap: 0.1}, 0, measure.ErrUnknown},
		{ice.Hole{Gap: math.NaN()}, 0, measure.ErrUnknown},
		{ice.Hole{White: -1}, 0, measure.ErrRange},
		{ice.Hole{Clear: 4}, 0, measure.ErrRange},
		{ice.Hole{Clear: 1}, -1, measure.ErrName},
		{ice.Hole{Clear: 1}, 4, measure.ErrName},
	} {
		if h, f, err := c.s.Effective(c.hole); !errors.Is(err, c.class) || !math.IsNaN(h) || !math.IsNaN(f) {
			t.Errorf("%+v: %g, %g, %v", c.hole, h, f, err)
		}
	}
	if ice.Scheme(9).Source() != nil || ice.HalfWhite.Source() == nil {
		t.Error("sources of schemes")
	}
}

// TestThaws: both bodies' rules at their bounds.
func TestThaws(t *testing.T) {
	rules := ice.Thaws()
	for _, c := range []struct {
		hours    float64
		dnr, emc float64 // factor on the thickness, 0 for none
	}{{0, 1, 1}, {5.99, 1, 1}, {6, 2, math.Sqrt(1.3)}, {23.9, 2, math.Sqrt(1.3)}, {24, 0, 0}} {
		for i, want := range []float64{c.dnr, c.emc} {
			got, err := rules[i].Factor(c.hours)
			if want == 0 {
				if !errors.Is(err, ice.ErrUnfit) || !math.IsNaN(got) {
					t.Errorf("rule %d, %g h: %g, %v", i, c.hours, got, err)
				}
			} else if err != nil || math.Abs(got-want) > 1e-12 {
				t.Errorf("rule %d, %g h: %g, %v, want %g", i, c.hours, got, err, want)
			}
		}
	}
	if rules[1].Source.Status != measure.Memory {
		t.Error("the rule from memory is not marked")
	}
	for _, h := range []float64{-1, 24.1, math.NaN(), math.Inf(1)} {
		if _, err := rules[0].Factor(h); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%g h: %v", h, err)
		}
	}
	// A zero rule has no hours: it covers nothing.
	if _, err := (ice.Thaw{Source: rules[0].Source}).Factor(0); !errors.Is(err, ice.ErrUnfit) {
		t.Errorf("zero rule: %v", err)
	}
}

// TestSpacing: distances grow with the load, and the bodies' own figures.
func TestSpacing(t *testing.T) {
	for _, c := range []struct {
		load  ice.Crossing
		metre float64
	}{
		{ice.Crossing{Mass: 90, People: 1}, 10 * measure.Yard},
		{ice.Crossing{Mass: 1500, Machine: ice.Car}, 50},
		{ice.Crossing{Mass: 7001, Machine: ice.Truck}, 1000},
	} {
		d, source, err := c.load.Spacing()
		if err != nil || d != c.metre || source == nil {
			t.Errorf("%+v: %g m by %v, %v; want %g", c.load, d, source, err, c.metre)
		}
	}
	for _, c := range loads() {
		d, _, err := c.Spacing()
		if err != nil {
			t.Fatal(err)
		}
		for _, worse := range []ice.Crossing{
			{Mass: c.Mass * 1.7, People: c.People, Machine: c.Machine},
			{Mass: c.Mass, People: c.People + 1, Machine: c.Machine},
			{Mass: c.Mass, People: c.People, Machine: min(c.Machine+1, ice.Truck)},
		} {
			if x, _, err := worse.Spacing(); err != nil || x < d {
				t.Errorf("%+v: %g m apart, %+v only %g m, %v", c, d, worse, x, err)
			}
		}
	}
	if _, _, err := (ice.Crossing{Mass: 60000}).Spacing(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("beyond every table: %v", err)
	}
	if _, _, err := (ice.Crossing{}).Spacing(); err == nil {
		t.Error("a load without mass has a spacing")
	}
}

// TestForgottenPeople: a mass that leaves no weight for the people counts 100 kg
// for each, and says so.
func TestForgottenPeople(t *testing.T) {
	c := crossing(t, sound(0.6), ice.Crossing{Mass: 80, People: 50})
	d := crossing(t, sound(0.6), ice.Crossing{Mass: 5000, People: 50})
	if c.Limit != d.Limit {
		t.Errorf("80 kg with 50 people need %g m, 5000 kg %g m", c.Limit, d.Limit)
	}
	found := false
	for _, a := range c.Rests {
		found = found || a.Name == "mass of the load" && a.Known == measure.Assumed
	}
	if !found {
		t.Error("the mass assumed is not named")
	}
}

// TestNames: every value of the enumerations has a name of its own.
func TestNames(t *testing.T) {
	for name, xs := range map[string][]string{
		"water":   {ice.UnknownWater.String(), ice.River.String(), ice.Lake.String()},
		"season":  {ice.UnknownSeason.String(), ice.Spring.String(), ice.Winter.String()},
		"cracks":  {ice.UnknownCracks.String(), ice.NoCracks.String(), ice.OneCrack.String(), ice.CrossingCracks.String()},
		"finding": {ice.NotLooked.String(), ice.NotFound.String(), ice.Found.String()},
		"machine": {ice.NoMachine.String(), ice.Snowmobile.String(), ice.Car.String(), ice.LightTruck.String(), ice.Truck.String(), ice.Machine(9).String()},
		"scheme":  {ice.Strictest.String(), ice.DoubleWhite.String(), ice.ClearAlone.String(), ice.HalfWhite.String(), ice.Scheme(-1).String()},
	} {
		slices.Sort(xs)
		if len(slices.Compact(xs)) != len(xs) || xs[0] == "" {
			t.Errorf("%s: %q", name, xs)
		}
	}
}

// TestCautions: each has a text, a publisher and a status.
func TestCautions(t *testing.T) {
	list := ice.Cautions()
	if len(list) < 26 {
		t.Errorf("%d cautions", len(list))
	}
	for _, c := range list {
		if c.Text == "" || c.Publisher == "" || c.Status == measure.Unstated {
			t.Errorf("%+v", c)
		}
	}
}
