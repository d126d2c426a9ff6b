package measure_test

import (
	"encoding/json"
	"testing"

	"example.org/floewright/lumber/measure"
)

// FuzzReadBack: what is read from JSON goes out and comes back as the same, and a check is
// never read.
func FuzzReadBack(f *testing.F) {
	f.Add([]byte(`{"name":"moisture","text":"wet","known":"measured"}`))
	f.Add([]byte(`{"symbol":"CD","name":"duration","value":1.15}`))
	f.Add([]byte("\x00"))
	f.Fuzz(func(t *testing.T, text []byte) {
		if err := new(measure.Check).UnmarshalJSON(text); err == nil {
			t.Fatalf("a check is read from %q", text)
		}
		var a, again measure.Assumption
		if a.UnmarshalJSON(text) == nil {
			b, err := json.Marshal(a)
			if err != nil || again.UnmarshalJSON(b) != nil || again != a {
				t.Fatalf("%+v goes out as %s, %v, and comes back as %+v", a, b, err, again)
			}
		}
		var x, y measure.Factor
		if x.UnmarshalJSON(text) == nil {
			b, err := json.Marshal(x)
			if err != nil || y.UnmarshalJSON(b) != nil || y.Name != x.Name || y.Symbol != x.Symbol {
				t.Fatalf("%+v goes out as %s, %v, and comes back as %+v", x, b, err, y)
			}
		}
	})
}
