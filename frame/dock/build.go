package dock

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A Dock is a plan with its geometry worked out and its lumber looked up. [Read]
// and [Build] make one; the zero Dock knows nothing and answers nothing.
// A Dock may be asked by several goroutines at once.
type Dock struct {
	plan  *plan.Plan
	units measure.System // of what is printed

	length, width float64
	across        bool // the joists run across
	joist         wood
	rim           wood
	board         wood
	rimPlies      int

	centres []float64 // of the joists, from the end or side the tape hooks on
	clear   float64   // length of a joist between the rims

	floats []mount
	errors plan.Errors

	trial *trial // how a report tries another value; nil outside of one
	shop  *shopMemo

	winters *winters // nil: none were given
}

// A mount is one float at its place, x and y from the dock's middle.
type mount struct {
	set     *plan.Floats
	x, y, z float64 // centre
	bay     int     // between which joists; 0 is none
	seat    seat
}

// Read reads a plan and builds the dock. The name stands for the file in errors.
// The error is a [plan.Errors] with every mistake of the file, those of reading
// and those of building together; the dock is nil beside it.
func Read(name string, r io.Reader) (*Dock, error) {
	p, err := plan.Read(name, r)
	var found plan.Errors
	if err != nil && (!errors.As(err, &found) || p == nil) {
		return nil, err
	}
	d := build(p)
	d.names()
	found = append(found, d.errors...)
	if len(found) > 0 {
		found.Sort()
		return nil, found
	}
	return d, nil
}

