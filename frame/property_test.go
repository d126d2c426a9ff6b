package frame_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/frame"
)

// each runs a property over random beams.
func each(t *testing.T, n int, property func(t *testing.T, r *rand.Rand)) {
	t.Helper()
	for seed := range uint64(n) {
		property(t, rand.New(rand.NewPCG(seed, 7)))
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// balance checks forces and moments of a solved beam.
func balance(t *testing.T, b frame.Beam, l *frame.Line) {
	t.Helper()
	force, moment := total(b)
	size := math.Abs(force) + sizes(l).Shear + sizes(l).Moment/b.Length
	for i, p := range l.Push {
		force -= p
		moment -= p*b.Rests[i].At + l.Couple[i]
		size += math.Abs(p)
	}
	near(t, "force left over", force, 0, 1e-11*size)
	near(t, "moment left over", moment, 0, 1e-11*size*b.Length)
}

func TestBalance(t *testing.T) {
	each(t, 300, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		l := solve(t, b)
		balance(t, b, l)
		if !(l.Residual <= 1e-12) {
			t.Errorf("residual %g", l.Residual)
		}
		end := l.At(b.Length)
		free := true
		for _, rest := range b.Rests {
			free = free && !(rest.Clamped && rest.At == b.Length)
		}
		if s := sizes(l); free {
			near(t, "moment at the free end", end.Moment, 0, 1e-10*s.Moment)
		}
	})
}

// TestDiagrams checks that each diagram is the slope of the next, that they join
// where pieces meet, and that rigid rests and clamps hold.
func TestDiagrams(t *testing.T) {
	each(t, 200, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		l := solve(t, b)
		s := sizes(l)
		for i, p := range l.Pieces {
			h := p.To - p.Start.X
			if h < 1e-3*b.Length {
				continue
			}
			x := p.Start.X + h*(0.2+0.6*r.Float64())
			e := 0.1 * h
			// Fourth-order differences are exact for the quartics and
			// quintics up to a small remainder of the fifth derivative.
			slope := func(f func(frame.Diagram) float64) float64 {
				at := func(k float64) float64 { return f(l.At(x + k*e)) }
				return (8*(at(1)-at(-1)) - (at(2) - at(-2))) / (12 * e)
			}
			rise := (p.QTo - p.Q) / h
			q := p.Q + rise*(x-p.Start.X)
			d := l.At(x)
			near(t, "dV/dx", slope(func(d frame.Diagram) float64 { return d.Shear }), -q, 1e-9*(s.Shear/h))
			near(t, "dM/dx", slope(func(d frame.Diagram) float64 { return d.Moment }), d.Shear, 1e-9*(s.Shear+s.Moment/h))
			near(t, "dφ/dx", slope(func(d frame.Diagram) float64 { return d.Slope }), d.Moment/b.EI, 1e-9*(s.Moment/b.EI+s.Slope/h))
			axis := d.Slope
			if b.GA > 0 {
				axis -= d.Shear / b.GA
			}
			remainder := math.Abs(rise) * e * e * e * e / b.EI
			near(t, "dw/dx", slope(func(d frame.Diagram) float64 { return d.Deflection }), axis, 1e-9*(s.Slope+s.Shear/b.EI*b.Length+s.Deflection/h)+remainder)
			if i > 0 {
				left := l.Before(p.Start.X)
				near(t, "deflection where pieces meet", p.Start.Deflection, left.Deflection, 1e-11*s.Deflection+1e-15)
				hinged := len(b.Hinges) > 0 && math.Abs(b.Hinges[0]-p.Start.X) < 1e-6
				if !hinged {
					near(t, "slope where pieces meet", p.Start.Slope, left.Slope, 1e-10*s.Slope+1e-15)
				} else {
					near(t, "moment at the hinge", p.Start.Moment, 0, 1e-10*s.Moment)
				}
			}
		}
		for i, rest := range b.Rests {
			d := l.At(rest.At)
			if rest.Support == nil {
				near(t, "rigid rest", d.Deflection, -rest.Settlement, 1e-12*s.Deflection+1e-15)
			}
			if rest.Clamped {
				near(t, "clamp", d.Slope, 0, 1e-12*s.Slope+1e-15)
			}
			jump := l.At(rest.At).Shear - l.Before(rest.At).Shear
			if rest.At > 0 && rest.At < b.Length {
				near(t, "jump of the shear", jump, l.Push[i], 1e-9*s.Shear)
			}
		}
	})
}

