package dock

import (
	"errors"
	"math"
	"runtime"
	"sync"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Worst is what one joist or rim meets at most: the sagging and hogging moments, the
// moment the weak way (N·m) and the shear (N) that use the largest share of what the wood takes for as
// long as the situation lasts, and the wood's checks there.
type Worst struct {
	Name            string
	Sag, Hog, Shear Extreme
	Weak            Extreme // moment in the frame's own plane, N·m
	Checks          []measure.Check
}

// A share is an Extreme by its share of what the wood takes.
type share struct {
	Extreme
	of float64
}

func (s *share) take(value, capacity, at float64, situation int) {
	if of := value / capacity; of > s.of*(1+1e-9) && value > 1e-6 {
		*s = share{Extreme{value, at, situation}, of}
	}
}

// members collects the moments and shears of joists and rims and checks the worst.
func (e *Envelope) members(r *raft, rides []*ride, flats []*flatRide) error {
	d := r.dock
	joist, err := d.capacities(d.joist, 1, d.clear)
	if err != nil {
		return err
	}
	rim, err := d.capacities(d.rim, d.rimPlies, d.widest())
	if err != nil {
		return err
	}
	e.Members = make([]Worst, len(r.strips))
	errs := make([]error, len(r.strips))
	var wait sync.WaitGroup
	workers := min(runtime.GOMAXPROCS(0), len(r.strips))
	for w := range workers {
		wait.Go(func() {
			for i := w; i < len(r.strips); i += workers {
				of := joist
				if i >= len(d.centres) {
					of = rim
				}
				errs[i] = e.member(i, r, rides, flats, of)
			}
		})
	}
	wait.Wait()
	return errors.Join(errs...)
}

// member collects what one joist or rim meets.
func (e *Envelope) member(i int, r *raft, rides []*ride, flats []*flatRide, of *capacities) error {
	st := &r.strips[i]
	var sag, hog, shear, weak share
	for c, ride := range rides {
		if ride == nil {
			continue
		}
		can := &of.by[e.Situations[c].Duration]
		for k := 1; k < len(st.at); k++ {
			x := ride.extremes(st.first + k - 1)
			sag.take(x.Sag.Moment, can.sag, st.at[k-1]+x.Sag.X, c)
			hog.take(-x.Hog.Moment, can.hog, st.at[k-1]+x.Hog.X, c)
			shear.take(math.Abs(x.Shear.Shear), can.shear, st.at[k-1]+x.Shear.X, c)
		}
	}
	for c, flat := range flats {
		if flat != nil {
			m := (i + 2) % len(r.strips) // rims come first there
			weak.take(flat.weak[m].moment, of.by[e.Situations[c].Duration].weak, st.at[0]+flat.weak[m].at, c)
		}
	}
	w := &e.Members[i]
	*w = Worst{Name: st.name, Sag: sag.Extreme, Hog: hog.Extreme, Shear: shear.Extreme, Weak: weak.Extreme}
	bend, member := w.Sag, of.sagging
	if hog.of > sag.of {
		bend, member = w.Hog, of.hogging
	}
	if err := w.check("bending", member, lumber.Demand{Moment: bend.Value}, e, bend); err != nil {
		return err
	}
	if err := w.check("shear", of.sagging, lumber.Demand{Shear: w.Shear.Value}, e, w.Shear); err != nil {
		return err
	}
	return w.check("bending sideways", of.sagging, lumber.Demand{FlatMoment: w.Weak.Value}, e, w.Weak)
}

// check keeps one of the wood's checks under the worst of a kind.
func (w *Worst) check(name string, m lumber.Member, demand lumber.Demand, e *Envelope, worst Extreme) error {
	met := &e.Situations[worst.Situation]
	checks, err := m.Check(demand, met.Duration)
	for _, c := range checks {
		if c.Name == name {
			c.Name = w.Name + ", " + name
			c.Notes = append(c.Notes, met.Name+": "+met.Why)
			w.Checks = append(w.Checks, c)
		}
	}
	return err
}

// A capacity is what a member takes: sagging and hogging moment, shear, moment
// the weak way.
type capacity struct{ sag, hog, shear, weak float64 }

// capacities are those for each duration, and the members they belong to.
type capacities struct {
	sagging, hogging lumber.Member
	by               [lumber.TenMinutes + 1]capacity
}

// capacities returns what a piece of the frame takes. Boards hold the upper edge,
// which is pressed where it sags; what is pressed where it hogs is held no
// nearer than unbraced.
func (d *Dock) capacities(w wood, plies int, unbraced float64) (*capacities, error) {
	m := lumber.Member{
		Section: w.section, Grade: w.grade, Length: unbraced, Smooth: w.smooth(), Temperature: 20,
		Plies: plies, Repetitive: w.given == d.joist.given && d.repetitive(),
	}
	out := &capacities{sagging: m, hogging: m}
	out.sagging.Held = true
	out.hogging.Unbraced = unbraced
	for t := range out.by {
		can := &out.by[t]
		for side, m := range [2]lumber.Member{out.sagging, out.hogging} {
			design, err := m.Adjusted(lumber.Duration(t))
			if err != nil {
				return nil, err
			}
			for _, s := range [3]lumber.Strength{design.Fb, design.Fv, design.FbAcross} {
				if s.Err != nil {
					return nil, s.Err
				}
			}
			moment := design.Fb.Value * m.Whole().Modulus()
			if side == 0 {
				can.weak = design.FbAcross.Value * w.section.Turned().Modulus() * float64(plies)
				can.sag, can.shear = moment, design.Fv.Value*m.Whole().Area()*2/3
			} else {
				can.hog = moment
			}
		}
	}
	return out, nil
}
