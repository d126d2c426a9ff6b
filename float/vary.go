package float

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// With returns a copy of the platform that carries more weights. The copy shares
// nothing that may change with the platform.
func (p *Platform) With(weights ...Weight) *Platform {
	q := *p
	q.Units = slices.Clone(p.Units)
	q.Weights = append(slices.Clone(p.Weights), weights...)
	q.Corners = slices.Clone(p.Corners)
	if p.Wave != nil {
		w := *p.Wave
		q.Wave = &w
	}
	return &q
}

// A Loss is what becomes of a platform when one unit is open to the lake.
type Loss struct {
	Unit  int   // in Units
	State State // at rest, where Err is nil; of a copy of the platform
	Err   error // a *Failure where it finds none
}

// Losses floods each unit in turn, the others as they are, and returns what becomes
// of the platform, by [Platform.Settle]. Units already flooded are left out. A
// flooded unit keeps its own mass; the water that it takes in weighs nothing in the
// lake.
func (p *Platform) Losses() ([]Loss, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	var out []Loss
	for i := range p.Units {
		if p.Units[i].Flooded {
			continue
		}
		q := p.With()
		q.Units[i].Flooded = true
		s, err := q.Settle()
		out = append(out, Loss{Unit: i, State: s, Err: err})
	}
	return out, nil
}

// A Ladder is where a swimmer climbs out.
type Ladder struct {
	At     r3.Vec  // its top, on the deck's edge, m
	Out    float64 // how far outside the edge the swimmer's weight acts, m; 0 means 0.3 (our choice)
	Mass   float64 // of the swimmer, kg; 0 means 84 (185 lb)
	Height float64 // of his centre of gravity over the deck, m; 0 is at deck level (our choice)
}

// Swimmer returns the rest position with a swimmer hanging on the ladder with
// his whole weight, clear of the water: the worst moment of climbing out. The
// outward direction is square to the edge nearest to At. [State.Height] of At
// tells how far the ladder's top dips. It is [Platform.Settle] with that weight.
func (p *Platform) Swimmer(l Ladder) (State, error) {
	if err := p.check(); err != nil {
		return State{}, err
	}
	if err := checkPlace("At", l.At); err != nil {
		return State{}, err
	}
	near := measure.Range{Kind: measure.Length, Lo: 0, Hi: 2, Source: ownBound}
	if err := near.Check("Out", l.Out); err != nil {
		return State{}, err
	}
	if err := massRange.Check("Mass", l.Mass); err != nil {
		return State{}, err
	}
	near.Lo = -2
	if err := near.Check("Height", l.Height); err != nil {
		return State{}, err
	}
	e, err := p.edge(0)
	if err != nil {
		return State{}, err
	}
	if l.Out == 0 {
		l.Out = 0.3
	}
	if l.Mass == 0 {
		l.Mass = adult
	}
	at := r3.Add(l.At, r3.Scale(-l.Out, e.inward(l.At)))
	at.Z += l.Height
	return p.With(Weight{Mass: l.Mass, At: at}).Settle()
}

// Support returns what a level unit in water of a density (kg/m³) does, after
// Archimedes, to a frame that presses it down by sink, the draft of its lowest point
// in m: the force in N with which it pushes up, less its own weight; its stiffness in
// N/m; and the work done on it, in J, whose slope the force is. A strapped unit hangs
// on where the force is negative; a captive one does not.
//
//	sink ≤ 0 or NaN    out of the water
//
// A unit that leaks carries its water as dead weight: level, it does not run.
func (u Unit) Support(density float64) (func(sink float64) (force, stiffness, energy float64), error) {
	if err := densityRange.Check("density", density); err != nil {
		return nil, err
	}
	if !u.sound() {
		return nil, u.check("")
	}
	const g = measure.Gravity
	if u.Flooded {
		f := -g * u.Mass
		if u.Captive {
			f = 0
		}
		return func(sink float64) (float64, float64, float64) {
			if !(math.Abs(sink) <= math.MaxFloat64) {
				return f, 0, 0
			}
			return f, 0, f * sink
		}, nil
	}
	up := r3.Vec{Z: 1}
	bottom := draft(u.Body, 0, up) // of the lowest point below the centre
	carried := u.Mass + density*u.Leak
	held := func(sink float64) (force, stiffness, energy float64) {
		if !(math.Abs(sink) <= math.MaxFloat64) {
			sink = 0
		}
		h := bottom - sink
		w := u.Body.Wet(h, up)
		force = g * (density*w.Volume - carried)
		if math.Abs(sink) > 1e100 { // the rest of the work is nothing beside it
			return force, 0, force * sink
		}
		return force, g * density * w.Plane, -g * (density*(h*w.Volume+w.VolumeMoment.Z) + carried*sink)
	}
	if !u.Captive {
		return held, nil
	}
	all := u.Body.Volume()
	if carried >= density*all {
		return func(float64) (float64, float64, float64) { return 0, 0, 0 }, nil
	}
	free := afloat(u.Body, carried/density)
	_, _, base := held(free)
	return func(sink float64) (force, stiffness, energy float64) {
		if !(sink > free) {
			return 0, 0, 0
		}
		force, stiffness, energy = held(sink)
		return max(force, 0), stiffness, energy - base
	}, nil
}

// badPlace names a unit in an error.
func badPlace(i int, err error) error {
	return &measure.Error{Field: "places[" + strconv.Itoa(i) + "]", Class: measure.ErrRange, Why: err.Error()}
}