func TestExtremesBoundTheLine(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		l := solve(t, b)
		e, s := l.Extremes(), sizes(l)
		for range 400 {
			d := l.At(b.Length * r.Float64())
			if d.Moment > e.Sag.Moment+1e-9*s.Moment || d.Moment < e.Hog.Moment-1e-9*s.Moment ||
				math.Abs(d.Shear) > math.Abs(e.Shear.Shear)+1e-9*s.Shear ||
				d.Deflection > e.Up.Deflection+1e-9*s.Deflection || d.Deflection < e.Down.Deflection-1e-9*s.Deflection {
				t.Errorf("%v lies outside %+v", d, e)
			}
		}
		for name, pair := range map[string][2]float64{
			"sag":   {e.Sag.Moment, math.Max(l.At(e.Sag.X).Moment, l.Before(e.Sag.X).Moment)},
			"hog":   {e.Hog.Moment, math.Min(l.At(e.Hog.X).Moment, l.Before(e.Hog.X).Moment)},
			"shear": {math.Abs(e.Shear.Shear), math.Max(math.Abs(l.At(e.Shear.X).Shear), math.Abs(l.Before(e.Shear.X).Shear))},
			"up":    {e.Up.Deflection, l.At(e.Up.X).Deflection},
			"down":  {e.Down.Deflection, l.At(e.Down.X).Deflection},
		} {
			near(t, name, pair[0], pair[1], 1e-9*math.Max(math.Abs(pair[0]), 1e-6))
		}
		half := l.ExtremesWithin(0, b.Length/2)
		if half.Sag.X > b.Length/2 || half.Sag.Moment > e.Sag.Moment+1e-9*s.Moment {
			t.Errorf("the left half has its sag at %v", half.Sag)
		}
	})
}

// mirror turns a beam end for end.
func mirror(b frame.Beam) frame.Beam {
	m := frame.Beam{Length: b.Length, EI: b.EI, GA: b.GA}
	for _, h := range b.Hinges {
		m.Hinges = append(m.Hinges, b.Length-h)
	}
	for _, r := range b.Rests {
		r.At = b.Length - r.At
		m.Rests = append(m.Rests, r)
	}
	for _, l := range b.Loads {
		n := frame.Load{From: b.Length - l.From, P: l.P, M: -l.M}
		if l.To > l.From {
			n = frame.Load{From: b.Length - l.To, To: b.Length - l.From, Q: l.Q + l.Rise, Rise: -l.Rise}
		}
		m.Loads = append(m.Loads, n)
	}
	return m
}

func TestMirror(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		l, m := solve(t, b), solve(t, mirror(b))
		s := sizes(l)
		for range 20 {
			x := b.Length * r.Float64()
			a, c := l.At(x), m.At(b.Length-x)
			near(t, "moment", c.Moment, a.Moment, 1e-8*s.Moment)
			near(t, "shear", c.Shear, -a.Shear, 1e-8*s.Shear)
			near(t, "slope", c.Slope, -a.Slope, 1e-8*s.Slope)
			near(t, "deflection", c.Deflection, a.Deflection, 1e-8*s.Deflection)
		}
		for i := range l.Push {
			near(t, "push", m.Push[i], l.Push[i], 1e-8*(s.Shear+math.Abs(l.Push[i])))
		}
	})
}

func TestReciprocity(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		a, c := b.Length*r.Float64(), b.Length*r.Float64()
		b.Loads = []frame.Load{frame.Point(a, 1000)}
		one := solve(t, b)
		b.Loads = []frame.Load{frame.Point(c, 1000)}
		two := solve(t, b)
		near(t, "deflection at c by a load at a", one.At(c).Deflection, two.At(a).Deflection, 1e-10*(sizes(one).Deflection+sizes(two).Deflection))
		b.Loads = []frame.Load{{From: c, M: 1000}}
		turned := solve(t, b)
		near(t, "turn at c by a load at a", -one.At(c).Slope, turned.At(a).Deflection, 1e-10*(sizes(one).Slope+sizes(turned).Deflection))
	})
}

func TestSuperposition(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		other := b
		other.Loads = []frame.Load{randomLoad(r, b.Length), randomLoad(r, b.Length)}
		k := 3 * (r.Float64() - 0.5)
		both := b
		both.Loads = append([]frame.Load(nil), b.Loads...)
		for _, l := range other.Loads {
			l.Q, l.Rise, l.P, l.M = k*l.Q, k*l.Rise, k*l.P, k*l.M
			both.Loads = append(both.Loads, l)
		}
		l, m, n := solve(t, b), solve(t, other), solve(t, both)
		sl, sm := sizes(l), sizes(m)
		for range 10 {
			x := b.Length * r.Float64()
			near(t, "moment", n.At(x).Moment, l.At(x).Moment+k*m.At(x).Moment, 1e-10*(sl.Moment+sm.Moment))
			near(t, "shear", n.At(x).Shear, l.At(x).Shear+k*m.At(x).Shear, 1e-10*(sl.Shear+sm.Shear))
			near(t, "deflection", n.At(x).Deflection, l.At(x).Deflection+k*m.At(x).Deflection, 1e-10*(sl.Deflection+sm.Deflection))
		}
	})
}

