package sheet_test

import (
	"io"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber/measure"
)

// TestPinned compares the pages and pictures of docks near the demos with what they were before.
func TestPinned(t *testing.T) {
	drawn := 0
	pinned.Check(t, "pages", 8, func(r *rand.Rand) []any {
		demo, err := plan.Demo(plan.Demos()[r.IntN(2)])
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(demo)
		if err != nil {
			t.Fatal(err)
		}
		// Girth and volume move each by itself: a volume would not be the drum's.
		plain := strings.Replace(string(text), `, "volume": "67 gal"`, "", 1)
		d, err := dock.Read("near", strings.NewReader(pinned.Near(plain, 12, r)))
		if err != nil {
			return []any{err.Error()}
		}
		doc, err := sheet.Of(d, reported(t, d, []measure.System{measure.US, measure.SI}[r.IntN(2)]), day())
		if err != nil {
			t.Error(err)
		}
		files, err := doc.Files()
		if err != nil {
			return []any{err.Error()}
		}
		drawn++
		var all []any
		for _, f := range files {
			all = append(all, f.Name, string(f.Data))
		}
		return all
	})
	if drawn < 6 {
		t.Errorf("only %d were drawn", drawn)
	}
}

// TestPinnedDrawings compares pictures whose numbers are a little changed, or nothing,
// with what they were before.
func TestPinnedDrawings(t *testing.T) {
	pinned.OneMachine(t)
	drawn := 0
	pinned.Check(t, "drawings", 60, func(r *rand.Rand) []any {
		var out []any
		of := demos
		if r.IntN(3) == 0 {
			of = crowded
		}
		for _, d := range of([]measure.System{measure.US, measure.SI}[r.IntN(2)]) {
			v := reflect.New(reflect.TypeOf(d)).Elem()
			v.Set(reflect.ValueOf(d))
			numbers(v, "", func(_ string, x reflect.Value) {
				switch r.IntN(8) {
				case 0:
					x.SetFloat(x.Float() * []float64{0.5, 0.8, 0.95, 1.05, 1.3, 2}[r.IntN(6)])
				case 1:
					if r.IntN(4) == 0 {
						x.SetFloat(0)
					}
				}
			})
			p, err := v.Interface().(drawer).Draw()
			if err == nil {
				drawn++
			}
			out = append(out, p, err)
		}
		return out
	})
	if drawn < 300 {
		t.Errorf("only %d were drawn", drawn)
	}
}
