package season

import "math"

// Physical constants. Densities of ice and slush as the package ice and the
// references of the growth law use them.
const (
	daySeconds = 86400.0
	water      = 1000.0 // kg/m³
	clearIce   = 917.0  // kg/m³
	slush      = 920.0  // kg/m³, snow and the water drawn into it
	whiteIce   = 890.0  // kg/m³, frozen slush: between slush ice, 875, and clear ice
	fusion     = 3.34e5 // J/kg, Ashton
	iceK       = 2.24   // W/(m K), Ashton
	whiteK     = 2.0    // W/(m K); bubbles make white ice conduct less: our choice
	heat       = 4186.0 // J/(kg K), water
)

// sheet is the state that one day hands to the next.
type sheet struct {
	ice                        bool
	clear, white, slush, crust float64 // m; crust is the part of the slush layer frozen so far
	mass, depth, resist        float64 // snow: kg/m², m, m²K/W
	water, skin, frost         float64 // °C, °C, °C·day
	rot                        float64 // share of the ice melted between its grains
	frozen                     float64 // °C·day of frost since ice-on
	fell, drawn, gone          float64 // kg/m²: snow that fell on the ice, water drawn into it, melted or blown off
}

// coefficients are what a day needs beside its weather, worked out once.
type coefficients struct {
	p                              Params
	waterRate                      float64 // 1/day
	waterKeep, skinKeep, frostKeep float64
	newR, oldR                     float64 // m⁴K/(W kg): resistance per mass of snow
}

func coefficientsOf(l Lake, p Params) coefficients {
	rate := p.Exchange * daySeconds / (water * heat * l.MeanDepth)
	c := coefficients{
		p: p, waterRate: rate, waterKeep: math.Exp(-rate),
		skinKeep: math.Exp(-1 / p.AirDays), frostKeep: math.Exp(-1 / p.FrostDays),
	}
	// New snow never insulates less, per mass, than settled snow.
	c.oldR = 1 / (p.OldDensity * p.OldConductivity)
	c.newR = 1 / (p.NewDensity * p.NewConductivity)
	return c
}

// step takes the sheet through one day under a sun of so many W/m². Every part
// of it is integrated in closed form: the water relaxes exponentially, snow
// settles exponentially, slush and clear ice grow by the square-root law, and
// melt runs through snow, white ice and clear ice one after another.
func (c *coefficients) step(s *sheet, d *Day, sun float64) {
	p := &c.p
	wind := 1.0
	keep := c.waterKeep
	if d.Has&HasWind != 0 {
		wind = windFactor(d.Wind)
		keep = math.Exp(-c.waterRate * wind)
	}
	s.skin = d.Mean + (s.skin-d.Mean)*c.skinKeep
	if !s.ice {
		c.open(s, d, sun, wind, keep)
		return
	}
	snow, rain := d.water(p)
	c.snow(s, d, snow*p.Catch)
	c.flood(s)
	thaw := c.thaw(s, d, sun, wind, rain)
	if d.Mean < 0 {
		s.frozen -= d.Mean
		s.grow(p, d.Mean, wind)
	}
	s.clear = max(0, s.clear-p.WaterHeat*daySeconds/(clearIce*fusion))
	if h := s.clear + s.white; h <= 0 || thaw && h < p.Thinnest {
		// Meltwater at 0 °C: a cold night closes it again.
		*s = sheet{skin: s.skin, frost: p.Frost}
	}
}

// open cools or warms open water and closes the lake. The mean temperature of
// the water follows the air as one mixed body; its skin freezes when the air's
// frost outweighs the heat mixed up from below for long enough.
func (c *coefficients) open(s *sheet, d *Day, sun, wind, keep float64) {
	p := &c.p
	level := d.Mean + (p.WaterSun*sun-p.WaterLoss)/(p.Exchange*wind)
	s.water = max(0, level+(s.water-level)*keep)
	s.frost *= c.frostKeep
	if f := p.SkinPoint - s.skin - p.Mixing*s.water; f > 0 {
		s.frost += f
	}
	if s.frost > p.Frost && d.Mean < 0 {
		*s = sheet{ice: true, skin: s.skin}
		s.frozen = -d.Mean
		if d.Has&HasDepth != 0 { // it is said to lie on this ice, from the first day on
			c.snow(s, d, 0)
		}
		s.grow(p, d.Mean, wind)
	}
}