// Build builds the dock of a plan. The error is a [plan.Errors].
func Build(p *plan.Plan) (*Dock, error) {
	if p == nil {
		return nil, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	d := build(p)
	d.names()
	d.errors.Sort()
	if err := d.errors.OrNil(); err != nil {
		return nil, err
	}
	return d, nil
}

// build works out what it can and collects what the plan has wrong. What is not
// known stays NaN or empty; the checks that need it refuse.
func build(p *plan.Plan) *Dock {
	f := &p.Frame
	d := &Dock{
		plan: p, length: f.Length.Value, width: f.Width.Value,
		across: f.Run.Value != "along", rimPlies: max(1, f.Rims.Plies.Value),
		shop: &shopMemo{},
	}
	d.units = d.Units()
	d.joist = d.wood(&f.Joists.Wood)
	d.rim = d.wood(&f.Rims.Wood)
	d.board = d.wood(&f.Decking.Wood)
	d.clear = d.reach() - 2*float64(d.rimPlies)*d.rim.section.Width
	if d.clear < 4*measure.Inch {
		wrong(d, f.Rims.Size, "the rims leave no room between them", "rims that fit the frame", measure.ErrRange)
	}
	d.centres = d.joistCentres()
	for i := range p.Floats {
		d.place(&p.Floats[i])
	}
	return d
}

// run is the length the running marks are laid on, reach the one across it.
func (d *Dock) run() float64 {
	if d.across {
		return d.length
	}
	return d.width
}

func (d *Dock) reach() float64 {
	if d.across {
		return d.width
	}
	return d.length
}

// wrong records a value the plan has wrong.
func wrong[T any](d *Dock, g plan.Given[T], why, want string, class error) {
	d.errors = append(d.errors, plan.Wrong(d.plan.File, g, &measure.Error{Text: g.Text, Why: why, Want: want, Class: class}))
}

// slack is what running marks may overshoot the frame by before they are taken
// for a mistake: half of the finest mark on a tape.
const slack = measure.Inch / 32

// joistCentres returns the joists' centres along the run, nil where the plan
// does not say.
func (d *Dock) joistCentres() []float64 {
	j := &d.plan.Frame.Joists
	b := d.joist.section.Width
	run := d.run()
	if !(b > 0 && run > 0) {
		return nil
	}
	if len(j.Marks) == 0 {
		return spaced(j.Spacing.Value, run, b)
	}
	if plan.Has(j.Spacing) {
		wrong(d, j.Spacing, "marks are given too", "marks or spacing, not both", measure.ErrName)
	}
	toCentre := b / 2
	if j.MarksAt.Value == "centre" {
		toCentre = 0
	}
	var out []float64
	for _, m := range j.Marks {
		if !plan.Has(m) {
			return nil
		}
		c := m.Value + toCentre
		last := len(out) - 1
		switch {
		case c-b/2 < -slack || c+b/2 > run+slack:
			wrong(d, m, "the joist there lies outside the frame",
				fmt.Sprintf("a mark that keeps it within %s", measure.Length.Format(run, d.system())), measure.ErrRange)
		case last >= 0 && c-out[last] < b-slack:
			wrong(d, m, "the joist there overlaps the one before", "marks that grow by a joist's thickness or more", measure.ErrRange)
		}
		out = append(out, c)
	}
	if len(out) < 2 {
		wrong(d, j.Marks[0], "one joist makes no frame", "two marks or more", measure.ErrRange)
	}
	return out
}

// spaced lays joists at one distance from the first; the last closes the frame.
func spaced(spacing, run, b float64) []float64 {
	if !(spacing >= b) {
		return nil
	}
	var out []float64
	for k := 0; ; k++ {
		c := b/2 + float64(k)*spacing
		if c > run-1.5*b {
			return append(out, run-b/2)
		}
		out = append(out, c)
	}
}

// place puts every float of an entry where the plan says.
func (d *Dock) place(s *plan.Floats) {
	size := d.floatSize(s)
	add := func(along, across float64, bay int) {
		x, y := along-d.length/2, across-d.width/2
		if bay == 0 && s.Bears.Value == "between joists" {
			bay = d.bayAt(along, across)
		}
		z, seat := d.seat(s, size, bay)
		d.floats = append(d.floats, mount{set: s, x: x, y: y, z: z, bay: bay, seat: seat})
	}
	if len(s.Places) > 0 {
		if len(s.Bays) > 0 || len(s.Marks) > 0 {
			at := s.Places[0].Along
			at.Path, at.Text = part(s, "places"), "places"
			wrong(d, at, "bays or marks are given too", "places, or bays with marks, not both", measure.ErrName)
		}
		for _, p := range s.Places {
			along, across := d.inside(p.Along, d.length), d.inside(p.Across, d.width)
			if along && across {
				add(p.Along.Value, p.Across.Value, 0)
			}
		}
		return
	}
	switch {
	case len(s.Bays) > 0 && len(s.Marks) == 0:
		d.lacks(s, "marks", s.Bays[0].At, "the floats' centres in each of the bays, or \"places\" instead of both")
		return
	case len(s.Marks) > 0 && len(s.Bays) == 0:
		d.lacks(s, "bays", s.Marks[0].At, "the bays that the marks are for, or \"places\" instead of both")
		return
	}
	for _, bay := range s.Bays {
		if len(d.centres) == 0 || bay.Value == 0 {
			continue // not known: no place, and the checks say so
		}
		if bay.Value < 0 || bay.Value > len(d.centres)-1 {
			wrong(d, bay, "there is no such bay", fmt.Sprintf("a bay from 1 to %d, since there are %d joists", len(d.centres)-1, len(d.centres)), measure.ErrRange)
			continue
		}
		middle := (d.centres[bay.Value-1] + d.centres[bay.Value]) / 2
		for _, m := range s.Marks {
			if !d.inside(m, d.reach()) {
				continue
			}
			if d.across {
				add(middle, m.Value, bay.Value)
			} else {
				add(m.Value, middle, bay.Value)
			}
		}
	}
}

// part returns the path of a field of an entry of floats.
func part(s *plan.Floats, key string) string {
	return strings.TrimSuffix(s.Name.Path, "name") + key
}

// lacks records a field without which an entry of floats has no place; the position
// is that of the field that asks for it.
func (d *Dock) lacks(s *plan.Floats, key string, at plan.Position, want string) {
	g := plan.Name{Path: part(s, key), At: at}
	d.errors = append(d.errors, plan.Wrong(d.plan.File, g, &measure.Error{Class: measure.ErrUnknown, Why: "it is missing", Want: want}))
}

// inside reports whether a mark lies on the frame, and records it if not. An
// unknown mark is no mistake, and no place.
func (d *Dock) inside(q plan.Quantity, size float64) bool {
	if !plan.Has(q) || math.IsNaN(size) {
		return false
	}
	if q.Value > size+slack {
		wrong(d, q, "it lies beyond the frame", "a place within "+measure.Length.Format(size, d.system()), measure.ErrRange)
		return false
	}
	return true
}

// Units returns the system of units that the plan asks for.
func (d *Dock) Units() measure.System {
	if d.plan != nil && d.plan.Units.Value == "si" {
		return measure.SI
	}
	return measure.US
}

func (d *Dock) system() measure.System { return d.units }

// Fingerprint returns what the plan's file is told by ([plan.Plan.Fingerprint]), ""
// where the dock was not read.
func (d *Dock) Fingerprint() string { return d.plan.Fingerprint() }
