package dock

import (
	"errors"
	"strconv"
	"strings"

	"example.org/floewright/float/moor"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// names looks up every name of the trade in the plan, and every name by which one
// entry of it means another, so that all that are wrong are told together and not one
// by one by the checks that ask for them.
func (d *Dock) names() {
	h, m := &d.plan.Hardware, &d.plan.Mooring
	fastener := func(name string) error { _, err := fasten.Lookup(name); return err }
	finish := func(name string) error {
		_, err := fasten.Exposure{}.Check(fasten.Metal{Finish: name})
		return err
	}
	d.name(d.plan.Frame.Decking.Screw, fastener)
	d.name(h.Ends.Fastener, fastener)
	d.name(h.Ends.Finish, finish)
	d.name(h.Ends.Bracket, finish)
	d.name(h.DeckFinish, finish)
	kinds := []plan.Name{{Value: "all"}}
	for i := range d.plan.Floats {
		d.name(d.plan.Floats[i].Nail, fastener)
		kinds = append(kinds, d.plan.Floats[i].Name)
	}
	for i := range h.Ties {
		d.name(h.Ties[i].Floats, among("an entry of floats", kinds))
		d.name(h.Ties[i].Finish, finish)
	}
	for i := range h.Drums {
		d.name(h.Drums[i].Floats, among("an entry of floats", kinds))
	}
	var feet []plan.Name
	for i := range d.plan.Site.Shore {
		feet = append(feet, d.plan.Site.Shore[i].Name)
	}
	for i := range m.Anchors {
		feet = append(feet, m.Anchors[i].Name)
	}
	for i := range m.Lines {
		l := &m.Lines[i]
		d.name(l.To, among("a shore point or an anchor of the plan", feet))
		if l.Shackle.Value != "none" {
			d.name(l.Shackle, func(size string) error { _, err := moor.Lookup("shackle", size); return err })
		}
		for k := range l.Pieces {
			d.gearNames(l.Pieces[k].Kind, l.Pieces[k].Size, l.Pieces[k].End)
		}
	}
	d.gearNames(m.Haul.Kind, m.Haul.Size, m.Haul.End)
	for i := range d.plan.Stock {
		d.name(d.plan.Stock[i].Size, func(text string) error { _, err := size(text); return err })
	}
	for _, e := range d.errors {
		e.Err = measure.RestateError(e.Err, d.system())
	}
}

// name records a name that a look-up does not find. What was left out or is called
// unknown is none.
func (d *Dock) name(given plan.Name, look func(string) error) {
	if given.Known != measure.Measured || given.Value == "" {
		return
	}
	err := look(given.Value)
	if err == nil {
		return
	}
	var e *measure.Error
	if errors.As(err, &e) {
		plain := *e
		plain.Field = "" // the path says it
		if plain.Want != "" {
			plain.Want += `, or "unknown"`
		}
		err = &plain
	}
	d.errors = append(d.errors, plan.Wrong(d.plan.File, given, err))
}

// gearNames looks up a rope, chain or wire: its kind, its size among those of the kind,
// and its end.
func (d *Dock) gearNames(kind, size, end plan.Name) {
	if kind.Known != measure.Measured || kind.Value == "" {
		return
	}
	listed := func(kind string) error { _, err := moor.Gears(kind); return err }
	if listed(kind.Value) != nil {
		d.name(kind, listed)
		return
	}
	d.name(size, func(size string) error { _, err := moor.Lookup(kind.Value, size); return err })
	if size.Known == measure.Measured {
		if _, err := moor.Lookup(kind.Value, size.Value); err == nil {
			d.name(end, func(end string) error { _, err := gear(kind.Value, size.Value, end); return err })
		}
	}
}

// among returns a look-up in a list of the plan's own names. One of them that is not
// known might be any.
func among(what string, names []plan.Name) func(string) error {
	return func(name string) error {
		var quoted []string
		for _, n := range names {
			if n.Value == name || n.Value == "" {
				return nil
			}
			quoted = append(quoted, strconv.Quote(n.Value))
		}
		want := what + ": " + strings.Join(quoted, ", ")
		if len(quoted) == 0 {
			want = what + ", of which there is none"
		}
		return &measure.Error{Text: name, Class: measure.ErrName, Want: want}
	}
}