// snow lets the cover settle and adds the day's snow. Depth and resistance
// above those of settled snow decay exponentially, faster in mild air, so that
// both are sums over all snow that fell, whatever its age. A measured depth
// replaces them.
func (c *coefficients) snow(s *sheet, d *Day, fall float64) {
	p := &c.p
	if p.Cleared {
		s.fell += fall
		s.gone += fall + s.mass
		s.mass, s.depth, s.resist = 0, 0, 0
		return
	}
	if d.Has&HasDepth != 0 {
		mass := d.Depth * p.OldDensity
		if mass > s.mass {
			s.fell += mass - s.mass
		} else {
			s.gone += s.mass - mass
		}
		s.mass, s.depth, s.resist = mass, d.Depth, mass*c.oldR
		return
	}
	cold := min(d.Mean, 0)
	if s.mass > 0 {
		keep := math.Exp(-math.Exp(p.SettleTrend*cold) / p.Settle)
		depth, resist := s.mass/p.OldDensity, s.mass*c.oldR
		s.depth = depth + (s.depth-depth)*keep
		s.resist = resist + (s.resist-resist)*keep
	}
	if fall > 0 {
		loose := fall * math.Exp(-p.FreshTrend*(cold+8))
		s.fell += fall
		s.mass += fall
		s.depth += max(loose/p.NewDensity, fall/p.OldDensity)
		s.resist += max(loose*c.newR, fall*c.oldR)
	}
}

// flood lets water up through cracks where snow outweighs the lift of the ice,
// to level balance; it takes the oldest snow, at the bottom.
func (c *coefficients) flood(s *sheet) {
	p := &c.p
	excess := s.mass - (water-clearIce)*s.clear - (water-whiteIce)*s.white - (water-slush)*s.slush - p.Bridge
	if !(excess > 0) {
		return
	}
	z := min(excess/(water-slush+p.SlushSnow), s.mass/p.SlushSnow)
	took := z * p.SlushSnow
	s.mass -= took
	s.depth = max(s.depth-took/p.OldDensity, s.mass/p.OldDensity)
	s.resist = max(s.resist-took*c.oldR, s.mass*c.oldR)
	if s.mass < 1e-9 {
		s.gone += s.mass
		s.mass, s.depth, s.resist = 0, 0, 0
	}
	s.slush += z
	s.drawn += z * (slush - p.SlushSnow)
}

// thaw melts from above and reports whether the day did. Sun through thin snow
// counts for ice and snow in proportion.
func (c *coefficients) thaw(s *sheet, d *Day, sun, wind, rain float64) bool {
	p := &c.p
	bare := max(0, 1-s.depth/p.Cover)
	air := p.MeltExchange*wind*d.Mean - p.MeltLoss
	if rain > 0 && d.Mean > 0 {
		air += rain * heat * d.Mean / daySeconds
	}
	flux := air + (p.SnowSun+(p.IceSun-p.SnowSun)*bare)*sun
	if !(flux > 0) {
		return false
	}
	if h := s.clear + s.white; h > 0 {
		s.rot = min(1, s.rot+bare*p.Rot*p.IceSun*sun*daySeconds/(clearIce*fusion*h))
	}
	s.melt(flux*daySeconds/fusion, (air+p.IceSun*sun)/flux)
	return true
}

// melt takes so many kg/m² from the top. Once the snow is gone, the rest of the
// day counts times more, by the ice's share of the sun.
func (s *sheet) melt(m, more float64) {
	if s.mass > 0 {
		if m < s.mass {
			f := 1 - m/s.mass
			s.gone += m
			s.mass, s.depth, s.resist = s.mass*f, s.depth*f, s.resist*f
			return
		}
		s.gone += s.mass
		m = (m - s.mass) * max(0, more)
		s.mass, s.depth, s.resist = 0, 0, 0
	}
	take := min(m, s.white*whiteIce)
	s.white = max(0, s.white-take/whiteIce)
	s.gone += take
	m -= take
	// Slush lies below the crust of white ice that froze on it.
	take = min(m, s.slush*slush)
	s.slush = max(0, s.slush-take/slush)
	s.gone += take
	if s.slush == 0 {
		s.crust = 0
	}
	s.clear = max(0, s.clear-(m-take)/clearIce)
}

// grow freezes for one day at a mean of t below 0 °C: first the slush, from its
// top, then at the bottom of the clear ice. Each is the square-root law with a
// resistance above it, which has a closed form:
//
//	h² + 2 h k R = h₀² + 2 h₀ k R - 2 k t Δ/(ρ L)
func (s *sheet) grow(p *Params, t, wind float64) {
	top := 1/(p.IceExchange*wind) + s.resist
	dt := daySeconds
	if s.slush > 0 {
		q := (slush - p.SlushSnow) * fusion // J/m³ to freeze the water in slush
		all := q * s.slush * (top + (s.crust+s.slush/2)/whiteK) / -t
		if all > dt {
			x := min(s.slush, thicken(s.crust+whiteK*top, 2*whiteK*dt*-t/q))
			s.crust += x
			s.slush -= x
			s.white += x * slush / whiteIce
			return
		}
		s.white += s.slush * slush / whiteIce
		s.slush, s.crust = 0, 0
		dt -= all
	}
	s.clear += thicken(s.clear+iceK*(top+s.white/whiteK), 2*iceK*dt*-t/(clearIce*fusion))
}

// thicken returns √(c² + b) - c without loss of digits.
func thicken(c, b float64) float64 {
	if b == 0 {
		return 0
	}
	return b / (math.Sqrt(float64(c*c)+b) + c)
}
