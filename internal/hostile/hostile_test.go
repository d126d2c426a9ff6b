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
	mostEach  = 600              // hostile calls of one function, spread over all its places
	shortEach = 60
)

// A target is one exported function or method with sound arguments.
type target struct {
	name string
	f    reflect.Value
	args []reflect.Value // settable; of a method the receiver is already bound
	recv reflect.Value   // settable pointer's element, or invalid
	meth int
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
			recv.Set(sound(t, p.Elem(), 0))
			name := typ.name + "." + p.Method(i).Name
			out = append(out, &target{name: name, recv: recv, meth: i, args: arguments(t, name, recv.Addr().Method(i).Type())})
		}
	}
	return out
}

// arguments makes sound arguments: by hand where sane_test.go names the function, by type
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

// try calls the target in every hostile way, announcing each call in now, and returns
// whether the sound call gave no error and what must not have happened.
func (t *target) try(now *atomic.Pointer[string]) (soundly bool, found []finding) {
	once := func(how string, finite bool) (ok bool) {
		now.Store(&how)
		defer func() {
			if p := recover(); p != nil {
				found = append(found, finding{t.name, how, fmt.Sprintf("panics: %v\n%s", p, where(debug.Stack()))})
			}
		}()
		results := t.call()
		if n := len(results); n > 0 && !strings.HasSuffix(t.name, ".Unwrap") && results[n-1].Type() == errorType {
			if !results[n-1].IsNil() {
				return false
			}
			results = results[:n-1]
		} else if !finite {
			return true // NaN in, NaN out: there is no error to give
		}
		for i, r := range results {
			if p := nan(r, fmt.Sprintf("result %d", i), 0); p != "" {
				found = append(found, finding{t.name, how, "gives NaN without an error: " + p})
			}
		}
		return true
	}
	if n, ok := fewer[t.name]; ok && n == 0 && testing.Short() {
		return true, nil
	}
	soundly = once("sound arguments", true)
	var all []leaf
	if t.recv.IsValid() {
		all = leaves(t.recv, "receiver", nil, false)
	}
	for i, a := range t.args {
		all = append(all, leaves(a, fmt.Sprintf("argument %d", i), nil, false)...)
	}
	type spoil struct {
		leaf
		x reflect.Value
	}
	var spoils []spoil
	for _, l := range all {
		for _, x := range l.spoils(keepTexts[t.name]) {
			spoils = append(spoils, spoil{l, x})
		}
	}
	most := mostEach
	if testing.Short() {
		most = shortEach
	}
	if n, ok := fewer[t.name]; ok {
		most = min(most, n)
	}
	if most == 0 {
		return soundly, found
	}
	stride := max(1, (len(spoils)+most-1)/most)
	for i := 0; i < len(spoils); i += stride {
		s := spoils[i]
		before := s.set(s.x)
		finite := !s.isFloat() || !math.IsNaN(s.x.Float()) && !math.IsInf(s.x.Float(), 0)
		once(fmt.Sprintf("%s = %#v", s.path, s.x), finite)
		s.set(before)
	}
	if most < len(floats) {
		return soundly, found
	}
	for _, x := range floats { // in all numbers at once
		var restore []func()
		for _, l := range all {
			if l.isFloat() {
				before := l.set(reflect.ValueOf(x).Convert(l.value.Type()))
				restore = append(restore, func() { l.set(before) })
			}
		}
		once(fmt.Sprintf("all numbers = %g", x), !math.IsNaN(x) && !math.IsInf(x, 0))
		slices.Reverse(restore)
		for _, f := range restore {
			f()
		}
	}
	return soundly, found
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

// TestHostileInputs calls everything.
func TestHostileInputs(t *testing.T) {
	var failing []string
	folder = t.TempDir()
	calls := targets(t)
	sounds := 0
	known := map[string]bool{}
	for _, c := range calls {
		var now atomic.Pointer[string]
		type outcome struct {
			sound bool
			found []finding
		}
		done := make(chan outcome, 1)
		start := time.Now()
		go func() {
			s, f := c.try(&now)
			done <- outcome{s, f}
		}()
		var last *string
		since := start
		tick := time.NewTicker(deadline / 50)
	wait:
		for {
			select {
			case o := <-done:
				if o.sound {
					sounds++
				} else {
					failing = append(failing, c.name)
				}
				for i, f := range o.found {
					if open[f.name] != "" || lawful[f.name] != "" && strings.HasPrefix(f.what, "gives NaN") {
						known[f.name] = true
						continue
					}
					if i == 8 {
						t.Errorf("%s: and %d more like these", f.name, len(o.found)-i)
						break
					}
					t.Errorf("%s with %s %s", f.name, f.call, f.what)
				}
				break wait
			case <-tick.C:
				if at := now.Load(); at != last {
					last, since = at, time.Now()
				} else if time.Since(since) > deadline {
					t.Fatalf("%s with %s hangs", c.name, *last)
				}
			}
		}
		tick.Stop()
		if d := time.Since(start); d > 300*time.Millisecond {
			t.Logf("%s took %v", c.name, d.Round(time.Millisecond))
		}
	}
	for _, list := range []map[string]string{lawful, open} {
		for name := range list {
			if !known[name] && !testing.Short() {
				t.Errorf("%s is excused and does nothing wrong, or is gone", name)
			}
		}
	}
	if 20*sounds < 17*len(calls) { // 85 %
		t.Errorf("only %d of %d functions and methods accept the arguments that ought to be sound: make some by hand for %s", sounds, len(calls), strings.Join(failing, ", "))
	}
	t.Logf("%d functions and methods, %d of them with arguments that they accept; not: %s", len(calls), sounds, strings.Join(failing, ", "))
}
