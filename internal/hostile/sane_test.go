package hostile

import (
	"context"
	"errors"
	"io"
	"reflect"
	"testing"
)

// folder takes the files that the calls write.
var folder string

// keepTexts are functions whose texts are left as they are, since they name folders.
var keepTexts = map[string]bool{"frame/sheet.WriteFiles": true}

// fewer are functions of which a call takes long, and how often each is called.
var fewer = map[string]int{
	"float.Platform.Fewest":      60,
	"float.Platform.WorstCrowd":  500,
	"float/moor.Mooring.Bands":   300,
	"float/moor.Mooring.Lengths": 60,
	"float/moor.Mooring.Winter":  500,
	"frame.Beam.Walk":            500,
	"frame/dock.Dock.Envelope":   30,
	"frame/dock.Dock.Report":     6,
	"frame/dock.Dock.Plate":      30,
	"ice/season.Fit":             15, "ice/season.Model.Odds": 200, "ice/season.Model.Calendar": 200, "ice/season.Model.Run": 1000, "ice/season.Run": 1000,
	"frame/sheet.Of":       40,
	"frame/sheet.Draw":     40,
	"frame/plan.Plan.Vary": 1000,
	"ice.Sheet.Flooding":   150,
}

// A again is a reader that starts over when it has been read.
type again struct {
	text string
	at   int
}

func (a *again) Read(b []byte) (int, error) {
	if a.at == len(a.text) {
		a.at = 0
		return 0, io.EOF
	}
	n := copy(b, a.text[a.at:])
	a.at += n
	return n, nil
}

// sound makes a value of a type that a function may well accept.
func sound(t *testing.T, typ reflect.Type, depth int) reflect.Value {
	if x, ok := made()[typ]; ok {
		return reflect.ValueOf(x)
	}
	switch typ {
	case reflect.TypeFor[context.Context]():
		return reflect.ValueOf(context.Background())
	case reflect.TypeFor[io.Reader]():
		return reflect.ValueOf(&again{text: "{}"})
	case reflect.TypeFor[io.Writer]():
		return reflect.ValueOf(io.Discard)
	case errorType:
		return reflect.ValueOf(errors.New("an invented reason"))
	}
	v := reflect.New(typ).Elem()
	if depth > 6 {
		return v
	}
	switch typ.Kind() {
	case reflect.Float32, reflect.Float64:
		v.SetFloat(1)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		v.SetInt(1)
	case reflect.Struct:
		for i := range typ.NumField() {
			if typ.Field(i).IsExported() {
				v.Field(i).Set(sound(t, typ.Field(i).Type, depth+1))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(sound(t, typ.Elem(), depth+1))
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(typ, 2, 2))
		for i := range v.Len() {
			v.Index(i).Set(sound(t, typ.Elem(), depth+1))
		}
	case reflect.Pointer:
		v.Set(reflect.New(typ.Elem()))
		v.Elem().Set(sound(t, typ.Elem(), depth+1))
	}
	return v
}
