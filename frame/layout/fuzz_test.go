package layout_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// ours fails unless an error is the library's own.
func ours(t *testing.T, err error) {
	t.Helper()
	var e *measure.Error
	if err != nil && !errors.As(err, &e) {
		t.Fatalf("foreign error %v", err)
	}
}

// Whatever is drawn, the layout hands on the whole deck, every push in full, and no
// number that is none.
func FuzzNew(f *testing.F) {
	f.Add(26.0, 24.5, 35.0, 13.75, 48.0, 0.0, 7.25, 0.0, uint8(0), uint8(2))
	f.Add(20.0, 23.5, 35.0, 10.0, 40.0, 12.0, 9.25, 3.0, uint8(1), uint8(1))
	f.Add(60.0, 10.0, 20.0, 50.0, 90.0, 0.0, 1.5, -2.0, uint8(2), uint8(3))
	f.Add(1.5, 99.0, 4.0, -50.0, 0.0, 5.0, 3.0, 80.0, uint8(7), uint8(0))
	f.Add(math.NaN(), 24.5, 35.0, math.Inf(1), 48.0, 0.0, 7.25, 0.0, uint8(0), uint8(2))
	f.Fuzz(func(t *testing.T, spacing, diameter, length, x, y, height, depth, over float64, flags, slices uint8) {
		d := bays(t)
		for i := range d.Pieces {
			if d.Pieces[i].Kind == layout.Joist {
				d.Pieces[i].Depth = depth * in
			}
		}
		d.Pieces = append(d.Pieces, layout.Piece{
			Name: "more", Kind: layout.Kind(flags % 7), Width: 1.5 * in, Depth: depth * in, Bottom: over * in, Plies: int(slices),
			From: layout.Point{X: spacing * in, Y: 10 * in}, To: layout.Point{X: spacing * in, Y: (10 + length) * in}, Splices: []layout.Splice{{At: length / 2 * in}},
		})
		d.Drums[0] = layout.Drum{
			Name: "drum", At: layout.Point{X: x * in, Y: y * in}, Diameter: diameter * in, Length: length * in, Height: height * in,
			Along: flags&1 > 0, DropIn: flags&2 > 0, Tied: flags&4 > 0, Bears: layout.Seat(flags % 4),
		}
		d.Decks[0].Along = flags&8 == 0
		d.Decks[0].Min.X -= over * in
		d.Bolts[0].At, d.Bolts[0].Tail.X, d.Bolts[0].Tail.Y = layout.Point{X: x * in, Y: spacing * in}, over*in, 0
		d.Slices = int(slices)
		l, err := layout.New(d)
		ours(t, err)
		if err != nil {
			return
		}
		var area float64
		for _, s := range l.Tributary {
			area += (s.To - s.From) * s.Width
		}
		k := d.Decks[0]
		if want := (k.Max.X - k.Min.X) * (k.Max.Y - k.Min.Y); math.Abs(area-want) > 1e-9*want {
			t.Errorf("%g m² carried of %g", area, want)
		}
		for _, m := range l.Members {
			if m.I == m.J || !(m.To > m.From) || m.I < 0 || m.J >= len(l.Nodes) {
				t.Errorf("%+v", m)
			}
		}
		for _, b := range l.Bearings {
			sum := 0.0
			for _, c := range b.Contacts {
				sum += c.Share
				if c.Node < 0 || c.Member < 0 || math.IsNaN(c.At) {
					t.Errorf("%+v", c)
				}
			}
			if b.Seat != layout.Nothing && math.Abs(sum-1) > 1e-9 {
				t.Errorf("%+v", b)
			}
			if math.IsNaN(b.Centre) || math.IsInf(b.Centre, 0) || math.IsInf(b.Opening, 0) || math.IsNaN(b.Shift) {
				t.Errorf("%+v", b)
			}
			_, spread, err := b.Press(100)
			if ours(t, err); err == nil && !(spread >= 0) {
				t.Errorf("spread %g", spread)
			}
		}
		for _, c := range l.Conflicts {
			if !(c.Missing > 0) || math.IsInf(c.Missing, 0) || c.A == "" || c.B == "" {
				t.Errorf("%+v", c)
			}
		}
	})
}

