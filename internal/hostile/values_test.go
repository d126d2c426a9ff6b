package hostile

import (
	"fmt"
	"math"
	"reflect"
)

// floats are what no builder means, ints likewise, texts too.
var (
	floats = []float64{
		math.NaN(), math.Inf(1), math.Inf(-1), 0, math.Copysign(0, -1), -1,
		math.SmallestNonzeroFloat64, -math.SmallestNonzeroFloat64, 1e-300, 1e30, math.MaxFloat64, -math.MaxFloat64,
	}
	ints  = []int64{0, -1, 1 << 31, math.MaxInt64, math.MinInt64}
	uints = []uint64{0, 1 << 7, math.MaxUint64}
	texts = []string{"", "\x00", "NaN"}
)

// A leaf is one place in an argument or a receiver that can be spoilt.
type leaf struct {
	path  string
	value reflect.Value // settable
	after []func()      // writes copies back, innermost first
}

// set stores x and returns what was there.
func (l leaf) set(x reflect.Value) (before reflect.Value) {
	before = reflect.New(l.value.Type()).Elem()
	before.Set(l.value)
	l.value.Set(x)
	for _, f := range l.after {
		f()
	}
	return before
}

// spoils returns the values that spoil the leaf, in its type.
func (l leaf) spoils(noTexts bool) []reflect.Value {
	t := l.value.Type()
	var out []reflect.Value
	switch t.Kind() {
	case reflect.Float32, reflect.Float64:
		for _, x := range floats {
			out = append(out, reflect.ValueOf(x).Convert(t))
		}
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		for _, n := range ints {
			out = append(out, reflect.ValueOf(n).Convert(t))
		}
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		for _, n := range uints {
			out = append(out, reflect.ValueOf(n).Convert(t))
		}
	case reflect.Bool:
		out = append(out, reflect.ValueOf(!l.value.Bool()).Convert(t))
	case reflect.String:
		if noTexts {
			return nil
		}
		for _, s := range texts {
			out = append(out, reflect.ValueOf(s).Convert(t))
		}
	default: // nothing where something was
		out = append(out, reflect.Zero(t))
	}
	return out
}

// isFloat reports whether the leaf is a number of floating point.
func (l leaf) isFloat() bool { return l.value.CanFloat() }

// leaves finds the places to spoil in v, which is settable: numbers, truths and texts, and
// lists, pointers, functions and interfaces as a whole. Of a list it enters both ends.
func leaves(v reflect.Value, path string, after []func(), whole bool) []leaf {
	here := leaf{path, v, after}
	switch v.Kind() {
	case reflect.Float32, reflect.Float64, reflect.Bool, reflect.String,
		reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64,
		reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		return []leaf{here}
	case reflect.Struct:
		var out []leaf
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				out = append(out, leaves(v.Field(i), path+"."+f.Name, after, true)...)
			}
		}
		return out
	case reflect.Array:
		var out []leaf
		for i := range v.Len() {
			out = append(out, leaves(v.Index(i), fmt.Sprintf("%s[%d]", path, i), after, true)...)
		}
		return out
	case reflect.Slice:
		var out []leaf
		if v.Len() > 0 {
			out = append(out, here)
			out = append(out, leaves(v.Index(0), path+"[0]", after, true)...)
		}
		if n := v.Len(); n > 1 {
			out = append(out, leaves(v.Index(n-1), fmt.Sprintf("%s[%d]", path, n-1), after, true)...)
		}
		return out
	case reflect.Pointer:
		if v.IsNil() {
			return nil
		}
		out := leaves(v.Elem(), path, after, true)
		if whole {
			out = append(out, here)
		}
		return out
	case reflect.Interface:
		if v.IsNil() {
			return nil
		}
		var out []leaf
		if k := v.Elem().Kind(); k == reflect.Struct || k == reflect.Float64 {
			copied := reflect.New(v.Elem().Type()).Elem()
			copied.Set(v.Elem())
			back := append([]func(){func() { v.Set(copied) }}, after...)
			out = leaves(copied, path, back, true)
		}
		if whole {
			out = append(out, here)
		}
		return out
	case reflect.Func, reflect.Map:
		if v.IsNil() || !whole {
			return nil
		}
		return []leaf{here}
	}
	return nil
}

// nan returns the path of a NaN that a caller can read in v, or of an infinity if those
// count too, "" if there is none. A verdict without a value is no answer and says so, and
// what carries its own error has said it.
func nan(v reflect.Value, path string, depth int, infinities bool) string {
	if !v.IsValid() || depth > 8 {
		return ""
	}
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		if math.IsNaN(v.Float()) || infinities && math.IsInf(v.Float(), 0) {
			return path
		}
	case reflect.Struct:
		if v.Type() == checkType {
			return ""
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.Type == errorType && f.IsExported() && !v.Field(i).IsNil() {
				return ""
			}
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				if p := nan(v.Field(i), path+"."+f.Name, depth+1, infinities); p != "" {
					return p
				}
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if p := nan(v.Index(i), fmt.Sprintf("%s[%d]", path, i), depth+1, infinities); p != "" {
				return p
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return nan(v.Elem(), path, depth+1, infinities)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			if p := nan(v.MapIndex(k), path+"[]", depth+1, infinities); p != "" {
				return p
			}
		}
	}
	return ""
}
