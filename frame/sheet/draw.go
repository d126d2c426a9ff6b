package sheet

import (
	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber/measure"
)

// Drawn is what could be drawn of a dock: the pictures in the order of building,
// named "plan", "section", "heeled", "moments", "cutting", "righting", "winter" and
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

// Draw draws a dock and what its report found. A picture whose data are not known
// is missing and says why; the error is for a dock that is none.
func Draw(d *dock.Dock, r *dock.Report) (*Drawn, error) {
	if d == nil || r == nil {
		return nil, &measure.Error{Field: "dock", Class: measure.ErrUnknown, Want: "a dock and its report"}
	}
	out := &Drawn{}
	for _, name := range []string{"plan", "section", "heeled", "moments", "cutting", "righting", "winter", "lines"} {
		out.Missing = append(out.Missing, Note{Code: name, Text: "it is not drawn yet"})
	}
	return out, nil
}
