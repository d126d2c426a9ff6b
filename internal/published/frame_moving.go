package published

import (
	"fmt"
	"math"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// frameRecalled is a source of the beam tables that was not read again.
func frameRecalled(locator string) measure.Source {
	return measure.Source{Title: "Beam tables (moving loads, varying loads, loaded spans)", Locator: locator, Status: measure.Memory}
}

// frameMoving compares moving loads and loaded spans.
func frameMoving() ([]Check, error) {
	const span, p1, p2, apart = 6.0, 3000.0, 2000.0, 1.5
	walk := func(group ...frame.Load) func() (*frame.Envelope, error) {
		return func() (*frame.Envelope, error) {
			b := frame.Beam{Length: span, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: span}}}
			return b.Walk(group, 0.1)
		}
	}
	single := walk(frame.Point(0, p1))
	twins := walk(frame.Point(0, p1), frame.Point(apart, p1))
	uneven := walk(frame.Point(0, p1), frame.Point(apart, p2))
	place := (span - p2*apart/(p1+p2)) / 2
	var out []Check
	add := func(locator, quantity string, value, relative float64, of func() (float64, error)) {
		out = append(out, Check{
			Package: "frame", Source: frameRecalled(locator), Quantity: quantity,
			Printed: fmt.Sprintf("%.12g", value), Relative: relative, Compute: of,
		})
	}
	peak := func(run func() (*frame.Envelope, error), of func(*frame.Envelope) float64) func() (float64, error) {
		return func() (float64, error) {
			e, err := run()
			if err != nil {
				return 0, err
			}
			return of(e), nil
		}
	}
	sag := func(e *frame.Envelope) float64 { return e.Sag.Moment }
	shear := func(e *frame.Envelope) float64 { return math.Abs(e.Shear.Shear) }
	left := func(e *frame.Envelope) float64 { return e.Push[0].Most }
	// Positions are refined to a millionth of the span: moments are flat there,
	// shears and pushes rise in proportion.
	add("one moving load", "M = PL/4", p1*span/4, 1e-9, peak(single, sag))
	add("one moving load", "V = P", p1, 1e-5, peak(single, shear))
	add("two equal moving loads", "M = P/(2L) (L - a/2)²", p1/(2*span)*(span-apart/2)*(span-apart/2), 1e-9, peak(twins, sag))
	add("two equal moving loads", "place of M, (L - a/2)/2 from an end", (span-apart/2)/2, 1e-5,
		peak(twins, func(e *frame.Envelope) float64 { return math.Min(e.Sag.X, span-e.Sag.X) }))
	add("two equal moving loads", "R = P(2 - a/L)", p1*(2-apart/span), 1e-5, peak(twins, left))
	add("two moving loads, P1 > P2", "M = (P1 + P2) x²/L, x = (L - P2 a/(P1 + P2))/2", (p1+p2)*place*place/span, 1e-9, peak(uneven, sag))
	add("two moving loads, P1 > P2", "R = P1 + P2 (L - a)/L", p1+p2*(span-apart)/span, 1e-5, peak(uneven, left))

	// Live load on the worst of three equal spans.
	pattern := func() (*frame.Envelope, error) {
		b := frameEqual(3, func(map[string]float64) []frame.Load { return nil })(map[string]float64{"L": 1, "EI": 1})
		cases, err := b.Patterns(1)
		if err != nil {
			return nil, err
		}
		return b.Envelope(cases)
	}
	for _, c := range []struct {
		quantity, printed string
		of                func(e *frame.Envelope) float64
	}{
		{"three equal spans, worst hogging moment, two adjacent spans loaded, in w L²", "0.1167", func(e *frame.Envelope) float64 { return -e.Hog.Moment }},
		{"three equal spans, worst sagging moment, end spans loaded, in w L²", "0.1013", func(e *frame.Envelope) float64 { return e.Sag.Moment }},
		{"three equal spans, worst push of an inner support, in w L", "1.20", func(e *frame.Envelope) float64 { return e.Push[1].Most }},
		{"three equal spans, worst shear, in w L", "0.617", func(e *frame.Envelope) float64 { return math.Abs(e.Shear.Shear) }},
	} {
		out = append(out, Check{
			Package: "frame", Source: frameRecalled("live load on the worst spans"), Quantity: c.quantity, Printed: c.printed,
			Compute: peak(pattern, c.of),
		})
	}
	out = append(out, Check{
		Package:  "frame",
		Source:   measure.Source{Title: "M = Pab(L + a)/(4 L²) of two equal spans, largest by differentiation", Locator: "1/(6 √3) at L/√3", Status: measure.Independent},
		Quantity: "worst moment over the middle support, in P L", Printed: "0.0962250448650", Relative: 1e-11,
		Compute: func() (float64, error) {
			b := frameEqual(2, func(map[string]float64) []frame.Load { return nil })(map[string]float64{"L": 1, "EI": 1})
			f, err := b.MomentInfluence(1)
			if err != nil {
				return 0, err
			}
			_, m := f.Least()
			return -m, nil
		},
	})
	return out, nil
}

