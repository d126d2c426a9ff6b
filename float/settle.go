package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

const (
	balanced  = 1e-14 // imbalance over weight at which Settle stops
	tolerated = 1e-9  // at which it may stop when rounding lets it go no further
	maxTurn   = 0.2   // rad a step
	slowTurn  = 0.02  // rad a step where a capsize is confirmed
	nudge     = 1e-3  // rad by which an unstable balance is left
	maxSteps  = 300
	stackSize = 16 // units that need no allocation
)

// Settle returns the rest position that the platform reaches from level: its
// sinkage, heel and trim together.
//
// It follows the potential energy downhill by Newton's method and stops where
// the imbalance is 1e-14 of the weight. A balance that is not a minimum is left
// toward positive heel (the +y side goes down) or, where only trim is unstable,
// toward positive trim; the mirror image of such an answer is another answer.
//
// Physical failures are a [*Failure]: of class [ErrSinks], [ErrNoFloat],
// [ErrCapsizes] where it tilts past TiltStop (confirmed by a second search in
// short steps), or [ErrUnsettled]. Bad data is a [*measure.Error]. Settle does not change the platform and, up to 16 units,
// allocates nothing.
// A barge is within 2.3 units in the last place of the sum of its terms, two drums, whose
// search ends at 1e-14 of the weight, within 37.4.
// Worst at (0.4249, 1.769, 2.428, 415.7, 0.5443, 998.2), ordered as in testdata/accuracy.csv.
func (p *Platform) Settle() (State, error) { return p.SettleFrom(0, 0) }

// SettleFrom is [Platform.Settle] from an attitude of the caller's, in rad; a
// platform with several rest positions may reach another one from there.
func (p *Platform) SettleFrom(heel, trim float64) (State, error) {
	return p.settleFrom(heel, trim, true)
}

// settleFrom leaves out what is lacking of a platform that capsizes, half of the work
// there, where nobody asks how much it is.
func (p *Platform) settleFrom(heel, trim float64, howMuch bool) (State, error) {
	var buf [stackSize]part
	m, err := p.model(buf[:0])
	if err != nil {
		return State{}, err
	}
	nx, ny, nz := upright(heel, trim)
	if !(nz >= math.Cos(p.stop())) {
		r := stopRange
		r.Hi = p.stop()
		if err := headingRange.Check("heel", heel); err != nil {
			return State{}, err
		}
		if err := headingRange.Check("trim", trim); err != nil {
			return State{}, err
		}
		return State{}, &measure.Error{
			Field: "tilt of heel and trim", Kind: measure.Angle, Value: math.Acos(nz), Range: r, Class: measure.ErrRange,
		}
	}
	if f := m.carries(); f != nil {
		return State{}, f
	}
	if !(m.mass > 0) {
		return State{}, massless(m.mass)
	}
	m.apparent(&nx, &ny, &nz)
	var s sums
	x, y, z := nx, ny, nz
	end := m.settle(&nx, &ny, &nz, math.Cos(p.stop()), maxTurn, &s)
	if end.class == ErrCapsizes {
		// A long step may have leapt over a rest position.
		nx, ny, nz = x, y, z
		end = m.settle(&nx, &ny, &nz, math.Cos(p.stop()), slowTurn, &s)
	}
	heel, trim = attitude(m.true(nx, ny, nz))
	switch end.class {
	case nil:
	case ErrCapsizes:
		f := &Failure{Class: ErrCapsizes, Heel: heel, Trim: trim}
		if howMuch {
			f.Short = m.lacking(nx, ny, nz)
		}
		return State{}, f
	default:
		return State{}, &Failure{Class: end.class, Short: end.residual, Heel: heel, Trim: trim}
	}
	return m.state(p, nx, ny, nz, &end, &s), nil
}

// massless reports a platform that weighs nothing: it rests nowhere.
func massless(mass float64) error {
	return (measure.Range{Kind: measure.Mass, Lo: 0, Hi: math.Inf(1), OpenLo: true}).Check("mass of the platform", mass)
}

// carries returns a failure where the bodies cannot carry the masses.
func (m *model) carries() *Failure {
	load := m.mass
	for i := range m.parts {
		if !m.parts[i].captive {
			load += m.rho * m.parts[i].loose
		}
	}
	lift := 0.0
	for i := range m.parts {
		q := &m.parts[i]
		if q.captive {
			lift += m.rho * max(q.volume-q.own, 0)
		} else {
			lift += m.rho * q.volume
		}
	}
	switch {
	case !(lift > 0):
		return &Failure{Class: ErrNoFloat, Short: load}
	case load >= lift:
		return &Failure{Class: ErrSinks, Short: load - lift}
	}
	return nil
}

