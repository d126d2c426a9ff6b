package hostile

import (
	"fmt"
	"math"
	"reflect"
	"runtime/debug"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"example.org/floewright/lumber/measure"
)

// A named is a function, or a pointer to a zero value of a type.
type named struct {
	name string
	item any
}

var (
	checkType = reflect.TypeFor[measure.Check]()
	errorType = reflect.TypeFor[error]()
)

const (
	deadline  = 20 * time.Second // of one call; on a busy machine with the race detector
	shortEach = 60               // hostile calls of one function, in a short run
)

// A target is one exported function or method with sound arguments.
type target struct {
	name string
	f    reflect.Value
	args []reflect.Value // settable; of a method the receiver is already bound
	recv reflect.Value   // settable pointer's element, or invalid
	meth int
	full bool // every value in every place, in a short run too
}

// call calls the target once.
func (t *target) call() []reflect.Value {
	f := t.f
	if t.recv.IsValid() {
		f = t.recv.Addr().Method(t.meth)
	}
	if f.Type().IsVariadic() {
		return f.CallSlice(t.args)
	}
	return f.Call(t.args)
}

// targets lists every exported function, and every method of every exported type.
func targets(t *testing.T) []*target {
	var out []*target
	for _, fn := range functions {
		f := reflect.ValueOf(fn.item)
		out = append(out, &target{name: fn.name, f: f, args: arguments(t, fn.name, f.Type())})
	}
	for _, typ := range types {
		p := reflect.TypeOf(typ.item)
		for i := range p.NumMethod() {
			recv := reflect.New(p.Elem()).Elem()
			name := typ.name + "." + p.Method(i).Name
			if x, ok := received()[name]; ok {
				recv.Set(reflect.ValueOf(x))
			} else {
				recv.Set(sound(t, p.Elem(), 0))
			}
			out = append(out, &target{name: name, recv: recv, meth: i, args: arguments(t, name, recv.Addr().Method(i).Type())})
		}
	}
	return out
}

// arguments makes sound arguments: by hand where hand_test.go names the function, by type
// otherwise.
func arguments(t *testing.T, name string, f reflect.Type) []reflect.Value {
	made := byHand()[name]
	args := make([]reflect.Value, f.NumIn())
	for i := range args {
		args[i] = reflect.New(f.In(i)).Elem()
		if i < len(made) {
			args[i].Set(reflect.ValueOf(made[i]))
			continue
		}
		args[i].Set(sound(t, f.In(i), 0))
	}
	return args
}

// A finding is one thing that must not happen.
type finding struct{ name, call, what string }

// A trial is a target under hostile calls.
type trial struct {
	*target
	now   *atomic.Pointer[string] // the call that runs
	leafs []leaf                  // the places to spoil
	found []finding
	turn  int
}

func (t *target) trial(now *atomic.Pointer[string]) *trial {
	r := &trial{target: t, now: now}
	if t.recv.IsValid() {
		r.leafs = leaves(t.recv, "receiver", nil, false)
	}
	for i, a := range t.args {
		r.leafs = append(r.leafs, leaves(a, fmt.Sprintf("argument %d", i), nil, false)...)
	}
	return r
}

// once announces a call, makes it, and records what must not happen. Functions that come
// back are called too.
func (r *trial) once(how string, finite bool) (refused error, ok bool) {
	r.now.Store(&how)
	defer func() {
		if p := recover(); p != nil {
			r.found = append(r.found, finding{r.name, how, fmt.Sprintf("panics: %v\n%s", p, where(debug.Stack()))})
		}
	}()
	refused = r.judge(how, "", r.call(), finite)
	return refused, true
}

// judge looks for NaN in what a call gave beside no error.
func (r *trial) judge(how, by string, results []reflect.Value, finite bool) error {
	infinities := false // where there is an error to give, and no infinity was given
	if n := len(results); n > 0 && !strings.HasSuffix(r.name, ".Unwrap") && results[n-1].Type() == errorType {
		if !results[n-1].IsNil() {
			return results[n-1].Interface().(error)
		}
		results = results[:n-1]
		infinities = finite && endless[r.name] == "" && by == ""
	} else if !finite {
		results = nil // NaN in, NaN out: there is no error to give
	}
	for i, x := range results {
		if p := nan(x, fmt.Sprintf("result %d", i), 0, false); p != "" {
			r.found = append(r.found, finding{r.name, how, by + "gives NaN without an error: " + p})
		} else if p := nan(x, fmt.Sprintf("result %d", i), 0, infinities); p != "" {
			r.found = append(r.found, finding{r.name, how, by + "gives an infinity without an error: " + p})
		}
		if by == "" {
			r.returned(how, x)
		}
	}
	return nil
}

// returned calls the functions that came back, alone or in a list, with sound arguments
// and then with one hostile number in all of them, another one each time.
func (r *trial) returned(how string, x reflect.Value) {
	switch x.Kind() {
	case reflect.Slice:
		for _, i := range []int{0, x.Len() - 1} {
			if i >= 0 && i < x.Len() && x.Index(i).Kind() == reflect.Func {
				r.returned(how, x.Index(i))
			}
		}
	case reflect.Func:
		if x.IsNil() {
			return
		}
		args := make([]reflect.Value, x.Type().NumIn())
		for i := range args {
			args[i] = reflect.New(x.Type().In(i)).Elem()
			args[i].Set(sound(nil, x.Type().In(i), 0))
		}
		r.judge(how, "its function ", x.Call(args), true)
		bad := floats[r.turn%len(floats)]
		r.turn++
		for _, a := range args {
			switch {
			case a.CanFloat():
				a.SetFloat(bad)
			case a.Kind() == reflect.Pointer:
				a.SetZero()
			}
		}
		r.judge(how, fmt.Sprintf("its function of %g ", bad), x.Call(args), !math.IsNaN(bad) && !math.IsInf(bad, 0))
	}
}

