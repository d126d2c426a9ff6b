package fasten

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A room is one distance the standard asks for: the least that may be at all and
// the least for full strength; a rule without reduction has both alike. Inches.
type room struct {
	name        string
	has         float64 // NaN is unknown
	least, full float64
	most        bool // has may be at most least
	rule        *measure.Source
	ask         string // what to measure, where unknown
}

// rooms lists the distances of the joint, NDS 12.5.1, for fasteners of 1/4 in. and
// more. Oblique loads are held to the rules of both directions.
func (j Joint) rooms() []room {
	var out []room
	d := inches(j.Fastener.Diameter)
	for _, p := range j.pieces() {
		if p.Material == Wood && !p.EndGrain {
			out = append(out, j.roomsOf(p, d)...)
		}
	}
	if j.perRow() > 1 {
		out = append(out, room{"spacing in the row", orUnknown(j.Spacing), 3 * d, 4 * d, false, srcRow, "the spacing of the fasteners in a row"})
	}
	if j.rows() > 1 {
		out = append(out, j.rowRoom(d))
	}
	return out
}

// A named piece of a joint.
type named struct {
	Piece
	name string
	ends bool // it is the one that holds the end of a driven fastener
}

func (j Joint) pieces() []named {
	return []named{{j.Main, "main", !j.Double}, {j.Side, "side", j.Double}}
}

func (j Joint) roomsOf(p named, d float64) []room {
	var out []room
	along, across := !p.across(), !p.along()
	end := room{"end distance, " + p.name, orUnknown(p.End), 2 * d, 4 * d, false, srcEnd, "how far the nearest fastener is from the end of the " + p.name + " piece"}
	if along && !p.Away {
		end.least, end.full = 3.5*d, 7*d
		if p.Hardwood {
			end.least, end.full = 2.5*d, 5*d
		}
	}
	out = append(out, end)

	need := 1.5 * d
	if along && j.slender(d) > 6 && j.rows() > 1 {
		need = math.Max(need, inches(j.Between)/2)
	}
	near := need
	if across {
		near = math.Max(near, 4*d)
	}
	ask := "how far the nearest fastener is from the edge of the " + p.name + " piece"
	out = append(out, room{"edge distance, " + p.name, orUnknown(p.Edge), near, near, false, srcEdge, ask})
	wide := j.wide(p)
	far := math.NaN()
	if p.Width > 0 && p.Edge > 0 {
		far = inches(p.Width - p.Edge - wide)
	}
	out = append(out, room{"distance from the other edge, " + p.name, far, need, need, false, srcEdge, "the width of the " + p.name + " piece and the edge distance"})
	if j.count() > 1 {
		out = append(out, room{"spread across the grain, " + p.name, inches(wide), 5, 5, true, srcOuter, ""})
	}
	return out
}

// wide is how far the outer fasteners are apart across the grain of a piece, m.
func (j Joint) wide(p named) float64 {
	rows, row := float64(j.rows()-1)*j.Between, float64(j.perRow()-1)*j.Spacing
	switch {
	case p.along():
		return rows
	case p.across():
		return row
	}
	return math.Max(rows, row)
}

// slender is l/D: the lesser of the main piece's length along the fastener and
// that of all wooden side pieces together.
func (j Joint) slender(d float64) float64 {
	l := inches(j.Main.Thickness)
	side := inches(j.Side.Thickness)
	if j.Double {
		side *= 2
	}
	switch {
	case j.Side.Material != Wood:
	case j.Main.Material != Wood:
		l = side
	default:
		l = math.Min(l, side)
	}
	return l / d
}

// rowRoom is the spacing between rows: by l/D where a piece is loaded across its
// grain.
func (j Joint) rowRoom(d float64) room {
	r := room{"spacing of rows", orUnknown(j.Between), 1.5 * d, 1.5 * d, false, srcRows, "the spacing between rows"}
	for _, p := range j.pieces() {
		if p.Material != Wood || p.along() {
			continue
		}
		l := j.slender(d) * d
		need := 5 * d
		switch {
		case l <= 2*d+hair:
			need = 2.5 * d
		case l < 6*d:
			need = (5*l + 10*d) / 8
		}
		r.least, r.full = math.Max(r.least, need), math.Max(r.full, need)
	}
	return r
}

// orUnknown returns inches, NaN where nothing was given.
func orUnknown(x float64) float64 {
	if x > 0 {
		return inches(x)
	}
	return math.NaN()
}

// check compares a distance with the least that may be.
func (r room) check() measure.Check {
	c := measure.Check{
		Name: r.name, Kind: measure.Length, Value: r.has * measure.Inch, Limit: r.least * measure.Inch,
		AtLeast: !r.most, Rule: r.rule,
	}
	if math.IsNaN(r.has) {
		c.Err = unknown(r.name, r.ask)
		return c
	}
	// Printed multiples of a diameter are met by what measures alike.
	if math.Abs(r.has-r.least) < hair {
		c.Value = c.Limit
	}
	if !r.most && r.full > r.least && r.has < r.full-hair {
		c.Notes = append(c.Notes, "full strength from "+measure.FeetInches(r.full*measure.Inch, 16)+" on")
	}
	return c
}

// Geometry compares the joint's distances with the least the standard allows:
// ends, edges, spacing in a row and of rows, spread across the grain. One that is
// not given is no answer. Fasteners thinner than 1/4 in have no such rules, only
// advice against splitting, which is in the notes of [Joint.Lateral]. NDS 12.5.1.
func (j Joint) Geometry() ([]measure.Check, error) {
	if _, err := j.sit(); err != nil {
		return nil, err
	}
	if inches(j.Fastener.Diameter) < 0.25-hair {
		return nil, nil
	}
	var out []measure.Check
	for _, r := range j.rooms() {
		out = append(out, r.check())
	}
	return out, nil
}

// spacing returns CΔ: the least share of a full distance that is there, for the
// whole group, 0 where a distance is below its minimum. What is not known is
// listed. NDS 12.5.1.2.
func (j Joint) spacing() (measure.Factor, []measure.Assumption) {
	f := measure.Factor{Symbol: "CΔ", Name: "geometry", Value: 1, Why: "full distances", Source: srcCd}
	if inches(j.Fastener.Diameter) < 0.25-hair {
		f.Why = "thinner than 1/4 in"
		return f, nil
	}
	var rests []measure.Assumption
	for _, r := range j.rooms() {
		c := r.check()
		share := math.Min(1, r.has/r.full)
		switch {
		case c.Err != nil:
			rests = append(rests, measure.Assumption{Name: r.name, Text: r.ask, Known: measure.Unknown, Decides: true})
		case !c.Meets():
			f.Value, f.Why = 0, r.name+" is less than may be"
			if r.most {
				f.Why = r.name + " is more than may be: wood that shrinks splits between"
			}
		case !r.most && share < f.Value:
			f.Value, f.Why = share, fmt.Sprintf("%s is %.0f %% of full", r.name, 100*share)
		}
	}
	return f, rests
}
