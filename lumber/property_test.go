package lumber_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// piece returns a member of a species, grade and size; the test ends if there is
// none.
func piece(t testing.TB, species, grade, size string) lumber.Member {
	t.Helper()
	s, err := lumber.Size(size)
	if err != nil {
		t.Fatal(err)
	}
	g, err := lumber.Lookup(species, grade, s)
	if err != nil {
		t.Fatal(err)
	}
	return lumber.Member{Section: s, Grade: g}
}

func adjusted(t testing.TB, m lumber.Member, d lumber.Duration) lumber.Design {
	t.Helper()
	v, err := m.Adjusted(d)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// all lists the strengths of a design by symbol.
func all(d lumber.Design) map[string]lumber.Strength {
	return map[string]lumber.Strength{
		"Fb": d.Fb, "Fb across": d.FbAcross, "Ft": d.Ft, "Fv": d.Fv, "Fc⊥": d.FcPerp, "Fc": d.Fc, "E": d.E, "Emin": d.Emin,
	}
}

// noStronger reports strengths of a that exceed those of b.
func noStronger(t testing.TB, what string, a, b lumber.Design) {
	t.Helper()
	of := all(b)
	for symbol, s := range all(a) {
		if s.Value > of[symbol].Value*(1+1e-12) {
			t.Errorf("%s: %s %g, more than %g", what, symbol, s.Value, of[symbol].Value)
		}
	}
}

// members calls f for a member of every row of the tables and several sizes.
func members(t testing.TB, f func(name string, m lumber.Member)) {
	t.Helper()
	rows := lumber.Grades()
	seen := map[string]bool{}
	for _, row := range rows {
		for _, size := range []string{"2x4", "2x6", "2x8", "2x10", "2x12", "2x14", "4x4", "4x8", "6x6", "6x14"} {
			s, err := lumber.Size(size)
			if err != nil {
				t.Fatal(err)
			}
			name := row.Species + " " + row.Name + " " + size
			g, err := lumber.Lookup(row.Species, row.Name, s)
			if err != nil || seen[name] {
				continue
			}
			seen[name] = true
			f(name, lumber.Member{Section: s, Grade: g, Length: 2, Unbraced: 0.9})
		}
	}
	if len(seen) < 500 {
		t.Fatalf("only %d members", len(seen))
	}
}

// TestCautious: wetter, incised, longer loaded, hotter, single or less held is
// never stronger, for every row of the tables.
func TestCautious(t *testing.T) {
	members(t, func(name string, m lumber.Member) {
		for _, flat := range []bool{false, true} {
			m.Flat = flat
			wet := adjusted(t, m, lumber.TenYears)
			for what, change := range map[string]func(*lumber.Member){
				"dry":        func(m *lumber.Member) { m.Dry = true },
				"smooth":     func(m *lumber.Member) { m.Smooth = true },
				"repetitive": func(m *lumber.Member) { m.Repetitive = true },
				"held":       func(m *lumber.Member) { m.Held = true },
				"braced":     func(m *lumber.Member) { m.Unbraced /= 2 },
			} {
				better := m
				change(&better)
				noStronger(t, name+", not "+what, wet, adjusted(t, better, lumber.TenYears))
			}
			for d := lumber.Permanent; d < lumber.TenMinutes; d++ {
				noStronger(t, name+", longer loaded", adjusted(t, m, d), adjusted(t, m, d+1))
			}
			for _, dry := range []bool{false, true} {
				m.Dry = dry
				cool := adjusted(t, m, lumber.TenYears)
				for _, celsius := range []float64{40, 60} {
					m.Temperature = celsius
					hot := adjusted(t, m, lumber.TenYears)
					noStronger(t, name+", hotter", hot, cool)
					cool = hot
				}
				m.Temperature = 0
			}
			m.Dry = false
		}
	})
}

// TestWeakest: the weakest of a group is at most as strong as each species of it,
// wet or dry, whatever the size.
func TestWeakest(t *testing.T) {
	group := []string{"Southern Pine", "Hem-Fir", "Spruce-Pine-Fir", "Douglas Fir-Larch"}
	for _, yard := range [][]string{group, group[1:], group[2:], {"Northern Species", "Redwood, open grain"}} {
		for _, grade := range []string{"Select Structural", "No.1", "No.2", "No.3", "Stud", "Standard"} {
			for _, size := range []string{"2x4", "2x6", "2x8", "2x10", "2x12", "2x14", "4x8", "6x6"} {
				s, err := lumber.Size(size)
				if err != nil {
					t.Fatal(err)
				}
				least, err := lumber.Weakest(grade, s, yard...)
				if err != nil {
					continue // not every species has every grade and size
				}
				for _, species := range yard {
					g, err := lumber.Lookup(species, grade, s)
					if err != nil {
						t.Fatal(err)
					}
					for _, dry := range []bool{false, true} {
						m := lumber.Member{Section: s, Grade: least, Dry: dry, Length: 2}
						of := m
						of.Grade = g
						noStronger(t, fmt.Sprint(least.Species, " ", grade, " ", size), adjusted(t, m, lumber.Snow), adjusted(t, of, lumber.Snow))
					}
					if least.G.SI() > g.G.SI() || least.Heavy.SI() < g.G.SI() {
						t.Errorf("%s: G %g to %g leaves out %g", least.Species, least.G.SI(), least.Heavy.SI(), g.G.SI())
					}
				}
			}
		}
	}
}

// TestStability: CL and CP lie between 0 and the lesser of 1 and their buckling
// share, rise with it, and meet both limits.
func TestStability(t *testing.T) {
	const fb = 1e3
	last, lastC := 0.0, 0.0
	for a := 1e-4; a < 1e6; a *= 1.3 {
		f, err := lumber.BeamStability(fb, a*fb*100/1.2, 1, 0.25, 0.05) // RB is 10
		if err != nil {
			t.Fatal(err)
		}
		c, err := lumber.ColumnStability(fb, a*fb*100/0.822, 10)
		if err != nil {
			t.Fatal(err)
		}
		for what, x := range map[string][2]float64{"CL": {f.Value, last}, "CP": {c.Value, lastC}} {
			if !(x[0] > x[1]-1e-15 && x[0] <= math.Min(1, a)) {
				t.Errorf("%s at %g: %g after %g", what, a, x[0], x[1])
			}
		}
		last, lastC = f.Value, c.Value
	}
	if 1-last > 1e-6 || 1-lastC > 1e-6 {
		t.Errorf("stocky: CL %g, CP %g, want 1", last, lastC)
	}
	f, err := lumber.BeamStability(fb, 1e-6*fb*100/1.2, 1, 0.25, 0.05)
	if err != nil || math.Abs(f.Value/1e-6-1) > 1e-5 {
		t.Errorf("slender: CL %g, want the buckling share 1e-6 (%v)", f.Value, err)
	}
}

// TestStabilityBranches: the two ways to write the root meet.
func TestStabilityBranches(t *testing.T) {
	at := func(a float64) float64 {
		f, err := lumber.ColumnStability(1e7, a*1e7*100/0.822, 10)
		if err != nil {
			t.Fatal(err)
		}
		return f.Value
	}
	if below, above := at(1-1e-12), at(1+1e-12); math.Abs(below-above) > 1e-10 {
		t.Errorf("CP jumps from %g to %g", below, above)
	}
	// a = 1: (2/1.6) - √((2/1.6)² - 1/0.8)
	if want := 1.25 - math.Sqrt(1.25*1.25-1.25); math.Abs(at(1)-want) > 1e-14 {
		t.Errorf("CP %.16g, want %.16g", at(1), want)
	}
}

// TestTorsionLimits: a thin strip, a square against the membrane's bounds, and
// the fourth power of a scale.
func TestTorsionLimits(t *testing.T) {
	thin := lumber.Section{Width: 1, Depth: 1e-3}
	if got, want := thin.Torsion(), 1e-9/3*(1-0.630248*1e-3); math.Abs(got/want-1) > 1e-8 {
		t.Errorf("strip: %g, want %g", got, want)
	}
	a, b := lumber.Section{Width: 0.1, Depth: 0.2}, lumber.Section{Width: 0.2, Depth: 0.4}
	if got := b.Torsion() / a.Torsion(); math.Abs(got-16) > 1e-12 {
		t.Errorf("scale: %g, want 16", got)
	}
	if got := b.TorsionModulus() / a.TorsionModulus(); math.Abs(got-8) > 1e-12 {
		t.Errorf("scale: %g, want 8", got)
	}
	if a.Torsion() != a.Turned().Torsion() {
		t.Error("turning a section changes its torsion constant")
	}
	for _, bad := range []lumber.Section{{}, {Width: -1, Depth: 1}, {Width: 1, Depth: math.NaN()}, {Width: math.Inf(1), Depth: 1}} {
		if bad.Area() != 0 || bad.Modulus() != 0 || bad.Inertia() != 0 || bad.Torsion() != 0 || bad.TorsionModulus() != 0 {
			t.Errorf("%v has properties", bad)
		}
	}
}

// TestFlat: a flat member is the same however its section is written.
func TestFlat(t *testing.T) {
	m := piece(t, "spf", "2", "2x6")
	m.Length = 1
	m.Flat = true
	turned := m
	turned.Section = m.Section.Turned()
	standing := turned
	standing.Flat = false // as it stands, it lies
	a, b, c := adjusted(t, m, lumber.Snow), adjusted(t, turned, lumber.Snow), adjusted(t, standing, lumber.Snow)
	if a.Fb.Value != b.Fb.Value || b.Fb.Value != c.Fb.Value {
		t.Errorf("Fb' of a flat piece: %g, %g, %g", a.Fb.Value, b.Fb.Value, c.Fb.Value)
	}
	if !strings.Contains(a.Fb.String(), "Cfu 1.15") {
		t.Errorf("no flat use: %v", a.Fb)
	}
}

// TestFactorsMakeTheValue: the product of the listed factors is the value, and
// each has a reason and a source.
func TestFactorsMakeTheValue(t *testing.T) {
	members(t, func(name string, m lumber.Member) {
		for symbol, s := range all(adjusted(t, m, lumber.SevenDays)) {
			if s.Err != nil {
				continue
			}
			x := s.Reference.SI()
			for _, f := range s.Factors {
				x *= f.Value
				if f.Why == "" || f.Source == nil || f.Source.Status == measure.Unstated {
					t.Errorf("%s %s: %v has no reason or source", name, symbol, f)
				}
			}
			if math.Abs(x/s.Value-1) > 1e-14 {
				t.Errorf("%s %s: %g, its factors make %g", name, symbol, s.Value, x)
			}
		}
	})
}

// TestOrder: the factors of Fb' stand in the order of NDS Table 4.3.1.
func TestOrder(t *testing.T) {
	m := piece(t, "hf", "2", "2x8")
	m.Length = 2
	v := adjusted(t, m, lumber.Snow)
	for want, s := range map[string]lumber.Strength{
		"CD CM Ct CL CF Cfu Ci Cr": v.Fb,
		"CD CM Ct CL CF Cfu Ci":    v.FbAcross,
		"CD CM Ct CF Ci":           v.Ft,
		"CD CM Ct Ci":              v.Fv,
		"CM Ct Ci":                 v.FcPerp,
	} {
		var got []string
		for _, f := range s.Factors {
			got = append(got, f.Symbol)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %s", s.Symbol, got, want)
		}
	}
}

// TestSlender: RB and le/d end at 50.
func TestSlender(t *testing.T) {
	for slender, ok := range map[float64]bool{49.9: true, 50.1: false} {
		le := slender * slender * 0.04 * 0.04 / 0.2 // RB² = le d/b²
		_, err := lumber.BeamStability(1e7, 4e9, le, 0.2, 0.04)
		_, errC := lumber.ColumnStability(1e7, 4e9, slender)
		if (err == nil) != ok || (errC == nil) != ok {
			t.Errorf("%g: %v, %v", slender, err, errC)
		}
		if f, err := lumber.BeamStability(1e7, 4e9, le, 0.04, 0.2); err != nil || f.Value != 1 {
			t.Errorf("lying: %v, %v", f, err)
		}
	}
}

// TestEffectiveLengthEdges: the lines on both sides of lu/d = 7 and 14.3.
func TestEffectiveLengthEdges(t *testing.T) {
	for _, c := range []struct {
		loading     string
		slender, le float64
	}{
		{"uniform", 6.99, 2.06 * 6.99},
		{"uniform", 7, 1.63*7 + 3},
		{"uniform", 20, 1.63*20 + 3},
		{"", 6.99, 2.06 * 6.99},
		{"", 7, 1.63*7 + 3},
		{"", 14.29, 1.63*14.29 + 3},
		{"", 14.31, 1.84 * 14.31},
	} {
		got, err := lumber.EffectiveLength(c.loading, c.slender*0.25, 0.25)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.loading, got/0.25, c.le)
	}
}

