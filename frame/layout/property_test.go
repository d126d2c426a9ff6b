package layout_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/floewright/frame/layout"
)

// mirror turns a drawing over: end for end at length, or side for side at width.
func mirror(d layout.Drawing, axis int, size float64) layout.Drawing {
	turn := func(p layout.Point) layout.Point {
		if axis == 0 {
			p.X = size - p.X
		} else {
			p.Y = size - p.Y
		}
		return p
	}
	out := d
	out.Pieces, out.Drums, out.Decks = slices.Clone(d.Pieces), slices.Clone(d.Drums), slices.Clone(d.Decks)
	out.Bolts, out.Pins = slices.Clone(d.Bolts), slices.Clone(d.Pins)
	for i := range out.Pieces {
		out.Pieces[i].From, out.Pieces[i].To = turn(d.Pieces[i].From), turn(d.Pieces[i].To)
	}
	for i := range out.Drums {
		out.Drums[i].At = turn(d.Drums[i].At)
	}
	for i := range out.Decks {
		a, b := turn(d.Decks[i].Min), turn(d.Decks[i].Max)
		out.Decks[i].Min = layout.Point{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y)}
		out.Decks[i].Max = layout.Point{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y)}
	}
	for i := range out.Bolts {
		out.Bolts[i].At = turn(d.Bolts[i].At)
		if axis == 0 {
			out.Bolts[i].Tail.X = -d.Bolts[i].Tail.X
		} else {
			out.Bolts[i].Tail.Y = -d.Bolts[i].Tail.Y
		}
	}
	for i := range out.Pins {
		out.Pins[i].At = turn(d.Pins[i].At)
	}
	return out
}

// awkward is a drawing with much in it that is not symmetrical.
func awkward(t testing.TB) layout.Drawing {
	d := bays(t)
	d.Drums[0].At.X += 0.3 * in
	d.Drums[1].Diameter, d.Drums[1].DropIn = 30*in, false
	d.Drums = append(d.Drums, layout.Drum{Name: "block", At: layout.Point{X: 40 * in, Y: 20 * in}, Diameter: 18 * in, Length: 55 * in, Height: 14 * in, Along: true})
	d.Pieces = append(d.Pieces,
		layout.Piece{Name: "block 1", Kind: layout.Blocking, From: layout.Point{X: 27.5 * in, Y: 70 * in}, To: layout.Point{X: 52 * in, Y: 70 * in}, Width: 1.5 * in, Depth: 7.25 * in, Stiff: true},
		layout.Piece{Name: "beam", Kind: layout.Header, From: layout.Point{X: -5 * in, Y: 88 * in}, To: layout.Point{X: 90 * in, Y: 88 * in}, Width: 1.5 * in, Depth: 5.5 * in, Bottom: -5.5 * in, Plies: 2},
	)
	d.Decks[0].Min.X, d.Decks[0].Max.Y = -2*in, 97*in
	d.Decks[0].Rating = 0
	d.Bolts = append(d.Bolts, layout.Bolt{Name: "near", At: layout.Point{X: 26 * in, Y: 48 * in}, Height: 1 * in, Tail: layout.Point{X: -3 * in}})
	return d
}

// sums describes a layout by what a mirror must not change.
func sums(l *layout.Layout) map[string]float64 {
	out := map[string]float64{"nodes": float64(len(l.Nodes)), "members": float64(len(l.Members)), "conflicts": float64(len(l.Conflicts))}
	for i := range l.Drawing.Pieces {
		out["area "+l.Drawing.Pieces[i].Name] = l.Area(i)
	}
	for _, b := range l.Bearings {
		name := l.Drawing.Drums[b.Drum].Name
		out["seat "+name], out["centre "+name], out["shift "+name] = float64(b.Seat), b.Centre, b.Shift
		_, out["spread "+name], _ = b.Press(1)
		for _, c := range b.Contacts {
			out["share "+name+l.Drawing.Pieces[c.Piece].Name] += c.Share
		}
	}
	for _, c := range l.Conflicts {
		out[fmt.Sprintf("missing %v %s", c.Kind, c.A)] += c.Missing
	}
	for _, m := range l.Members {
		if m.Piece < 0 {
			continue
		}
		name := l.Drawing.Pieces[m.Piece].Name
		for _, hinge := range []bool{m.HingeI, m.HingeJ} {
			if hinge {
				out["hinges "+name]++
			}
		}
	}
	return out
}

