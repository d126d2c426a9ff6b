package fasten_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// sound fails where a check carries a number that nobody could read.
func sound(t *testing.T, checks []measure.Check) {
	t.Helper()
	for _, c := range checks {
		if c.Name == "" || c.Rule == nil {
			t.Fatalf("check without name or rule: %+v", c)
		}
		if c.Verdict() == measure.NoAnswer {
			why := c.Err != nil
			for _, a := range c.Rests {
				why = why || a.Known == measure.Unknown && a.Decides
			}
			if !why {
				t.Fatalf("no answer, and no reason: %+v", c)
			}
			continue
		}
		if math.IsNaN(c.Value) || math.IsNaN(c.Limit) || c.Limit < 0 {
			t.Fatalf("answered with no number: %+v", c)
		}
		for _, f := range c.Factors {
			if !(f.Value >= 0) || f.Source == nil {
				t.Fatalf("factor %+v of %s", f, c.Name)
			}
		}
	}
}

// anyJoint makes a joint of raw numbers.
func anyJoint(kind, material, bits int, d, length, tm, ts, g, angle, gap, end, spacing float64) fasten.Joint {
	grade := wood(g)
	grade.E, grade.Ft, grade.Fv, grade.FcPerp = psi(1.4e6), psi(500), psi(150), psi(425)
	bit := func(n int) bool { return bits>>n&1 == 1 }
	return fasten.Joint{
		Fastener: fasten.Fastener{Kind: fasten.Kind(kind), Diameter: d, Root: 0.8 * d, Length: length, Head: 2 * d, Tip: d, Yield: 4e8},
		Main:     fasten.Piece{Grade: grade, Thickness: tm, Width: 0.184, Angle: angle, End: end, Edge: 0.09, EndGrain: bit(0), Away: bit(1)},
		Side:     fasten.Piece{Material: fasten.Material(material), Grade: grade, Thickness: ts, Width: 0.14, End: end, Edge: 0.07, Hardwood: bit(2)},
		Double:   bit(3), Toe: bit(4), Gap: gap, PerRow: bits >> 5 & 3, Rows: bits >> 7 & 1, Spacing: spacing, Between: spacing,
		Service: fasten.Service{Dry: bit(8), Seasoned: bit(9), Soaked: bit(10)}, Shank: bit(11), DrumAtMain: bit(12),
	}
}

func psi(x float64) lumber.Value { return lumber.Value{Printed: x, Unit: measure.PSI} }

func seedJoints(f *testing.F) {
	f.Add(1, 0, 1<<5|1<<11, 0.0127, 0.1, 0.038, 0.038, 0.5, 0.0, 0.0, 0.1, 0.05)
	f.Add(1, 1, 1<<3, 0.0127, 0.0, 0.038, 0.0064, 0.55, 1.57, 0.0, 0.1, 0.05)
	f.Add(2, 0, 1, 0.0095, 0.1, 0.09, 0.038, 0.42, 0.7, 0.0, 0.1, 0.05)
	f.Add(3, 0, 2<<5, 0.0048, 0.076, 0.09, 0.025, 0.55, 0.0, 0.003, 0.0, 0.02)
	f.Add(4, 2, 1<<9, 0.0037, 0.076, 0.09, 0.0015, 0.36, 0.2, 0.0, 0.1, 0.05)
	f.Add(5, 0, 1<<4, 0.0041, 0.089, 0.038, 0.038, 0.5, 0.0, 0.0, math.NaN(), 0.05)
	f.Add(9, 7, -1, -1.0, math.Inf(1), 0.0, 1e300, 0.1, 9.0, -1.0, -1.0, 0.0)
}

// A joint of any numbers gives a value that is the least of its modes, or an error.
func FuzzYield(f *testing.F) {
	seedJoints(f)
	f.Fuzz(func(t *testing.T, kind, material, bits int, d, length, tm, ts, g, angle, gap, end, spacing float64) {
		j := anyJoint(kind, material, bits, d, length, tm, ts, g, angle, gap, end, spacing)
		y, err := j.Yield()
		if err != nil {
			return
		}
		if !(y.Z > 0) || math.IsInf(y.Z, 0) || y.Z > y.Equations || y.Z > y.Table || y.Rule == nil || y.Governing == "" {
			t.Fatalf("%+v of %+v", y, j)
		}
		for _, m := range y.Modes {
			if !(m.Z >= y.Equations) || math.IsInf(m.Z, 0) {
				t.Fatalf("mode %+v below the least %g", m, y.Equations)
			}
		}
		_ = y.String()
	})
}

// A joint of any numbers is checked soundly, and a heavier demand never turns a
// short joint into one that holds.
func FuzzJointCheck(f *testing.F) {
	seedJoints(f)
	f.Fuzz(func(t *testing.T, kind, material, bits int, d, length, tm, ts, g, angle, gap, end, spacing float64) {
		j := anyJoint(kind, material, bits, d, length, tm, ts, g, angle, gap, end, spacing)
		light, err := j.Check(fasten.Demand{Lateral: 500, Withdrawal: 200}, lumber.TenYears)
		if err != nil {
			return
		}
		sound(t, light)
		heavy, err := j.Check(fasten.Demand{Lateral: 5000, Withdrawal: 2000}, lumber.TenYears)
		if err != nil || len(heavy) != len(light) {
			t.Fatalf("ten times the demand: %v, %d checks for %d", err, len(heavy), len(light))
		}
		for i := range heavy {
			if heavy[i].Verdict() == measure.Holds && light[i].Verdict() == measure.Short {
				t.Fatalf("%v, and under ten times the demand %v", light[i], heavy[i])
			}
		}
	})
}

