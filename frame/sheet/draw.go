package sheet

import (
	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// Drawn is what could be drawn of a dock: the pictures in the order of building,
// named "plan", "section", "cutting", "winter", "heeled", "righting", "moments" and
// "lines", and for each that could not be drawn a note with its name and why.
type Drawn struct {
	Pictures []Picture
	Missing  []Note
}

// Picture returns the picture of a name, and whether it was drawn.
func (d *Drawn) Picture(name string) (Picture, bool) {
	if d != nil {
		for _, p := range d.Pictures {
			if p.Name == name {
				return p, true
			}
		}
	}
	return Picture{}, false
}

// A drawing is a dock being drawn: what several pictures need.
type drawing struct {
	dock   *dock.Dock
	report *dock.Report
	units  measure.System
	shape  *dock.Shape
	crowd  *dock.Crowd
	noCrew error // why there is no crowd
}

// Draw draws a dock and what its report found. A picture whose data are not known
// is missing and says why; the error is for a dock that is none. The report's units
// are the pictures'.
func Draw(d *dock.Dock, r *dock.Report) (*Drawn, error) {
	if d == nil || r == nil {
		return nil, &measure.Error{Field: "dock", Class: measure.ErrUnknown, Want: "a dock and its report"}
	}
	g := drawing{dock: d, report: r, units: r.Units}
	shape, wrong := d.Shape()
	g.shape = shape
	g.crowd, g.noCrew = d.Crowded()
	out := &Drawn{}
	for _, p := range []struct {
		name   string
		shaped bool // of the dock's shape
		draw   func() (Picture, error)
	}{
		{"plan", true, g.plan},
		{"section", true, g.section},
		{"cutting", false, g.cutting},
		{"winter", false, g.winter},
		{"heeled", true, g.heeled},
		{"righting", false, g.righting},
		{"moments", false, g.moments},
		{"lines", true, g.lines},
	} {
		err := wrong
		var pic Picture
		if !p.shaped || err == nil {
			pic, err = p.draw()
		}
		if err != nil {
			out.Missing = append(out.Missing, Note{Code: p.name, Text: measure.RestateError(err, g.units).Error()})
			continue
		}
		out.Pictures = append(out.Pictures, pic)
	}
	return out, nil
}
