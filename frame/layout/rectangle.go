package layout

import (
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// axes returns the axes, m, of joists of a thickness, m, from their running marks, m
// from the end where the tape hooks (geometry). A mark is the near face of the joist,
// or its centre where that is declared. Marks that do not grow by a thickness or
// more leave joists on top of each other, an error.
func axes(marks []float64, thickness float64, centre bool) ([]float64, error) {
	if err := sides.Check("thickness", thickness); err != nil {
		return nil, err
	}
	if len(marks) == 0 {
		return nil, &measure.Error{Field: "marks", Class: measure.ErrUnknown, Want: "one mark for each joist"}
	}
	shift := thickness / 2
	if centre {
		shift = 0
	}
	out := make([]float64, len(marks))
	for i, m := range marks {
		field := fmt.Sprintf("mark %d", i+1)
		if err := places.Check(field, m); err != nil {
			return nil, err
		}
		out[i] = m + shift
		if i > 0 {
			// Half of the finest mark on a tape is no overlap.
			if err := (measure.Range{Kind: measure.Length, Lo: marks[i-1] + thickness - measure.Inch/32, Hi: places.Hi}).Check(field, m); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// A Rectangle is a plain frame: two rims, joists between them at running marks,
// the first and the last closing the other two sides.
type Rectangle struct {
	Name     string    // put before the names of its pieces; may be empty
	Corner   Point     // the corner where the tape hooks
	Length   float64   // m along x, over the outside
	Width    float64   // m along y, over the outside
	Across   bool      // joists run across, along y; otherwise along x
	Marks    []float64 // m, running from where the tape hooks
	Centre   bool      // marks are centres; otherwise near faces
	Joist    lumber.Section
	Rim      lumber.Section
	RimPlies int // 0 counts as 1
	// Open leaves out the rim where Y is least, or X where joists run along: the
	// joists butt against another frame there.
	Open bool
}

// Pieces returns its rims, "rim 1" and "rim 2", and its joists, "joist 1" and so
// on in the order of their marks. The rims run through, the joists between them, their
// tops flush, so that the boards lie on all of them: plane geometry.
func (r Rectangle) Pieces() ([]Piece, error) {
	for _, c := range []struct {
		what string
		r    measure.Range
		x    float64
	}{
		{"Corner.X", places, r.Corner.X},
		{"Corner.Y", places, r.Corner.Y},
		{"Length", lengths, r.Length},
		{"Width", lengths, r.Width},
		{"Joist.Width", sides, r.Joist.Width},
		{"Joist.Depth", sides, r.Joist.Depth},
		{"Rim.Width", sides, r.Rim.Width},
		{"Rim.Depth", sides, r.Rim.Depth},
		{"RimPlies", counts, float64(r.RimPlies)},
	} {
		if err := c.r.Check(c.what, c.x); err != nil {
			return nil, err
		}
	}
	lines, err := axes(r.Marks, r.Joist.Width, r.Centre)
	if err != nil {
		return nil, err
	}
	run, reach, axis := r.Length, r.Width, 1
	if !r.Across {
		run, reach, axis = r.Width, r.Length, 0
	}
	inside := measure.Range{Kind: measure.Length, Lo: r.Joist.Width/2 - measure.Inch/32, Hi: run - r.Joist.Width/2 + measure.Inch/32}
	rim := float64(max(1, r.RimPlies)) * r.Rim.Width
	near, far := rim, reach-rim
	if r.Open {
		near = 0
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 4 * measure.Inch, Hi: math.Inf(1)}).Check("length of a joist between the rims", far-near); err != nil {
		return nil, err
	}
	prefix := r.Name
	if prefix != "" {
		prefix += " "
	}
	place := func(along, across float64) Point { // in the joists' direction, and along the run
		p := at(axis, along, across)
		return Point{p.X + r.Corner.X, p.Y + r.Corner.Y}
	}
	var out []Piece
	for i, s := range []float64{rim / 2, reach - rim/2} {
		if i == 0 && r.Open {
			continue
		}
		out = append(out, Piece{
			Name: fmt.Sprintf("%srim %d", prefix, i+1), Kind: Rim, From: place(s, 0), To: place(s, run),
			Width: r.Rim.Width, Depth: r.Rim.Depth, Bottom: r.Joist.Depth - r.Rim.Depth, Plies: max(1, r.RimPlies),
		})
	}
	for i, s := range lines {
		if err := inside.Check(fmt.Sprintf("centre of joist %d", i+1), s); err != nil {
			return nil, err
		}
		out = append(out, Piece{
			Name: fmt.Sprintf("%sjoist %d", prefix, i+1), Kind: Joist, From: place(near, s), To: place(far, s),
			Width: r.Joist.Width, Depth: r.Joist.Depth, Plies: 1,
		})
	}
	return out, nil
}

// Ell returns the pieces of an L: a main rectangle, and a wing that butts against
// its far side, where Y is greatest. The wing's marks, and its Corner.X, are
// measured from the main frame's corner along that side; it has no rim of its own
// there. Give them different names. The wing's two outermost pieces that butt on the
// main frame are Stiff: it needs corner irons bolted through, or it folds down (our
// choice). Places are plane geometry.
func Ell(main, wing Rectangle) ([]Piece, error) {
	if main.Name == wing.Name {
		return nil, &measure.Error{Field: "names of main frame and wing", Text: main.Name, Class: measure.ErrName, Want: "two different ones"}
	}
	pieces, err := main.Pieces()
	if err != nil {
		return nil, err
	}
	for _, c := range []float64{wing.Corner.X, wing.Corner.X + wing.Length} {
		if err := (measure.Range{Kind: measure.Length, Lo: -measure.Inch / 32, Hi: main.Length + measure.Inch/32}).Check("wing's end along the main frame", c); err != nil {
			return nil, err
		}
	}
	wing.Corner = Point{main.Corner.X + wing.Corner.X, main.Corner.Y + main.Width}
	// The rims of joists along x are its sides; they butt against the main frame.
	wing.Open = wing.Across
	more, err := wing.Pieces()
	if err != nil {
		return nil, err
	}
	first := len(more)
	for i := range more {
		if (more[i].Kind == Joist) == wing.Across {
			first = min(first, i)
			more[i].Stiff = i == first
		}
	}
	for i := len(more) - 1; i >= 0; i-- {
		if (more[i].Kind == Joist) == wing.Across {
			more[i].Stiff = true
			break
		}
	}
	return append(pieces, more...), nil
}
