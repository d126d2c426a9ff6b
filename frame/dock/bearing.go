package dock

import (
	"fmt"
	"math"
	"slices"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// Layout returns the dock as it is laid out: its pieces and floats in place, what
// each float pushes on, and every two parts that do not go together. Places are
// from where the tape hooks on. It is [layout.New] of the plan's drawing.
//
// The error is for a plan that does not say enough.
func (d *Dock) Layout() (*layout.Layout, error) {
	of, err := d.drawing()
	if err != nil {
		return nil, err
	}
	return layout.New(of)
}

// drawing returns the dock as it is drawn.
func (d *Dock) drawing() (layout.Drawing, error) {
	if d.plan == nil {
		return layout.Drawing{}, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	if err := d.layoutRests().err(); err != nil {
		return layout.Drawing{}, err
	}
	pieces, err := layout.Rectangle{
		Length: d.length, Width: d.width, Across: d.across, Marks: d.centres, Centre: true,
		Joist: d.joist.section, Rim: d.rim.section, RimPlies: d.rimPlies,
	}.Pieces()
	if err != nil {
		return layout.Drawing{}, err
	}
	out := layout.Drawing{Pieces: pieces, Decks: []layout.Deck{{
		Name: "deck", Max: layout.Point{X: d.length, Y: d.width}, Along: d.across,
		Face: d.board.section.Depth, Thickness: d.board.section.Width, Gap: d.plan.Frame.Decking.Gap.Value,
	}}}
	for i, m := range d.floats {
		size := d.floatSize(m.set)
		f := layout.Drum{
			Name: fmt.Sprintf("%s %d", called(m.set.Name, "float"), i+1), At: layout.Point{X: m.x + d.length/2, Y: m.y + d.width/2},
			Diameter: size.breadth, Length: size.long, Along: m.set.Lies.Value != "across", Tied: m.set.Tied.Value == "yes",
		}
		if !size.drum {
			f.Height = size.height
		}
		if m.set.Bears.Value == "under joists" {
			f.Bears = layout.UnderJoists
		}
		out.Drums = append(out.Drums, f)
	}
	out.Pieces = append(out.Pieces, d.stopPieces()...)
	return out, nil
}

// layoutRests is what the layout rests on.
func (d *Dock) layoutRests() rests {
	f := &d.plan.Frame
	rs := rests{on(f.Length), on(f.Width), on(f.Joists.Size), on(f.Rims.Size), on(f.Rims.Plies), on(f.Decking.Size), on(f.Decking.Gap), d.marks()}
	for i := range d.plan.Floats {
		s := &d.plan.Floats[i]
		rs = append(append(rs, floatRests(s)...), on(s.Tied), on(s.Blocks))
	}
	if len(d.floats) == 0 {
		rs = append(rs, rest{path: "floats", missing: true})
	}
	return dedupe(rs)
}

// faults are the groups of conflicts that one line of the sheet answers for.
var faults = []struct {
	name  string
	kinds []layout.Fault
}{
	{"Room for joists, rims and floats: least that is missing", []layout.Fault{
		layout.Overlaps, layout.Apart, layout.TightBay, layout.TightEnds, layout.Covered, layout.Rocks, layout.Elsewhere, layout.Unborne, layout.Protrudes,
	}},
	{"Floats kept from rolling, sliding and dropping: most that is open", []layout.Fault{layout.Rolls, layout.Slides, layout.Drops}},
	{"Joists under the deck boards: most that they are too far apart", []layout.Fault{layout.WideSpan}},
}

// fit returns the checks of the parts against each other, and what the floats do to
// the joists that they wedge between.
func (d *Dock) fit() []measure.Check {
	rs := d.layoutRests()
	l, err := d.laid()
	var out []measure.Check
	for _, f := range faults {
		c := measure.Check{Name: f.name, Kind: measure.Length, Rule: srcFit}
		if err != nil {
			c = measure.Refuse(f.name, err)
		} else {
			d.faults(&c, l, f.kinds)
		}
		c.Rests = rs.assumptions()
		out = append(out, c)
	}
	return append(out, d.spread(l, err, rs), d.boardsOn(l, err, rs))
}

// boardsOn tells how many boards must be on over each float that bears on boards
// before the ice goes, of those that cross it.
func (d *Dock) boardsOn(l *layout.Layout, err error, rs rests) measure.Check {
	const name = "Boards that must be on over each float before the ice goes"
	under := 0
	for i := 0; err == nil && i < len(l.Bearings); i++ {
		if l.Bearings[i].Seat == layout.UnderBoards {
			under++
		}
	}
	if err == nil && under == 0 {
		return measure.Check{Name: name, Kind: measure.Count, Rule: srcFit, Rests: rs.assumptions(), Steps: []string{"no float bears on boards: none for the floats' sake"}}
	}
	f := &d.plan.Frame
	rs = append(rs, on(f.Decking.Screw), on(f.Decking.Screws), on(f.Decking.Species).standsIn("the weakest of "+yardNames), on(f.Decking.Grade))
	if err == nil {
		err = rs.err()
	}
	var holds layout.Strength
	if err == nil {
		holds, err = d.boardStrength()
	}
	if err != nil {
		return refuse(name, err, rs)
	}
	c := measure.Check{Name: name, Kind: measure.Count, Rule: srcFit, Limit: math.Inf(1), Rests: dedupe(rs).assumptions()}
	for i := range l.Bearings {
		if l.Bearings[i].Seat != layout.UnderBoards {
			continue
		}
		lift, err := l.Lift(i, waterHeavy*measure.Gravity*d.floatVolume(i)-d.floats[i].set.Mass.Value*measure.Gravity, holds)
		if err != nil {
			return refuse(name, err, rs)
		}
		need, has := float64(len(lift.Rows)), float64(lift.Crossing)
		if lift.Rows == nil {
			need = has + 1
		}
		if need*c.Limit > c.Value*has || math.IsInf(c.Limit, 1) {
			c.Value, c.Limit = need, has
		}
		if lift.Rows != nil {
			c.Notes = append(c.Notes, fmt.Sprintf("%s: rows %v, counted from where the tape hooks", l.Drawing.Drums[i].Name, lift.Rows))
		} else {
			c.Notes = append(c.Notes, fmt.Sprintf("%s: no number of boards holds it, %s on the hardest pulled screw", l.Drawing.Drums[i].Name,
				measure.Force.Format(lift.Screw, d.system())))
		}
	}
	return c
}

// boardStrength returns what a deck board takes, bent upward, and one of its screws,
// pulled, when a float held under lifts them: for ten minutes.
func (d *Dock) boardStrength() (layout.Strength, error) {
	m := lumber.Member{Section: d.board.section, Grade: d.board.grade, Length: d.widest(), Flat: true, Held: true, Smooth: d.board.smooth(), Temperature: 20}
	design, err := m.Adjusted(lumber.SevenDays)
	if err == nil {
		err = design.Fb.Err
	}
	if err != nil {
		return layout.Strength{}, err
	}
	screw, err := fasten.Lookup(d.plan.Frame.Decking.Screw.Value)
	if err != nil {
		return layout.Strength{}, err
	}
	j := fasten.Joint{
		Fastener: screw,
		Main:     fasten.Piece{Thickness: d.joist.section.Depth, Width: d.joist.section.Width, Grade: d.joist.grade},
		Side:     fasten.Piece{Thickness: d.board.section.Width, Width: d.board.section.Depth, Grade: d.board.grade},
	}
	pulls, err := j.Pull(lumber.SevenDays)
	if err != nil {
		return layout.Strength{}, err
	}
	out := layout.Strength{Moment: design.Fb.Value * d.board.section.Turned().Modulus(), Screw: math.Inf(1), Screws: d.plan.Frame.Decking.Screws.Value}
	for _, p := range pulls {
		if p.Err != nil {
			return out, p.Err
		}
		out.Screw = math.Min(out.Screw, p.Value)
	}
	return out, nil
}

// faults puts the conflicts of some kinds into a check, the worst first.
func (d *Dock) faults(c *measure.Check, l *layout.Layout, kinds []layout.Fault) {
	var found []layout.Conflict
	for _, x := range l.Conflicts {
		if slices.Contains(kinds, x.Kind) && !strapped(l, x) {
			found = append(found, x)
			c.Value = math.Max(c.Value, x.Missing)
		}
	}
	slices.SortStableFunc(found, func(a, b layout.Conflict) int {
		switch {
		case a.Missing > b.Missing*(1+1e-9):
			return -1
		case b.Missing > a.Missing*(1+1e-9):
			return 1
		}
		return 0
	})
	const shown = 3
	for i, x := range found {
		if i == shown {
			c.Notes = append(c.Notes, fmt.Sprintf("and %d more like these", len(found)-shown))
			break
		}
		c.Notes = append(c.Notes, x.Format(d.system()))
	}
}

// strapped reports whether a conflict is of a float that its ties hold against the
// joists above it: it neither rolls nor slides.
func strapped(l *layout.Layout, x layout.Conflict) bool {
	if x.Kind != layout.Rolls && x.Kind != layout.Slides {
		return false
	}
	for i, f := range l.Drawing.Drums {
		if f.Name == x.A {
			return f.Tied && l.Bearings[i].Seat == layout.UnderJoists
		}
	}
	return false
}

// spread tells what the floats bear on, and how hard wedged ones push joists apart.
func (d *Dock) spread(l *layout.Layout, err error, rs rests) measure.Check {
	const name = "Push that spreads joists apart beside a wedged float"
	if err != nil {
		return refuse(name, err, rs)
	}
	seats := map[layout.Seat]int{}
	worst := 0.0
	for i, b := range l.Bearings {
		seats[b.Seat]++
		size := d.floatSize(d.floats[i].set)
		// Held under, it pushes as hard as it ever can.
		_, spread, err := b.Press(waterHeavy * measure.Gravity * d.floatVolume(i))
		if err == nil && size.drum {
			worst = math.Max(worst, spread)
		}
	}
	c := measure.Refuse(name, &measure.Error{Field: "what holds the two joists together", Class: measure.ErrUnknown, Want: "a strap or bolted blocking across the bay, by somebody who answers for it; no field of the plan says it, for nails in end grain hold no pull"})
	if worst == 0 {
		c = measure.Check{Name: name, Kind: measure.Force, Rule: srcFit, Steps: []string{"no drum is wedged between joists"}}
	}
	for _, s := range []layout.Seat{layout.UnderJoists, layout.Wedged, layout.UnderBoards, layout.Nothing} {
		if n := seats[s]; n > 0 {
			c.Notes = append(c.Notes, fmt.Sprintf("%d floats: %v", n, s))
		}
	}
	if worst > 0 {
		c.Notes = append(c.Notes, "up to "+measure.Force.Format(worst, d.system())+" on either side, the float held under")
	}
	c.Rests = rs.assumptions()
	return c
}
