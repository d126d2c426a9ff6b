package hostile

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"strings"
	"sync/atomic"
	"testing"
)

const (
	// several is how often each function is called with two or three places spoilt at
	// once; those of fewer less often.
	several = 400

	seed = 1 // another one tries others
	near = 4 // a place's neighbours in its struct, as often drawn as all others
)

// tryTogether calls the target n times with two or three places spoilt at once, which are
// drawn by its name, and returns what must not have happened.
func (t *target) tryTogether(now *atomic.Pointer[string], n int) []finding {
	r := t.trial(now)
	if len(r.leafs) < 2 {
		return nil // one place alone is tried with all values
	}
	h := fnv.New64a()
	h.Write([]byte(t.name))
	draw := rand.New(rand.NewPCG(seed, h.Sum64()))
	for range n {
		var all []spoil
		var how []string
		at := draw.IntN(len(r.leafs))
		for range 2 + draw.IntN(2) {
			l := r.leafs[at]
			if with := l.spoils(keepTexts[t.name]); len(with) > 0 {
				s := spoil{l, with[draw.IntN(len(with))]}
				all, how = append(all, s), append(how, fmt.Sprintf("%s = %#v", s.path, s.x))
			}
			if draw.IntN(2) == 0 {
				at = min(max(at+draw.IntN(2*near+1)-near, 0), len(r.leafs)-1)
			} else {
				at = draw.IntN(len(r.leafs))
			}
		}
		r.spoilt(strings.Join(how, ", "), all...)
	}
	return r.found
}

// TestSeveralSpoilt calls everything with two or three places spoilt at once: what one
// check lets through meets what another one does.
func TestSeveralSpoilt(t *testing.T) {
	folder = t.TempDir()
	known := map[string]bool{}
	for _, c := range targets(t) {
		n := several
		if testing.Short() {
			n = several / 20
		}
		if most, slow := fewer[c.name]; slow {
			n = min(n, most)
		}
		watch(t, c.name, func(now *atomic.Pointer[string]) { report(t, c.tryTogether(now, n), known) })
	}
}
