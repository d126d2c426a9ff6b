package dock

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"

	"example.org/floewright/frame/layout"
	"example.org/floewright/lumber/measure"
)

// An Extreme is the largest value of something over all situations, where and when
// it is met. The zero Extreme is nothing, met in the first situation.
type Extreme struct {
	Value     float64 // N, N·m or m, as what it is of says
	At        float64 // m along the member, from the end or side that the tape hooks on
	Situation int     // index in Envelope.Situations
}

// An Outcome is a situation as it was solved. Where it found no rest, Err says why
// and the rest is empty.
type Outcome struct {
	Situation
	Err     error
	Push    []float64  // N, by float, upward on the frame and the float itself
	Weight  float64    // N, of all there is, floats included
	Corners [4]float64 // m, of the frame's underside at its corners: over still water afloat, over level ground else
	Left    float64    // largest imbalance over the largest force, a ratio
}

// A Joint is what the rim does at the end of a joist, N: the most it carries, the
// most it holds down, and the most that its force swings by from crest to trough
// of the same waves; and what pulls and slides it in the frame's own plane.
type Joint struct {
	Name           string
	Carries, Holds Extreme
	Swing          float64
	Pull, Slides   Extreme // in the frame's plane: off the rim along the joist, and along the rim

	lasts [ways]byDuration
}

// A Bearing is what one float does to the frame over its own weight, N: the most it
// pushes, and the most it hangs on its ties. Spread is what pushes the joists apart on
// either side of a wedged one at its most; of one under the deck boards, Board is the
// lift on the hardest pushed board and Screw the pull of its hardest pulled screw,
// with all boards on that cross it and one screw at each joist.
type Bearing struct {
	Name         string
	On           string // what it bears on
	Push, Hangs  Extreme
	Spread       float64
	Board, Screw float64

	lasts byDuration // Push
}

// An Envelope is the worst of everything over all that the dock meets.
type Envelope struct {
	Situations []Outcome
	Members    []Worst // joists in order, then the two rims
	Joints     []Joint // two ends of each joist in turn
	Bearings   []Bearing
	Comfort    Comfort

	dock *Dock
}

// Envelope solves every situation and keeps the worst of each member, joint and
// float. A situation in which the dock finds no rest is an Outcome with an error
// and governs nothing. The error is for a plan that does not say enough, for a dock
// that does not float with nobody aboard, and for a context that ended.
//
// The frame is package frame's grillage (beam theory, [frame.Grillage.Solve]) of
// joists and rims on the floats in parts; deck boards are beams from joist to joist.
// Waves are long and stand still; ice that holds a float lets go at the plan's grip
// or never. In its own plane the frame is package rack's, afloat, with joints and
// screws from soft to stiff, since nobody knows how they slip: each force is the
// greatest found. No movement is given there.
func (d *Dock) Envelope(ctx context.Context) (*Envelope, error) {
	if d.plan == nil {
		return nil, &measure.Error{Field: "plan", Class: measure.ErrUnknown, Want: "a plan"}
	}
	if err := d.frameRests().err(); err != nil {
		return nil, err
	}
	met, err := d.situations()
	if err != nil {
		return nil, err
	}
	return d.envelope(ctx, met)
}

