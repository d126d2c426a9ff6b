package dock

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// A stop is a piece of joist, on edge, set from joist to joist across a bay.
type stop struct {
	set  *plan.Floats
	bay  int
	at   float64 // middle of its thickness, along the joists
	name string
}

// play is the room that a block leaves a float at both ends together: the middle of
// what practice leaves it ([layout.Room]).
const play = 1.75 * measure.Inch

// room returns the clear width of a bay, between its joists.
func (d *Dock) room(bay int) float64 {
	return d.centres[bay] - d.centres[bay-1] - d.joist.section.Width
}

// stopRests is what stops and blocks rest on.
func (d *Dock) stopRests() rests {
	var out rests
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		if plan.Has(s.Stops) || s.Stops.At.Line > 0 { // left out: there are none
			out = append(out, on(s.Stops))
		}
		if s.Blocks.Value == "yes" {
			out = append(out, on(s.Blocks))
		}
	}
	return out
}

// stays returns stops and blocks by bay, in the order in which they lie along the joists.
func (d *Dock) stays() []stop {
	out := d.stops()
	slices.SortStableFunc(out, func(a, b stop) int { return cmp.Or(cmp.Compare(a.bay, b.bay), cmp.Compare(a.at, b.at)) })
	return out
}

// face is the near face of a stop, along the joists from where the tape hooks.
func (d *Dock) face(s stop) float64 { return math.Max(0, s.at-d.joist.section.Width/2) }

// stops returns the two stops at the ends of each row of floats in a bay, and the blocks
// beside the floats that have room to slide.
func (d *Dock) stops() []stop {
	var out []stop
	for i := range d.plan.Floats {
		set := &d.plan.Floats[i]
		blocks := set.Blocks.Value == "yes"
		if !blocks && math.IsNaN(set.Stops.Value) || (set.Lies.Value == "across") != d.across {
			continue
		}
		rows := map[int][]float64{} // by bay: its floats' centres
		for _, m := range d.floats {
			if m.set == set && m.bay > 0 {
				_, t := d.from(m.x, m.y)
				rows[m.bay] = append(rows[m.bay], t)
			}
		}
		for bay := 1; bay < len(d.centres); bay++ {
			row := rows[bay]
			if len(row) == 0 {
				continue
			}
			slices.Sort(row)
			if plan.Has(set.Stops) {
				near, far := d.between()
				for k, side := range [2]float64{-1, 1} {
					at := (row[0]+row[len(row)-1])/2 + side*(set.Stops.Value+d.joist.section.Width)/2
					if at > near && at < far { // else the rim is the stop
						out = append(out, stop{set, bay, at, fmt.Sprintf("stop %d in bay %d", k+1, bay)})
					}
				}
			}
			if blocks {
				for k, at := range d.blocksIn(row, set.Length.Value) {
					out = append(out, stop{set, bay, at, fmt.Sprintf("block %d in bay %d", k+1, bay)})
				}
			}
		}
	}
	return out
}

// blocksIn returns the places of the blocks in a row of floats: at each end of a float
// that no rim is close to, as far off as leaves it its play, against the rim where there
// is no room for more; one for two floats where there is no room for two.
func (d *Dock) blocksIn(row []float64, long float64) []float64 {
	thick := d.joist.section.Width
	near, far := d.between()
	bears := func(gap float64) bool { return gap <= play+measure.Inch/4 }
	// off is how far a block stands off a float's end: what the other end leaves.
	off := func(gap, other float64) float64 {
		left := play / 2
		switch {
		case bears(other):
			left = play - math.Max(0, other)
		case other < play/2+thick: // a block against the rim
			left = play - (other - thick)
		}
		return math.Max(0, math.Min(left, gap-thick))
	}
	var out []float64
	for i, at := range row {
		before, behind := near, far
		if i > 0 {
			before = row[i-1] + long/2
		}
		if i < len(row)-1 {
			behind = row[i+1] - long/2
		}
		left, right := at-long/2-before, behind-at-long/2
		two := 2*play + 2*thick
		if !bears(left) && left >= thick && (i == 0 || left >= two) {
			out = append(out, at-long/2-off(left, right)-thick/2)
		}
		switch {
		case bears(right) || right < thick:
		case i == len(row)-1 || right >= two:
			out = append(out, at+long/2+off(right, left)+thick/2)
		default:
			out = append(out, (at+long/2+behind)/2)
		}
	}
	return out
}

