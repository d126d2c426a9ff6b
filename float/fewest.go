package float

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
)

// A Demand is what a choice of drums must meet. The platform must find a rest
// with every corner of the deck dry in all three, and the rules must hold.
//
// A rule that seeks what the deck carries ("20 psf over the deck") takes a hundred times
// as long as one that judges the dock under that load ("deck edge dry", the other selected;
// see [Criterion.Rule]); of many places that is the whole time.
type Demand struct {
	Load  []Rule // as loaded
	Crowd Crowd  // with these people at any place along the edge:
	Edge  []Rule
	Lost  []Rule // with each unit lost in turn

	// Tries bounds the choices looked at; 0 means 20 000. A count, not a clock,
	// so that every machine gives the same answer.
	Tries int
}

// A Choice is the fewest units that meet a demand.
type Choice struct {
	Places   []int     // into the places offered
	Platform *Platform // with units there
	Margin   float64   // height of the lowest corner with the crowd at its worst place, m

	Bound  int  // no choice of fewer units meets the demand
	Proven bool // Bound is len(Places)
	Tries  int  // choices looked at
}

// ErrNoChoice says that no choice of the places offered meets the demand, or
// that none was found within the tries.
var ErrNoChoice = errors.New("no choice of places meets the demand")

// Fewest returns the smallest choice of places whose units, with those the platform
// has, carry its load, a crowd at the edge, and the loss of any one unit; among
// choices of that size the one that keeps the edge highest under the crowd, each
// judged by [Platform.Settle] and the rules. It looks through all choices in order of
// size. When the tries run out it returns the best found with what is proven so far.
func (p *Platform) Fewest(ctx context.Context, places []Unit, d Demand) (Choice, error) {
	f := &fewest{base: p, places: places, demand: d, tries: d.Tries}
	if err := f.check(); err != nil {
		return Choice{}, err
	}
	best := Choice{}
	found := false

	// A first answer: all places, then one after another taken away.
	chosen := make([]int, len(places))
	for i := range chosen {
		chosen[i] = i
	}
	why := error(nil)
	for len(chosen) > 0 {
		margin, err := f.try(ctx, chosen)
		if errors.Is(err, errShort) || errors.Is(err, errTries) {
			why = err
			break
		}
		if err != nil {
			return Choice{}, err
		}
		best = Choice{Places: slices.Clone(chosen), Margin: margin}
		found = true
		next, top := -1, math.Inf(-1)
		for i := range chosen {
			less := slices.Delete(slices.Clone(chosen), i, i+1)
			m, err := f.try(ctx, less)
			if err == nil && m > top+1e-9 {
				next, top = i, m
			} else if err != nil && !errors.Is(err, errShort) && !errors.Is(err, errTries) {
				return Choice{}, err
			}
		}
		if next < 0 {
			break
		}
		chosen = slices.Delete(chosen, next, next+1)
	}

	// Then every choice of fewer, smallest first, and of the same size.
	most := len(places)
	if found {
		most = len(best.Places)
	}
	best.Bound = f.least()
	for size := best.Bound; size <= most; size++ {
		complete, err := f.all(ctx, size, func(c []int, margin float64) {
			if !found || len(c) < len(best.Places) || margin > best.Margin+1e-9 {
				best.Places, best.Margin, found = slices.Clone(c), margin, true
			}
		})
		if err != nil {
			return Choice{}, err
		}
		if found && len(best.Places) == size {
			best.Proven = best.Bound == size
			break
		}
		if !complete {
			break
		}
		best.Bound = size + 1
	}
	best.Tries = f.done
	if !found {
		if why == nil {
			why = errShort
		}
		return Choice{Bound: best.Bound, Tries: f.done}, fmt.Errorf("%w: %d of them looked at; with all: %w", ErrNoChoice, f.done, why)
	}
	best.Platform = f.build(best.Places)
	return best, nil
}
