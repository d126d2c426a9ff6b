package layout_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame/layout"
	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber"
)

// grid is a length on half inches, so that edges meet and limits are hit.
func grid(r *rand.Rand, lo, hi int) float64 {
	return float64(2*lo+r.IntN(2*(hi-lo)+1)) / 2 * in
}

// invented draws a dock of any sort, drums, boards and bolts wherever they fall.
func invented(r *rand.Rand) (layout.Drawing, error) {
	size := func() lumber.Section {
		s, err := lumber.Size([]string{"2x6", "2x8", "2x10"}[r.IntN(3)])
		if err != nil {
			panic(err)
		}
		return s
	}
	rect := layout.Rectangle{
		Name: "main", Length: grid(r, 96, 240), Width: grid(r, 48, 120), Across: r.IntN(2) == 0,
		Joist: size(), Rim: size(), RimPlies: 1 + r.IntN(3), Open: r.IntN(8) == 0,
	}
	along := rect.Width
	if rect.Across {
		along = rect.Length
	}
	for at := 0.0; at <= along-1.5*in; at += []float64{12 * in, 16 * in, 24 * in, grid(r, 12, 32)}[r.IntN(4)] {
		rect.Marks = append(rect.Marks, at)
	}
	rect.Marks = append(rect.Marks, along-1.5*in)
	pieces, err := rect.Pieces()
	if err != nil {
		return layout.Drawing{}, err
	}
	if r.IntN(3) == 0 {
		wing := rect
		wing.Name, wing.Corner = "wing", layout.Point{X: rect.Length}
		if both, err := layout.Ell(rect, wing); err == nil {
			pieces = both
		}
	}
	for i := range r.IntN(3) {
		from := layout.Point{X: grid(r, 0, 96), Y: grid(r, 0, 48)}
		to := from
		if r.IntN(2) == 0 {
			to.X += grid(r, 6, 48)
		} else {
			to.Y += grid(r, 6, 36)
		}
		s := size()
		pieces = append(pieces, layout.Piece{
			Name: fmt.Sprint("more ", i), Kind: layout.Kind(r.IntN(7)), From: from, To: to,
			Width: s.Width, Depth: s.Depth, Plies: 1 + r.IntN(2), Bottom: grid(r, -4, 4),
		})
	}
	if p := &pieces[r.IntN(len(pieces))]; p.Plies > 1 {
		p.Splices = []layout.Splice{{At: grid(r, 6, 60), Ply: r.IntN(p.Plies), Carries: r.IntN(2) == 0}, {At: grid(r, 6, 60), Ply: r.IntN(p.Plies)}}
	}
	d := layout.Drawing{Pieces: pieces, Slices: r.IntN(3)}
	if r.IntN(2) == 0 {
		d.Room = layout.Practice()
	}
	for i := range 1 + r.IntN(4) {
		d.Drums = append(d.Drums, layout.Drum{
			Name: fmt.Sprint("drum ", i), At: layout.Point{X: grid(r, 0, int(rect.Length/in)), Y: grid(r, 0, int(rect.Width/in))},
			Diameter: grid(r, 12, 26), Length: grid(r, 18, 40), Height: []float64{0, 0, grid(r, 8, 24)}[r.IntN(3)],
			Along: r.IntN(2) == 0, Bears: layout.Seat(r.IntN(4)), DropIn: r.IntN(2) == 0, Tied: r.IntN(2) == 0,
		})
	}
	d.Decks = []layout.Deck{{
		Name: "deck", Max: layout.Point{X: rect.Length, Y: rect.Width}, Along: rect.Across != (r.IntN(8) == 0),
		Face: 5.5 * in, Thickness: []float64{1, 1.5}[r.IntN(2)] * in, Gap: []float64{0, 0.25, 0.5}[r.IntN(3)] * in, Rating: []float64{0, 24 * in}[r.IntN(2)],
	}}
	for i := range r.IntN(4) {
		d.Bolts = append(d.Bolts, layout.Bolt{
			Name: fmt.Sprint("bolt ", i), At: layout.Point{X: grid(r, 0, int(rect.Length/in)), Y: []float64{0.5 * in, rect.Width - 0.5*in, grid(r, 0, 48)}[r.IntN(3)]},
			Height: grid(r, 0, 8), Tail: []layout.Point{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}}[r.IntN(4)],
		})
	}
	return d, nil
}

