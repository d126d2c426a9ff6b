package hostile

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"example.org/floewright/lumber/measure"
)

type inner struct{ Deep []float64 }

type shape struct {
	X     float64
	N     int
	Inner *inner
	Any   any
	F     func() float64
	U     uint8
	hid   float64
}

// Whole gives NaN for one field that is spoilt, deep inside.
func (s shape) Whole() (inner, error) {
	if s.Inner == nil || math.IsNaN(s.Inner.Deep[1]) {
		return inner{[]float64{1, math.NaN()}}, nil
	}
	return *s.Inner, nil
}

// TestCatches proves on invented functions that each fault is seen, and that what is lawful
// is not.
func TestCatches(t *testing.T) {
	refuse := errors.New("refused")
	sound := func() shape {
		return shape{X: 1, N: 1, U: 1, Inner: &inner{[]float64{1, 2}}, Any: inner{[]float64{3}}, F: func() float64 { return 1 }, hid: 1}
	}
	for _, c := range []struct {
		name string
		f    any
		want string // in the first finding; "" for none
	}{
		{"panics on NaN", func(s shape) {
			if math.IsNaN(s.X) {
				panic("x")
			}
		}, "panics"},
		{"panics on a huge int", func(s shape) { _ = make([]int, 2)[min(max(s.N, 0), 2)] }, "panics"},
		{"panics on nothing in a pointer", func(s shape) { _ = s.Inner.Deep }, "panics"},
		{"panics on nothing in a function", func(s shape) { s.F() }, "panics"},
		{"panics inside an interface", func(s shape) {
			if d, ok := s.Any.(inner); ok && math.IsNaN(d.Deep[0]) {
				panic("x")
			}
		}, "panics"},
		{"NaN beside no error", func(s shape) (float64, error) { return s.X, nil }, "NaN without an error"},
		{"NaN in a list", func(s shape) (*inner, error) { return &inner{[]float64{0, s.X}}, nil }, "result 0.Deep[1]"},
		{"NaN by a finite number", func(x float64) float64 { return math.Log(x) }, "NaN without an error"},
		{"an infinity beside no error", func(x float64) (float64, error) {
			if !(math.Abs(x) <= math.MaxFloat64) {
				return 0, refuse
			}
			return 1 / x, nil
		}, "gives an infinity"},
		{"an infinity without an error to give", func(x float64) float64 { return 1 / x }, ""},
		{"NaN beside an error", func(s shape) (float64, error) { return math.NaN(), refuse }, ""},
		{"NaN in, NaN out", func(x float64) float64 { return x }, ""},
		{"a check without a value", func(s shape) (measure.Check, error) { return measure.Refuse("x", refuse), nil }, ""},
		{"panics on a huge count", func(s shape) { _ = make([]int, 9)[s.U] }, "panics"},
		{"gives a function that panics", func(s shape) func(float64) {
			return func(x float64) { _ = make([]int, 2)[int(min(max(x, 0), 5))] }
		}, "panics"},
		{"gives a function that gives NaN", func(s shape) []func(float64) float64 { return []func(float64) float64{math.Sqrt} }, "its function of -1 gives NaN"},
		{"gives a function that passes NaN on", func(s shape) func(float64) float64 { return math.Abs }, ""},
		{"harmless", func(s shape) (float64, error) { return s.hid, nil }, ""},
	} {
		f := reflect.ValueOf(c.f)
		arg := reflect.New(f.Type().In(0)).Elem()
		if arg.CanFloat() {
			arg.SetFloat(1)
		} else {
			arg.Set(reflect.ValueOf(sound()))
		}
		var now atomic.Pointer[string]
		found, _ := (&target{name: c.name, f: f, args: []reflect.Value{arg}, full: true}).try(&now)
		switch {
		case c.want == "" && len(found) > 0:
			t.Errorf("%s: reported %q", c.name, found[0].call+": "+found[0].what)
		case c.want != "" && (len(found) == 0 || !strings.Contains(found[0].what, c.want)):
			t.Errorf("%s: %d findings, want one that says %q", c.name, len(found), c.want)
		}
		if s, ok := arg.Interface().(shape); ok && (s.X != 1 || s.N != 1 || s.U != 1 || s.Inner == nil || s.Inner.Deep[1] != 2 || s.F == nil) {
			t.Errorf("%s: the argument was not put back: %+v", c.name, s)
		}
	}
	recv := reflect.New(reflect.TypeFor[shape]()).Elem()
	recv.Set(reflect.ValueOf(sound()))
	var now atomic.Pointer[string]
	found, _ := (&target{name: "Whole", recv: recv, full: true}).try(&now)
	if !slices.ContainsFunc(found, func(f finding) bool { return strings.HasSuffix(f.what, "result 0.Deep[1]") }) {
		t.Errorf("a method's NaN is not among %v", found)
	}
}
