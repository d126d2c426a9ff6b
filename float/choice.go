package float

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

var (
	errShort = errors.New("short")
	errTries = errors.New("tries run out")
)

type fewest struct {
	base   *Platform
	places []Unit
	demand Demand
	tries  int
	done   int
}

func (f *fewest) check() error {
	if err := f.base.check(); err != nil {
		return err
	}
	if len(f.places) == 0 || len(f.places) > 64 {
		return (measure.Range{Lo: 1, Hi: 64, Source: ownBound}).Check("number of places", float64(len(f.places)))
	}
	for i := range f.places {
		if !f.places[i].sound() {
			return badPlace(i, f.places[i].check(""))
		}
	}
	if f.tries == 0 {
		f.tries = 20000
	}
	if f.tries < 0 {
		return (measure.Range{Lo: 0, Hi: math.Inf(1)}).Check("Tries", float64(f.tries))
	}
	d := &f.demand
	if err := cmp.Or(checkRules("Load", d.Load), checkRules("Edge", d.Edge), checkRules("Lost", d.Lost)); err != nil {
		return err
	}
	_, err := f.base.crowded(d.Crowd)
	return err
}

func (f *fewest) build(chosen []int) *Platform {
	q := f.base.With()
	for _, i := range chosen {
		q.Units = append(q.Units, f.places[i])
	}
	return q
}

// least returns how many places buoyancy alone asks for, with the crowd and with
// one unit lost.
func (f *fewest) least() int {
	p := f.base
	load, fixed := 0.0, 0.0
	for _, w := range p.Weights {
		load += w.Mass
	}
	lift := func(u Unit) float64 {
		if u.Flooded {
			if u.Captive {
				return 0
			}
			return -u.Mass
		}
		v := p.Density*(u.Body.Volume()-u.Leak) - u.Mass
		if u.Captive {
			v = max(v, 0)
		}
		return v
	}
	for _, u := range p.Units {
		fixed += lift(u)
	}
	c := f.demand.Crowd
	each := c.Each
	if each == 0 {
		each = adult
	}
	crowd := float64(c.People) * each
	lifts := make([]float64, len(f.places))
	for i, u := range f.places {
		lifts[i] = lift(u)
	}
	slices.SortFunc(lifts, func(a, b float64) int {
		switch {
		case a > b:
			return -1
		case a < b:
			return 1
		}
		return 0
	})
	sum := fixed
	for n := 0; ; n++ {
		// The least that losing one can take is a unit's lift, or none where none was chosen.
		lost := sum
		if n > 0 {
			lost -= lifts[n-1]
		}
		if sum > load+crowd && lost > load {
			return n
		}
		if n == len(lifts) {
			return n
		}
		sum += lifts[n]
	}
}

// all tries every choice of a size and hands over those that meet the demand.
// It reports false when the tries run out.
func (f *fewest) all(ctx context.Context, size int, meets func([]int, float64)) (bool, error) {
	c := make([]int, size)
	for i := range c {
		c[i] = i
	}
	for {
		margin, err := f.try(ctx, c)
		switch {
		case err == nil:
			meets(c, margin)
		case errors.Is(err, errTries):
			return false, nil
		case !errors.Is(err, errShort):
			return false, err
		}
		// The next choice in order.
		i := size - 1
		for i >= 0 && c[i] == len(f.places)-size+i {
			i--
		}
		if i < 0 {
			return true, nil
		}
		c[i]++
		for j := i + 1; j < size; j++ {
			c[j] = c[j-1] + 1
		}
	}
}

// try returns the lowest corner's height under the crowd if the choice meets
// the demand, and an error of class errShort if not.
func (f *fewest) try(ctx context.Context, chosen []int) (float64, error) {
	if err := ctx.Err(); err != nil {
		return 0, err
	}
	if f.done >= f.tries {
		return 0, errTries
	}
	f.done++
	p := f.build(chosen)
	if err := meet(p, f.demand.Load, "as loaded"); err != nil {
		return 0, err
	}
	for i := range p.Units {
		if p.Units[i].Flooded {
			continue
		}
		q := p.With()
		q.Units[i].Flooded = true
		if err := meet(q, f.demand.Lost, "with a unit lost"); err != nil {
			return 0, err
		}
	}
	k, err := p.crowded(f.demand.Crowd)
	if err != nil {
		return 0, err
	}
	var post Posting
	n := f.demand.Crowd.People
	if n > k.room() {
		return 0, (measure.Range{Lo: 0, Hi: float64(k.room()), Source: &measure.Source{
			Title: "room along the edge", Status: measure.Exact,
		}}).Check("People", float64(n))
	}
	for _, rules := range [2][]Rule{nil, f.demand.Edge} {
		broken, err := k.breaks(n, rules, &post)
		if err != nil {
			return 0, err
		}
		switch {
		case !broken:
		case post.Failure != nil:
			return 0, fmt.Errorf("%w with the crowd at the edge: %w", errShort, post.Failure)
		case post.Wet:
			return 0, fmt.Errorf("%w with the crowd at the edge: a corner is under water", errShort)
		default:
			return 0, fmt.Errorf("%w with the crowd at the edge: %s", errShort, post.Breaks)
		}
		if len(f.demand.Edge) == 0 {
			break
		}
	}
	s, err := k.worst(n)
	if err != nil {
		return 0, err
	}
	return k.height(s, n)
}

// meet returns nil where the platform rests with every corner dry and the rules
// hold, and an error of class errShort otherwise.
func meet(p *Platform, rules []Rule, when string) error {
	s, err := p.Settle()
	var failure *Failure
	if errors.As(err, &failure) {
		return fmt.Errorf("%w %s: %w", errShort, when, failure)
	}
	if err != nil {
		return err
	}
	var h float64
	var at r3.Vec
	if at, h, err = s.Lowest(); err != nil {
		return err
	}
	if !(h >= 0) {
		return fmt.Errorf("%w %s: the corner at %.2f, %.2f m is under water", errShort, when, at.X, at.Y)
	}
	for _, rule := range rules {
		check, err := rule(p.With())
		if errors.As(err, &failure) {
			return fmt.Errorf("%w %s: %w", errShort, when, failure)
		}
		if err != nil {
			return err
		}
		if check.Verdict() != measure.Holds {
			return fmt.Errorf("%w %s: %s", errShort, when, check)
		}
	}
	return nil
}