// TestPinned compares the rooms of the package with what they gave before.
func TestPinned(t *testing.T) {
	pinned.Check(t, "layout", 400, func(r *rand.Rand) []any {
		d, err := invented(r)
		if err != nil {
			return []any{err}
		}
		l, err := layout.New(d)
		if err != nil {
			return []any{err}
		}
		out := []any{l.Nodes, l.Members, l.Sections, l.Tributary, l.Bearings, l.Conflicts}
		for i, b := range l.Bearings {
			edges, spread, err := b.Press(1000)
			lift, err2 := l.Lift(i, 900, layout.Strength{Moment: grid(r, 100, 40000), Screw: grid(r, 100, 60000), Screws: 1 + r.IntN(3)})
			out = append(out, edges, spread, err, lift, err2)
		}
		for range 6 {
			on, err := l.Under(layout.Point{X: grid(r, 0, 96), Y: grid(r, 0, 48)})
			out = append(out, on, err)
		}
		for i, p := range l.Drawing.Pieces {
			on, err := l.On(p.Name)
			out = append(out, l.Area(i), on, err, p)
		}
		return out
	})
	pinned.Check(t, "square", 400, func(r *rand.Rand) []any {
		a, b := grid(r, 48, 240), grid(r, 48, 240)
		diagonal, err := layout.Diagonal(a, b)
		near := func(x float64) float64 { return x + grid(r, -1, 1)/4 }
		f := layout.Frame{A: near(a), B: near(b), C: near(a), D: near(b), P: near(diagonal), Q: near(diagonal)}
		corners, err2 := f.Corners()
		misfit, err3 := f.Misfit()
		square, err4 := f.Square(grid(r, 0, 1) / 8)
		corner, err5 := layout.Corner(a, b, near(diagonal))
		offset, angle, err6 := layout.Racked(a, b, near(diagonal), near(diagonal))
		least, greatest, err7 := layout.FromNominal(a, b)
		rise, press, spread, err8 := layout.Wedge(grid(r, 12, 26), grid(r, 4, 24))
		out := []any{diagonal, err, corners, err2, misfit, err3, square.Off, square.Misfit, square.Slack, square.Twist, square.Read, square.Corner, square.Push, err4}
		return append(out, corner, err5, offset, angle, err6, least, greatest, err7, rise, press, spread, err8)
	})
	pinned.Check(t, "level", 400, func(r *rand.Rand) []any {
		var supports []layout.Support
		for i := range 3 + r.IntN(5) {
			supports = append(supports, layout.Support{Name: fmt.Sprint(i), At: layout.Point{X: grid(r, 0, 20) * 4, Y: grid(r, 0, 10) * 4}, Height: float64(r.IntN(5)-2) * in / 4})
		}
		l, err := layout.Level(supports, layout.Point{X: grid(r, 20, 60), Y: grid(r, 10, 30)})
		return []any{l, err}
	})
}

// lifted draws drums that bear on boards over joists, the boards either way.
func lifted(r *rand.Rand) (layout.Drawing, error) {
	s := lumber.Section{Width: 1.5 * in, Depth: 7.25 * in}
	rect := layout.Rectangle{Length: grid(r, 79, 110), Width: grid(r, 80, 100), Across: true, Joist: s, Rim: s, Open: r.IntN(4) == 0}
	for at := 0.0; at < rect.Length-3*in; at += grid(r, 24, 30) {
		rect.Marks = append(rect.Marks, at)
	}
	rect.Marks = append(rect.Marks, rect.Length-1.5*in)
	pieces, err := rect.Pieces()
	if err != nil {
		return layout.Drawing{}, err
	}
	d := layout.Drawing{Pieces: pieces, Slices: r.IntN(10), Decks: []layout.Deck{{
		Name: "deck", Min: layout.Point{X: grid(r, 0, 4), Y: grid(r, 0, 30)}, Max: layout.Point{X: rect.Length - grid(r, 0, 4), Y: rect.Width - grid(r, 0, 30)},
		Along: r.IntN(3) > 0, Face: []float64{3.5, 5.5}[r.IntN(2)] * in, Thickness: 1.5 * in, Gap: []float64{0, 0.25, 0.5}[r.IntN(3)] * in,
	}}}
	for i := range 2 {
		k := r.IntN(len(rect.Marks) - 1)
		d.Drums = append(d.Drums, layout.Drum{
			Name: fmt.Sprint("drum ", i), At: layout.Point{X: (rect.Marks[k]+rect.Marks[k+1])/2 + 0.75*in, Y: grid(r, 20, 70)},
			Diameter: grid(r, 14, 23), Length: grid(r, 20, 36), Bears: layout.UnderBoards, DropIn: true, Tied: true,
		})
	}
	return d, nil
}

// TestPinnedLift compares what boards over a drum feel with what they felt before.
func TestPinnedLift(t *testing.T) {
	found := 0
	pinned.Check(t, "lift", 400, func(r *rand.Rand) []any {
		d, err := lifted(r)
		if err != nil {
			return []any{err}
		}
		l, err := layout.New(d)
		if err != nil {
			return []any{err}
		}
		var out []any
		for i := range d.Drums {
			for range 3 {
				lift, err := l.Lift(i, grid(r, 10, 60)/in*29.973, layout.Strength{Moment: grid(r, 1, 20) / in * 10, Screw: grid(r, 4, 60) / in * 10, Screws: 1 + r.IntN(3)})
				if err == nil {
					found++
				}
				out = append(out, lift, err)
			}
		}
		return append(out, l.Bearings, l.Conflicts)
	})
	if found < 600 {
		t.Errorf("only %d of 2400 drums lift boards", found)
	}
}
