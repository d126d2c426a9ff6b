package published

import (
	"math"
	"sync"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// frameBed lays a beam on n springs that stand for a bed of k N/m². Their shares are
// Simpson's, so that the error falls with the fourth power of the spacing; n is
// odd, and a load belongs on a spring with an even index.
func frameBed(length, ei, k float64, n int, loads ...frame.Load) frame.Beam {
	b := frame.Beam{Length: length, EI: ei, Loads: loads}
	h := length / float64(n-1)
	for i := range n {
		share := 2.0
		switch {
		case i == 0 || i == n-1:
			share = 1
		case i%2 == 1:
			share = 4
		}
		b.Rests = append(b.Rests, frame.Rest{At: length * float64(i) / float64(n-1), Support: frame.Spring(k * share * h / 3)})
	}
	return b
}

// frameSolved solves a beam once for many checks.
func frameSolved(build func() frame.Beam) func() (*frame.Line, error) {
	return sync.OnceValues(func() (*frame.Line, error) {
		b := build()
		return b.Solve()
	})
}

// frameBetween returns the mean of both sides of a place: on a spring, the shear of
// the bed that it stands for.
func frameBetween(l *frame.Line, x float64) float64 { return (l.Before(x).Shear + l.At(x).Shear) / 2 }

// frameFoundationFunctions reads the four functions off a beam long enough to count
// as infinite, with beta, k and P all 1.
func frameFoundationFunctions() ([]Check, error) {
	table, err := rows("frame_foundation_functions")
	if err != nil {
		return nil, err
	}
	// Two beds: springs fall on the tenths, and on the quarters of pi.
	const tenths, frameQuarters = 25.0, 8 * math.Pi
	onTenths := frameSolved(func() frame.Beam { return frameBed(2*tenths, 0.25, 1, 4001, frame.Point(tenths, 1)) })
	onQuarters := frameSolved(func() frame.Beam { return frameBed(2*frameQuarters, 0.25, 1, 4097, frame.Point(frameQuarters, 1)) })
	read := []struct {
		name string
		of   func(l *frame.Line, half, x float64) float64
	}{
		{"A", func(l *frame.Line, half, x float64) float64 { return -2 * l.At(half+x).Deflection }},
		{"B", func(l *frame.Line, half, x float64) float64 { return l.At(half + x).Slope }},
		{"C", func(l *frame.Line, half, x float64) float64 { return 4 * l.At(half+x).Moment }},
		{"D", func(l *frame.Line, half, x float64) float64 {
			if x == 0 {
				return -2 * (l.At(half).Shear - l.Push[len(l.Push)/2]/2)
			}
			return -2 * frameBetween(l, half+x)
		}},
	}
	var out []Check
	for _, r := range table {
		x, err := r.num("x")
		if err != nil {
			return nil, err
		}
		line, half := onTenths, tenths
		if tenth := math.Round(10 * x); math.Abs(10*x-tenth) > 1e-6 {
			line, half = onQuarters, frameQuarters
		}
		for _, f := range read {
			out = append(out, Check{
				Package: "frame", Quantity: f.name + " at beta x = " + r["x"],
				Source:  measure.Source{Title: "Hetényi, Beams on Elastic Foundation", Locator: "functions A to D, computed", Status: measure.Independent},
				Printed: r[f.name],
				Because: "4000 springs over 50/beta stand for an endless bed", Within: 1e-8,
				Compute: func() (float64, error) {
					l, err := line()
					if err != nil {
						return 0, err
					}
					return f.of(l, half, x), nil
				},
			})
		}
	}
	return out, nil
}

// frameFoundationFinite compares beams with free ends, stiff to soft, with beta, k
// and P all 1.
func frameFoundationFinite() ([]Check, error) {
	table, err := rows("frame_foundation_finite")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		length, err := r.num("beta_L")
		if err != nil {
			return nil, err
		}
		line := frameSolved(func() frame.Beam { return frameBed(length, 0.25, 1, 1001, frame.Point(length/2, 1)) })
		for _, q := range []struct {
			name string
			of   func(l *frame.Line) float64
		}{
			{"y_mid", func(l *frame.Line) float64 { return -l.At(length / 2).Deflection }},
			{"y_end", func(l *frame.Line) float64 { return -l.At(length).Deflection }},
			{"M_mid", func(l *frame.Line) float64 { return l.At(length / 2).Moment }},
		} {
			out = append(out, Check{
				Package: "frame", Quantity: q.name + " of a beam with free ends, beta L = " + r["beta_L"],
				Source:  measure.Source{Title: "Hetényi, Beams on Elastic Foundation", Locator: "finite beam, central load, solved independently", Status: measure.Independent},
				Printed: r[q.name],
				Because: "1001 springs stand for a bed", Within: 2e-9,
				Compute: func() (float64, error) {
					l, err := line()
					if err != nil {
						return 0, err
					}
					return q.of(l), nil
				},
			})
		}
	}
	return out, nil
}

