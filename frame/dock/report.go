package dock

import (
	"context"
	"fmt"
	"maps"
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
	Twelve   []Headline // what decides whether it works, the worst first
	Topics   []Topic
	Deciding []measure.Assumption // assumed or unknown inputs on which a verdict turns
	Assumed  []measure.Assumption // the other inputs that were not measured
	Cautions []Caution
	Season   *Season
	Shop     *Shop  // what is cut, bought, put on the wood and carried
	Steps    []Step // the order of work

	envelope   *Envelope
	plate      *Plate // nil: the plan does not say enough
	noEnvelope error
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
	SomeOpen  Status = 3 // nothing is short, but something has no answer or turns on what nobody measured
)

// A subject makes the checks of a topic.
type subject struct {
	title string
	make  func(*Dock) []measure.Check
}

// sheet lists the topics in the order they are printed.
var sheet = []subject{
	{"WEIGHTS", (*Dock).lifts},
	{"AFLOAT, NOBODY ABOARD", (*Dock).empty},
	{"AFLOAT, UNIFORM LOAD", (*Dock).loaded},
	{"AFLOAT, EVERYONE AT ONE EDGE", (*Dock).crowded},
	{"AFLOAT, STANDARD LOADS", (*Dock).standard},
	{"AFLOAT, ONE FLOAT FULL OF WATER", (*Dock).leaking},
	{"LUMBER", (*Dock).lumber},
	{"WHAT BEARS ON WHAT", (*Dock).fit},
	{"FRAME, THE WORST OF EVERYTHING", (*Dock).strength},
	{"JOINTS", (*Dock).fastened},
	{"TIES AND DRUMS", (*Dock).ties},
	{"STOCK", (*Dock).stock},
	{"LINES AND WATER LEVEL", (*Dock).mooring},
	{"FENDERS AND LADDERS", (*Dock).fittings},
	{"ICE", (*Dock).iceInSeason},
	{"THE SEASON", (*Dock).seasonChecks},
	{"LOCAL LIMITS AND PERMITS", (*Dock).local},
}

// Report runs every check; each names its rule and source. The system of units is
// for the remarks that hold
// lengths and weights; [Dock.Units] is the plan's own. What the plan does not say is
// in the checks: the error is the context's, which ends the work within a few
// situations of the frame, and the report is nil beside it.
func (d *Dock) Report(ctx context.Context, units measure.System) (*Report, error) {
	if d.plan == nil {
		d = build(&plan.Plan{})
	}
	in := *d
	in.units = units
	in.trial = &trial{governing: &governing{ctx: ctx}}
	r := &Report{Name: called(d.plan.Name, "A dock without a name"), Units: units, Cautions: d.cautions(), Topics: in.topics(sheet)}
	r.envelope, r.noEnvelope = in.tried()
	r.Shop, _ = in.Shop(ctx) // both err with the context alone
	r.Season, _ = in.seasoned()
	if err := ctx.Err(); err != nil {
		return nil, err // what was made under it lacks something
	}
	for i := range r.Cautions {
		r.Cautions[i].Text = measure.Restate(r.Cautions[i].Text, units)
	}
	r.collect()
	r.plate, _ = in.Plate(r.envelope)
	in.sign(r)
	r.Twelve = headlines(r.Topics)
	r.Steps = in.steps(r)
	return r, nil
}

// topics makes the checks of some subjects, and finds which inputs decide them.
func (d *Dock) topics(of []subject) []Topic {
	out := make([]Topic, len(of))
	var wait sync.WaitGroup
	for i, s := range of {
		wait.Go(func() {
			if d.trial.context().Err() == nil {
				out[i] = Topic{s.title, s.make(d)}
			}
		})
	}
	wait.Wait()
	ctx := d.trial.context()
	if ctx.Err() != nil {
		return out
	}
	tried := d.others(of, out)
	if ctx.Err() != nil { // some of it is missing
		return out
	}
	for path, others := range tried {
		for i := range out {
			decide(out[i].Checks, path, others[i])
		}
	}
	for i := range out {
		mend(out[i].Checks)
		d.reword(out[i].Checks)
	}
	return out
}

// others makes the topics again with each other value that an input which was not
// measured might plausibly have: by path and topic, one list of checks for each value.
// A topic that does not rest on the input is left out.
func (d *Dock) others(of []subject, topics []Topic) map[string][][][]measure.Check {
	resting := map[string][]int{} // topics, by path
	has := map[string]string{}    // what stands there now
	for i, t := range topics {
		for _, c := range t.Checks {
			for _, a := range c.Rests {
				if on := resting[a.Name]; a.Known != measure.Measured && (len(on) == 0 || on[len(on)-1] != i) {
					resting[a.Name], has[a.Name] = append(on, i), a.Text
				}
			}
		}
	}
	out := map[string][][][]measure.Check{}
	var wait sync.WaitGroup
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for _, path := range slices.Sorted(maps.Keys(resting)) {
		values := plan.Plausible(path)
		made := make([][][]measure.Check, len(topics))
		for _, i := range resting[path] {
			made[i] = make([][]measure.Check, len(values))
		}
		out[path] = made
		for k, value := range values {
			if value == has[path] || d.trial.context().Err() != nil {
				continue // it is what was made already, or nobody waits for it
			}
			turn <- struct{}{}
			wait.Go(func() {
				if v := d.variant(path, value); v != nil {
					for _, i := range resting[path] {
						if d.trial.context().Err() == nil {
							made[i][k] = of[i].make(v)
						}
					}
				}
				<-turn
			})
		}
	}
	wait.Wait()
	return out
}

// decide marks an input in each check that would turn with another of its values.
func decide(checks []measure.Check, path string, others [][]measure.Check) {
	for i := range checks {
		c := &checks[i]
		for j := range c.Rests {
			if c.Rests[j].Name != path || c.Rests[j].Known == measure.Measured {
				continue
			}
			for _, other := range others {
				if other != nil && turns(*c, other[i]) {
					c.Rests[j].Decides = true
				}
			}
		}
	}
}

// variant builds the dock with another value at a path, nil where there is no such
// dock.
func (d *Dock) variant(path, value string) *Dock {
	p, err := d.plan.Vary(path, value)
	if err != nil {
		return nil
	}
	v := build(p)
	if len(v.errors) > 0 {
		return nil
	}
	v.winters = d.winters
	v.trial = &trial{path: path, governing: d.trial.governing}
	return v
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
	if len(r.Deciding) > 0 {
		s = SomeOpen
	}
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