// No text is anything but a fastener of the table or an error.
func FuzzLookup(f *testing.F) {
	for _, s := range []string{"1/2 x 4 lag screw", "#10 screw", "16d common nail", "x", "1/2 x", "½ bolt", "bolt x 1e9 nail"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		x, err := fasten.Lookup(s)
		if err == nil && (!(x.Diameter > 0) || x.Length < 0 || x.Length > 1 || x.Source == nil) {
			t.Fatalf("%q is %+v", s, x)
		}
	})
}

// The design values of single fasteners: numbers or errors, and they grow with
// the wood's density.
func FuzzWithdrawal(f *testing.F) {
	f.Add(2, 0.0127, 0.5, 0.008, 0.02)
	f.Add(4, 0.0037, 0.42, math.NaN(), 0.02)
	f.Fuzz(func(t *testing.T, kind int, d, g, head, thickness float64) {
		x := fasten.Fastener{Kind: fasten.Kind(kind), Diameter: d, Root: 0.7 * d, Tip: d, Yield: 4e8}
		w, err := x.Withdrawal(g)
		if err == nil && !(w > 0 && w < 1e8) {
			t.Fatalf("%v in %g: %g N/m", x, g, w)
		}
		if v, err2 := x.Withdrawal(g + 0.01); err == nil && err2 == nil && v <= w {
			t.Fatalf("denser wood holds less: %g, %g", w, v)
		}
		p, err := fasten.PullThrough(head, thickness, g)
		if err == nil && !(p > 0 && p < 1e8) {
			t.Fatalf("head %g through %g: %g N", head, thickness, p)
		}
		if c, err := x.Combined(w, p, head); err == nil && !(c >= 0) {
			t.Fatalf("combined %g of %g and %g", c, w, p)
		}
	})
}

func FuzzGroupAction(f *testing.F) {
	f.Add(4, 0.0127, 0.1, 1e7, 2e7, false)
	f.Add(1000, 0.03, 4.9, 1e-300, 1e12, true)
	f.Add(-1, math.NaN(), 0.1, 1.0, 1.0, false)
	f.Fuzz(func(t *testing.T, n int, d, s, m, side float64, steel bool) {
		c, err := fasten.GroupAction(n, d, s, m, side, steel)
		if err == nil && !(c.Value > 0 && c.Value <= 1) {
			t.Fatalf("Cg of %d: %g", n, c.Value)
		}
	})
}

// Brackets, ties, pins and paths answer soundly or not at all.
func FuzzGear(f *testing.F) {
	f.Add(900.0, 1.0, 0.5, 10, 4, 0.0015, 400.0)
	f.Add(0.0, 0.0, 0.0, 0, 0, 0.0, 1.0)
	f.Add(math.NaN(), 2.0, 9.0, -1, 1000, -1.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, printed, factor, basis float64, header, joist int, steel, force float64) {
		same := func(x float64) fasten.Forces { return fasten.Forces{x, x, x, x, x} }
		nail, err := fasten.Lookup("10d common nail")
		if err != nil {
			t.Fatal(err)
		}
		c := fasten.Connector{Printed: same(printed), For: same(factor), Basis: basis, Nail: nail, HeaderNails: header, JoistNails: joist, Steel: steel}
		if checks, err := c.Check(same(force), wood(0.42), fasten.Service{}, lumber.TenYears); err == nil {
			sound(t, checks)
			for _, k := range checks {
				if k.Verdict() != measure.NoAnswer && k.Limit > printed {
					t.Fatalf("%v, more than the printed %g", k, printed)
				}
			}
		}
		tie := fasten.Tie{Strength: printed, Efficiency: basis, DesignFactor: factor, Parts: header, Slack: steel, Stiffness: force, Point: printed}
		if checks, err := tie.Check(fasten.Drum{Mass: force, Leak: steel, Push: printed, Above: joist%2 == 0, Watched: header%2 == 0}); err == nil {
			sound(t, checks)
		}
		pin := fasten.Pin{Diameter: steel * 10, Lug: basis, Leaf: steel, Play: factor, Yield: printed * 1e6}
		if checks, err := pin.Check(force); err == nil {
			sound(t, checks)
		}
		j := bolted()
		j.Hole, j.PerRow = steel*10, joist
		if s, err := fasten.Slip(force, j, j); err == nil && !(s >= 0) {
			t.Fatalf("slip %g", s)
		}
	})
}

// Any places give a schedule whose bolts reach and whose list covers the count,
// or an error; any words for metal an answer or an error.
func FuzzSchedule(f *testing.F) {
	f.Add(0.038, 0.038, 0.0, 0.0, 4, "hdg", "MCA", true)
	f.Add(0.5, 0.2, 0.01, 0.1, 1, "316", "", false)
	f.Add(-1.0, 0.0, math.NaN(), 1.0, -4, "gold", "tar", false)
	f.Fuzz(func(t *testing.T, tm, ts, gap, length float64, alike int, finish, treatment string, fresh bool) {
		j := bolted()
		j.Main.Thickness, j.Side.Thickness, j.Gap, j.Fastener.Length = tm, ts, gap, length
		e := fasten.Exposure{Treatment: treatment, Fresh: fresh, Drains: fresh}
		rows, buy, err := fasten.Schedule([]fasten.Place{{Joint: j, Alike: alike, Finish: finish}}, e)
		if err == nil {
			sound(t, rows[0].Checks)
			if length == 0 && rows[0].Length < rows[0].Needed-1e-6 || buy[0].Count < rows[0].Count+2 {
				t.Fatalf("%+v, %+v", rows, buy)
			}
		}
		checks, err := e.Check(fasten.Metal{Part: "a", Finish: finish}, fasten.Metal{Part: "b", Finish: finish, Connector: true})
		if err == nil {
			sound(t, checks)
		}
	})
}