// TestSubdividing cuts spans by rests that carry nothing and loads into parts.
func TestSubdividing(t *testing.T) {
	each(t, 150, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		cut := b
		cut.Rests = append([]frame.Rest(nil), b.Rests...)
		for range 4 {
			cut.Rests = append(cut.Rests, frame.Rest{At: b.Length * r.Float64(), Support: frame.Spring(0)})
		}
		cut.Loads = nil
		for _, l := range b.Loads {
			if !(l.To > l.From) {
				l.P /= 2
				l.M /= 2
				cut.Loads = append(cut.Loads, l, l)
				continue
			}
			f := r.Float64()
			m, q := l.From+f*(l.To-l.From), l.Q+f*l.Rise
			cut.Loads = append(cut.Loads, frame.Load{From: l.From, To: m, Q: l.Q, Rise: f * l.Rise}, frame.Load{From: m, To: l.To, Q: q, Rise: l.Rise - f*l.Rise})
		}
		l, m := solve(t, b), solve(t, cut)
		s := sizes(l)
		for range 20 {
			x := b.Length * r.Float64()
			near(t, "moment", m.At(x).Moment, l.At(x).Moment, 1e-9*s.Moment)
			near(t, "deflection", m.At(x).Deflection, l.At(x).Deflection, 1e-9*s.Deflection)
		}
		near(t, "energy", m.Energy, l.Energy, 1e-8*math.Abs(l.Energy))
	})
}

func TestWorkIsTwiceTheEnergy(t *testing.T) {
	each(t, 200, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		l := solve(t, b)
		near(t, "energy", l.Energy, work(b, l)/2, 1e-9*math.Abs(l.Energy))
	})
}

// TestComplementaryEnergy holds for supports of any kind (F. Engesser): work
// minus energy, as a function of a load, grows with the movement of that load.
func TestComplementaryEnergy(t *testing.T) {
	each(t, 100, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, letGo)
		x, p := b.Length*r.Float64(), 500+1000*r.Float64()
		complementary := func(p float64) float64 {
			c := b
			c.Loads = append(append([]frame.Load(nil), b.Loads...), frame.Point(x, p))
			l := solve(t, c)
			return work(c, l) - l.Energy
		}
		const d = 1e-3
		rate := (complementary(p+d) - complementary(p-d)) / (2 * d)
		b.Loads = append(b.Loads, frame.Point(x, p))
		l := solve(t, b)
		near(t, "movement of the load", rate, -l.At(x).Deflection, 1e-4*sizes(l).Deflection)
	})
}

func TestOneWaySupportsNeverPull(t *testing.T) {
	idle := 0
	each(t, 200, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		for i := range b.Rests {
			if b.Rests[i].Support != nil && i > 0 && i < len(b.Rests)-1 {
				b.Rests[i].Support = frame.OneWay(5e4)
			}
		}
		for i := range b.Rests {
			b.Rests[i].Name = []string{"", "", "", "", "", ""}[i]
		}
		l := solve(t, b)
		same := true
		for i, rest := range b.Rests {
			if rest.Support != nil && i > 0 && i < len(b.Rests)-1 {
				if l.Push[i] < 0 {
					t.Errorf("rest %d pulls with %g N", i, l.Push[i])
				}
				if l.Push[i] == 0 {
					idle++
					same = false
					if w := l.At(rest.At).Deflection; w < -1e-12 {
						t.Errorf("rest %d is idle, sunk by %g m", i, -w)
					}
				}
			}
		}
		if same { // then it answers as springs would
			for i := range b.Rests {
				if b.Rests[i].Support != nil && i > 0 && i < len(b.Rests)-1 {
					b.Rests[i].Support = frame.Spring(5e4)
				}
			}
			m := solve(t, b)
			for i := range l.Push {
				near(t, "push", m.Push[i], l.Push[i], 1e-9*(sizes(l).Shear+math.Abs(l.Push[i])))
			}
		}
	})
	if idle == 0 {
		t.Error("no support ever let go: the test is empty")
	}
}

