package lumber_test

import (
	"context"
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// FuzzSingleFactors: every factor of a grade at a section keeps its bounds, wet and
// incised count for no more than dry and smooth, and a longer load for no more than a
// shorter one.
func FuzzSingleFactors(f *testing.F) {
	f.Add(0, "spf", "No.2", 0.038, 0.184, 1, 0, 1.0e7)
	f.Add(6, "southern pine", "No.1", 0.184, 0.038, 3, 4, 0.0)
	f.Add(-1, "", "\x00", math.NaN(), -1.0, -3, 99, math.Inf(1))
	f.Fuzz(func(t *testing.T, property int, species, grade string, w, d float64, plies, duration int, fb float64) {
		p, s := lumber.Property(property), lumber.Section{Width: w, Depth: d}
		g, err := lumber.Lookup(species, grade, s)
		if err != nil {
			ours(t, err)
			g = lumber.Grade{Species: species, Name: grade, Fb: lumber.Value{Printed: fb, Unit: 1}, Fc: lumber.Value{Printed: fb, Unit: 1}}
		}
		bound := func(name string, x measure.Factor, err error, lo, hi float64) {
			ours(t, err)
			if err == nil && (!(x.Value >= lo && x.Value <= hi) || x.Source == nil) {
				t.Fatalf("%s of %v: %+v", name, p, x)
			}
		}
		wet, err1 := lumber.WetService(p, g, s, false)
		bound("wet service", wet, err1, 0.3, 1)
		dry, err2 := lumber.WetService(p, g, s, true)
		bound("dry service", dry, err2, 0.3, 1)
		if err1 == nil && err2 == nil && wet.Value > dry.Value {
			t.Fatalf("wet %g, dry %g", wet.Value, dry.Value)
		}
		slits, err1 := lumber.Incising(p, false)
		bound("incising", slits, err1, 0.5, 1)
		smooth, err2 := lumber.Incising(p, true)
		bound("no incising", smooth, err2, 1, 1)
		size, err := lumber.SizeFactor(p, g, s)
		bound("size", size, err, 0.3, 1.6)
		flat, err := lumber.FlatUse(p, g, s)
		bound("flat use", flat, err, 0.5, 1.3)
		if err == nil && w <= d && flat.Value != 1 {
			t.Fatalf("flat use %+v on edge", flat)
		}
		many, err1 := lumber.RepetitiveMember(s, true, plies)
		bound("repetitive member", many, err1, 1, 1.15)
		alone, err2 := lumber.RepetitiveMember(s, false, plies)
		bound("single member", alone, err2, 1, 1.15)
		if err1 == nil && err2 == nil && alone.Value > many.Value {
			t.Fatalf("alone %g, with others %g", alone.Value, many.Value)
		}
		long, err := lumber.Duration(duration).Factor(p)
		bound("duration", long, err, 0.9, 1.6)
		if short, err2 := lumber.Duration(duration + 1).Factor(p); err == nil && err2 == nil && short.Value < long.Value {
			t.Fatalf("%v lasts %g, shorter %g", lumber.Duration(duration), long.Value, short.Value)
		}
	})
}

// FuzzSpanWithin: a stricter limit of the deflection never spans farther, and the usual
// one is that of a span.
func FuzzSpanWithin(f *testing.F) {
	f.Add(360.0, 0.4, 500.0, 2000.0)
	f.Add(1.0, 5e-324, 0.0, 0.0)
	f.Add(math.NaN(), -1.0, math.Inf(1), 1e300)
	f.Fuzz(func(t *testing.T, divisor, spacing, dead, live float64) {
		m := piece(t, "hf", "2", "2x8")
		span, _, err := m.SpanWithin(divisor, spacing, dead, live)
		ours(t, err)
		if err != nil {
			return
		}
		if !(span > 0) || math.IsInf(span, 0) {
			t.Fatalf("spans %g", span)
		}
		if stiff, _, err := m.SpanWithin(divisor*1.1, spacing, dead, live); err == nil && stiff > span*(1+1e-12) {
			t.Fatalf("L/%g spans %g, L/%g %g", divisor, span, divisor*1.1, stiff)
		}
		usual, _, err := m.Span(spacing, dead, live)
		if same, _, err2 := m.SpanWithin(360, spacing, dead, live); err != nil || err2 != nil || same != usual {
			t.Fatalf("L/360 spans %g, as usual %g, %v, %v", same, usual, err, err2)
		}
	})
}

// FuzzOffcuts: what a plan leaves over is no longer than its board, none shorter than
// asked for, and asking for more leaves no more.
func FuzzOffcuts(f *testing.F) {
	f.Add(1.2, 5, 3.6, 0.003, 0.3)
	f.Add(0.01, 3, 0.02, 0.0, 0.0)
	f.Add(math.NaN(), -1, math.Inf(1), -1.0, math.NaN())
	f.Fuzz(func(t *testing.T, length float64, count int, board, kerf, least float64) {
		if count > 40 {
			return // a plan of many is for the cutting targets
		}
		c, err := lumber.Cut(context.Background(), []lumber.Want{{Section: "2x8", Length: length, Count: count}}, []lumber.Stock{{Section: "2x8", Length: board, Price: 10}}, lumber.Saw{Kerf: kerf})
		if err != nil {
			ours(t, err)
			return
		}
		all := c.Offcuts(least)
		for _, o := range all {
			if !(o.Length >= least && o.Length <= board) || o.Section != "2x8" {
				t.Fatalf("%+v of boards of %g m", o, board)
			}
		}
		if more := c.Offcuts(least + 0.1); len(more) > len(all) {
			t.Fatalf("%d offcuts, and %d longer ones", len(all), len(more))
		}
	})
}
