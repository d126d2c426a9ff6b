package dock

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// A Topic is a group of checks that belong on one screen.
type Topic struct {
	Title  string
	Checks []measure.Check
}

// A Report is everything the library can say of a dock.
type Report struct {
	Name     string
	Units    measure.System
	Topics   []Topic
	Deciding []measure.Assumption // assumed or unknown inputs on which a verdict turns
	Assumed  []measure.Assumption // the other inputs that were not measured
	Cautions []Caution
	Shop     *Shop // what is cut, bought, put on the wood and carried
}

// A Caution is a warning that belongs to every report, and who gives it.
type Caution struct {
	Text   string
	Source string
}

// Status is the outcome of a report, fit for a program's exit status.
type Status int

// The statuses of a report. A plan that cannot be used has no report; a program
// exits with 2 there, which goes before all others.
const (
	AllHold   Status = 0
	SomeShort Status = 1 // something is short
	Unusable  Status = 2 // no report: the plan is wrong
	SomeOpen  Status = 3 // something has no answer, and nothing is short
)

// sheet lists the topics in the order they are printed.
var sheet = []struct {
	title string
	make  func(*Dock) []measure.Check
}{
	{"WEIGHTS", (*Dock).lifts},
	{"AFLOAT, NOBODY ABOARD", (*Dock).empty},
	{"AFLOAT, UNIFORM LOAD", (*Dock).loaded},
	{"AFLOAT, EVERYONE AT ONE EDGE", (*Dock).crowded},
	{"AFLOAT, STANDARD LOADS", (*Dock).standard},
	{"LUMBER", (*Dock).lumber},
	{"WHAT BEARS ON WHAT", (*Dock).fit},
	{"FRAME, THE WORST OF EVERYTHING", (*Dock).strength},
	{"JOINTS", (*Dock).fastened},
	{"TIES AND DRUMS", (*Dock).ties},
	{"STOCK", (*Dock).stock},
	{"LINES AND WATER LEVEL", (*Dock).mooring},
	{"ICE", (*Dock).onIce},
	{"LOCAL LIMITS AND PERMITS", (*Dock).local},
	{"NOT ANSWERED BY THIS SHEET", (*Dock).open},
}

// Report runs every check. The system of units is for the remarks that hold
// lengths and weights; [Dock.Units] is the plan's own.
func (d *Dock) Report(units measure.System) *Report {
	if d.plan == nil {
		d = build(&plan.Plan{})
	}
	in := *d
	in.units = units
	in.trial = &trial{governing: &governing{}}
	r := &Report{Name: called(d.plan.Name, "A dock without a name"), Units: units, Cautions: d.cautions()}
	docks := map[string][]*Dock{} // with each other value at a path
	for _, topic := range sheet {
		checks := topic.make(&in)
		decide(checks, in.others(checks, docks, topic.make))
		r.Topics = append(r.Topics, Topic{topic.title, checks})
	}
	r.Shop, _ = in.Shop(context.Background()) // it errs with the context alone
	r.collect()
	return r
}

// open lists what the library does not compute yet.
func (d *Dock) open() []measure.Check {
	var out []measure.Check
	for _, o := range []struct{ name, want string }{
		{"First and last day of work on the ice, break-up", "your own holes, every day"},
	} {
		out = append(out, measure.Refuse(o.name, &measure.Error{Class: measure.ErrNotComputed, Want: o.want}))
	}
	return out
}

// others makes a topic's checks again for each other value that an input which was
// not measured might plausibly have, by path.
func (d *Dock) others(checks []measure.Check, docks map[string][]*Dock, topic func(*Dock) []measure.Check) map[string][][]measure.Check {
	out := map[string][][]measure.Check{}
	var wait sync.WaitGroup
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i := range checks {
		for _, a := range checks[i].Rests {
			if _, done := out[a.Name]; done || a.Known == measure.Measured || len(plan.Plausible(a.Name)) == 0 {
				continue
			}
			if _, built := docks[a.Name]; !built {
				docks[a.Name] = d.variants(a.Name)
			}
			made := make([][]measure.Check, len(docks[a.Name]))
			out[a.Name] = made
			for k, v := range docks[a.Name] {
				turn <- struct{}{}
				wait.Go(func() {
					made[k] = topic(v)
					<-turn
				})
			}
		}
	}
	wait.Wait()
	return out
}

// decide marks every input in each check that would turn with another value.
func decide(checks []measure.Check, others map[string][][]measure.Check) {
	for i := range checks {
		c := &checks[i]
		for j := range c.Rests {
			if c.Rests[j].Known == measure.Measured {
				continue
			}
			for _, other := range others[c.Rests[j].Name] {
				if turns(*c, other[i]) {
					c.Rests[j].Decides = true
				}
			}
		}
	}
}

// variants builds the dock with each other plausible value at a path.
func (d *Dock) variants(path string) []*Dock {
	var out []*Dock
	for _, value := range plan.Plausible(path) {
		p, err := d.plan.Vary(path, value)
		if err != nil {
			continue
		}
		if v := build(p); len(v.errors) == 0 {
			v.trial = &trial{path: path, governing: d.trial.governing}
			out = append(out, v)
		}
	}
	return out
}

// turns reports whether the same check comes out differently by its numbers.
func turns(a, b measure.Check) bool {
	return (a.Err == nil) != (b.Err == nil) || a.Err == nil && a.Meets() != b.Meets()
}

// collect lists the inputs that were not measured: first those that decide.
func (r *Report) collect() {
	for _, decides := range []bool{true, false} {
		for _, t := range r.Topics {
			for _, c := range t.Checks {
				for _, a := range c.Rests {
					switch {
					case a.Known == measure.Measured || a.Decides != decides || named(r.Deciding, a.Name) || named(r.Assumed, a.Name):
					case decides:
						r.Deciding = append(r.Deciding, a)
					default:
						r.Assumed = append(r.Assumed, a)
					}
				}
			}
		}
	}
}

func named(list []measure.Assumption, name string) bool {
	return slices.ContainsFunc(list, func(b measure.Assumption) bool { return b.Name == name })
}

// Status returns the outcome: something short goes before something open.
func (r *Report) Status() Status {
	s := AllHold
	for _, t := range r.Topics {
		for _, c := range t.Checks {
			switch c.Verdict() {
			case measure.Short:
				return SomeShort
			case measure.NoAnswer:
				s = SomeOpen
			}
		}
	}
	return s
}

// cautions returns what is printed under every report.
func (d *Dock) cautions() []Caution {
	out := []Caution{
		{"Not sealed, not a permit drawing. Ask the lake's authority and the building office before you build.", "this library"},
		{"Water, ice, lifting and mains electricity near water kill. Wear a life jacket; keep shore power and its cords off the dock unless an electrician answers for it.", "this library"},
	}
	for i := range d.plan.Floats {
		if d.plan.Floats[i].Shape.Value == "drum" {
			out = append(out,
				Caution{float.DrumNotice, "regulations named, read"},
				Caution{"Know what a drum held. Do not cut, weld or drill a drum with an unknown residue.", "common practice"})
			break
		}
	}
	for _, c := range ice.Cautions() {
		out = append(out, Caution{c.Text, fmt.Sprintf("%s, %s", c.Publisher, c.Status)})
	}
	return out
}
