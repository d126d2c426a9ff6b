package ice

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Wave is the wave that a moving load drives in ice and water of one depth.
//
//	c² = (D κ⁴/ρw + g)/κ tanh(κH)/(1 + (ρi h/ρw) κ tanh(κH))
//
// A load as fast as the slowest wave is followed by it: a truck then strained
// the ice as 10 to 15 times its weight (Alaska Science Forum, read). Source:
// J. W. Davys, R. J. Hosking and A. D. Sneyd 1985, from memory.
type Wave struct {
	Plate      Plate
	Depth      float64 // H, m of water below the ice
	Gravity    float64 // m/s²; 0 is standard gravity
	IceDensity float64 // kg/m³; 0 is clear ice
	Massless   bool    // leave out the ice's own inertia
}

func (w Wave) settled() (Wave, error) {
	if w.Gravity == 0 {
		w.Gravity = measure.Gravity
	}
	if w.IceDensity == 0 {
		w.IceDensity = clearIce
	}
	if err := w.Plate.check(); err != nil {
		return w, err
	}
	if err := rangeDepth.Check("depth of water", w.Depth); err != nil {
		return w, err
	}
	if err := (measure.Range{Lo: 9.7, Hi: 9.9, Source: own("the earth")}).Check("gravity in m/s²", w.Gravity); err != nil {
		return w, err
	}
	return w, rangeIceDensity.Check("density of the ice", w.IceDensity)
}

var rangeDepth = measure.Range{Kind: measure.Length, Lo: 0.05, Hi: 1000, Source: sizeRange}

// inertia is ρi h/ρw, m.
func (w Wave) inertia() float64 {
	if w.Massless {
		return 0
	}
	return w.IceDensity * w.Plate.Thickness / (w.Plate.foundation() / w.Gravity)
}

// Speed returns the speed in m/s of waves of a length in m, by the law of [Wave]: Davys,
// Hosking and Sneyd 1985, from memory. Within 2.7 units in the last place.
// Worst at (0.2519, 1.058e+08, 0.01165, 0.9895, 2.948), ordered as in testdata/accuracy.csv.
func (w Wave) Speed(length float64) (float64, error) {
	w, err := w.settled()
	if err != nil {
		return math.NaN(), err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0.01, Hi: 1e6, Source: sizeRange}).Check("length of the wave", length); err != nil {
		return math.NaN(), err
	}
	return w.speed(2 * math.Pi / length), nil
}

func (w Wave) speed(kappa float64) float64 {
	density := w.Plate.foundation() / w.Gravity
	t := math.Tanh(kappa * w.Depth)
	return math.Sqrt((w.Plate.rigidity()*kappa*kappa*kappa*kappa/density + w.Gravity) / kappa * t / (1 + w.inertia()*kappa*t))
}