// TestTorsionSeries compares with the series as it is printed in textbooks, summed
// term by term.
func TestTorsionSeries(t *testing.T) {
	for _, ratio := range []float64{1, 1.2, 2, 184.0 / 38, 30} {
		sum := 0.0
		for n := 4001.0; n > 0; n -= 2 {
			sum += math.Tanh(n*math.Pi*ratio/2) / math.Pow(n, 5)
		}
		want := ratio * (1.0/3 - 64/math.Pow(math.Pi, 5)/ratio*sum)
		if got := (lumber.Section{Width: 1, Depth: ratio}).Torsion(); math.Abs(got/want-1) > 1e-14 {
			t.Errorf("b/t %g: %.17g, want %.17g", ratio, got, want)
		}
	}
}

// TestHeldAcross: boards on the upper edge do not hold a wide flat member that is
// bent in its own plane.
func TestHeldAcross(t *testing.T) {
	m := piece(t, "spf", "2", "2x10")
	m.Flat, m.Held, m.Length = true, true, 3
	if v := adjusted(t, m, lumber.TenYears); !strings.Contains(v.FbAcross.String(), "CL 0.") || !strings.Contains(v.Fb.String(), "CL 1 ") {
		t.Errorf("%v; %v", v.Fb, v.FbAcross)
	}
}