// frameLine builds a check of one quantity of a line.
func frameLine(src measure.Source, quantity, printed, unit string, relative float64, line func() (*frame.Line, error), of func(l *frame.Line) float64) Check {
	return Check{
		Package: "frame", Source: src, Quantity: quantity, Printed: printed, Unit: unit, Relative: relative,
		Compute: func() (float64, error) {
			l, err := line()
			if err != nil {
				return 0, err
			}
			return of(l), nil
		},
	}
}

// frameFoundationWorked holds worked examples of beams on beds of springs.
func frameFoundationWorked() ([]Check, error) {
	rail := measure.Source{
		Title: "Boresi and Schmidt, Advanced Mechanics of Materials", Locator: "Example 10.1, from the output of its companion code", Status: measure.Quoted,
	}
	const (
		e     = 200e9   // Pa
		i     = 36.9e-6 // m⁴
		c     = 0.0991  // m, to the outer fibre
		k     = 14e6    // N/m²
		wheel = 170e3   // N
		apart = 1.7     // m
		span  = 27.2    // sixteen wheel spacings: springs fall under each wheel
		mid   = span / 2
	)
	one := frameSolved(func() frame.Beam { return frameBed(span, e*i, k, 3201, frame.Point(mid, wheel)) })
	three := frameSolved(func() frame.Beam {
		return frameBed(span, e*i, k, 3201, frame.Point(mid-apart, wheel), frame.Point(mid, wheel), frame.Point(mid+apart, wheel))
	})
	out := []Check{
		frameLine(rail, "rail, one wheel: deflection", "5.04", "mm", 0, one, func(l *frame.Line) float64 { return -l.Extremes().Down.Deflection * 1e3 }),
		frameLine(rail, "rail, one wheel: moment", "51.21", "kN m", 0, one, func(l *frame.Line) float64 { return l.Extremes().Sag.Moment / 1e3 }),
		frameLine(rail, "rail, one wheel: stress", "137.54", "MPa", 0, one, func(l *frame.Line) float64 { return l.Extremes().Sag.Moment * c / i / 1e6 }),
		frameLine(rail, "rail, three wheels: deflection", "7.86", "mm", 0, three, func(l *frame.Line) float64 { return -l.Extremes().Down.Deflection * 1e3 }),
		frameLine(rail, "rail, three wheels: moment", "37.02", "kN m", 0, three, func(l *frame.Line) float64 { return l.Extremes().Sag.Moment / 1e3 }),
	}
	exact := measure.Source{Title: "Superposition of the functions A and C", Locator: "rail of Boresi and Schmidt, Example 10.1", Status: measure.Independent}
	out = append(out,
		frameLine(exact, "rail, one wheel: deflection", "5.038413543", "mm", 1e-6, one, func(l *frame.Line) float64 { return -l.At(mid).Deflection * 1e3 }),
		frameLine(exact, "rail, one wheel: moment", "51.21368305", "kN m", 1e-6, one, func(l *frame.Line) float64 { return l.At(mid).Moment / 1e3 }),
		frameLine(exact, "rail, three wheels: deflection under the centre wheel", "7.857084314", "mm", 1e-5, three, func(l *frame.Line) float64 { return -l.At(mid).Deflection * 1e3 }),
		frameLine(exact, "rail, three wheels: deflection under an outer wheel", "6.257464184", "mm", 1e-5, three, func(l *frame.Line) float64 { return -l.At(mid+apart).Deflection * 1e3 }),
		frameLine(exact, "rail, three wheels: moment under an outer wheel", "37.01808073", "kN m", 1e-5, three, func(l *frame.Line) float64 { return l.At(mid-apart).Moment / 1e3 }),
		frameLine(exact, "rail, three wheels: moment under the centre wheel", "30.52700226", "kN m", 1e-5, three, func(l *frame.Line) float64 { return l.At(mid).Moment / 1e3 }),
	)

	seven := measure.Source{Title: "Seven discrete springs solved by an independent program", Locator: "inputs of Boresi and Schmidt, Example 10.2", Status: measure.Independent}
	springs := frameSolved(func() frame.Beam {
		b := frame.Beam{Length: 6.8, EI: 72e9 * 2.45e-6, Loads: []frame.Load{frame.Point(3.4, 12e3)}}
		for i := range 7 {
			b.Rests = append(b.Rests, frame.Rest{At: 0.1 + 1.1*float64(i), Support: frame.Spring(110e3)})
		}
		return b
	})
	out = append(out,
		frameLine(seven, "beam on seven springs: deflection", "38.98603931", "mm", 1e-8, springs, func(l *frame.Line) float64 { return -l.Extremes().Down.Deflection * 1e3 }),
		frameLine(seven, "beam on seven springs: moment", "4.580123826", "kN m", 1e-8, springs, func(l *frame.Line) float64 { return l.Extremes().Sag.Moment / 1e3 }),
	)
	for i, p := range []string{"-0.453881", "1.215742", "3.093906", "4.288464", "3.093906", "1.215742", "-0.453881"} {
		out = append(out, frameLine(seven, "beam on seven springs: force of spring "+string(rune('1'+i)), p, "kN", 0, springs,
			func(l *frame.Line) float64 { return l.Push[i] / 1e3 }))
	}

	floating := measure.Source{Title: "Hetényi, Beams on Elastic Foundation", Locator: "finite beam, free ends, central load; checked against the differential equation", Status: measure.Memory}
	timber := frameSolved(func() frame.Beam {
		const side = 0.089
		return frameBed(4, 9.5e9*side*side*side*side/12, 0.60*9806.65, 801, frame.Point(2, 900))
	})
	out = append(out,
		frameLine(floating, "floating timber: extra draft at the middle", "0.04166730562", "m", 1e-6, timber, func(l *frame.Line) float64 { return -l.At(2).Deflection }),
		frameLine(floating, "floating timber: extra draft at the ends", "0.03312486664", "m", 1e-6, timber, func(l *frame.Line) float64 { return -l.At(4).Deflection }),
		frameLine(floating, "floating timber: moment at the middle", "432.1217955", "N m", 1e-6, timber, func(l *frame.Line) float64 { return l.At(2).Moment }),
	)

	const ei, soft = 2e5, 6000.0
	beta := math.Pow(soft/(4*ei), 0.25)
	page := measure.Source{Title: "Formula page after Hetényi", Locator: "semi-infinite beam; infinite beam with a couple", Status: measure.Quoted}
	end := frameSolved(func() frame.Beam { return frameBed(96, ei, soft, 4801, frame.Point(0, 1000)) })
	couple := frameSolved(func() frame.Beam { return frameBed(96, ei, soft, 4801, frame.Load{From: 48, M: 800}) })
	out = append(out,
		frameLine(page, "semi-infinite beam, end load: deflection at the end, 2 P beta/k", "0.09809436521", "m", 1e-6, end, func(l *frame.Line) float64 { return -l.At(0).Deflection }),
		frameLine(measure.Source{Title: "Semi-infinite beam on an elastic bed", Locator: "M = -(P/beta) B at beta x = pi/4", Status: measure.Independent},
			"largest hogging moment", "-1095.533338", "N m", 1e-5, end, func(l *frame.Line) float64 { return l.Extremes().Hog.Moment }),
		frameLine(measure.Source{Title: "Semi-infinite beam on an elastic bed", Locator: "largest moment 0.322397 P/beta", Status: measure.Independent},
			"coefficient of the largest moment", "0.322397", "", 1e-5, end, func(l *frame.Line) float64 { return -l.Extremes().Hog.Moment * beta / 1000 }),
		frameLine(page, "infinite beam with a couple: slope there, M beta³/k", "0.00339808849", "rad", 1e-5, couple, func(l *frame.Line) float64 { return l.At(48).Slope }),
		frameLine(page, "infinite beam with a couple: moment there, half of it", "400", "N m", 1e-6, couple, func(l *frame.Line) float64 { return l.Before(48).Moment }),
	)
	return out, nil
}
