package moor

import (
	"cmp"
	"math"
	"slices"
)

// A pair is a pull and a lift on the ground.
type pair struct{ pull, lift float64 }

// A front holds the pairs that can be worst for a ground: those that no other
// exceeds in both pull and lift, and the steepest.
type front struct {
	pairs    []pair
	steepest pair
	angle    float64
}

func (f *front) add(p pair) {
	if a := math.Atan2(p.lift, p.pull); len(f.pairs) == 0 || a > f.angle {
		f.steepest, f.angle = p, a
	}
	keep := f.pairs[:0]
	for _, o := range f.pairs {
		if o.pull >= p.pull && o.lift >= p.lift {
			return // o stands for it, and none that was passed is below it
		}
		if !(o.pull <= p.pull && o.lift <= p.lift) {
			keep = append(keep, o)
		}
	}
	f.pairs = append(keep, p)
	if len(f.pairs) > maxFront {
		f.thin()
	}
}

// maxFront keeps a front short.
const maxFront = 64

// thin lets the corner over each two neighbours stand for both: a little worse
// than either.
func (f *front) thin() {
	slices.SortFunc(f.pairs, func(a, b pair) int { return cmp.Compare(a.pull, b.pull) })
	var out []pair
	for i := 0; i < len(f.pairs); i += 2 {
		p := f.pairs[i]
		if i+1 < len(f.pairs) {
			p = pair{math.Max(p.pull, f.pairs[i+1].pull), math.Max(p.lift, f.pairs[i+1].lift)}
		}
		out = append(out, p)
	}
	f.pairs = out
}

func (f *front) worst() []pair { return append(f.pairs, f.steepest) }
