package frame

import (
	"math"
	"sort"

	"example.org/floewright/lumber/measure"
)

// A Load acts on a beam or a member. Loads are given downward positive, as
// weights are: a negative Q or P lifts. Places are in m from the near end.
//
// Where To is more than From it is spread over that length and varies evenly
// from Q at From to Q + Rise at To, both N/m: without a Rise it is uniform, without
// a Q a triangle.
//
// Else (To zero, or equal to From) it is a point load P (N) and a couple M (N·m)
// at From. A positive couple turns the beam from x towards up, counter-clockwise
// in a drawing with x to the right: the bending moment drops by M there.
//
// A load that mixes both shapes is an error, and so is a couple on a hinge: it
// belongs to one side of it.
type Load struct{ From, To, Q, Rise, P, M float64 }

// Uniform returns a load of q N/m, downward positive, between two places in m.
func Uniform(from, to, q float64) Load { return Load{From: from, To: to, Q: q} }

// Point returns a point load of p N, downward positive, at a place in m.
func Point(at, p float64) Load { return Load{From: at, P: p} }

// spread reports the shape. A To of zero is none given, even where rounding has
// left From a hair below zero.
func (l Load) spread() bool { return l.To > l.From && l.To > 0 }

// size returns the load's size as a force, on a body of a given length.
func (l *Load) size(length float64) float64 {
	sum := math.Abs(l.P) + math.Abs(l.M)/length
	if l.spread() {
		sum += (math.Abs(l.Q) + math.Abs(l.Q+l.Rise)) / 2 * (l.To - l.From)
	}
	return sum
}

// over adds a spread load to the stretches, in order, that lie between two
// places, the load's own as they were moved onto the cuts.
func (l *Load) over(row []stretch, from, to float64) {
	rise := l.Rise / (l.To - l.From)
	k := sort.Search(len(row), func(i int) bool { return row[i].x >= from })
	for ; k < len(row) && row[k].x < to; k++ {
		row[k].q += l.Q + float64(rise*(row[k].x-l.From))
		row[k].rise += rise
	}
}

// check returns what is wrong with load i of a list on a length, if anything.
// The slack lets places that were summed from feet and inches end where the beam
// ends.
func (l *Load) check(list string, i int, length float64) error {
	field := func(part string) string { return list + "[" + itoa(i) + "]" + part }
	place := measure.Range{Kind: measure.Length, Lo: -slack * length, Hi: length * (1 + slack)}
	if !place.Has(l.From) {
		return place.Check(field(".From"), l.From)
	}
	if l.spread() {
		if !place.Has(l.To) {
			return place.Check(field(".To"), l.To)
		}
		if l.P != 0 || l.M != 0 { // NaN is not 0 either
			return mixed(field(""), "a spread load (To beyond From) with a point load P or a couple M")
		}
	} else {
		if l.To != 0 && l.To != l.From {
			return &measure.Error{
				Field: field(".To"), Kind: measure.Length, Value: l.To, Class: measure.ErrRange,
				Want: "0 or From for a point load, more than From for a spread load",
			}
		}
		if l.Q != 0 || l.Rise != 0 {
			return mixed(field(""), "a point load (To not beyond From) with a line load Q or Rise")
		}
	}
	for _, f := range [4]struct {
		name  string
		kind  measure.Kind
		value float64
	}{{".Q", measure.LineLoad, l.Q}, {".Rise", measure.LineLoad, l.Rise}, {".P", measure.Force, l.P}, {".M", measure.Moment, l.M}} {
		if r := anyFinite(f.kind); !r.Has(f.value) {
			return r.Check(field(f.name), f.value)
		}
	}
	return nil
}

func mixed(field, why string) error {
	return &measure.Error{Field: field, Text: why, Class: measure.ErrRange, Want: "two loads"}
}