// envelope solves the situations given; the first is the dock afloat with nobody
// aboard.
func (d *Dock) envelope(ctx context.Context, met []Situation) (*Envelope, error) {
	known := d.trial.known()
	r, err := known.raftOf(d)
	if err != nil {
		return nil, err
	}
	plane, err := d.flat()
	if err != nil {
		return nil, err
	}
	rides := make([]*ride, len(met))
	flats := make([]*flatRide, len(met))
	e := &Envelope{Situations: make([]Outcome, len(met)), dock: d}
	for i := range met {
		e.Situations[i].Situation = met[i]
	}
	var wait sync.WaitGroup
	var flatErr error
	wait.Go(func() { flatErr = plane.solve(met) })
	level := slices.IndexFunc(met, func(s Situation) bool { return s.level })
	solve := func(i int) {
		out, near := &e.Situations[i], rides[0]
		if met[i].ground != nil {
			near = nil
			if level >= 0 && i != level && met[i].lake.level == nil {
				near = rides[level]
			}
		}
		if like := d.trial.like(&met[i], r); like != nil {
			near = like
		}
		if rides[i], out.Err = known.ride(&met[i]); rides[i] == nil && out.Err == nil {
			rides[i], out.Err = r.meet(&met[i], rides[0], near)
		}
		out.Err = d.placed(out.Err)
		if out.Err == nil {
			out.fill(rides[i])
		}
	}
	solve(0)
	if level > 0 && rides[0] != nil {
		solve(level)
	}
	workers := min(runtime.GOMAXPROCS(0), len(met))
	for w := range workers {
		wait.Go(func() {
			for i := 1 + w; i < len(met) && ctx.Err() == nil && rides[0] != nil; i += workers {
				if met[i].pulls == nil && i != level {
					solve(i)
				}
			}
		})
	}
	wait.Wait()
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case rides[0] == nil:
		return nil, fmt.Errorf("%s: %w", met[0].Name, e.Situations[0].Err)
	case flatErr != nil:
		return nil, flatErr
	}
	for i := range met {
		if met[i].pulls != nil {
			flats[i] = plane.meet(met[i].pulls)
			e.Situations[i].Left = flats[i].left
		}
	}
	e.joints(r, rides, flats)
	if err := e.bearings(r, rides); err != nil {
		return nil, err
	}
	if err := e.members(r, rides, flats); err != nil {
		return nil, err
	}
	d.trial.keep(r, plane, e, rides)
	return e, e.comfort(r, rides)
}

// fill writes down what a ride came to.
func (o *Outcome) fill(r *ride) {
	o.Push = make([]float64, len(r.dock.floats))
	for i := range r.feet {
		o.Push[r.feet[i].mount] += r.push[i]
	}
	o.Weight, o.Left = r.weight, r.Residual
	for i, c := range [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		o.Corners[i] = r.Move[r.corner(c[0], c[1])][0]
	}
}

// frameRests is what the frame's forces rest on.
func (d *Dock) frameRests() rests {
	f, l, s := &d.plan.Frame, &d.plan.Loads, &d.plan.Site
	_, rs, _ := d.platform()
	rs = append(rs, on(f.Joists.Incised), on(f.Rims.Incised), on(l.Flotation), on(l.Snow), on(l.Uneven), on(l.Pried), on(l.FromEdge),
		on(l.Centre), on(s.WaveHeight), on(s.TenCrests), on(s.IceDrop))
	if len(d.plan.People) == 0 {
		rs = append(rs, rest{path: "people", missing: true})
	}
	for i := range d.plan.People {
		rs = append(rs, on(d.plan.People[i].Count), on(d.plan.People[i].Mass))
	}
	return dedupe(append(rs, d.marks()))
}

// take keeps a value if it is larger than what is held, by more than rounding: of
// equal ones the first stays on every machine.
func (x *Extreme) take(value, at float64, situation int) {
	if value > x.Value*(1+1e-9)+1e-6 {
		*x = Extreme{value, at, situation}
	}
}

// endForces returns the forces with which the rims push up a joist's two ends.
func (r *ride) endForces(joist int) [2]float64 {
	st := &r.strips[joist]
	last := len(st.nodes) - 2
	// The shear at a joist's beginning is the force up on it, at its end the one down.
	return [2]float64{r.Lines[st.first].At(0).Shear, -r.Lines[st.first+last].Before(st.at[last+1] - st.at[last]).Shear}
}

// joints collects the forces at the joists' ends.
func (e *Envelope) joints(r *raft, rides []*ride, flats []*flatRide) {
	d := r.dock
	e.Joints = make([]Joint, 2*len(d.centres))
	for k := range d.centres {
		st := &r.strips[k]
		var before [2]float64
		for c, ride := range rides {
			if ride == nil {
				continue
			}
			now := ride.endForces(k)
			for end, f := range now {
				j := &e.Joints[2*k+end]
				at := st.at[end*(len(st.at)-1)]
				j.Carries.take(f, at, c)
				j.Holds.take(-f, at, c)
				j.take(e, carried, f, at, c)
				j.take(e, heldDown, -f, at, c)
				if e.Situations[c].swings && rides[c-1] != nil {
					j.Swing = max(j.Swing, math.Abs(f-before[end]))
					if f < 0 || before[end] < 0 { // else it only grows and shrinks
						j.take(e, toAndFro, math.Abs(f-before[end]), at, c)
					}
				}
			}
			before = now
		}
		for c, flat := range flats {
			for end := range 2 {
				if flat != nil {
					j := &e.Joints[2*k+end]
					at := st.at[end*(len(st.at)-1)]
					j.Pull.take(flat.joints[2*k+end].pull, at, c)
					j.Slides.take(flat.joints[2*k+end].slide, at, c)
					j.take(e, pulledOff, flat.joints[2*k+end].pull, at, c)
					j.take(e, slid, flat.joints[2*k+end].slide, at, c)
				}
			}
		}
		for end, side := range d.rimSides() {
			e.Joints[2*k+end].Name = fmt.Sprintf("%s at the rim of the %s", st.name, side)
		}
	}
}

