package lumber

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A cutKind gathers the wants of one length; a cutSource is a clear stretch of a
// board that stands behind a bin.
type cutKind struct {
	length int64
	wants  []int // one entry for every piece
}

type cutSource struct {
	stock, board int // board: number of the board in hand; none: any to buy
	stretch
}

// A cutJob is a problem with what its numbers stand for.
type cutJob struct {
	cutProblem
	kinds   []cutKind
	sources [][]cutSource // of every bin
	kerf    int64
}

// section plans one section and adds it to the plan.
func (c *Cuts) section(ctx context.Context, key, name string, wants []Want, stock []Stock, saw Saw) error {
	job, err := newCutJob(key, name, wants, stock, saw)
	if err != nil {
		return err
	}
	plan, err := solveCut(ctx, &job.cutProblem)
	if err != nil {
		return fmt.Errorf("cutting %s: %w", name, err)
	}
	c.write(job, plan, name, wants, stock, saw)
	return nil
}

// newCutJob gathers kinds and bins of a section.
func newCutJob(key, name string, wants []Want, stock []Stock, saw Saw) (*cutJob, error) {
	j := &cutJob{kerf: unitsUp(saw.Kerf)}
	for i, w := range wants {
		if sectionKey(w.Section) != key {
			continue
		}
		length := unitsUp(w.Length)
		at := slices.IndexFunc(j.kinds, func(k cutKind) bool { return k.length == length })
		if at < 0 {
			at = len(j.kinds)
			j.kinds = append(j.kinds, cutKind{length: length})
		}
		j.kinds[at].wants = append(j.kinds[at].wants, slices.Repeat([]int{i}, w.Count)...)
	}
	slices.SortFunc(j.kinds, func(a, b cutKind) int { return cmp.Compare(b.length, a.length) })
	for _, k := range j.kinds {
		j.size = append(j.size, k.length+j.kerf)
		j.need = append(j.need, int64(len(k.wants)))
	}
	if !j.gather(key, stock, saw) {
		return nil, &measure.Error{
			Field: "Section", Text: name, Class: measure.ErrName, Want: "the section of some stock",
		}
	}
	if n := max(len(j.kinds), len(j.bins)); n > cutSegments {
		return nil, &measure.Error{
			Field: "lengths of section " + name, Value: float64(n), Class: measure.ErrRange,
			Range: measure.Range{Lo: 1, Hi: float64(cutSegments), Source: srcCut},
		}
	}
	return j, j.price(wants)
}

// gather makes the bins: every length to buy, and the clear stretches in hand,
// those of equal length together. What holds no piece is left out.
func (j *cutJob) gather(key string, stock []Stock, saw Saw) (any bool) {
	least := j.size[len(j.size)-1]
	for i, s := range stock {
		if sectionKey(s.Section) != key {
			continue
		}
		any = true
		for _, str := range saw.clear(s.Length, s.Defects) {
			room := str.to - str.from + j.kerf
			if room < least {
				continue
			}
			if s.Price > 0 {
				j.bins = append(j.bins, cutBin{room, int64(math.Round(s.Price * 100)), none})
				j.sources = append(j.sources, []cutSource{{i, none, str}})
			}
			if s.InHand == 0 {
				continue
			}
			at := slices.IndexFunc(j.bins, func(b cutBin) bool { return b.room == room && b.limit != none })
			if at < 0 {
				at = len(j.bins)
				j.bins = append(j.bins, cutBin{room, 0, 0})
				j.sources = append(j.sources, nil)
			}
			for board := range s.InHand {
				j.bins[at].limit++
				j.sources[at] = append(j.sources[at], cutSource{i, board, str})
			}
		}
	}
	return any
}

// price sets the step of the prices, and what it costs to leave a piece uncut
// that is for sale nowhere: more than all the rest can cost. A piece that nothing
// holds at all is an error.
func (j *cutJob) price(wants []Want) error {
	var step, all, longest int64
	j.miss = make([]int64, len(j.kinds))
	for _, b := range j.bins {
		step = gcd(step, b.price)
		longest = max(longest, b.room)
	}
	step = max(step, 1)
	var errs []error
	for i, size := range j.size {
		least := int64(0)
		for _, b := range j.bins {
			if b.limit == none && b.room >= size && (least == 0 || b.price < least) {
				least = b.price
			}
		}
		if least == 0 {
			j.miss[i] = 1
		}
		all += least * j.need[i]
		if size > longest {
			w := wants[j.kinds[i].wants[0]]
			errs = append(errs, &measure.Error{
				Field: fmt.Sprintf("length of %q of section %s", w.Name, w.Section),
				Kind:  measure.Length, Value: w.Length, Class: measure.ErrRange,
				Why: "no stock holds it between its trimmed ends and its defects",
				Range: measure.Range{
					Kind: measure.Length, OpenLo: true, Hi: metres(max(0, longest-j.kerf)),
					Source: &measure.Source{Title: "the longest clear stretch of the stock", Status: measure.Exact},
				},
			})
		}
	}
	j.step = step
	for i := range j.miss {
		j.miss[i] *= (all/step + 1) * step
	}
	return errors.Join(errs...)
}
