package float

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// randomPlatform returns a broad invented dock with every kind of unit.
func randomPlatform(rng *rand.Rand, kinds bool) *Platform {
	p := &Platform{Density: 990 + 30*rng.Float64()}
	n := 4 + rng.IntN(8)
	capacity := 0.0
	for i := range n {
		u := Unit{
			At:   r3.Vec{X: -3 + 6*float64(i/2)/float64(n/2), Y: float64(i%2*2-1) * (0.8 + 0.6*rng.Float64()), Z: -0.3 + 0.05*rng.Float64()},
			Mass: 10 + 15*rng.Float64(),
		}
		d, l := 0.4+0.3*rng.Float64(), 0.6+0.6*rng.Float64()
		u.Body = Cylinder{Diameter: d, Length: l}
		switch rng.IntN(3) {
		case 0:
			u.Heading = math.Pi / 2
		case 1:
			u.Heading = 6 * (rng.Float64() - 0.5)
		}
		if kinds {
			if rng.IntN(3) == 0 {
				u.Body = Block{Length: l, Width: d, Height: 0.5}
			}
			switch rng.IntN(5) {
			case 0:
				u.Leak = u.Body.Volume() * 0.4 * rng.Float64()
			case 1:
				u.Captive = true
				u.Leak = u.Body.Volume() * 0.2 * rng.Float64()
			case 2:
				u.Flooded = rng.IntN(3) == 0
			}
		}
		if !u.Flooded {
			capacity += u.Body.Volume()*p.Density - u.Mass - p.Density*u.Leak
		}
		p.Units = append(p.Units, u)
	}
	p.Weights = []Weight{
		{Mass: capacity * (0.2 + 0.4*rng.Float64()), At: r3.Vec{X: 0.2 * rng.NormFloat64(), Y: 0.1 * rng.NormFloat64(), Z: 0.1}},
		{Mass: 80, At: r3.Vec{X: rng.NormFloat64(), Y: 0.5 * rng.NormFloat64(), Z: 1.2}},
	}
	if kinds && rng.IntN(2) == 0 {
		p.Wave = &Wave{Height: 0.2, Length: 12 + 10*rng.Float64(), Heading: rng.Float64() * 6, Phase: rng.Float64() * 6}
	}
	return p
}

// The gradient is the energy's and the stiffness is the gradient's derivative.
func TestStiffnessIsDerivative(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for run := range 300 {
		p := randomPlatform(rng, true)
		m, err := p.model(nil)
		if err != nil {
			t.Fatal(err)
		}
		x, y, z := upright(0.3*rng.NormFloat64(), 0.2*rng.NormFloat64())
		var s sums
		d := m.levelled(x, y, z, m.guess(x, y, z), &s)
		if s.i0 < 0.05*m.plane {
			continue
		}
		g0, g1, g2, curve, _ := m.forces(x, y, z, &s)
		grad := [3]float64{g0, g1, g2}
		hess := [3][3]float64{
			{m.rho * s.i0, m.rho * s.i1, m.rho * s.i2},
			{m.rho * s.i1, m.rho*s.i11 - curve, m.rho * s.i12},
			{m.rho * s.i2, m.rho * s.i12, m.rho*s.i22 - curve},
		}
		scale := s.mass * m.length
		const step = 1e-5
		for k := range 3 {
			// Along a great circle from n the moment along it is the derivative.
			move := func(sign float64) (float64, float64, float64, float64, *sums) {
				var dir [3]float64
				dir[k] = sign * step
				tx, ty, tz := x, y, z
				sin, cos := math.Sincos(math.Hypot(dir[1], dir[2]))
				if sin != 0 {
					f := sin / math.Hypot(dir[1], dir[2])
					tx = x*cos + f*(dir[1]*s.e1x+dir[2]*s.e2x)
					ty = y*cos + f*(dir[1]*s.e1y+dir[2]*s.e2y)
					tz = z*cos + f*(dir[1]*s.e1z+dir[2]*s.e2z)
				}
				var o sums
				m.at(tx, ty, tz, d+dir[0], &o)
				return tx, ty, tz, d + dir[0], &o
			}
			_, _, _, _, up := move(1)
			_, _, _, _, down := move(-1)
			if got := (up.energy - down.energy) / (2 * step); math.Abs(got-grad[k]) > 1e-7*scale {
				t.Errorf("run %d: energy falls by %v, force %d says %v", run, got, k, grad[k])
			}
			if got := (up.energy - 2*s.energy + down.energy) / (step * step); math.Abs(got-hess[k][k]) > 2e-4*scale {
				t.Errorf("run %d: energy curves by %v, stiffness %d says %v", run, got, k, hess[k][k])
			}
			// Off the diagonal: the derivative of M - ρV is exact to first order.
			u0 := (up.mass - m.rho*up.v - down.mass + m.rho*down.v) / (2 * step)
			if math.Abs(u0-hess[0][k]) > 1e-4*scale {
				t.Errorf("run %d: lift changes by %v, stiffness 0%d says %v", run, u0, k, hess[0][k])
			}
		}
		// The product of the two turns, from the energy at the four corners.
		corner := func(a, b float64) float64 {
			q := math.Hypot(a, b)
			sin, cos := math.Sincos(q)
			f := sin / q
			var o sums
			m.at(x*cos+f*(a*s.e1x+b*s.e2x), y*cos+f*(a*s.e1y+b*s.e2y), z*cos+f*(a*s.e1z+b*s.e2z), d, &o)
			return o.energy
		}
		const h = 1e-4
		cross := (corner(h, h) - corner(h, -h) - corner(-h, h) + corner(-h, -h)) / (4 * h * h)
		if math.Abs(cross-hess[1][2]) > 2e-4*scale {
			t.Errorf("run %d: energy twists by %v, stiffness 12 says %v", run, cross, hess[1][2])
		}
		if t.Failed() {
			t.Fatalf("%+v", p)
		}
	}
}

// Wherever it starts, a broad dock ends in the same place.
func TestStartDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	settled := 0
	for run := range 200 {
		p := randomPlatform(rng, run%2 == 1)
		a, err := p.Settle()
		if err != nil {
			continue
		}
		if a.Residual > 1e-12 {
			t.Errorf("run %d: residual %v", run, a.Residual)
		}
		if a.Principal()[0].Height < 0.5 || a.Tilt() > 0.2 {
			continue // other rest positions may exist
		}
		settled++
		for range 8 {
			b, err := p.SettleFrom(0.6*(rng.Float64()-0.5), 0.5*(rng.Float64()-0.5))
			if err != nil {
				t.Errorf("run %d: %v", run, err)
				continue
			}
			if math.Abs(a.Heel-b.Heel) > 1e-9 || math.Abs(a.Trim-b.Trim) > 1e-9 || math.Abs(a.Level-b.Level) > 1e-9 {
				t.Errorf("run %d: %v %v %v and %v %v %v", run, a.Heel, a.Trim, a.Level, b.Heel, b.Trim, b.Level)
			}
		}
	}
	if settled < 60 {
		t.Errorf("only %d docks settled", settled)
	}
}
