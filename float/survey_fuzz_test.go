package float_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
)

// FuzzSurvey holds that a survey is the inverse of Settle: a plan given the excess
// at the place that the finding asks for comes to rest with the freeboards measured,
// and that chances are chances.
func FuzzSurvey(f *testing.F) {
	f.Add(0.5, 0.52, 0.49, 0.48, 0.003, 84.0, 0.5)
	f.Add(0.3, 0.3, 0.3, 0.3, 0.01, 0.0, 0.0)
	f.Add(0.55, 0.55, 0.2, 0.2, 0.001, 500.0, -1.0)
	f.Add(math.NaN(), 0.3, 0.3, 0.3, 0.0, -1.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, a, b, c, d, within, aboard, y float64) {
		plan := drumDock(0)
		s := float.Survey{Plan: plan, Aboard: []float.Weight{{Mass: aboard, At: r3.Vec{Y: y, Z: 1}}}}
		for _, h := range []float64{a, b, c, d} {
			s.Freeboards = append(s.Freeboards, float.Figure{Value: h, Within: within})
		}
		got, err := s.Find()
		if err != nil {
			return
		}
		sum := got.Sound
		for _, l := range got.Leaks {
			sum += l.Sure
			if !(l.Fits >= 0.05 && l.Fits <= 1) || len(l.Units) != len(l.Volume) {
				t.Fatalf("leak %+v", l)
			}
			for k, v := range l.Volume {
				if !(v.Value > 0 && v.Value < plan.Units[l.Units[k]].Body.Volume() && v.Within >= 0) {
					t.Fatalf("leak %+v", l)
				}
			}
		}
		if !(sum >= 0 && sum <= 1+1e-9 && got.Fits >= 0 && got.Fits <= 1 && got.AsPlanned >= 0 && got.AsPlanned <= 1) {
			t.Fatalf("chances %+v", got)
		}
		for _, x := range []float64{
			got.Heel.Within, got.Trim.Within, got.Level.Within, got.Mass.Within, got.Excess.Within, got.Within.X, got.Within.Y,
			got.Centre.X, got.Centre.Y, got.Centre.Z, got.Twist.Within,
		} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v", got)
			}
		}
		// Replace the plan's weights by one that gives it the mass and centre found.
		rest := got.Mass.Value
		moment := r3.Scale(rest, got.Centre)
		truth := plan.With()
		for _, u := range truth.Units {
			rest -= u.Mass
			moment = r3.Sub(moment, r3.Scale(u.Mass, u.At))
		}
		if !(rest > 50) {
			return
		}
		truth.Weights = slices.Concat([]float.Weight{{Mass: rest, At: r3.Scale(1/rest, moment)}}, s.Aboard)
		truth.TiltStop = 1.3
		state, err := truth.SettleFrom(got.Heel.Value, got.Trim.Value)
		if err != nil || math.Abs(state.Heel-got.Heel.Value) > 0.2 {
			return // an attitude that no dock rests in
		}
		if min := state.Principal()[0].Height; !(min > 0.05) {
			return // hardly stable: many attitudes are as good
		}
		for i, h := range state.Freeboards() {
			if fitted := s.Freeboards[i].Value - got.Residuals[i]; math.Abs(h-fitted) > 1e-6 {
				if math.Abs(state.Heel-got.Heel.Value) > 1e-3 || math.Abs(state.Trim-got.Trim.Value) > 1e-3 {
					return // it rests elsewhere: the measured attitude was no minimum
				}
				t.Fatalf("corner %d rests at %.9g m, measured %.9g m", i, h, fitted)
			}
		}
	})
}

// FuzzExpect holds that a range is a range, and that more doubt widens it.
func FuzzExpect(f *testing.F) {
	f.Add(0.1, 0.05, 0.02, 0.01, 100.0)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(math.NaN(), -1.0, 0.6, 0.5, 900.0)
	f.Fuzz(func(t *testing.T, mass, place, volume, each, extra float64) {
		p := drumDock(extra)
		d := float.Doubt{Mass: mass, Place: place, Volume: volume, Each: each}
		got, err := p.Expect(d)
		if err != nil {
			if got != nil {
				t.Fatalf("%v beside %v", got, err)
			}
			return
		}
		s, err := p.Settle()
		if err != nil {
			t.Fatal(err)
		}
		for i, h := range s.Freeboards() {
			if got[i].Value != h || !(got[i].Within > 0) || math.IsInf(got[i].Within, 0) {
				t.Fatalf("corner %d: %+v, at rest %g", i, got[i], h)
			}
		}
		if _, low, err := s.Lowest(); err != nil || low < 0.2 || d.Volume == 0 || d.Volume > 0.05 {
			return // drums near full: the slopes no longer tell all
		}
		d.Volume *= 2
		wide, err := p.Expect(d)
		if err != nil {
			return
		}
		for i := range wide {
			if !(wide[i].Within >= got[i].Within*(1-0.01)) {
				t.Fatalf("corner %d: %+v, with twice the doubt of volume %+v", i, got[i], wide[i])
			}
		}
	})
}