// A force on the deck is shared out in full, wherever it stands.
func FuzzUnder(f *testing.F) {
	f.Add(0.3, 0.4)
	f.Add(0.0, 0.0)
	f.Add(2.0193, 2.4384)
	f.Add(math.NaN(), -1.0)
	l := lay(f, bays(f))
	f.Fuzz(func(t *testing.T, x, y float64) {
		on, err := l.Under(layout.Point{X: x, Y: y})
		ours(t, err)
		inside := x >= 0 && x <= 79.5*in && y >= 0 && y <= 96*in
		if inside && err != nil {
			t.Fatal(err)
		}
		sum, moment := 0.0, 0.0
		for _, c := range on {
			m := l.Members[c.Member]
			at := l.Nodes[m.I].At.X + c.From/(m.To-m.From)*(l.Nodes[m.J].At.X-l.Nodes[m.I].At.X)
			sum, moment = sum+c.Share, moment+c.Share*at
		}
		// Past the axis of the closing joists a rim takes it at its end.
		if err == nil && (math.Abs(sum-1) > 1e-12 || math.Abs(moment-x) > 0.75*in+1e-9) {
			t.Errorf("%g %g: sum %g, at %g", x, y, sum, moment)
		}
	})
}

// A force on any piece is handed on in full to pieces that carry.
func FuzzOn(f *testing.F) {
	f.Add("stop A1", 13.75)
	f.Add("joist 2", 40.0)
	f.Add("", 20.0)
	d := bays(f)
	f.Fuzz(func(t *testing.T, name string, x float64) {
		d := d
		d.Pieces = append(slices.Clone(d.Pieces), layout.Piece{
			Name: "ladder", Kind: layout.Ladder, Width: 1.5 * in, Depth: 3.5 * in, From: layout.Point{X: x * in, Y: -0.75 * in}, To: layout.Point{X: (x + 16) * in, Y: -0.75 * in},
		})
		l, err := layout.New(d)
		ours(t, err)
		if err != nil {
			return
		}
		for _, piece := range []string{name, "ladder", "stop B2"} {
			on, err := l.On(piece)
			ours(t, err)
			sum := 0.0
			for _, c := range on {
				sum += c.Share
				if k := l.Drawing.Pieces[c.Piece].Kind; k == layout.Ladder || k == layout.Stop || c.Member < 0 {
					t.Errorf("%s: %+v", piece, c)
				}
			}
			if err == nil && math.Abs(sum-1) > 1e-12 {
				t.Errorf("%s: %g in all", piece, sum)
			}
		}
	})
}

// More push never takes fewer boards, stronger boards never more; what is said to
// hold holds.
func FuzzLift(f *testing.F) {
	f.Add(1000.0, 100.0, 400.0, uint8(2))
	f.Add(900.0, 1e5, 165.0, uint8(1))
	f.Add(math.NaN(), 1.0, -1.0, uint8(0))
	l := lay(f, bays(f))
	f.Fuzz(func(t *testing.T, push, moment, screw float64, screws uint8) {
		s := layout.Strength{Moment: moment, Screw: screw, Screws: int(screws)}
		a, err := l.Lift(0, push, s)
		ours(t, err)
		if err != nil {
			return
		}
		if a.Rows == nil == (a.Conflict == nil) || a.Moment > moment*(1+1e-9) || a.Screw > screw*(1+1e-9) {
			t.Fatalf("%+v", a)
		}
		if b, err := l.Lift(0, push*1.1, s); err == nil && b.Rows != nil && (a.Rows == nil || len(b.Rows) < len(a.Rows)) {
			t.Errorf("more push: %+v after %+v", b, a)
		}
		s.Screw, s.Moment = 1.1*s.Screw, 1.1*s.Moment
		if b, err := l.Lift(0, push, s); err == nil && a.Rows != nil && (b.Rows == nil || len(b.Rows) > len(a.Rows)) {
			t.Errorf("stronger: %+v after %+v", b, a)
		}
	})
}

// Forces on the edges of a wedge carry the push and balance each other.
func FuzzWedge(f *testing.F) {
	f.Add(0.597, 0.43)
	f.Add(0.597, 0.0)
	f.Add(0.597, 0.596999999)
	f.Add(-1.0, math.NaN())
	f.Fuzz(func(t *testing.T, diameter, opening float64) {
		rise, press, spread, err := layout.Wedge(diameter, opening)
		ours(t, err)
		if err != nil {
			return
		}
		if !(rise >= 0 && rise <= diameter/2*(1+1e-12) && press >= 0.5) {
			t.Fatalf("rise %g, press %g", rise, press)
		}
		// press² = spread² + 1/4
		if math.Abs(press*press-spread*spread-0.25) > 1e-9*press*press {
			t.Errorf("press %g, spread %g", press, spread)
		}
	})
}

