package dock_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// Whatever single value of a demo plan is replaced by whatever text, the plan is
// refused with a place or reported without a NaN that has no reason.
func FuzzVary(f *testing.F) {
	f.Add(false, uint(3), "unknown")
	f.Add(true, uint(40), "0 in")
	f.Add(true, uint(12), "1/0 ft")
	paths := []string{}
	for _, e := range plan.Explain() {
		for _, i := range []string{"[1]", "[2]"} {
			paths = append(paths, strings.ReplaceAll(e.Path, "[]", i))
		}
	}
	for i := 0; i < len(paths); i += 61 { // a report each: the rest is for the fuzzer and TestUnknownNeverImproves
		f.Add(i%2 == 0, uint(i), "unknown")
	}
	f.Fuzz(func(t *testing.T, swim bool, at uint, value string) {
		name := "work"
		if swim {
			name = "swim"
		}
		p, err := plan.Read(name, strings.NewReader(demoText(t, name)))
		if err != nil {
			t.Fatal(err)
		}
		p, err = p.Vary(paths[at%uint(len(paths))], value)
		if err != nil {
			var all plan.Errors
			if !errors.As(err, &all) {
				t.Fatalf("%T is no list of errors", err)
			}
			return
		}
		d, err := dock.Build(p)
		if err != nil {
			return
		}
		sound(t, reported(t, d, measure.SI))
	})
}

// A plan of which any part is cut away is refused or reported.
func FuzzRead(f *testing.F) {
	f.Add(uint(100), uint(300))
	f.Add(uint(1500), uint(40))
	f.Fuzz(func(t *testing.T, from, size uint) {
		text := demoText(t, "swim")
		i := int(from % uint(len(text)))
		j := min(len(text), i+int(size%500))
		d, err := dock.Read("f", strings.NewReader(text[:i]+text[j:]))
		if err != nil {
			var all plan.Errors
			if !errors.As(err, &all) || len(all) == 0 {
				t.Fatalf("%T is no list of errors", err)
			}
			return
		}
		sound(t, reported(t, d, measure.US))
	})
}
