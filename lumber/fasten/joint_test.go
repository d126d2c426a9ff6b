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

func wood(g float64) lumber.Grade { return lumber.Grade{G: lumber.Value{Printed: g, Unit: 1}} }

// bolted is a 1/2 in bolt through two 2x8 of Douglas Fir-Larch along the grain.
func bolted() fasten.Joint {
	g := must(lumber.Lookup("Douglas Fir-Larch", "No.2", must(lumber.Size("2x8"))))
	p := fasten.Piece{Grade: g, Thickness: 1.5 * in, Width: 7.25 * in, End: 4 * in, Edge: 3.625 * in, Smooth: true}
	return fasten.Joint{Fastener: must(fasten.Lookup("1/2 bolt")), Main: p, Side: p}
}

func find(t *testing.T, checks []measure.Check, name string) measure.Check {
	t.Helper()
	for _, c := range checks {
		if strings.HasPrefix(c.Name, name) {
			return c
		}
	}
	t.Fatalf("no check %q in %v", name, checks)
	return measure.Check{}
}

func factor(t *testing.T, c fasten.Capacity, symbol string) float64 {
	t.Helper()
	for _, f := range c.Factors {
		if f.Symbol == symbol {
			if f.Source == nil || f.Why == "" || f.Name == "" {
				t.Errorf("factor %v has no source or reason", f)
			}
			return f.Value
		}
	}
	t.Fatalf("no factor %s in %v", symbol, c)
	return 0
}

// Threads: the root unless the bolt's length shows, or the user says, that they
// keep out. A 1/2 x 4 bolt has 1.25 in of thread (2D + 1/4), a washer of 0.109
// under its head, so that 0.36 of the 1.5 in at its nut is thread: under a quarter.
// At 3-1/2 in it is more than half.
func TestBoltBody(t *testing.T) {
	for _, c := range []struct {
		length float64
		shank  bool
		thread float64
		full   bool
		atMain bool
	}{
		{0, false, 0, false, false},
		{0, true, 0, true, false},
		{4, false, 0, true, false},
		{4, false, 0, true, true},
		{3.5, false, 0, false, false},
		{4, false, 2, false, false},
		{3.5, false, 0.25, true, false},
		{7, false, 0, true, false},
	} {
		j := bolted()
		j.Fastener.Length, j.Fastener.Thread, j.Shank, j.DrumAtMain = c.length*in, c.thread*in, c.shank, c.atMain
		y := must(j.Yield())
		want := 0.406
		if c.full {
			want = 0.5
		}
		if math.Abs(y.Diameter/in-want) > 1e-9 {
			t.Errorf("bolt %g in, thread %g: diameter %g (%s), want %g", c.length, c.thread, y.Diameter/in, y.Body, want)
		}
	}
	// The piece at the nut counts: thick at one side, thin at the other.
	j := bolted()
	j.Main.Thickness, j.Fastener.Length, j.Fastener.Thread = 5.5*in, 7.5*in, 1.75*in // 1.36 in of thread in the wood
	if y := must(j.Yield()); y.Diameter/in < 0.49 {
		t.Errorf("nut at the thick piece: %s", y.Body)
	}
	j.DrumAtMain = true
	if y := must(j.Yield()); y.Diameter/in > 0.41 {
		t.Errorf("nut at the thin piece: %s", y.Body)
	}
}

