package hostile

import (
	"hash/fnv"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.org/floewright/internal/pinned"
)

// noisy are functions whose result near nothing is what rounding leaves.
var noisy = map[string]bool{
	"float.State.Tilt": true, "frame.Line.String": true, "frame.Solution.String": true, "frame/rack.Solution.String": true,
}

// TestPinned compares what each function makes of sound arguments, and of many near
// them, with what it made before.
func TestPinned(t *testing.T) {
	folder = t.TempDir()
	var got []string
	for _, c := range targets(t) {
		if _, slow := fewer[c.name]; slow || noisy[c.name] || strings.HasPrefix(c.name, "frame/sheet.") || strings.HasPrefix(c.name, "frame/dock.") {
			continue // pages and reports are held whole
		}
		h := fnv.New64a()
		r := rand.New(rand.NewPCG(1, uint64(len(c.name))))
		for range 40 {
			h.Write([]byte(c.near(r)))
		}
		got = append(got, c.name+" "+pinned.Hash(string(h.Sum(nil))))
	}
	for i, want := range pinned.Kept(t, "functions", got) {
		if got[i] != want {
			t.Errorf("%s, it was %s: if that is meant, run with -update-pins and say so under \"Numbers that changed\"", got[i], want)
		}
	}
}

// near calls the target with its arguments a little changed, and returns what it gave.
func (t *target) near(r *rand.Rand) string {
	var all []leaf
	if t.recv.IsValid() {
		all = leaves(t.recv, "", nil, false)
	}
	for _, a := range t.args {
		all = append(all, leaves(a, "", nil, false)...)
	}
	var restore []func()
	for _, l := range all {
		x := reflect.New(l.value.Type()).Elem()
		switch v := l.value; {
		case v.CanFloat() && v.Float() == 0:
			x.SetFloat([]float64{0, 0, 0, 0, 0.01, 0.3, 2}[r.IntN(7)])
		case v.CanFloat():
			x.SetFloat(v.Float() * []float64{0.25, 0.5, 0.9, 1, 1, 1, 1, 1.1, 2, 4}[r.IntN(10)])
		case v.CanInt():
			x.SetInt(v.Int() + []int64{0, 0, 0, 0, 0, -1, 1, 2}[r.IntN(8)])
		case v.Kind() == reflect.Bool:
			x.SetBool(v.Bool() != (r.IntN(6) == 0))
		default:
			continue
		}
		before := l.set(x)
		restore = append(restore, func() { l.set(before) })
	}
	var b strings.Builder
	results := t.call()
	if len(results) == 0 { // it changes its receiver
		results = []reflect.Value{t.recv}
	}
	for _, x := range results {
		pinned.Write(&b, x)
	}
	for i := len(restore) - 1; i >= 0; i-- {
		restore[i]()
	}
	return b.String()
}