// settle finds the rest position from the attitude n, which it changes, with
// turns of at most most a step.
func (m *model) settle(nx, ny, nz *float64, cosStop, most float64, s *sums) (end ending) {
	x, y, z := *nx, *ny, *nz
	d := m.guess(x, y, z)
	m.at(x, y, z, d, s)
	var t sums
	nudges, levelled := 0, 0
	for range maxSteps {
		g0, g1, g2, curve, residual := m.forces(x, y, z, s)
		if !(residual <= math.MaxFloat64) { // a body of the caller's gave no number
			*nx, *ny, *nz = x, y, z
			return ending{d: d, residual: residual, class: ErrUnsettled}
		}
		i0 := s.i0
		if (!(i0 > 1e-6*m.plane) || math.Abs(g0) > 0.6*s.mass) && levelled < 8 && math.Abs(g0) > 1e-6*s.mass {
			// Out of the water or under it: bring it to its level first.
			levelled++
			d = m.levelled(x, y, z, d, s)
			continue
		}
		h00 := m.rho * max(i0, 1e-9*m.plane)
		h01, h02 := m.rho*s.i1, m.rho*s.i2
		k := stiffness{
			m.rho*s.i11 - curve - h01*h01/h00,
			m.rho*s.i12 - h01*h02/h00,
			m.rho*s.i22 - curve - h02*h02/h00,
		}
		r1, r2 := -(g1 - h01*g0/h00), -(g2 - h02*g0/h00)
		lo, hi, c, sn := k.principal()
		scale := max(math.Abs(lo), math.Abs(hi), 1e-6*s.mass*m.length)
		if residual <= balanced {
			if lo >= -1e-9*scale || nudges >= 8 {
				*nx, *ny, *nz = x, y, z
				return ending{d: d, residual: residual, k: k}
			}
			// A balance, but no rest. Heel grows toward -e2, trim toward -e1.
			nudges++
			if sn > 1e-6 || math.Abs(sn) <= 1e-6 && c > 0 {
				c, sn = -c, -sn
			}
			turn(&x, &y, &z, nudge*c, nudge*sn, s)
			d -= (h01*c + h02*sn) * nudge / h00
			m.at(x, y, z, d, s)
			continue
		}
		// Newton in the principal directions; where the energy curves down, away
		// from the balance.
		a, b := r1*c+r2*sn, r2*c-r1*sn
		floor := 1e-7 * scale
		a /= max(math.Abs(lo), floor)
		b /= max(math.Abs(hi), floor)
		p1, p2 := a*c-b*sn, a*sn+b*c
		p0 := -(g0 + h01*p1 + h02*p2) / h00
		cut := 1.0
		if q := math.Sqrt(p1*p1 + p2*p2); q > most {
			cut = most / q
		}
		if q := math.Abs(p0) * cut; q > 2*m.high+m.length*most {
			cut *= (2*m.high + m.length*most) / q
		}
		slope := g0*p0 + g1*p1 + g2*p2
		slack := 1e-13 * s.mass * m.length
		taken := false
		for range 30 {
			tx, ty, tz := x, y, z
			turn(&tx, &ty, &tz, cut*p1, cut*p2, s)
			td := d + cut*p0
			m.at(tx, ty, tz, td, &t)
			if residual < 1e-7 {
				// Energy no longer tells; the imbalance does.
				if _, _, _, _, now := m.forces(tx, ty, tz, &t); now < residual {
					taken = true
				} else if residual > tolerated && t.energy <= s.energy+slack {
					taken = true
				}
			} else if t.energy <= s.energy+1e-4*cut*slope+slack {
				taken = true
			}
			if taken {
				x, y, z, d = tx, ty, tz, td
				*s = t
				break
			}
			cut /= 2
		}
		if !taken {
			*nx, *ny, *nz = x, y, z
			if residual <= tolerated && lo >= -1e-9*scale {
				return ending{d: d, residual: residual, k: k}
			}
			return ending{d: d, residual: residual, class: ErrUnsettled}
		}
		if z < cosStop {
			*nx, *ny, *nz = x, y, z
			return ending{d: d, class: ErrCapsizes}
		}
	}
	*nx, *ny, *nz = x, y, z
	_, _, _, _, residual := m.forces(x, y, z, s)
	return ending{d: d, residual: residual, class: ErrUnsettled}
}

// state builds the result from the sums at rest.
func (m *model) state(p *Platform, nx, ny, nz float64, end *ending, s *sums) State {
	x, y, z := m.true(nx, ny, nz)
	heel, trim := attitude(x, y, z)
	f := 1 / s.mass
	st := State{
		Heel: heel, Trim: trim, Level: end.d, Residual: end.residual,
		Up: r3.Vec{X: x, Y: y, Z: z}, Mass: s.mass,
		Gravity: r3.Vec{X: s.gx * f, Y: s.gy * f, Z: s.gz * f},
		GM:      [2][2]float64{{end.k.k22 * f, end.k.k12 * f}, {end.k.k12 * f, end.k.k11 * f}},
		up:      r3.Vec{X: nx, Y: ny, Z: nz}, tx: m.tx, ty: m.ty,
		units: p.Units, corners: p.Corners, density: p.Density,
	}
	if p.Wave != nil {
		st.wave = *p.Wave
	}
	if s.v > 0 {
		st.Buoyancy = r3.Vec{X: s.bx / s.v, Y: s.by / s.v, Z: s.bz / s.v}
	}
	return st
}