// Both rules of reduced penetration are reported and the lower is used; at the
// tables' own depth they meet.
func TestPenetration(t *testing.T) {
	lag := func(l float64) fasten.Joint {
		return long(l, fasten.Joint{
			Fastener: must(fasten.Lookup("1/2 lag screw")),
			Main:     fasten.Piece{Grade: wood(0.5), Thickness: 5.5 * in}, Side: fasten.Piece{Grade: wood(0.5), Thickness: 1.5 * in},
		})
	}
	y := must(lag(4).Yield())
	if math.Abs(y.Penetration/in-2.1875) > 1e-9 || math.Abs(y.Share-2.1875/4) > 1e-9 || y.Z != y.Table || y.Governing != "IV" || len(y.Notes) == 0 {
		t.Errorf("1/2 x 4 lag screw: %v, %+v", y, y)
	}
	if s := y.String(); !strings.Contains(s, "55 %") || !strings.Contains(s, "394") || !strings.Contains(s, "216") {
		t.Errorf("%q does not report both rules", s)
	}
	y = must(lag(1.5 + 4 + 0.3125).Yield())
	if y.Share != 1 || math.Abs(y.Table-y.Equations) > 1e-9 {
		t.Errorf("at 8D: share %g, table %g, equations %g", y.Share, y.Table, y.Equations)
	}
	if _, err := lag(1.5 + 2 + 0.3125).Yield(); err != nil {
		t.Errorf("4D of penetration is allowed: %v", err)
	}
	if _, err := lag(1.5 + 1.99 + 0.3125).Yield(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("less than 4D: %v", err)
	}
	nail := fasten.Joint{Fastener: must(fasten.Lookup("10d common nail")), Main: fasten.Piece{Grade: wood(0.5), Thickness: 3 * in}, Side: fasten.Piece{Grade: wood(0.5), Thickness: 0.75 * in}}
	nail.Fastener.Length = (0.75 + 6*0.148) * in
	if y := must(nail.Yield()); math.Abs(y.Share-0.6) > 1e-9 {
		t.Errorf("6D of 10D is %g", y.Share)
	}
	nail.Fastener.Length -= 0.001 * in
	if _, err := nail.Yield(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("less than 6D: %v", err)
	}
	// A nail in double shear needs its depth in the far piece.
	nail.Double, nail.Fastener.Length, nail.Main.Thickness, nail.Side.Thickness = true, 3*in, 0.75*in, 1*in
	y = must(nail.Yield())
	if math.Abs(y.Penetration/in-1) > 1e-9 || math.Abs(y.InSide/in-1) > 1e-9 || math.Abs(y.InMain/in-0.75) > 1e-9 || len(y.Modes) != 4 {
		t.Errorf("double shear, point through: %+v", y)
	}
	nail.Fastener.Length = 2.7 * in // 0.95 in with the point, 0.802 in of bearing
	if y = must(nail.Yield()); math.Abs(y.InSide/in-0.802) > 1e-9 {
		t.Errorf("double shear, point inside: bears on %g in", y.InSide/in)
	}
}