// A spoil is a hostile value for a place.
type spoil struct {
	leaf
	x reflect.Value
}

// finite reports whether the value is anything but NaN and the infinities.
func (s spoil) finite() bool {
	return !s.isFloat() || !math.IsNaN(s.x.Float()) && !math.IsInf(s.x.Float(), 0)
}

// call calls with the values in their places, and puts back what was there.
func (r *trial) spoilt(how string, all ...spoil) {
	finite := true
	before := make([]reflect.Value, len(all))
	for i, s := range all {
		finite = finite && s.finite()
		before[i] = s.set(s.x)
	}
	r.once(how, finite)
	for i, s := range slices.Backward(all) {
		s.set(before[i])
	}
}

// try calls the target in every hostile way, announcing each call in now, and returns
// what must not have happened, and why the sound call was refused.
func (t *target) try(now *atomic.Pointer[string]) (found []finding, refused error) {
	r := t.trial(now)
	n, slow := fewer[t.name]
	if slow && n == 0 && testing.Short() {
		return nil, nil
	}
	refused, ok := r.once("sound arguments", true)
	if !ok {
		refused = fmt.Errorf("it panics")
	}
	var spoils []spoil
	for _, l := range r.leafs {
		for _, x := range l.spoils(keepTexts[t.name]) {
			spoils = append(spoils, spoil{l, x})
		}
	}
	most := len(spoils)
	if testing.Short() && !t.full {
		most = min(most, shortEach)
	}
	if slow {
		most = min(most, n)
	}
	if most == 0 {
		return r.found, refused
	}
	stride := max(1, (len(spoils)+most-1)/most)
	for i := 0; i < len(spoils); i += stride {
		s := spoils[i]
		r.spoilt(fmt.Sprintf("%s = %#v", s.path, s.x), s)
	}
	if slow && n < len(floats) {
		return r.found, refused
	}
	for _, x := range floats { // in all numbers at once
		var all []spoil
		for _, l := range r.leafs {
			if l.isFloat() {
				all = append(all, spoil{l, reflect.ValueOf(x).Convert(l.value.Type())})
			}
		}
		r.spoilt(fmt.Sprintf("all numbers = %g", x), all...)
	}
	return r.found, refused
}

// where returns the first lines of the library in a stack.
func where(stack []byte) string {
	var out []string
	for line := range strings.Lines(string(stack)) {
		if strings.Contains(line, ".go:") && !strings.Contains(line, "_test.go:") && !strings.Contains(line, "/src/") && len(out) < 3 {
			out = append(out, strings.TrimSpace(line))
		}
	}
	return strings.Join(out, "\n")
}

// watch runs f in a goroutine and ends the test where a single call of it hangs.
func watch(t *testing.T, name string, f func(now *atomic.Pointer[string])) {
	t.Helper()
	var now atomic.Pointer[string]
	done := make(chan struct{})
	start := time.Now()
	go func() {
		defer close(done)
		f(&now)
	}()
	var last *string
	since := start
	tick := time.NewTicker(deadline / 50)
	defer tick.Stop()
	for {
		select {
		case <-done:
			if d := time.Since(start); d > 300*time.Millisecond {
				t.Logf("%s took %v", name, d.Round(time.Millisecond))
			}
			return
		case <-tick.C:
			if at := now.Load(); at != last {
				last, since = at, time.Now()
			} else if time.Since(since) > deadline {
				t.Fatalf("%s with %s hangs", name, *last)
			}
		}
	}
}

// report says what was found and is not excused, and remembers in known what is.
func report(t *testing.T, found []finding, known map[string]bool) {
	t.Helper()
	for i, f := range found {
		if open[f.name] != "" || lawful[f.name] != "" && strings.Contains(f.what, "gives NaN") {
			known[f.name] = true
			continue
		}
		if i == 8 {
			t.Errorf("%s: and %d more like these", f.name, len(found)-i)
			break
		}
		t.Errorf("%s with %s %s", f.name, f.call, f.what)
	}
}

// TestHostileInputs calls everything, with one place spoilt at a time, and with all.
func TestHostileInputs(t *testing.T) {
	folder = t.TempDir()
	calls := targets(t)
	known := map[string]bool{}
	for _, c := range calls {
		watch(t, c.name, func(now *atomic.Pointer[string]) {
			found, refused := c.try(now)
			report(t, found, known)
			switch why := refusing[c.name]; {
			case refused != nil && why == "":
				t.Errorf("%s refuses the arguments that ought to be sound: make some by hand: %v", c.name, refused)
			case refused == nil && why != "" && !testing.Short():
				t.Errorf("%s is said to refuse any arguments, and takes some", c.name)
			}
		})
	}
	for _, list := range []map[string]string{lawful, open} {
		for name := range list {
			if !known[name] && !testing.Short() {
				t.Errorf("%s is excused and does nothing wrong, or is gone", name)
			}
		}
	}
	t.Logf("%d functions and methods", len(calls))
}
