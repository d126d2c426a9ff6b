package svg

import (
	"fmt"
	"math"
	"slices"
)

// Block keeps the texts that are placed later off an area, where they find room
// elsewhere.
func (d *Drawing) Block(b Box) { d.blocked = append(d.blocked, b.upright()) }

// BlockLine keeps texts off a line, as [Drawing.Block] does. Points nearer to each
// other than a text could tell are taken together.
func (d *Drawing) BlockLine(at ...Point) {
	const step, near = 3.0, 0.5
	sheet := Box{0, 0, d.w, d.h}
	if len(at) == 0 {
		return
	}
	a := at[0]
	for i, b := range at[1:] {
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		n := math.Ceil(l / step)
		if !(n <= 10000) || l < near && i < len(at)-2 { // also NaN: the line itself is refused
			continue
		}
		for k := 0.0; k < n; k++ {
			part := Box{a.X + (b.X-a.X)*k/n, a.Y + (b.Y-a.Y)*k/n, a.X + (b.X-a.X)*(k+1)/n, a.Y + (b.Y-a.Y)*(k+1)/n}
			if part = part.upright().grown(0.2); part.Overlaps(sheet) {
				d.Block(part)
			}
		}
		a = b
	}
}

func (b Box) grown(by float64) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

// Free reports whether a box lies on the sheet and covers no text.
func (d *Drawing) Free(b Box) bool {
	return b.Inside(Box{0, 0, d.w, d.h}) && !slices.ContainsFunc(d.labels, func(l Label) bool { return l.Box.Overlaps(b) })
}

// Clear reports whether a box is free and covers nothing that was blocked.
func (d *Drawing) Clear(b Box) bool {
	return d.Free(b) && !slices.ContainsFunc(d.blocked, b.Overlaps)
}

// A Spot is a place a text may take.
type Spot struct {
	At    Point
	Style TextStyle
}

// Place writes a text at the first of the spots where it covers neither a text
// nor anything blocked; where there is none, at the nearest place around the
// first spot, and at last over what is blocked, but never over a text. Without
// any room the drawing fails with [ErrRoom].
func (d *Drawing) Place(s string, spots ...Spot) Box {
	s = clean(s)
	if s == "" || len(spots) == 0 || d.err != nil {
		return Box{}
	}
	for _, may := range []func(Box) bool{d.Clear, d.Free} {
		for _, p := range spots {
			if may(TextBox(p.At, s, p.Style)) {
				return d.Text(p.At, s, p.Style)
			}
		}
		if p, ok := d.around(s, spots[0], may); ok {
			return d.Text(p, s, spots[0].Style)
		}
	}
	d.fail(fmt.Errorf("%w: %q", ErrRoom, s))
	return Box{}
}

// around looks in growing rings for a place where a text may stand.
func (d *Drawing) around(s string, spot Spot, may func(Box) bool) (Point, bool) {
	const step, rays = 1.0, 24
	box := TextBox(spot.At, s, spot.Style)
	if !d.finite("text", spot.At.X, spot.At.Y) || box.X1-box.X0 > d.w || box.Y1-box.Y0 > d.h {
		return Point{}, false
	}
	for r := step; r <= d.w+d.h; r += step {
		for k := range rays {
			a := 2 * math.Pi * float64(k) / rays
			// Whole hundredths, so that the place does not hang on a last bit.
			dx, dy := math.Round(100*r*math.Cos(a))/100, math.Round(100*r*math.Sin(a))/100
			if may(Box{box.X0 + dx, box.Y0 + dy, box.X1 + dx, box.Y1 + dy}) {
				return Point{spot.At.X + dx, spot.At.Y + dy}, true
			}
		}
	}
	return Point{}, false
}

// Leader writes a text near a point and draws an arrow from it to the point. The
// text keeps at least reach away.
func (d *Drawing) Leader(to Point, reach float64, s string, o TextStyle) Box {
	if !d.finite("leader", to.X, to.Y, reach) {
		return Box{}
	}
	var spots []Spot
	for _, r := range []float64{reach, reach * 1.5, reach * 2, reach * 3, reach * 4} {
		for _, u := range [...]Point{{0.7, -0.7}, {0.7, 0.7}, {-0.7, -0.7}, {-0.7, 0.7}, {0, -1}, {0, 1}, {1, 0}, {-1, 0}} {
			st := o
			switch {
			case u.X > 0:
				st.Anchor = Start
			case u.X < 0:
				st.Anchor = End
			default:
				st.Anchor = Middle
			}
			spots = append(spots, Spot{Point{to.X + r*u.X, to.Y + r*u.Y}, st})
		}
	}
	b := d.Place(s, spots...)
	if d.err == nil && b != (Box{}) {
		from := Point{min(max(to.X, b.X0), b.X1), min(max(to.Y, b.Y0), b.Y1)}
		d.Arrow(from, to, Dimension)
		d.BlockLine(from, to)
	}
	return b
}

// Spread moves places on a line apart, in least squares as little as possible,
// so that items of the given sizes do not overlap and stay within lo..hi. The
// order of the items is kept; ok is false where they do not fit.
func Spread(at, size []float64, lo, hi float64) (out []float64, ok bool) {
	n := min(len(at), len(size))
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case at[a] < at[b]:
			return -1
		case at[a] > at[b]:
			return 1
		}
		return 0
	})
	// A run is a row of items that touch; each item's offset from the first
	// item of all is fixed, so that places less offsets must not fall.
	type run struct {
		mean float64
		n    int
	}
	var runs []run
	offset := make([]float64, n)
	for k, i := range order {
		if k > 0 {
			offset[k] = offset[k-1] + (size[order[k-1]]+size[i])/2
		}
		r := run{at[i] - offset[k], 1}
		for len(runs) > 0 && runs[len(runs)-1].mean > r.mean {
			last := runs[len(runs)-1]
			runs = runs[:len(runs)-1]
			r = run{(last.mean*float64(last.n) + r.mean*float64(r.n)) / float64(last.n+r.n), last.n + r.n}
		}
		runs = append(runs, r)
	}
	if n == 0 {
		return nil, true
	}
	least, most := lo+size[order[0]]/2, hi-size[order[n-1]]/2-offset[n-1]
	out = make([]float64, n)
	k := 0
	for _, r := range runs {
		for range r.n {
			out[order[k]] = max(least, min(r.mean, most)) + offset[k]
			k++
		}
	}
	return out, least <= most+1e-9
}