// rimSides returns what the two rims' sides of the dock are called.
func (d *Dock) rimSides() [2]string {
	if d.across {
		return sides
	}
	return ends
}

// bearings collects what the floats do.
func (e *Envelope) bearings(r *raft, rides []*ride) error {
	lay, err := r.dock.laid()
	if err != nil {
		return err
	}
	for i, m := range r.dock.floats {
		b := Bearing{Name: r.dock.at(i), On: lay.Bearings[i].Seat.String()}
		own := m.set.Mass.Value * measure.Gravity
		for c := range rides {
			if rides[c] != nil {
				b.Push.take(e.Situations[c].Push[i]-own, 0, c)
				b.lasts[e.Situations[c].Duration].take(e.Situations[c].Push[i]-own, 0, c)
				b.Hangs.take(own-e.Situations[c].Push[i], 0, c)
			}
		}
		if _, b.Spread, err = lay.Bearings[i].Press(b.Push.Value); err != nil {
			return err
		}
		// Strong boards show how a board hands on what lifts it; with all boards on, one
		// takes the line load over its own face.
		lift, err := lay.Lift(i, b.Push.Value, layout.Strength{Moment: 1e5, Screw: 1e5, Screws: 1})
		if err != nil {
			return err
		}
		if lift.Board > 0 {
			f := &r.dock.plan.Frame
			b.Board = min(lift.Line*(r.dock.board.section.Depth+f.Decking.Gap.Value), b.Push.Value)
			b.Screw = b.Board * lift.Screw / lift.Board
		}
		e.Bearings = append(e.Bearings, b)
	}
	return nil
}

// String returns the worst of members, joints and floats, a line each, and the
// situations without rest.
func (e *Envelope) String() string {
	var b strings.Builder
	line := func(name, what string, kind measure.Kind, x Extreme) {
		if x.Value != 0 && x.Situation >= 0 && x.Situation < len(e.Situations) {
			fmt.Fprintf(&b, "%s %s %s: %s\n", name, what, kind.Format(x.Value, measure.SI), e.Situations[x.Situation].Name)
		}
	}
	for _, w := range e.Members {
		line(w.Name, "sags with", measure.Moment, w.Sag)
		line(w.Name, "hogs with", measure.Moment, w.Hog)
		line(w.Name, "shears with", measure.Force, w.Shear)
		line(w.Name, "bends the weak way with", measure.Moment, w.Weak)
	}
	for _, j := range e.Joints {
		line(j.Name, "is carried with", measure.Force, j.Carries)
		line(j.Name, "is held down with", measure.Force, j.Holds)
		line(j.Name, "is pulled off with", measure.Force, j.Pull)
		line(j.Name, "slides with", measure.Force, j.Slides)
	}
	for _, f := range e.Bearings {
		line(f.Name, "pushes with", measure.Force, f.Push)
		line(f.Name, "hangs with", measure.Force, f.Hangs)
		if f.Spread > 0 {
			fmt.Fprintf(&b, "%s spreads the joists with %s\n", f.Name, measure.Force.Format(f.Spread, measure.SI))
		}
		if f.Board > 0 {
			fmt.Fprintf(&b, "%s lifts a board with %s and pulls a screw with %s\n", f.Name,
				measure.Force.Format(f.Board, measure.SI), measure.Force.Format(f.Screw, measure.SI))
		}
	}
	for _, o := range e.Situations {
		if o.Err != nil {
			fmt.Fprintf(&b, "no rest %s: %v\n", o.Name, o.Err)
		}
	}
	return b.String()
}
