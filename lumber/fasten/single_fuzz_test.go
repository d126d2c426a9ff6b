package fasten_test

import (
	"math"
	"testing"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
)

// A joint's distances, capacities and bearing are soundly told, a capacity is its reference
// times its factors, and a shorter load is carried no worse.
func FuzzCapacity(f *testing.F) {
	seedJoints(f)
	f.Fuzz(func(t *testing.T, kind, material, bits int, d, length, tm, ts, g, angle, gap, end, spacing float64) {
		j := anyJoint(kind, material, bits, d, length, tm, ts, g, angle, gap, end, spacing)
		if checks, err := j.Geometry(); err == nil {
			sound(t, checks)
		}
		for _, p := range []fasten.Piece{j.Main, j.Side} {
			b, err := p.Bearing(d)
			if err == nil && !(b > 0 && b < 2e9) {
				t.Fatalf("%+v bears %g Pa", p, b)
			}
		}
		told := func(c fasten.Capacity) {
			product := c.Reference * float64(c.Fasteners)
			for _, x := range c.Factors {
				product *= x.Value
			}
			if c.Err == nil && (!(c.Value >= 0) || math.IsInf(c.Value, 0) || c.Rule == nil || math.Abs(product-c.Value) > 1e-9*c.Value) {
				t.Fatalf("%+v, by its factors %g", c, product)
			}
		}
		long, err := j.Lateral(lumber.Permanent)
		if err == nil {
			told(long)
			if short, err := j.Lateral(lumber.TenMinutes); err != nil || short.Value < long.Value {
				t.Fatalf("permanently %g N, for minutes %g, %v", long.Value, short.Value, err)
			}
		}
		pull, err := j.Pull(lumber.Permanent)
		if err != nil {
			return
		}
		short, err := j.Pull(lumber.TenMinutes)
		if err != nil || len(short) != len(pull) {
			t.Fatalf("%d ways out, for minutes %d, %v", len(pull), len(short), err)
		}
		for i, c := range pull {
			told(c)
			if short[i].Value < c.Value {
				t.Fatalf("%+v, for minutes %+v", c, short[i])
			}
		}
	})
}

// A pin's stresses are numbers that grow in step with the force, and a tie's jerk is no
// less than twice the weight; parts and strength never take from what it carries.
func FuzzPinAndTie(f *testing.F) {
	f.Add(0.02, 0.01, 0.01, 0.002, 900.0, 5000.0, 0.8, 2, 1e5, 0.01)
	f.Add(1e-3, 1e-4, 1e-4, 0.0, 0.0, 0.0, 0.0, 0, 0.0, 0.0)
	f.Add(math.NaN(), 5e-324, -1.0, math.Inf(1), -5.0, math.NaN(), 2.0, -1, 5e-324, 1e300)
	f.Fuzz(func(t *testing.T, diameter, lug, leaf, play, force, strength, efficiency float64, parts int, stiffness, slack float64) {
		p := fasten.Pin{Diameter: diameter, Lug: lug, Leaf: leaf, Play: play}
		if shear, bending, bearing, err := p.Stresses(force); err == nil {
			s2, b2, e2, err := p.Stresses(2 * force)
			for _, x := range [][2]float64{{shear, s2}, {bending, b2}, {bearing, e2}} {
				if !(x[0] >= 0) || math.IsInf(x[0], 0) || err == nil && math.Abs(x[1]-2*x[0]) > 1e-9*x[1] {
					t.Fatalf("%+v: %g Pa, under twice the force %g", p, x[0], x[1])
				}
			}
		}
		tie := fasten.Tie{Strength: strength, Efficiency: efficiency, Parts: parts, DesignFactor: 5, Stiffness: stiffness, Slack: slack}
		if a, factors, err := tie.Allowable(); err == nil {
			if !(a >= 0 && a <= strength*float64(max(parts, 1))*(1+1e-12)) || len(factors) == 0 {
				t.Fatalf("%+v carries %g N", tie, a)
			}
			tie.Parts++
			if more, _, err := tie.Allowable(); err == nil && more < a {
				t.Fatalf("%g N, with a part more %g", a, more)
			}
			tie.Parts--
		}
		jerk, err := tie.Jerk(force)
		if err != nil {
			return
		}
		if !(jerk >= 2*force*(1-1e-12)) || math.IsInf(jerk, 0) {
			t.Fatalf("%+v: %g N of %g N", tie, jerk, force)
		}
		tie.Slack = slack + 0.01
		if more, err := tie.Jerk(force); err == nil && more < jerk*(1-1e-12) {
			t.Fatalf("%g N, with more slack %g", jerk, more)
		}
	})
}
