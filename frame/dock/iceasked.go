package dock

import (
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// An Asking is what the rules ask of the ice under one load, whatever ice there is:
// clear, cold, sound lake ice, drilled as the rules say.
type Asking struct {
	Load  string
	Mass  float64       // kg
	Hours float64       // it stands, hours; 0 is a crossing
	Check measure.Check // Limit is the thickness, m; no value, and so no answer

	// What they ask where there is white ice on the clear, and after a thaw in the last
	// five days, m of clear ice; 0 is not known.
	White, Thawed float64

	Err error
}

// IceAsked returns what the rules ask under one person, the crew with the heaviest
// load on the ice, the stack of all pieces, and the finished dock for some hours. A
// load whose mass the plan does not know has an error. The rules are those of
// [ice.Sheet.Required] and name their sources.
func (d *Dock) IceAsked() []Asking {
	if d.plan == nil {
		return nil
	}
	p := &d.plan.Ice
	person, crewed := d.grown(), d.crewed()
	heads := []int{1, crewed, crewed, crewed}
	out := []Asking{{Load: "one person on foot", Mass: person}}
	crew := Asking{Load: "the crew with its load", Mass: p.Cross.Mass.Value, Err: rests{on(p.Cross.Mass)}.err()}
	out = append(out, crew)
	stack := Asking{Load: "all pieces on one stack and the crew beside it, some hours", Hours: dayLong}
	whole := Asking{Load: "the finished dock and the crew beside it, some hours", Hours: dayLong}
	base, _, err := d.platform()
	if err != nil {
		stack.Err, whole.Err = err, err
	} else {
		stack.Mass = d.weight(floating{base: base}).Value
		stack.Err, whole.Err = crew.Err, crew.Err // the crew stands beside it
		if crew.Err == nil {
			stack.Mass += crew.Mass
		}
		whole.Mass = stack.Mass
	}
	out = append(out, stack, whole)
	for i := range out {
		out[i].ask(heads[i])
	}
	return out
}

// IceBeside returns what the rules ask under the dock that stands there with the snow
// that may fall on it, and the people beside it, as [ice.Sheet.Beside] counts them: all
// as one load that stands. The rules are those of [ice.Sheet.Required].
func (d *Dock) IceBeside() Asking {
	a := Asking{Load: "people beside the dock that stands there, under the snow to come", Hours: dayLong}
	if d.plan == nil {
		a.Err = notKnown("plan", "a plan that was read from a file")
		return a
	}
	p := &d.plan.Ice
	if _, _, a.Err = d.platform(); a.Err == nil {
		a.Err = rests{on(p.Snow), on(p.Cross.Mass)}.err()
	}
	if a.Err == nil {
		crew := ice.Crossing{Mass: p.Cross.Mass.Value, People: p.Cross.People.Value}
		a.Mass = d.standingLoad().Loads[0].Force/measure.Gravity + onFoot(crew)
		a.ask(d.crewed())
	}
	return a
}

// crewed is how many people go with the load: as many as weigh as much where the plan
// does not say it.
func (d *Dock) crewed() int {
	p := &d.plan.Ice
	if p.Cross.People.Value > 0 {
		return p.Cross.People.Value
	}
	return int(max(1, min(100, math.Ceil(p.Cross.Mass.Value/d.grown()))))
}

// ask fills in what the rules ask under so many people, unless there is an error.
func (a *Asking) ask(people int) {
	if a.Err != nil {
		return
	}
	sound := ice.Sheet{Water: ice.Lake, Season: ice.Winter, Cracks: ice.NoCracks, Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound}
	white, thawed := sound, sound
	white.Holes = []ice.Hole{{Name: "middle", Clear: 1, White: 0.05, Looked: true}}
	thawed.Air = []ice.Air{{High: 1, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}, {High: -5, Low: -10}}
	load := ice.Crossing{Mass: a.Mass, People: people}
	a.Check, a.Err = sound.Required(load, a.Hours)
	a.White, a.Thawed = asks(white, load, a.Hours), asks(thawed, load, a.Hours)
}

// asks returns the thickness that the rules ask of a sheet, 0 where they have none.
func asks(s ice.Sheet, load ice.Crossing, hours float64) float64 {
	c, err := s.Required(load, hours)
	if err != nil || !(c.Limit > 0) {
		return 0
	}
	return c.Limit
}

// grownPerson is the mass of a grown person in clothes, kg (46 CFR 170.090).
const grownPerson = 185 * measure.Pound

// grown is the mass of whoever goes out on the ice, kg: the heaviest of the plan, and
// no less than a grown person in clothes.
func (d *Dock) grown() float64 { return math.Max(grownPerson, d.heaviest()) }

// dayLong is how long the guides' rule for parked loads is asked for, h.
const dayLong = 24
