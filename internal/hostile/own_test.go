package hostile

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber/measure"
)

var sourceType = reflect.TypeFor[*measure.Source]()

// given are functions whose result holds lists of what they were given or called on, so
// that who writes into them writes into his own.
var given = map[string]string{
	"float.Failure.Check":         "its argument, turned into a check of words",
	"float/moor.Survey.Worst":     "one of the survey's checks",
	"frame.Beam.Envelope":         "the loads of its cases",
	"frame/dock.Envelope.Diagram": "one of the envelope's checks",
	"frame/dock.Report.Envelope":  "the report's envelope",
	"frame/dock.Topic.Worst":      "one of the topic's checks",
	"frame/layout.New":            "the drawing",
	"frame/sheet.Of":              "checks of the report",
	"ice.Compare":                 "the loads, each beside what the rules say of it",
}

// TestResultsAreTheCallers writes over every list and map that a function hands out, and
// calls it again: what it gives then must be what it gave before, or the first caller
// has changed what all others are told.
func TestResultsAreTheCallers(t *testing.T) {
	folder = t.TempDir()
	for _, c := range targets(t) {
		switch what := c.sharing(); {
		case what != "" && given[c.name] == "":
			t.Error(what)
		case what == "" && given[c.name] != "":
			t.Errorf("%s is said to hand out what it was given, and does not", c.name)
		}
	}
}

// sharing calls the target, writes over the lists it gave, and says what the next call
// makes of that; all is then as it was.
func (t *target) sharing() string {
	first := t.call()
	before := printed(first)
	var restore []func()
	for _, x := range first {
		restore = append(restore, overwrite(x, false, 0)...)
	}
	if len(restore) == 0 {
		return ""
	}
	after := printed(t.call())
	for i := len(restore) - 1; i >= 0; i-- {
		restore[i]()
	}
	if after == before {
		return ""
	}
	at := 0
	for at < min(len(before), len(after)) && before[at] == after[at] {
		at++
	}
	near := func(s string) string { return s[max(0, at-80):min(len(s), at+80)] }
	return fmt.Sprintf("%s: a caller who writes into its lists changes what the next one gets: …%s…, it was …%s…", t.name, near(after), near(before))
}

func printed(results []reflect.Value) string {
	var b strings.Builder
	for _, x := range results {
		pinned.Write(&b, x)
	}
	return b.String()
}

// overwrite changes every number and word in the lists and maps of v, listed being true
// within one, and returns what puts them back. Sources are shared, and say so.
func overwrite(v reflect.Value, listed bool, depth int) (restore []func()) {
	if !v.IsValid() || depth > 8 || v.Type() == sourceType || v.Type() == errorType {
		return nil
	}
	if listed && v.CanSet() {
		old := reflect.New(v.Type()).Elem()
		old.Set(v)
		switch {
		case v.CanFloat():
			v.SetFloat(v.Float() + 7)
		case v.CanInt():
			v.SetInt(v.Int() ^ 1)
		case v.CanUint():
			v.SetUint(v.Uint() ^ 1)
		case v.Kind() == reflect.String:
			v.SetString(v.String() + "!")
		case v.Kind() == reflect.Bool:
			v.SetBool(!v.Bool())
		}
		if v.Comparable() && !v.Equal(old) {
			return []func(){func() { v.Set(old) }}
		}
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return overwrite(v.Elem(), listed, depth+1)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				restore = append(restore, overwrite(v.Field(i), listed, depth+1)...)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			restore = append(restore, overwrite(v.Index(i), true, depth+1)...)
		}
	case reflect.Array:
		for i := range v.Len() {
			restore = append(restore, overwrite(v.Index(i), listed, depth+1)...)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			old := v.MapIndex(k)
			v.SetMapIndex(k, reflect.Zero(v.Type().Elem()))
			restore = append(restore, func() { v.SetMapIndex(k, old) })
		}
	}
	return restore
}
