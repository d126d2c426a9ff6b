package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A part is one buoyant unit, made ready: what Settle needs at every step.
type part struct {
	x, y, z float64 // centre
	ca, sa  float64 // direction of its x axis
	r, l    float64 // of a cylinder; body is nil
	body    Body
	volume  float64
	loose   float64 // water inside that runs to the low side, m³
	own     float64 // of a captive unit, its mass over the density, m³
	captive bool
	odd     bool    // not a strapped, dry cylinder in level water
	wet     bool    // the water is not level: use up = n - (tx, ty, 0)
	rise    float64 // of the water over the mean level
	tx, ty  float64
}

// A model is a platform made ready.
type model struct {
	rho        float64
	parts      []part
	mass       float64 // of all that is fixed, kg
	mx, my, mz float64 // its moment
	tx, ty     float64 // mean slope of a wave; up directions are reckoned from its normal
	length     float64 // a typical lever, m
	plane      float64 // a typical waterplane, m²
	high       float64 // a typical half height of the bodies, m
	volume     float64 // of all bodies
	lift       float64 // volume that can carry the platform beyond captive units' own
}

// model fills a model, with parts in buf as far as it reaches.
func (p *Platform) model(buf []part) (m model, err error) {
	if err := p.check(); err != nil {
		return model{}, err
	}
	m.rho = p.Density
	for i := range p.Weights {
		w := &p.Weights[i]
		m.add(w.Mass, w.At)
	}
	if len(p.Units) > cap(buf) {
		buf = make([]part, 0, len(p.Units))
	}
	var high, lever float64
	for i := range p.Units {
		u := &p.Units[i]
		lever = max(lever, math.Abs(u.At.X), math.Abs(u.At.Y))
		if u.Flooded {
			if !u.Captive {
				m.add(u.Mass, u.At)
			}
			continue
		}
		q := part{x: u.At.X, y: u.At.Y, z: u.At.Z, ca: 1, loose: u.Leak}
		switch u.Heading {
		case 0:
		case math.Pi / 2:
			q.ca, q.sa = 0, 1
		default:
			q.sa, q.ca = math.Sincos(u.Heading)
		}
		q.captive = u.Captive
		if u.Captive {
			q.own, q.loose = u.Mass/p.Density+u.Leak, 0
		} else {
			m.add(u.Mass, u.At)
		}
		var half float64
		switch b := u.Body.(type) {
		case Cylinder:
			q.r, q.l = b.Diameter/2, b.Length
			q.volume = b.Volume()
			half = q.r
			m.plane += b.Diameter * b.Length
		default:
			q.body = b
			q.volume = b.Volume()
			half = math.Cbrt(q.volume) / 2
			if k, ok := b.(Block); ok {
				half = k.Height / 2
			}
			m.plane += q.volume / (2 * half)
		}
		if p.Wave != nil {
			q.wet = true
			q.rise, q.tx, q.ty = p.Wave.at(q.x, q.y)
			if q.body == nil {
				q.body = u.Body
			}
		}
		q.odd = q.body != nil || q.captive || q.loose > 0
		high += half * q.volume
		m.volume += q.volume
		m.lift += max(q.volume-q.own-q.loose, 0)
		buf = append(buf, q)
	}
	m.parts = buf
	m.lean()
	if m.volume > 0 {
		m.high = high / m.volume
	}
	m.length = max(lever, 2*m.high)
	return m, nil
}

// lean takes the mean slope of a wave out of the units' own. The platform slides
// down it as fast as the water, so that its weight bears on the surface at right
// angles, as the water's pressure does; only what the slopes differ by is left
// to each unit.
func (m *model) lean() {
	var all float64
	for i := range m.parts {
		q := &m.parts[i]
		m.tx += q.volume * q.tx
		m.ty += q.volume * q.ty
		all += q.volume
	}
	if m.tx == 0 && m.ty == 0 {
		return
	}
	m.tx /= all
	m.ty /= all
	for i := range m.parts {
		q := &m.parts[i]
		q.tx -= m.tx
		q.ty -= m.ty
		q.rise -= m.tx*q.x + m.ty*q.y
	}
}

// apparent turns a true up direction into that from the mean slope, and true
// turns it back.
func (m *model) apparent(x, y, z *float64) {
	if m.tx != 0 || m.ty != 0 {
		*x, *y = *x-m.tx, *y-m.ty
		f := 1 / math.Sqrt(*x**x+*y**y+*z**z)
		*x, *y, *z = *x*f, *y*f, *z*f
	}
}

func (m *model) true(x, y, z float64) (float64, float64, float64) {
	if m.tx != 0 || m.ty != 0 {
		x, y = x+m.tx, y+m.ty
		f := 1 / math.Sqrt(x*x+y*y+z*z)
		x, y, z = x*f, y*f, z*f
	}
	return x, y, z
}

func (m *model) add(mass float64, at r3.Vec) {
	m.mass += mass
	m.mx += mass * at.X
	m.my += mass * at.Y
	m.mz += mass * at.Z
}
