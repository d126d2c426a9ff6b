package frame

import (
	"math"
	"testing"
)

// TestAlternating compares the alternating patterns with every pattern, on spans
// of uneven length with an overhang: moments over the supports and peaks of the
// spans, and the pushes, must be the same.
func TestAlternating(t *testing.T) {
	b := Beam{EI: 1}
	for _, s := range []float64{1, 1.3, 0.8, 1, 1.6, 1.1} {
		b.Rests = append(b.Rests, Rest{At: b.Length})
		b.Length += s
	}
	b.Rests = append(b.Rests, Rest{At: b.Length})
	b.Length += 0.4
	every, err := b.Patterns(1)
	if err != nil {
		t.Fatal(err)
	}
	all := every[len(every)-1]
	if len(all) != 7 || len(every) != 128 {
		t.Fatalf("%d spans, %d patterns", len(all), len(every))
	}
	var at []float64
	for i, r := range b.Rests {
		at = append(at, r.At)
		if i > 0 {
			at = append(at, (r.At+b.Rests[i-1].At)/2)
		}
	}
	want, err := b.Envelope(every, at...)
	if err != nil {
		t.Fatal(err)
	}
	got, err := b.Envelope(alternating(all), at...)
	if err != nil {
		t.Fatal(err)
	}
	same := func(what string, x, y float64) {
		t.Helper()
		if math.Abs(x-y) > 1e-12 {
			t.Errorf("%s: %.12g, of every pattern %.12g", what, x, y)
		}
	}
	for i := range at {
		same("most", got.Stations[i].Moment.Most, want.Stations[i].Moment.Most)
		same("least", got.Stations[i].Moment.Least, want.Stations[i].Moment.Least)
	}
	for i := range got.Push {
		same("push", got.Push[i].Most, want.Push[i].Most)
		same("push", got.Push[i].Least, want.Push[i].Least)
	}
	same("sag", got.Sag.Moment, want.Sag.Moment)
	same("hog", got.Hog.Moment, want.Hog.Moment)
	same("shear", got.Shear.Shear, want.Shear.Shear)
}
