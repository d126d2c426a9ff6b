package dock

import (
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// An Asking is what the rules ask of the ice under one load, whatever ice there is:
// clear, cold, sound lake ice, drilled as the rules say, with the dry cracks that the plan
// has found.
type Asking struct {
	Load  string
	Mass  float64       // kg
	Hours float64       // it stands, hours; 0 is a crossing
	Check measure.Check // Limit is the thickness, m; no value, and so no answer

	// What they ask where there is white ice on the clear, and after a thaw, which
	// [ice.Counted] says, m of clear ice; 0 is not known.
	White, Thawed float64

	Err error
}

// IceAsked returns what the rules ask under one person, the crew with the heaviest
// load on the ice, the stack of all pieces, and the finished dock for some hours. A load
// that the checks of the report have no answer for has their error: mass or people not
// known, or less than what goes out; and so has every load where no rule covers the ice
// whatever its thickness, see [ice.Sheet.Barred]. The rules are those of
// [ice.Sheet.Required] and name their sources.
func (d *Dock) IceAsked() []Asking {
	if d.plan == nil {
		return nil
	}
	people, load := d.crosses()
	heads := d.plan.Ice.Cross.People.Value
	out := []Asking{
		{Load: "one person on foot", Mass: d.grown()},
		{Load: "the crew with its load", Mass: d.plan.Ice.Cross.Mass.Value, Err: load},
	}
	stack := Asking{Load: "all pieces on one stack and the crew beside it, some hours", Hours: dayLong, Err: people}
	whole := Asking{Load: "the finished dock and the crew beside it, some hours", Hours: dayLong, Err: people}
	if base, _, err := d.platform(); err != nil {
		stack.Err, whole.Err = err, err
	} else if people == nil {
		stack.Mass = d.weight(floating{base: base}).Value + d.plan.Ice.Cross.Mass.Value
		whole.Mass = stack.Mass
	}
	out = append(out, stack, whole)
	d.ask(&out[0], 1)
	for i := range out[1:] {
		d.ask(&out[i+1], heads)
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
	if _, _, a.Err = d.platform(); a.Err == nil {
		a.Err = rests{on(d.plan.Ice.Snow)}.err()
	}
	if a.Err == nil {
		a.Err, _ = d.crosses()
	}
	if a.Err == nil {
		a.Mass = d.standingLoad().Loads[0].Force/measure.Gravity + onFoot(d.crew())
	}
	d.ask(&a, d.plan.Ice.Cross.People.Value)
	return a
}

// ask fills in what the rules ask under so many people, unless there is an error.
func (d *Dock) ask(a *Asking, people int) {
	found := d.survey()
	if a.Err == nil {
		a.Err = planError(found.Barred())
	}
	if a.Err != nil {
		return
	}
	sound := ice.Sheet{Water: ice.Lake, Season: ice.Winter, Cracks: max(found.Cracks, ice.NoCracks), Wet: ice.NotFound, Inlets: ice.NotFound, Changed: ice.NotFound}
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
