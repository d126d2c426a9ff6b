package published

import (
	"fmt"
	"math"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// frameWorked holds single beams worked out from statics or by formula.
func frameWorked() ([]Check, error) {
	statics := measure.Source{Title: "Worked out from statics", Status: measure.Independent}
	hinge := frameSolved(func() frame.Beam {
		return frame.Beam{
			Length: 5, EI: 1e6, Hinges: []float64{3},
			Rests: []frame.Rest{{At: 0, Clamped: true}, {At: 5}}, Loads: []frame.Load{frame.Uniform(0, 5, 1000)},
		}
	})
	three := measure.Source{Title: "Three equal springs, load over the middle", Locator: "P(3+q)/(9+q) and 3Pl/(9+q), q = k l³/EI", Status: measure.Independent}
	springs := frameSolved(func() frame.Beam {
		s := frame.Spring(9000)
		return frame.Beam{
			Length: 3.6, EI: 2e5, Loads: []frame.Load{frame.Point(1.8, 1500)},
			Rests: []frame.Rest{{At: 0, Support: s}, {At: 1.8, Support: s}, {At: 3.6, Support: s}},
		}
	})
	circle := measure.Source{Title: "Circular segment after Archimedes", Locator: "root found with many digits", Status: measure.Independent}
	frameDrum := frameSolved(func() frame.Beam {
		return frame.Beam{
			Length: 1, EI: 1e9, Loads: []frame.Load{frame.Point(0, 500)},
			Rests: []frame.Rest{{At: 0, Clamped: true, Support: frameDrum(0.29, 0.88, 9806.65, 100)}},
		}
	})
	out := []Check{
		frameLine(statics, "cantilever 3 m, hinge, link 2 m to a roller, 1 kN/m: moment at the wall", "-7500", "N m", 1e-12, hinge, func(l *frame.Line) float64 { return l.At(0).Moment }),
		frameLine(three, "force of the middle spring", "528.3337868", "N", 1e-9, springs, func(l *frame.Line) float64 { return l.Push[1] }),
		frameLine(three, "moment under the load", "874.4995919", "N m", 1e-9, springs, func(l *frame.Line) float64 { return l.At(1.8).Moment }),
		frameLine(circle, "draft of a drum of radius 0.29 m, 0.88 m long, 100 N, under 500 N", "0.1793613017", "m", 1e-9, frameDrum, func(l *frame.Line) float64 { return -l.At(0).Deflection }),
	}
	return append(out, frameEqualSpans()...), nil
}

// frameDrum is a horizontal cylinder that hangs on the beam: what a package that
// knows water would hand over.
func frameDrum(r, length, gamma, weight float64) frame.Support {
	return func(sink float64) (force, stiffness, energy float64) {
		h := math.Min(math.Max(sink, 0), 2*r)
		u := r - h
		q := math.Sqrt(math.Max(h*(2*r-h), 0))
		angle := math.Acos(math.Min(math.Max(u/r, -1), 1))
		area := r*r*angle - u*q
		energy = gamma*length*(r*r*q-u*r*r*angle-q*q*q/3) - weight*sink
		if sink > 2*r {
			energy += gamma * length * math.Pi * r * r * (sink - 2*r)
		}
		return gamma*length*area - weight, gamma * length * 2 * q, energy
	}
}

// frameEqualSpans holds the shears beside each support of beams over equal spans,
// frameAllOver uniformly loaded, in parts of w L, by the number of supports.
func frameEqualSpans() []Check {
	src := measure.Source{Title: "Civil Engineering Formulas", Locator: "Table 2.1", Status: measure.Read}
	var out []Check
	for _, c := range []struct {
		supports, parts int
		shares          []int // right of the first support, then left and right of each next one
	}{
		{3, 8, []int{3, 5}},
		{4, 10, []int{4, 6, 5}},
		{5, 28, []int{11, 17, 15, 13}},
		{6, 38, []int{15, 23, 20, 18, 19}},
		{7, 104, []int{41}},
		{8, 142, []int{56}},
	} {
		n := c.supports - 1
		line := frameSolved(func() frame.Beam {
			return frameEqual(n, func(map[string]float64) []frame.Load {
				return []frame.Load{frame.Uniform(0, float64(n), 1)}
			})(map[string]float64{"L": 1, "EI": 1})
		})
		for i, share := range c.shares {
			x := float64((i + 1) / 2)
			out = append(out, frameLine(src, fmt.Sprintf("%d supports: shear %d, %d/%d of w L", c.supports, i+1, share, c.parts),
				fmt.Sprint(share), fmt.Sprintf("%dths of w L", c.parts), 1e-12, line, func(l *frame.Line) float64 {
					d := l.At(x)
					if i%2 == 1 {
						d = l.Before(x)
					}
					return math.Abs(d.Shear) * float64(c.parts)
				}))
		}
	}
	return out
}

// frameShear compares the two parts of a deflection, by bending and by shear.
func frameShear() ([]Check, error) {
	handbook := measure.Source{Title: "Wood Handbook, Forest Products Laboratory", Edition: "FPL-GTR-190, 2010", Locator: "Table 9-1 and eq. 9-2", Status: measure.Read}
	const span, ei, ga = 3.0, 2e5, 4e5
	frameHeld := func(clampLeft, clampRight, right bool) []frame.Rest {
		rests := []frame.Rest{{At: 0, Clamped: clampLeft}}
		if right {
			rests = append(rests, frame.Rest{At: span, Clamped: clampRight})
		}
		return rests
	}
	half := func(x float64) frame.Load { return frame.Point(x, 0.5) }
	var out []Check
	for _, c := range []struct {
		name          string
		rests         []frame.Rest
		loads         []frame.Load
		at            float64
		kb, ks        float64
		bend, sheared string
	}{
		{"uniform, simple, midspan", frameHeld(false, false, true), []frame.Load{frame.Uniform(0, span, 1/span)}, span / 2, 5.0 / 384, 1.0 / 8, "5/384", "1/8"},
		{"uniform, clamped, midspan", frameHeld(true, true, true), []frame.Load{frame.Uniform(0, span, 1/span)}, span / 2, 1.0 / 384, 1.0 / 8, "1/384", "1/8"},
		{"midspan load, simple", frameHeld(false, false, true), []frame.Load{frame.Point(span/2, 1)}, span / 2, 1.0 / 48, 1.0 / 4, "1/48", "1/4"},
		{"midspan load, clamped", frameHeld(true, true, true), []frame.Load{frame.Point(span/2, 1)}, span / 2, 1.0 / 192, 1.0 / 4, "1/192", "1/4"},
		{"quarter points, midspan", frameHeld(false, false, true), []frame.Load{half(span / 4), half(3 * span / 4)}, span / 2, 11.0 / 768, 1.0 / 8, "11/768", "1/8"},
		{"quarter points, load point", frameHeld(false, false, true), []frame.Load{half(span / 4), half(3 * span / 4)}, span / 4, 1.0 / 96, 1.0 / 8, "1/96", "1/8"},
		{"uniform, cantilever, free end", frameHeld(true, false, false), []frame.Load{frame.Uniform(0, span, 1/span)}, span, 1.0 / 8, 1.0 / 2, "1/8", "1/2"},
		{"end load, cantilever, free end", frameHeld(true, false, false), []frame.Load{frame.Point(span, 1)}, span, 1.0 / 3, 1, "1/3", "1"},
	} {
		bend := frame.Beam{Length: span, EI: ei, Rests: c.rests, Loads: c.loads}
		both := bend
		both.GA = ga
		parts := func() (byBending, byShear float64, err error) {
			l, err := bend.Solve()
			if err != nil {
				return 0, 0, err
			}
			m, err := both.Solve()
			if err != nil {
				return 0, 0, err
			}
			w := l.At(c.at).Deflection
			return -w * ei / (span * span * span), (w - m.At(c.at).Deflection) * ga / span, nil
		}
		out = append(out, Check{
			Package: "frame", Source: handbook, Quantity: c.name + ": kb = " + c.bend,
			Printed: fmt.Sprintf("%.12g", c.kb), Relative: 1e-11,
			Compute: func() (float64, error) { kb, _, err := parts(); return kb, err },
		}, Check{
			Package: "frame", Source: handbook, Quantity: c.name + ": ks = " + c.sheared,
			Printed: fmt.Sprintf("%.12g", c.ks), Relative: 1e-10,
			Compute: func() (float64, error) { _, ks, err := parts(); return ks, err },
		})
	}

	// A joist 2x8, 1.5 by 7.25 in, over 10 ft, 50 lbf/ft, E = 1.4e6 psi, G = E/16.
	joist := func(shear bool) func() (*frame.Line, error) {
		return frameSolved(func() frame.Beam {
			b, h, e := 1.5*measure.Inch, 7.25*measure.Inch, 1.4e6*measure.PSI
			beam := frame.Beam{
				Length: 10 * measure.Foot, EI: e * b * h * h * h / 12,
				Rests: []frame.Rest{{At: 0}, {At: 10 * measure.Foot}},
				Loads: []frame.Load{frame.Uniform(0, 10*measure.Foot, 50*measure.PLF)},
			}
			if shear {
				beam.GA = e / 16 * 5 * b * h / 6
			}
			return beam
		})
	}
	inches := func(l *frame.Line) float64 { return -l.Extremes().Down.Deflection / measure.Inch }
	joistSource := handbook
	joistSource.Locator = "eq. 9-2 at a 2x8 joist; its value computed"
	joistSource.Status = measure.Independent
	return append(out,
		frameLine(joistSource, "2x8 joist, 10 ft, 50 lbf/ft: deflection with shear", "0.1781524458", "in", 1e-9, joist(true), inches),
		frameLine(joistSource, "2x8 joist, 10 ft, 50 lbf/ft: by bending alone", "0.1686943177", "in", 1e-9, joist(false), inches),
	), nil
}
