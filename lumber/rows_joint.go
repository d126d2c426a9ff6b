package lumber

import (
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// JoistLines returns the centre lines, m, of joists of a thickness at a spacing over
// a length, all in metres, as is common practice: the first and the last flush with
// the ends, the rest at multiples of the spacing from the first end, as a tape is
// read.
func JoistLines(length, spacing, thickness float64) ([]float64, error) {
	if err := deckSides.Check("length", length); err != nil {
		return nil, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0.01, Hi: length / 2, Source: srcCut}).Check("thickness", thickness); err != nil {
		return nil, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: thickness, OpenLo: true, Hi: 10, Source: srcCut}).Check("spacing", spacing); err != nil {
		return nil, err
	}
	lines := []float64{thickness / 2}
	last := length - thickness/2
	for k := 1; ; k++ {
		x := float64(k) * spacing
		if x > last-thickness {
			break
		}
		lines = append(lines, x)
	}
	return append(lines, last), nil
}

// extent sets where a row begins and ends along its boards. A slanted row runs
// along t = (x - y)/√2 at u = (x + y)/√2; its ends are the furthest points of the
// deck that it covers.
func (row *Row) extent(d Deck) {
	if !d.Slanted {
		row.From, row.To = 0, d.Length
		return
	}
	row.From, row.To = math.Inf(1), math.Inf(-1)
	at := func(x, y float64) {
		t := (x - y) / math.Sqrt2
		row.From, row.To = min(row.From, t), max(row.To, t)
	}
	lo, hi := row.At*math.Sqrt2, (row.At+row.Width)*math.Sqrt2 // x + y at its edges
	for _, s := range []float64{lo, hi} {
		if s >= 0 && s <= d.Length+d.Width {
			at(max(0, s-d.Width), min(s, d.Width))
			at(min(s, d.Length), max(0, s-d.Length))
		}
	}
	for _, c := range [][2]float64{{0, 0}, {d.Length, 0}, {0, d.Width}, {d.Length, d.Width}} {
		if s := c[0] + c[1]; s >= lo && s <= hi {
			at(c[0], c[1])
		}
	}
}

// cross returns where the joist at x lies along a row's boards.
func (row Row) cross(d Deck, x float64) float64 {
	if !d.Slanted {
		return x
	}
	return math.Sqrt2*x - (row.At + row.Width/2)
}

// bearings counts the joists a row lies on.
func (row Row) bearings(d Deck) int {
	if !d.Slanted {
		return len(d.Joists)
	}
	n := 0
	for _, x := range d.Joists {
		lo, hi := row.At*math.Sqrt2-x, (row.At+row.Width)*math.Sqrt2-x
		if hi > 0 && lo < d.Width {
			n++
		}
	}
	return n
}

// joints divides every row into boards that can be had.
func (r *Rows) joints(d Deck) error {
	lined := false
	var before []int
	for k := range r.Rows {
		row := &r.Rows[k]
		row.extent(d)
		joints, ok := row.divide(d, before)
		if !ok {
			if joints, ok = row.divide(d, nil); !ok {
				return &measure.Error{
					Field: "Longest", Kind: measure.Length, Value: d.Longest, Class: measure.ErrRange,
					Why:  "such boards do not reach from joist to joist",
					Want: "boards that reach from one joist to the next and over the ends of the rows",
				}
			}
			lined = true
		}
		at := row.From
		for _, j := range joints {
			x := row.cross(d, d.Joists[j])
			row.Boards = append(row.Boards, x-at)
			at = x
		}
		row.Joints, row.Boards = joints, append(row.Boards, row.To-at)
		before = joints
	}
	if lined {
		r.Notes = append(r.Notes, "some joints of neighbouring rows lie on the same joist: the boards are too short to stagger them")
	}
	return nil
}

// divide finds the joists for the fewest joints of a row that are not on those of
// the row before; of those the way with the longest shortest board.
func (row Row) divide(d Deck, before []int) (joints []int, ok bool) {
	longest := d.Longest
	if longest == 0 || row.To-row.From <= longest+rowFit {
		return nil, true
	}
	var at []float64 // places of joints, the ends first and last
	var joist []int
	at, joist = append(at, row.From), append(joist, none)
	for j, x := range d.Joists {
		if t := row.cross(d, x); t > row.From+rowFit && t < row.To-rowFit && !slices.Contains(before, j) {
			at, joist = append(at, t), append(joist, j)
		}
	}
	at, joist = append(at, row.To), append(joist, none)
	n := len(at)
	boards := make([]int, n) // fewest boards to a place; 0: not reached
	shortest := make([]float64, n)
	from := make([]int, n)
	for i := 1; i < n; i++ {
		for k := range i {
			if b := at[i] - at[k]; b <= longest+rowFit && (k == 0 || boards[k] > 0) {
				s := b
				if k > 0 {
					s = min(b, shortest[k])
				}
				if c := boards[k] + 1; boards[i] == 0 || c < boards[i] || (c == boards[i] && s > shortest[i]+rowFit) {
					boards[i], shortest[i], from[i] = c, s, k
				}
			}
		}
	}
	if boards[n-1] == 0 {
		return nil, false
	}
	for i := from[n-1]; i > 0; i = from[i] {
		joints = append([]int{joist[i]}, joints...)
	}
	return joints, true
}