// What does not fit a rule is an error of its class, never a number.
func TestJointErrors(t *testing.T) {
	driven := func(f string, change func(*fasten.Joint)) fasten.Joint {
		j := bolted()
		j.Fastener = must(fasten.Lookup(f))
		j.Main.Thickness = 5.5 * in
		if j.Fastener.Length == 0 {
			j.Fastener.Length = 4 * in
		}
		change(&j)
		return j
	}
	bolt := func(change func(*fasten.Joint)) fasten.Joint {
		j := bolted()
		change(&j)
		return j
	}
	for _, c := range []struct {
		name  string
		joint fasten.Joint
		class error
	}{
		{"zero", fasten.Joint{}, measure.ErrUnknown},
		{"no kind", bolt(func(j *fasten.Joint) { j.Fastener.Kind = 0 }), measure.ErrName},
		{"strange kind", bolt(func(j *fasten.Joint) { j.Fastener.Kind = 9 }), measure.ErrName},
		{"diameter NaN", bolt(func(j *fasten.Joint) { j.Fastener.Diameter = math.NaN() }), measure.ErrRange},
		{"diameter infinite", bolt(func(j *fasten.Joint) { j.Fastener.Diameter = math.Inf(1) }), measure.ErrRange},
		{"diameter negative", bolt(func(j *fasten.Joint) { j.Fastener.Diameter = -1 }), measure.ErrRange},
		{"odd bolt without root", bolt(func(j *fasten.Joint) { j.Fastener.Diameter, j.Fastener.Root = 0.55*in, 0 }), measure.ErrUnknown},
		{"bolt thinner than its class", bolt(func(j *fasten.Joint) {
			j.Fastener = fasten.Fastener{Kind: fasten.Bolt, Diameter: 0.2 * in, Root: 0.15 * in}
		}), measure.ErrUnknown},
		{"bolt too short", bolt(func(j *fasten.Joint) { j.Fastener.Length = 2.5 * in }), measure.ErrRange},
		{"thread longer than the bolt", bolt(func(j *fasten.Joint) { j.Fastener.Length, j.Fastener.Thread = 4*in, 5*in }), measure.ErrRange},
		{"strange material", bolt(func(j *fasten.Joint) { j.Main.Material = 7 }), measure.ErrName},
		{"thin plate", bolt(func(j *fasten.Joint) { j.Side.Material, j.Side.Thickness = fasten.Plate, 0.2*in }), measure.ErrRange},
		{"thick sheet", bolt(func(j *fasten.Joint) { j.Side.Material, j.Side.Thickness = fasten.Sheet, 0.25*in }), measure.ErrRange},
		{"no thickness", bolt(func(j *fasten.Joint) { j.Main.Thickness = 0 }), measure.ErrRange},
		{"wood of no kind", bolt(func(j *fasten.Joint) { j.Main.Grade = lumber.Grade{} }), measure.ErrUnknown},
		{"wood too light", bolt(func(j *fasten.Joint) { j.Main.Grade = wood(0.2) }), measure.ErrRange},
		{"angle", bolt(func(j *fasten.Joint) { j.Side.Angle = 2 }), measure.ErrRange},
		{"angle NaN", bolt(func(j *fasten.Joint) { j.Side.Angle = math.NaN() }), measure.ErrRange},
		{"gap", bolt(func(j *fasten.Joint) { j.Gap = -1 * in }), measure.ErrRange},
		{"rows", bolt(func(j *fasten.Joint) { j.Rows = -2 }), measure.ErrRange},
		{"hot", bolt(func(j *fasten.Joint) { j.Temperature = 80 }), measure.ErrRange},
		{"steel on steel", bolt(func(j *fasten.Joint) {
			j.Main.Material, j.Side.Material, j.Main.Thickness, j.Side.Thickness = fasten.Plate, fasten.Plate, 0.3*in, 0.3*in
		}), measure.ErrNotComputed},
		{"concrete side", bolt(func(j *fasten.Joint) { j.Side.Material = fasten.Concrete }), measure.ErrNotComputed},
		{"concrete twice", bolt(func(j *fasten.Joint) { j.Main.Material, j.Double = fasten.Concrete, true }), measure.ErrNotComputed},
		{"screw in steel", driven("No.10 wood screw", func(j *fasten.Joint) { j.Main.Material, j.Main.Thickness = fasten.Plate, 0.3*in }), measure.ErrNotComputed},
		{"screw ending in steel", driven("No.10 wood screw", func(j *fasten.Joint) { j.Double, j.Side.Material, j.Side.Thickness = true, fasten.Sheet, 0.1*in }), measure.ErrNotComputed},
		{"screw without length", driven("No.10 wood screw", func(j *fasten.Joint) { j.Fastener.Length = 0 }), measure.ErrUnknown},
		{"screw that does not reach", driven("No.10 wood screw", func(j *fasten.Joint) { j.Fastener.Length = 1 * in }), measure.ErrRange},
		{"toe-nailed bolt", bolt(func(j *fasten.Joint) { j.Toe = true }), measure.ErrNotComputed},
		{"toe-nail over a gap", driven("16d common nail", func(j *fasten.Joint) { j.Toe, j.Gap = true, 0.1*in }), measure.ErrNotComputed},
		{"toe-nail too short", driven("16d common nail", func(j *fasten.Joint) { j.Toe, j.Fastener.Length = true, 1*in }), measure.ErrRange},
		{"odd lag screw without point", driven("1/2 lag screw", func(j *fasten.Joint) { j.Fastener.Diameter, j.Fastener.Tip = 0.45*in, 0 }), measure.ErrUnknown},
		{"lag screw beyond 1 in", driven("1-1/8 lag screw", func(j *fasten.Joint) { j.Fastener.Length = 8 * in; j.Main.Thickness = 9 * in }), measure.ErrRange},
	} {
		_, err := c.joint.Yield()
		if !errors.Is(err, c.class) {
			t.Errorf("%s: %v, want %v", c.name, err, c.class)
		}
		var e *measure.Error
		if !errors.As(err, &e) {
			t.Errorf("%s: %T carries no details", c.name, err)
		}
		for _, call := range []func() error{
			func() error { _, err := c.joint.Lateral(lumber.TenYears); return err },
			func() error { _, err := c.joint.Pull(lumber.TenYears); return err },
			func() error { _, err := c.joint.Geometry(); return err },
		} {
			if err := call(); err == nil {
				t.Errorf("%s: no error", c.name)
			}
		}
		// What is only unknown or too shallow is a check without an answer.
		checks, err := c.joint.Check(fasten.Demand{Lateral: 100}, lumber.TenYears)
		if err == nil && (len(checks) != 1 || checks[0].Verdict() != measure.NoAnswer || checks[0].Err == nil) {
			t.Errorf("%s: %v", c.name, checks)
		}
		if math.IsNaN(c.joint.Fastener.Diameter) && err == nil {
			t.Errorf("%s: malformed data must stay an error", c.name)
		}
	}
	good := bolted()
	if _, err := good.Lateral(lumber.Duration(77)); err == nil {
		t.Error("an unknown duration passes")
	}
	if _, err := good.Pull(lumber.Duration(77)); err == nil {
		t.Error("an unknown duration passes")
	}
	if _, err := good.Check(fasten.Demand{Lateral: 1}, lumber.Duration(77)); err == nil {
		t.Error("an unknown duration passes")
	}
	for _, d := range []fasten.Demand{{Lateral: -1}, {Withdrawal: math.NaN()}, {Lateral: math.Inf(1)}} {
		if _, err := good.Check(d, lumber.TenYears); !errors.Is(err, measure.ErrRange) {
			t.Errorf("demand %v: %v", d, err)
		}
	}
	if _, err := (fasten.Piece{}).Bearing(0.01); err == nil {
		t.Error("bearing of nothing")
	}
	if _, err := good.Main.Bearing(-1); err == nil {
		t.Error("bearing under a negative diameter")
	}
}

