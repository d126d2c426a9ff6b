package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Weather is wind, the waves it raises and a current on one dock. Its Load is
// a [Storm]. A wind of speed 0 is not known, and no calm: leave Above and Fetches out
// where a current alone is asked for.
type Weather struct {
	Wind  Wind
	Above []Face // what the wind pushes on

	// North is the direction of north, rad from the dock's x axis to its y axis,
	// counter-clockwise seen from above. Fetches of 0 raise no waves.
	North   float64
	Fetches Fetches
	Depth   float64 // m, of the lake upwind and at the dock; needed with a fetch
	Method  string  // of [Fetch.Waves]; "": the highest that knows a period

	Length, Breadth float64 // m, along x and y: what stands across the waves
	Draft           float64 // m
	Freeboard       float64 // m

	// Crests counts the whole push of the highest crest ([Sea.Highest]), for a dock
	// held by posts or a hinge; otherwise lines take the steady drift, and the dock
	// gives way to crests.
	Crests bool

	Current Current
	Set     float64 // rad, the way the current flows, whatever the wind does
	Below   []Face  // what the current pushes on
}

// Sea returns the waves of a wind towards θ, rad, by [Fetch.Waves]; none, with height
// 0, where the fetch that way is under 10 m.
func (w Weather) Sea(θ float64) (Sea, error) {
	if err := first(anyAngle.Check("direction", θ), anyAngle.Check("direction of north", w.North)); err != nil {
		return Sea{}, err
	}
	// Bearings turn clockwise; the wind comes from where it does not go.
	fetch, err := w.Fetches.From(w.North - θ - math.Pi)
	if err != nil || fetch < 10 {
		return Sea{}, err
	}
	if err := positiveLength.Check("depth", w.Depth); err != nil {
		return Sea{}, err
	}
	mean, err := w.Wind.To(10, 3600)
	if err != nil {
		return Sea{}, err
	}
	if mean.Speed < 1 {
		return Sea{}, nil // no method reaches down there
	}
	f := Fetch{Wind: mean.Speed, Length: fetch, Depth: w.Depth}
	if w.Method != "" {
		return f.Waves(w.Method)
	}
	all, err := f.Spread()
	if err != nil {
		return Sea{}, err
	}
	var highest Sea
	for _, s := range all {
		if s.Period > 0 {
			highest = s
		}
	}
	return highest, nil
}

// Load returns the load on the dock with wind and waves towards θ, rad: [Wind.Load],
// [Current.Load] and [Sea.Push] together. A wind of speed 0 is an error of class
// [measure.ErrUnknown] where it has something to push on, or where no current has either.
func (w Weather) Load(θ float64) (Load, error) {
	if w.Wind.Speed == 0 && (len(w.Above) > 0 || w.Fetches != (Fetches{}) || len(w.Below) == 0 || w.Current.Speed == 0) {
		return Load{}, &measure.Error{
			Field: "wind speed", Class: measure.ErrUnknown, Why: "a speed of 0 is not known", Want: "the strongest wind that the dock must stand",
		}
	}
	if err := first(
		lengthOrZero.Check("length of the dock", w.Length), lengthOrZero.Check("breadth of the dock", w.Breadth),
	); err != nil {
		return Load{}, err
	}
	sum, err := w.Wind.Load(θ, w.Above...)
	if err != nil {
		return Load{}, err
	}
	flow, err := w.Current.Load(w.Set, w.Below...)
	if err != nil {
		return Load{}, err
	}
	sum = sum.Plus(flow)
	sea, err := w.Sea(θ)
	if err != nil || sea.Height == 0 {
		return sum, err
	}
	if sea.Period == 0 {
		return Load{}, &measure.Error{Field: "wave method", Text: w.Method, Class: measure.ErrName, Want: "one that knows the period"}
	}
	if w.Crests {
		if sea, err = sea.Highest(w.Depth); err != nil {
			return Load{}, err
		}
	}
	push, drift, err := sea.Push(w.Depth, w.Draft, w.Freeboard)
	if err != nil {
		return Load{}, err
	}
	if !w.Crests {
		push = drift
	}
	width := Face{End: w.Breadth, Side: w.Length}.area(θ)
	return sum.Plus(at(push*width, θ, [2]float64{})), nil
}