// frameVarying compares loads that grow evenly from nothing to w, W = w L/2 in
// all, to the digits of the tables.
func frameVarying() ([]Check, error) {
	ramp := []frame.Load{{From: 0, To: 1, Rise: 2}} // L = 1, W = 1
	beam := func(left, right *frame.Rest) func() (*frame.Line, error) {
		return frameSolved(func() frame.Beam {
			b := frame.Beam{Length: 1, EI: 1, Loads: ramp}
			for _, r := range []*frame.Rest{left, right} {
				if r != nil {
					b.Rests = append(b.Rests, *r)
				}
			}
			return b
		})
	}
	frameSimple := beam(&frame.Rest{At: 0}, &frame.Rest{At: 1})
	fixed := beam(&frame.Rest{At: 0, Clamped: true}, &frame.Rest{At: 1, Clamped: true})
	frameCantilever := beam(nil, &frame.Rest{At: 1, Clamped: true})
	table := frameRecalled("load increasing uniformly to one end")
	return []Check{
		frameLine(table, "simple beam: M, in W L", "0.1283", "", 0, frameSimple, func(l *frame.Line) float64 { return l.Extremes().Sag.Moment }),
		frameLine(table, "simple beam: place of M, in L", "0.5774", "", 0, frameSimple, func(l *frame.Line) float64 { return l.Extremes().Sag.X }),
		frameLine(table, "simple beam: D, in W L³/EI", "0.01304", "", 0, frameSimple, func(l *frame.Line) float64 { return -l.Extremes().Down.Deflection }),
		frameLine(table, "simple beam: place of D, in L", "0.5193", "", 0, frameSimple, func(l *frame.Line) float64 { return l.Extremes().Down.X }),
		frameLine(table, "simple beam: left reaction, in W", "0.333333333333", "", 1e-11, frameSimple, func(l *frame.Line) float64 { return l.Push[0] }),
		frameLine(table, "fixed ends: moment at the bare end, w L²/30 in W L", "0.0666666666667", "", 1e-11, fixed, func(l *frame.Line) float64 { return -l.At(0).Moment }),
		frameLine(table, "fixed ends: moment at the loaded end, w L²/20 in W L", "0.1", "", 1e-11, fixed, func(l *frame.Line) float64 { return -l.At(1).Moment }),
		frameLine(table, "cantilever fixed at the loaded end: M, W L/3", "0.333333333333", "", 1e-11, frameCantilever, func(l *frame.Line) float64 { return -l.Extremes().Hog.Moment }),
		frameLine(table, "cantilever fixed at the loaded end: D, W L³/15EI", "0.0666666666667", "", 1e-11, frameCantilever, func(l *frame.Line) float64 { return -l.At(0).Deflection }),
	}, nil
}