// A rectangle's pieces stay inside of it, and so do those of an L.
func FuzzRectangle(f *testing.F) {
	f.Add(4.0, 2.0, 0.5, 0.038, 0.184, uint8(1), uint8(2))
	f.Add(4.0, 0.1, 0.5, 0.038, 0.184, uint8(0), uint8(0))
	f.Add(math.Inf(1), math.NaN(), -1.0, 0.0, 3.0, uint8(6), uint8(200))
	f.Fuzz(func(t *testing.T, length, width, mark, thick, deep float64, flags, plies uint8) {
		s := lumber.Section{Width: thick, Depth: deep}
		r := layout.Rectangle{
			Name: "main", Length: length, Width: width, Across: flags&1 > 0, Centre: flags&2 > 0, Open: flags&4 > 0, Marks: []float64{thick, thick + mark, thick + 2*mark},
			Joist: s, Rim: s, RimPlies: int(plies),
		}
		pieces, err := r.Pieces()
		ours(t, err)
		w := r
		w.Name = "wing"
		both, err2 := layout.Ell(r, w)
		if ours(t, err2); (err == nil) && err2 == nil {
			pieces = append(pieces, both...)
		}
		for _, p := range pieces {
			for _, e := range []layout.Point{p.From, p.To} {
				if !(e.X >= -in && e.X <= length+in && e.Y >= -in && e.Y <= 2*width+in) {
					t.Errorf("%+v of %+v", p, r)
				}
			}
		}
	})
}

// Flat shims never add up to more than level ones, no shim is below nothing, and
// raising all supports alike changes none of them.
func FuzzLevel(f *testing.F) {
	f.Add(0.0, 0.01, 0.0, 0.0, 0.002, 8.0, 6.0)
	f.Add(0.01, 0.0, 0.03, 0.0, -0.01, 3.0, 2.0)
	f.Add(math.NaN(), 0.0, 0.0, 0.0, 0.0, 20.0, 6.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, x, y float64) {
		s := append(corners(a, b, c, d), layout.Support{At: layout.Point{X: 8, Y: 5}, Height: e})
		at := layout.Point{X: x, Y: y}
		l, err := layout.Level(s, at)
		ours(t, err)
		if err != nil {
			return
		}
		var level, flat float64
		touch := 0
		for i := range s {
			if !(l.Level[i] >= 0 && l.Flat[i] >= 0 && l.Gap[i] >= 0) {
				t.Fatalf("%+v", l)
			}
			level, flat = level+l.Level[i], flat+l.Flat[i]
			if l.Gap[i] == 0 {
				touch++
			}
		}
		if flat > level+1e-8 || touch != 5-len(l.Idle) || touch < 1 {
			t.Fatalf("%+v", l)
		}
		for i := range s {
			s[i].Height = math.Min(10, s[i].Height+0.25)
		}
		if math.Max(math.Max(a, b), math.Max(c, math.Max(d, e))) < 9 {
			m, err := layout.Level(s, at)
			if err != nil || math.Abs(m.Twist-l.Twist) > 1e-9 || math.Abs(m.Level[1]-l.Level[1]) > 1e-9 {
				t.Errorf("%+v %+v %v", l, m, err)
			}
		}
	})
}

// Nominal lengths give a range that has the square frame of stock a quarter inch
// long in it; readings of a flat frame have no misfit, and its mirror image is
// pushed by the same way.
func FuzzSquare(f *testing.F) {
	f.Add(4.9, 2.45, 0.03, 0.0, 0.001)
	f.Add(3.66, 4.95, -0.01, 0.02, 0.0)
	f.Add(math.NaN(), 2.0, 0.0, 0.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, a, b, lean, taper, tape float64) {
		lo, hi, err := layout.FromNominal(a, b)
		if ours(t, err); err == nil {
			if d := math.Hypot(a+in/4, b+in/4); !(lo <= d && d <= hi) {
				t.Fatalf("%g to %g, %g", lo, hi, d)
			}
		}
		if !(a > 0.5 && a < 50 && b > 0.5 && b < 50 && math.Abs(lean) < 0.4*b && math.Abs(taper) < 0.2*a) {
			return
		}
		q := frame([4]float64{0, a, a + lean - taper, lean}, [4]float64{0, 0, b, b})
		s, err := q.Square(tape)
		ours(t, err)
		if err != nil {
			return
		}
		if math.Abs(s.Misfit) > 1e-9*(a+b) || s.Twist > 1e-3*(a+b) || !(s.Push >= 0) {
			t.Errorf("%+v", s)
		}
		m, err := layout.Frame{A: q.A, B: q.D, C: q.C, D: q.B, P: q.Q, Q: q.P}.Square(tape)
		if err != nil || math.Abs(m.Off[0]-s.Off[1]) > 1e-7 || math.Abs(m.Read[0]-s.Read[1]) > 1e-9*(a+b) {
			t.Errorf("%+v, mirror %+v, %v", s, m, err)
		}
		if taper == 0 && math.Abs(m.Push-s.Push) > 1e-7*(a+b) {
			t.Errorf("pushed by %g, mirror by %g", s.Push, m.Push)
		}
	})
}
