package plan

import "example.org/floewright/lumber/measure"

// Alongside is the boat that lies at the dock, and the fenders between.
type Alongside struct {
	Comes       Name // "yes" or "no"
	Boat        Quantity
	Speed       Quantity // across the dock's edge
	Beam, Draft Quantity
	Stroke      Quantity // of the fenders that it meets, together
	Stiffness   Quantity // N/m, of them together
}

var alongsideFields = []field[Alongside]{
	choice("boat_comes", "", "Whether a boat ever comes alongside.", yesNo, func(a *Alongside) *Name { return &a.Comes }),
	quantity("boat", measure.Mass, "20 kg", "20000 kg", "", "The heaviest boat that does, with all in it, off its plate or papers.", func(a *Alongside) *Quantity { return &a.Boat }),
	plausible(quantity("speed", measure.Speed, "0.02 m/s", "2 m/s", "1 ft/s", "How fast it comes on to the dock, square to it, at its worst: a float thrown in and a stopwatch.", func(a *Alongside) *Quantity { return &a.Speed }), "1.5 ft/s"),
	quantity("beam", measure.Length, "0.4 m", "8 m", "", "Its breadth on the water.", func(a *Alongside) *Quantity { return &a.Beam }),
	quantity("draft", measure.Length, "0.05 m", "3 m", "", "How deep it lies.", func(a *Alongside) *Quantity { return &a.Draft }),
	quantity("fender_stroke", measure.Length, "5 mm", "0.5 m", "", "How far the fender that it meets can be pressed in.", func(a *Alongside) *Quantity { return &a.Stroke }),
	quantity("fender_stiffness", measure.LineLoad, "100 N/m", "1e7 N/m", "", "A known push over how far it presses the fender in.", func(a *Alongside) *Quantity { return &a.Stiffness }),
}