// TestPosts: a timber more than 2 in. wider than thick is a stringer.
func TestPosts(t *testing.T) {
	for wide, table := range map[float64]string{7.5: "4D Posts & Timbers", 7.6: "4D Beams & Stringers"} {
		g, err := lumber.Lookup("dfl", "2", lumber.Section{Width: wide * measure.Inch, Depth: 5.5 * measure.Inch})
		if err != nil || g.Table != table {
			t.Errorf("5.5 x %g in.: %s, %v", wide, g.Table, err)
		}
	}
}

// TestWholeAlone: a member's stiffness is that of all of its plies as they stand, and a
// board's that of the board on its flat; neither passes on what its section as written has.
func TestWholeAlone(t *testing.T) {
	one := piece(t, "spf", "2", "2x8")
	wide, deep := one.Section.Depth, one.Section.Width
	lying := one
	lying.Flat, lying.Plies = true, 2
	if got, want := lying.Whole().Inertia(), 2*wide*deep*deep*deep/12; math.Abs(got-want) > 1e-12*want {
		t.Errorf("two plies on their flat have I %g m⁴, twice the hand computation is %g", got, want)
	}
	for _, x := range []any{lumber.Member{}, lumber.Board{}} {
		for i := range reflect.TypeFor[lumber.Section]().NumMethod() {
			name := reflect.TypeFor[lumber.Section]().Method(i).Name
			if _, ok := reflect.TypeOf(x).MethodByName(name); ok {
				t.Errorf("%T passes on %s of its section, which knows neither plies nor how it lies", x, name)
			}
		}
	}
}
