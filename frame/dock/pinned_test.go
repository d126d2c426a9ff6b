package dock_test

import (
	"context"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber/measure"
)

// near returns a plan near one of the demos, or a new one.
func near(t testing.TB, r *rand.Rand) string {
	t.Helper()
	share := []int{4, 12, 30}[r.IntN(3)]
	if k := r.IntN(3); k < 2 {
		// Girth and volume move each by itself: a volume would not be the drum's.
		text := strings.Replace(demoText(t, plan.Demos()[k]), `, "volume": "67 gal"`, "", 1)
		return pinned.Near(furnished(text, r), share, r)
	}
	units := []measure.System{measure.US, measure.SI}[r.IntN(2)]
	text, err := plan.Start{
		Length: pinned.Tenths(r, 2.4, 8.4), Width: pinned.Tenths(r, 1.8, 3.8), Girth: []float64{1.55, 1.82, 1.9}[r.IntN(3)], Long: pinned.Tenths(r, 0.7, 1),
		Mass: pinned.Tenths(r, 8, 20), Drums: 2 + 2*r.IntN(6), Units: units,
	}.JSON()
	if err != nil {
		t.Fatal(err)
	}
	return pinned.Near(string(text), share, r)
}

// furnished says now and then what the demos leave open.
func furnished(text string, r *rand.Rand) string {
	for _, more := range [][2]string{
		{`"loads": { `, `"shop": {
    "kerf": "1/8 in", "trim": "1/8 in", "tax": "7 %", "delivery": 85, "budget": 2000, "carriers": 3, "sled_load": "150 lb", "sled_friction": "30 %",
    "items": [
      { "name": "bracket, 7 in", "need": 24, "have": 4, "lot": 10, "price": 31.5, "mass": "0.9 lb" },
      { "name": "shore line, 50 ft", "part": "other", "need": 2, "price": 44 }
    ],
    "coatings": [
      { "name": "end-cut preservative", "on": "cut ends", "can": "0.25 gal", "covers": "25 sq ft", "price": 24, "wood_moisture": "25 %" },
      { "name": "deck stain", "on": "deck", "coats": 2, "can": "1 gal", "covers": "150 sq ft", "price": 52, "wood_moisture": "15 %", "air_at_least": "50 F", "dry_for": "24 h" }
    ]
  },
  "loads": { `},
		{`"loads": { `, `"loads": { "snow": "0.5 kPa", "uneven": "9 mm", `},
		{`"white": "0 in"`, `"white": "0 in", "hard": "yes"`},
		{`"marks_at": "near face",`, `"marks_at": "centre",`},
	} {
		if r.IntN(2) == 0 {
			text = strings.Replace(text, more[0], more[1], 1)
		}
	}
	return text
}

// TestPinned compares the reports of invented docks with what they were before.
func TestPinned(t *testing.T) {
	pinned.OneMachine(t)
	read := 0
	pinned.Check(t, "reports", 16, func(r *rand.Rand) []any {
		d, err := dock.Read("near", strings.NewReader(near(t, r)))
		if err != nil {
			return []any{err.Error()}
		}
		read++
		report := reported(t, d, []measure.System{measure.US, measure.SI}[r.IntN(2)])
		var b strings.Builder
		if err := report.WriteText(&b); err != nil {
			t.Error(err)
		}
		out := []any{report, b.String()}
		if e, err := d.Envelope(context.Background()); err == nil {
			plate, _ := d.Plate(e)
			out = append(out, e, plate)
		}
		launch, _ := d.Launch()
		return append(out, launch)
	})
	if read < 12 {
		t.Errorf("only %d could be read", read)
	}
}