// Critical returns the speed in m/s of the slowest wave by [Wave.Speed], and its
// length in m.
func (w Wave) Critical() (speed, length float64, err error) {
	w, err = w.settled()
	if err != nil {
		return math.NaN(), math.NaN(), err
	}
	density := w.Plate.foundation() / w.Gravity
	stiff := w.Plate.rigidity() / (density * w.Gravity)
	// κ times the slope of ln c² over κ: negative for long waves.
	slope := func(kappa float64) float64 {
		x, m := kappa*w.Depth, w.inertia()*kappa
		k4 := stiff * kappa * kappa * kappa * kappa
		water := -1.0 // 2x/sinh 2x - 1
		switch {
		case x < 0.05:
			y := 4 * x * x
			water = -y / 6 * (1 - 7*y/60*(1-31*y/294))
		case x < 300:
			water = 2*x/math.Sinh(2*x) - 1
		}
		t := math.Tanh(x)
		return 4*k4/(1+k4) + water - m*(t+x*(1-t*t))/(1+m*t)
	}
	l := w.Plate.length()
	lo, hi := math.Log(1e-12/l), math.Log(100/l)
	for range 200 {
		if mid := (lo + hi) / 2; slope(math.Exp(mid)) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	kappa := math.Exp((lo + hi) / 2)
	return w.speed(kappa), 2 * math.Pi / kappa, nil
}

// Bound returns the upper bound in m/s of the critical speed that needs no
// search: the lesser of √(gH), shallow water, and 1.3247 √(gl), deep water, exact for
// the law of [Wave].
func (w Wave) Bound() (float64, error) {
	w, err := w.settled()
	if err != nil {
		return math.NaN(), err
	}
	deep := 2 * math.Pow(1.0/27, 1.0/8) // 1.3247, from 2 (D g³/(27 ρw))^(1/8)
	return math.Min(math.Sqrt(w.Gravity*w.Depth), deep*math.Sqrt(w.Gravity*w.Plate.length())), nil
}

// A Haul is a load on its way over the ice at a speed.
type Haul struct {
	Load     Crossing
	Speed    float64 // m/s
	Offshore bool    // away from where it enters or leaves the ice; otherwise near the shore
}

// limits are the published speeds for hauling.
var limits = []struct {
	from   float64 // kg
	shore  bool
	speed  float64
	source *measure.Source
}{
	{7000, false, 15 * measure.KPH, &measure.Source{Title: "Manitoba Transportation and Infrastructure; Saskatchewan Highways", Locator: "7 t and more: 15 km/h", Status: measure.Read}},
	{0, true, 10 * measure.KPH, &measure.Source{Title: "Canadian Geographic, at privatefleetinfo.com", Locator: "10 km/h on entering and leaving the ice", Status: measure.Quoted}},
	{0, false, 25 * measure.KPH, &measure.Source{Title: "Canadian Geographic, at privatefleetinfo.com", Locator: "25 km/h with a load", Status: measure.Quoted}},
}

// davys is the theory of the waves.
var davys = &measure.Source{Title: "J. W. Davys, R. J. Hosking and A. D. Sneyd, waves due to a steadily moving source on a floating ice plate", Edition: "1985", Status: measure.Memory}

// halfCritical keeps a load away from its wave.
var halfCritical = own("half the critical speed of the thinnest ice measured, with a modulus of 1 GPa, over the least depth of water")

// Hauling compares the speed of a load with the least of the published limits, whose
// sources the check names, and of half the speed of [Wave.Critical]. It is never
// better than what [Sheet.Crossing] says of the load itself. Depth must have been
// measured.
func (s Sheet) Hauling(h Haul) (measure.Check, error) {
	name := fmt.Sprintf("hauling %s at %.0f km/h", h.Load.label(), h.Speed/measure.KPH)
	if err := (measure.Range{Kind: measure.Speed, Lo: 0, Hi: 100, Source: sizeRange}).Check("speed", h.Speed); err != nil {
		return measure.Refuse(name, err), err
	}
	under, err := s.Crossing(h.Load)
	if err != nil {
		return measure.Refuse(name, err), err
	}
	c := measure.Check{Name: name, Kind: measure.Speed, Hazard: true, Value: h.Speed, Limit: math.Inf(1), Rests: under.Rests}
	for _, r := range limits {
		if h.Load.counted() >= r.from && !(r.shore && h.Offshore) && r.speed < c.Limit {
			c.Limit, c.Rule = r.speed, r.source
		}
	}
	depth := measure.Assumption{Name: "depth of water", Text: "the least on the way, under the ice", Known: measure.Measured}
	var why error
	if s.Depth > 0 && under.Value > 0 {
		speed, _, err := Wave{Plate: Plate{Thickness: under.Value, E: rangeElastic.Lo, Nu: poisson}, Depth: math.Max(s.Depth, rangeDepth.Lo)}.Critical()
		if err != nil {
			return measure.Refuse(name, err), err
		}
		c.Notes = append(c.Notes, fmt.Sprintf("critical speed %.0f km/h (%.0f mph): never near it; %s", speed/measure.KPH, speed/measure.MPH, davys))
		if s.Depth < rangeDepth.Lo { // the ice all but lies on the bottom
			speed = 0
		}
		if speed/2 < c.Limit {
			c.Limit, c.Rule = speed/2, halfCritical
		}
	} else if !(s.Depth > 0) {
		depth.Known = measure.Unknown
		why = unknown("depth of water", "waves under the ice are the slower the shallower it is")
	}
	c.Rests = append(append([]measure.Assumption(nil), c.Rests...), depth)
	switch v := under.Verdict(); {
	case c.Value > c.Limit: // too fast, whatever else is unknown
	case v == measure.Short:
		c.Err = unfit("ice thickness", "ice too thin for the load", under.Numbers(measure.SI))
	case v != measure.Holds:
		c.Err = under.Err // a check without an answer bears its reason
		decide(c.Rests)
	case why != nil:
		c.Err = why
		decide(c.Rests)
	}
	c.Notes = append(c.Notes, caution("meet the shore at 45"), caution("7 t and more"))
	c.Notes = append(c.Notes, under.Notes...)
	return c, nil
}