// between returns the rims' inner faces.
func (d *Dock) between() (near, far float64) {
	rim := float64(d.rimPlies) * d.rim.section.Width
	return rim, d.reach() - rim
}

// stopPieces returns stops and blocks as they are laid out, at the joists' lower edge.
func (d *Dock) stopPieces() []layout.Piece {
	var out []layout.Piece
	half := d.joist.section.Width / 2
	for _, s := range d.stops() {
		from, to := d.centres[s.bay-1]+half, d.centres[s.bay]-half
		a, b := layout.Point{X: from, Y: s.at}, layout.Point{X: to, Y: s.at}
		if !d.across {
			a, b = layout.Point{X: s.at, Y: from}, layout.Point{X: s.at, Y: to}
		}
		out = append(out, layout.Piece{
			Name: s.name, Kind: layout.Stop, From: a, To: b, Width: d.joist.section.Width, Depth: d.joist.section.Depth,
		})
	}
	return out
}

// stopped checks the nails of the stops and blocks of a kind of float: two ends take what
// pulls sideways on one float (of stops on the row), for as long as ten years.
func (d *Dock) stopped(i int) measure.Check {
	set := &d.plan.Floats[i]
	name := "Nails at an end of a stop or block, " + d.kind(i) + " pulled along itself"
	rs := append(floatRests(set), on(set.Blocks))
	switch {
	case set.Blocks.Value != "yes" && !plan.Has(set.Stops) && set.Stops.At.Line == 0:
		return measure.Check{Name: name, Kind: measure.Force, Rule: srcAsked, Steps: []string{"no stops and no blocks"}, Rests: rs.assumptions()}
	case set.Blocks.Value != "yes":
		rs = append(rs, on(set.Stops))
	}
	f := &d.plan.Frame
	rs = append(rs, on(f.Joists.Size), on(f.Joists.Species).standsIn("the weakest of "+yardNames), on(f.Joists.Grade), on(f.Joists.Incised), on(set.Nail), on(set.Nails))
	tie := d.tieOf(i)
	var err error
	if tie == nil {
		err = noTie(set)
	} else {
		rs = append(rs, on(tie.Drag))
	}
	rs = dedupe(rs)
	if missing := rs.err(); missing != nil {
		err = missing
	}
	var nail fasten.Fastener
	if err == nil {
		nail, err = fasten.Lookup(set.Nail.Value)
	}
	if err != nil {
		return refuse(name, err, rs)
	}
	pushed := 1
	if plan.Has(set.Stops) {
		pushed = max(1, len(set.Marks))
	}
	force := float64(pushed) * tie.Drag.Value / 2
	lateral, err := d.stopJoint(set, nail).Lateral(lumber.TenYears)
	if err != nil {
		return refuse(name, err, rs)
	}
	c := measure.Check{
		Name: name, Kind: measure.Force, Value: force, Limit: lateral.Value, Rule: lateral.Rule, Factors: lateral.Factors, Err: lateral.Err, Rests: rs.assumptions(),
		Notes: []string{fmt.Sprintf("half of %s on %d of them; %d x %s into the end grain at each end", measure.Force.Format(tie.Drag.Value, d.system()), pushed, set.Nails.Value, nail.Name)},
	}
	return c
}

// stopJoint is nails or screws through a joist into the end grain of a stop or block, which
// pushes along the joist.
func (d *Dock) stopJoint(set *plan.Floats, nail fasten.Fastener) fasten.Joint {
	joist := fasten.Piece{Thickness: d.joist.section.Width, Width: d.joist.section.Depth, Grade: d.joist.grade, Smooth: d.joist.smooth()}
	block := joist
	block.EndGrain, block.Thickness, block.Angle = true, d.narrowest(set), math.Pi/2
	return upright(fasten.Joint{Fastener: nail, Main: block, Side: joist}, set.Nails.Value, 0, true)
}

// narrowest returns the clear width of the narrowest bay that holds floats of a kind: a
// block's length.
func (d *Dock) narrowest(set *plan.Floats) float64 {
	out := 1.0
	for _, m := range d.floats {
		if m.set == set && m.bay > 0 {
			out = math.Min(out, d.room(m.bay))
		}
	}
	return out
}