func TestRigidAndSoftLimits(t *testing.T) {
	each(t, 60, func(t *testing.T, r *rand.Rand) {
		b := frame.Beam{Length: 6, EI: 1e5, Loads: []frame.Load{randomLoad(r, 6), randomLoad(r, 6)}}
		for i := range 4 {
			b.Rests = append(b.Rests, frame.Rest{At: 2 * float64(i)})
		}
		rigid := solve(t, b)
		on := func(k float64) *frame.Line {
			c := b
			c.Rests = nil
			for _, rest := range b.Rests {
				rest.Support = frame.Spring(k)
				c.Rests = append(c.Rests, rest)
			}
			return solve(t, c)
		}
		s := sizes(rigid)
		stiff := on(1e14)
		for i := range b.Rests {
			near(t, "push on stiff springs", stiff.Push[i], rigid.Push[i], 1e-7*s.Shear)
		}
		// On springs next to nothing the beam is a rigid bar: pushes lie on a
		// straight line that carries the load and its turning.
		soft := on(1)
		force, moment := total(b)
		mean, lean := force/4, (moment-3*force)/20 // sum of (x-3)² is 20
		for i, rest := range b.Rests {
			near(t, "push on soft springs", soft.Push[i], mean+lean*(rest.At-3), 1e-3*(math.Abs(force)+math.Abs(moment)))
		}
		// No bending stiffness to speak of: each spring carries its own bay.
		limp := b
		limp.EI = 1e-9
		limp.Loads = []frame.Load{frame.Point(2, 100), frame.Point(4, 300)}
		limp.Rests = nil
		for _, rest := range b.Rests {
			rest.Support = frame.Spring(1e4)
			limp.Rests = append(limp.Rests, rest)
		}
		l := solve(t, limp)
		near(t, "push of a limp beam", l.Push[1], 100, 1e-6)
		near(t, "push of a limp beam", l.Push[2], 300, 1e-6)
	})
}

// TestShortPieces has a rest within a hair of another: the couple they form is a
// clamp in the limit, and the digits must not drown in the stiffness between.
func TestShortPieces(t *testing.T) {
	for _, h := range []float64{1e-2, 1e-3, 1e-4, 1e-5, 1e-6} {
		b := frame.Beam{
			Length: 4, EI: 1e6, Loads: []frame.Load{frame.Uniform(0, 4, 1000)},
			Rests: []frame.Rest{{At: 0}, {At: h}, {At: 4 - h}, {At: 4}},
		}
		l := solve(t, b)
		span := 4 - 2*h
		// Between clamps that give like a hinged stub of length h.
		m := 1000 * span * span * span / 24 / (span/2 + h/3)
		m += 1000 * h * h * h / 24 / (span/2 + h/3)
		near(t, "moment over the inner rest", l.At(h).Moment, -m, 1e-9*m)
		near(t, "middle", l.At(2).Moment, 1000*span*span/8-m, 1e-9*m)
		balance(t, b, l)
	}
}

// TestScaling doubles all lengths: with the same line load, moments grow four
// times, deflections sixteen.
func TestScaling(t *testing.T) {
	each(t, 60, func(t *testing.T, r *rand.Rand) {
		b := randomBeam(r, linear)
		for i := range b.Rests {
			b.Rests[i].Support = nil
		}
		q := 100 + 900*r.Float64()
		b.GA = 0
		b.Loads = []frame.Load{frame.Uniform(b.Length/5, b.Length/2, q)}
		c := b
		c.Length *= 2
		c.Rests = append([]frame.Rest(nil), b.Rests...)
		for i := range c.Rests {
			c.Rests[i].At *= 2
		}
		c.Hinges = append([]float64(nil), b.Hinges...)
		for i := range c.Hinges {
			c.Hinges[i] *= 2
		}
		c.Loads = []frame.Load{frame.Uniform(2*b.Length/5, b.Length, q)}
		l, m := solve(t, b), solve(t, c)
		s := sizes(l)
		x := b.Length * r.Float64()
		near(t, "moment", m.At(2*x).Moment, 4*l.At(x).Moment, 4e-9*s.Moment)
		near(t, "deflection", m.At(2*x).Deflection, 16*l.At(x).Deflection, 16e-9*s.Deflection)
	})
}

// TestSettlement: a simple beam whose support goes down turns without forces; a
// clamped one takes 12EI/L³ of the difference.
func TestSettlement(t *testing.T) {
	b := frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{At: 0}, {At: 4, Settlement: 0.01}}}
	l := solve(t, b)
	near(t, "slope", l.At(1).Slope, -0.0025, 1e-15)
	near(t, "moment", l.Extremes().Sag.Moment, 0, 1e-9)
	b.Rests[0].Clamped, b.Rests[1].Clamped = true, true
	l = solve(t, b)
	near(t, "push", l.Push[0], 12*1e6/64*0.01, 1e-8)
	near(t, "push", l.Push[1], -12*1e6/64*0.01, 1e-8)
	near(t, "couple", l.Couple[0], 6*1e6/16*0.01, 1e-8)
	// Springs: the beam stays level when all of them go down alike.
	s := frame.Spring(1e4)
	b = frame.Beam{Length: 4, EI: 1e6, Rests: []frame.Rest{{Support: s, Settlement: 0.02}, {At: 2, Support: s, Settlement: 0.02}, {At: 4, Support: s, Settlement: 0.02}}}
	l = solve(t, b)
	near(t, "deflection", l.At(1).Deflection, -0.02, 1e-15)
	near(t, "push", l.Push[1], 0, 1e-9)
}