// Mirror images of a layout are laid out as mirror images.
func TestMirror(t *testing.T) {
	d := awkward(t)
	l := lay(t, d)
	want := sums(l)
	for axis, size := range []float64{79.5 * in, 96 * in} {
		m := lay(t, mirror(d, axis, size))
		got := sums(m)
		if len(got) != len(want) {
			t.Errorf("axis %d: %d sums, want %d", axis, len(got), len(want))
		}
		for name, x := range want {
			if math.Abs(got[name]-x) > 1e-9 {
				t.Errorf("axis %d, %s: %g, mirror %g", axis, name, x, got[name])
			}
		}
		places := func(l *layout.Layout, turned bool) []layout.Point {
			var out []layout.Point
			for _, n := range l.Nodes {
				p := n.At
				if turned && axis == 0 {
					p.X = size - p.X
				} else if turned {
					p.Y = size - p.Y
				}
				// To a micrometre, so that like places sort alike.
				out = append(out, layout.Point{X: math.Round(p.X*1e6) / 1e6, Y: math.Round(p.Y*1e6) / 1e6})
			}
			slices.SortFunc(out, func(a, b layout.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
			return out
		}
		a, b := places(l, false), places(m, true)
		for i := range a {
			if math.Hypot(a[i].X-b[i].X, a[i].Y-b[i].Y) > 2e-6 {
				t.Errorf("axis %d: node at %v, mirror %v", axis, a[i], b[i])
			}
		}
	}
}

// A piece drawn from its other end is the same piece.
func TestDrawnBackwards(t *testing.T) {
	d := awkward(t)
	want := sums(lay(t, d))
	for i := range d.Pieces {
		p := &d.Pieces[i]
		p.From, p.To = p.To, p.From
	}
	for name, x := range sums(lay(t, d)) {
		if math.Abs(want[name]-x) > 1e-9 {
			t.Errorf("%s: %g, backwards %g", name, want[name], x)
		}
	}
}

// A drum that grows rises no higher, and a wider bay spreads the joists more.
func TestWedgeGrows(t *testing.T) {
	last := math.Inf(1)
	for d := 24.0; d < 40; d += 0.5 {
		b := lay(t, wedged(t, d*in)).Bearings[0]
		if !(b.Crown <= last+1e-12) {
			t.Errorf("a drum of %g in. has its crown at %g m, a lesser one at %g m", d, b.Crown, last)
		}
		last = b.Crown
	}
	spread := 0.0
	for o := 0.1; o < 0.59; o += 0.02 {
		_, press, s, err := layout.Wedge(0.6, o)
		if err != nil || !(s > spread) || !(press > 0.5) {
			t.Errorf("%g: %g, %v", o, s, err)
		}
		spread = s
	}
}

// Scaled to twice the size, all lengths double and no share changes.
func TestScale(t *testing.T) {
	d := bays(t)
	d.Bolts = nil
	a := lay(t, d)
	two := func(p layout.Point) layout.Point { return layout.Point{X: 2 * p.X, Y: 2 * p.Y} }
	for i := range d.Pieces {
		p := &d.Pieces[i]
		p.From, p.To, p.Width, p.Depth, p.Bottom = two(p.From), two(p.To), 2*p.Width, 2*p.Depth, 2*p.Bottom
	}
	for i := range d.Drums {
		f := &d.Drums[i]
		f.At, f.Diameter, f.Length = two(f.At), 2*f.Diameter, 2*f.Length
	}
	k := &d.Decks[0]
	k.Min, k.Max, k.Face, k.Thickness, k.Gap, k.Rating = two(k.Min), two(k.Max), 2*k.Face, 2*k.Thickness, 2*k.Gap, 2*k.Rating
	b := lay(t, d)
	for i := range a.Nodes {
		about(t, "node", b.Nodes[i].At.X, 2*a.Nodes[i].At.X, 1e-12)
	}
	for i := range a.Drawing.Pieces {
		about(t, "area", b.Area(i), 4*a.Area(i), 1e-12)
	}
	for i := range a.Bearings {
		about(t, "centre", b.Bearings[i].Centre, 2*a.Bearings[i].Centre, 1e-12)
		about(t, "share", b.Bearings[i].Contacts[0].Share, a.Bearings[i].Contacts[0].Share, 1e-12)
	}
}
