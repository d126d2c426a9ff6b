package dock

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

var (
	srcWayOut = &measure.Source{Title: "whoever falls in must be able to climb out without help", Status: measure.CommonPractice}
	srcBump   = &measure.Source{Title: "the frame takes at a corner what loads.bump says", Status: measure.OwnChoice}
)

// fittings returns the checks of fenders and of ways out of the water. Cleats are
// checked with their lines.
func (d *Dock) fittings() []measure.Check {
	return append(d.fenders(), d.waysOut(), d.climbing())
}

// fenders checks what is between the dock and a boat that comes alongside: whether it
// stops the boat, and whether the frame takes its push.
func (d *Dock) fenders() []measure.Check {
	const stops, pushes = "Fender: how far the boat presses it in", "Fender: its push on the frame"
	a := &d.plan.Alongside
	if a.Comes.Value == "no" {
		return []measure.Check{without(stops, a.Comes, measure.Length), without(pushes, a.Comes, measure.Force)}
	}
	rs := rests{on(a.Comes), on(a.Boat), on(a.Speed), on(a.Beam), on(a.Draft), on(a.Stroke), on(a.Stiffness)}
	if err := rs.err(); err != nil {
		return []measure.Check{refuse(stops, err, rs), refuse(pushes, err, rs)}
	}
	energy, err := moor.Impact{Mass: a.Boat.Value, Speed: a.Speed.Value, Beam: a.Beam.Value, Draft: a.Draft.Value}.Energy()
	fender := moor.Fender{Stroke: a.Stroke.Value, Stiffness: a.Stiffness.Value}
	var stop measure.Check
	if err == nil {
		stop, err = fender.Check(energy)
	}
	var force float64
	if err == nil {
		force, _, err = fender.Stop(energy)
	}
	if err != nil {
		return []measure.Check{refuse(stops, err, rs), refuse(pushes, err, rs)}
	}
	stop.Name, stop.Rests = stops, rs.assumptions()
	stop.Notes = append(stop.Notes, fmt.Sprintf("%s at %s with the water that moves along: %s, the dock held fast, no factor for a hard landing",
		measure.Mass.Format(a.Boat.Value, d.system()), measure.Speed.Format(a.Speed.Value, d.system()), joules(energy, d.system())))
	bump := d.plan.Loads.Bump
	return []measure.Check{stop, {
		Name: pushes, Kind: measure.Force, Value: force, Limit: bump.Value, Rule: srcBump, Rests: append(rs, on(bump)).assumptions(),
	}}
}

// joules prints an energy, J or foot-pounds.
func joules(energy float64, s measure.System) string {
	if s == measure.US {
		return fmt.Sprintf("%.0f ft-lbf", energy/(measure.PoundForce*measure.Foot))
	}
	return fmt.Sprintf("%.0f J", energy)
}

// waysOut counts the ladders.
func (d *Dock) waysOut() measure.Check {
	c := measure.Check{Name: "Ladders out of the water", Kind: measure.Count, Limit: 1, AtLeast: true, Rule: srcWayOut}
	for i := range d.plan.Weights {
		if d.plan.Weights[i].Ladder.Value == "yes" {
			c.Value++
		}
	}
	if len(d.plan.Weights) == 0 {
		return measure.Refuse(c.Name, notKnown("weights", "what is fixed to the dock, a ladder among it"))
	}
	if c.Value == 0 {
		c.Notes = []string{"nobody pulls himself up on a deck with cold arms; name the ladder among weights"}
	}
	return c
}

// climbing checks the deck's edge with a swimmer hanging on the worst ladder.
func (d *Dock) climbing() measure.Check {
	fl := floating{loading: loading{name: "with a swimmer on the ladder"}}
	base, rs, err := d.platform()
	found := false
	for i := range d.plan.Weights {
		w := &d.plan.Weights[i]
		if w.Ladder.Value != "yes" {
			continue
		}
		rs = append(rs, on(w.Along), on(w.Across))
		if missing := rs.err(); err == nil {
			err = missing
		}
		if err != nil {
			break
		}
		one := d.swimmer(base, i)
		if one.err == nil || !found {
			one.notes = []string{fmt.Sprintf("%s hang on the %s, %s outside the edge", measure.Mass.Format(d.heaviest(), d.system()),
				called(w.Name, "ladder"), measure.Length.Format(hangsOut, d.system()))}
		}
		if !found || fl.err == nil && (one.err != nil || one.edge < fl.edge-1e-9) {
			fl, found = one, true
		}
	}
	if !found && err == nil {
		err = &measure.Error{Field: "weights", Class: measure.ErrUnknown, Want: "a ladder among them"}
	}
	fl.name = "with a swimmer on the ladder"
	if err != nil {
		fl.err = err
	}
	c := d.edgeDry(fl)
	c.Rests = dedupe(rs).assumptions()
	return c
}

// hangsOut is how far outside the edge a swimmer's weight acts on a ladder, m (our
// choice, package float's).
const hangsOut = 0.3

// swimmer floats the dock with the heaviest one on the ladder among its weights.
func (d *Dock) swimmer(base *float.Platform, ladder int) floating {
	w := &d.plan.Weights[ladder]
	at := r3.Vec{X: w.Along.Value - d.length/2, Y: w.Across.Value - d.width/2, Z: d.deckTop()}
	fl := floating{base: base}
	mass := d.heaviest()
	if mass == 0 {
		mass = grownPerson
	}
	fl.state, fl.err = base.Swimmer(float.Ladder{At: at, Out: hangsOut, Mass: mass})
	fl.edge = math.Inf(1)
	if fl.err == nil {
		for _, c := range base.Corners {
			fl.edge = min(fl.edge, fl.state.Height(c))
		}
		fl.edge = min(fl.edge, fl.state.Height(at))
	}
	return fl
}