// Over a gap the value is the quadratic's, with a warning and another rule.
func TestGapWarns(t *testing.T) {
	j := bolted()
	j.Gap = 0.25 * in
	y := must(j.Yield())
	if !strings.Contains(strings.Join(y.Notes, " "), "no tabulated value") || !strings.Contains(y.Rule.Title, "Technical Report 12") {
		t.Errorf("%v by %v, notes %q", y, y.Rule, y.Notes)
	}
	c := find(t, must(j.Check(fasten.Demand{Lateral: 100}, lumber.TenYears)), "lateral")
	if !strings.Contains(strings.Join(c.Notes, " "), "outside the standard") {
		t.Errorf("the check's notes %q do not warn", c.Notes)
	}
}

// long gives a joint's fastener a length in inches.
func long(l float64, j fasten.Joint) fasten.Joint {
	j.Fastener.Length = l * in
	return j
}

// Toe-nails follow both rules of penetration too: the point's length through a
// piece of 1 in at 30 degrees is 1.155 in, of 10D = 1.62.
func TestToePenetration(t *testing.T) {
	j := fasten.Joint{
		Fastener: must(fasten.Lookup("16d common nail")), Toe: true,
		Main: fasten.Piece{Grade: wood(0.5), Thickness: 1 * in}, Side: fasten.Piece{Grade: wood(0.5), Thickness: 1.5 * in},
	}
	if y := must(j.Yield()); math.Abs(y.Share-1/math.Cos(math.Pi/6)/1.62) > 1e-9 || y.Z != y.Table {
		t.Errorf("share %g, Z %g of equations %g", y.Share, y.Z, y.Equations)
	}
}

// Threads and points by the standard, where the fastener does not say.
func TestThreadRules(t *testing.T) {
	// A nail's point is 2D, and half of it does not bear.
	nail := fasten.Joint{
		Fastener: fasten.Fastener{Kind: fasten.Nail, Diameter: 0.15 * in, Length: 3 * in},
		Main:     fasten.Piece{Grade: wood(0.5), Thickness: 3 * in}, Side: fasten.Piece{Grade: wood(0.5), Thickness: 1 * in},
	}
	if y := must(nail.Yield()); math.Abs(y.InMain/in-1.85) > 1e-9 {
		t.Errorf("a nail bears on %g in, want 2 less 0.15", y.InMain/in)
	}
	pull := func(name string, side, main float64) float64 {
		j := fasten.Joint{
			Fastener: must(fasten.Lookup(name)), Service: fasten.Service{Dry: true, Seasoned: true},
			Main: fasten.Piece{Grade: wood(0.5), Thickness: main * in}, Side: fasten.Piece{Grade: wood(0.5), Thickness: side * in},
		}
		return must(j.Pull(lumber.TenYears))[0].Value / lb
	}
	lag := 1800 * math.Pow(0.5, 1.5) * math.Pow(0.5, 0.75)
	screw := 2850 * 0.25 * 0.19
	for _, c := range []struct {
		name             string
		side, main, want float64
	}{
		{"1/2 x 10 lag screw", 1.5, 12, lag * (5.5 - 0.3125)},
		{"1/2 x 14 lag screw", 1.5, 16, lag * (6 - 0.3125)}, // 6 in at most
		{"1/2 x 10 lag screw", 1.5, 6, lag * (7.5 - 4.5)},   // the point comes out
		{"No.10 x 3 wood screw", 0.5, 5, screw * 2},         // two thirds
	} {
		if got := pull(c.name, c.side, c.main); math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s: holds %.4f lbf, want %.4f", c.name, got, c.want)
		}
	}
	// Beyond 6 in of length a bolt has 2D + 1/2 in of thread, to 6 in 2D + 1/4: the
	// body counts while the thread in the wood is at most a quarter of the bearing.
	for _, c := range []struct {
		length, stack float64
		full          bool
	}{
		{6, 5.0, true},     // thread from 4.641 of 5.0: 0.359 of 1.5
		{6, 5.02, false},   // 0.379 in
		{6.5, 5.25, true},  // thread from 4.891: 0.359
		{6.5, 5.27, false}, // 0.379
		{7, 5.75, true},
		{7, 5.77, false},
	} {
		j := bolted()
		j.Side.Thickness, j.Fastener.Length = (c.stack-1.5)*in, c.length*in
		if y := must(j.Yield()); (y.Diameter/in > 0.45) != c.full {
			t.Errorf("%g in bolt through %g in: %s", c.length, c.stack, y.Body)
		}
	}
}
