package float

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Seal is the air shut in a drum when its bungs went in. The drum is taken as
// rigid and tight, the air as an ideal gas. The zero value is the cautious one:
// damp air, closed at 0 °C and standard pressure.
//
// A drum closed in a warm garage and left on winter ice is sucked inward; one
// closed in the cold and left in the sun is blown up. A soft plastic drum gives
// way instead and loses up to that share of its volume: closed warm, it floats
// lower in cold water than its measured size says.
type Seal struct {
	Celsius    float64 // of the air when the bungs went in, °C
	Atmosphere float64 // absolute pressure of the air then and later, Pa; 0: 101,325

	// Dry says that no moisture was shut in. Otherwise the air is taken as
	// saturated, then and later: the greater suction in the cold, the greater
	// pressure in the heat.
	Dry bool
}

// standardAtmosphere is exact by definition (10th CGPM, 1954).
const standardAtmosphere = 101325

var (
	magnus = &measure.Source{
		Title: "Guide to Meteorological Instruments and Methods of Observation, WMO-No. 8", Edition: "2008",
		Locator: "saturation vapour pressure over water and ice", Status: measure.Memory,
	}
	sealRange = measure.Range{Kind: measure.Temperature, Lo: -60, Hi: 60, Source: magnus}
	airRange  = measure.Range{
		Kind: measure.Pressure, Lo: 50e3, Hi: 110e3,
		Source: &measure.Source{Title: "air pressure from a mountain lake to a high at sea level", Status: measure.OwnChoice},
	}
	depthRange = measure.Range{
		Kind: measure.Length, Lo: 0, Hi: 10,
		Source: &measure.Source{Title: "depth to which a dock's drum may be pushed", Status: measure.OwnChoice},
	}
	lakeRange = measure.Range{
		Kind: measure.Density, Lo: 950, Hi: 1050,
		Source: &measure.Source{Title: "lake to sea water, with room for silt", Status: measure.OwnChoice},
	}
)

// Pressure returns the absolute pressure in the drum, Pa, once it has taken the
// temperature celsius, -60 to 60 °C:
//
//	p = (p₀ - e₀) T/T₀ + e
//
// T is absolute temperature, e the vapour's saturation pressure (Magnus formula,
// WMO-No. 8), nought for dry air. It is within 2.5 units in the last place, worst
// from 59 down to -56 °C.
// Worst at (58.98, -56.45), ordered as in testdata/accuracy.csv.
func (s Seal) Pressure(celsius float64) (float64, error) {
	if err := sealRange.Check("Seal.Celsius", s.Celsius); err != nil {
		return 0, err
	}
	if err := sealRange.Check("celsius", celsius); err != nil {
		return 0, err
	}
	p0, err := s.atmosphere()
	if err != nil {
		return 0, err
	}
	const kelvin = 273.15
	ratio := (celsius + kelvin) / (s.Celsius + kelvin)
	if s.Dry {
		return p0 * ratio, nil
	}
	return (p0-saturation(s.Celsius))*ratio + saturation(celsius), nil
}

// Squeeze returns how much the pressure outside exceeds that inside, Pa, for a
// drum at the temperature celsius (°C) whose lowest point is depth metres under
// water of the density (kg/m³): the air and ρ g depth, by hydrostatics, less what
// [Seal.Pressure] says. It is negative where the drum is blown up. A depth of 0 is
// a drum in the air.
//
// What a drum bears before it buckles inward depends on its sheet and its dents;
// no limit is offered here.
func (s Seal) Squeeze(celsius, depth, density float64) (float64, error) {
	if err := depthRange.Check("depth", depth); err != nil {
		return 0, err
	}
	if err := lakeRange.Check("density", density); err != nil {
		return 0, err
	}
	inside, err := s.Pressure(celsius)
	if err != nil {
		return 0, err
	}
	outside, err := s.atmosphere()
	if err != nil {
		return 0, err
	}
	return outside + density*measure.Gravity*depth - inside, nil
}

func (s Seal) atmosphere() (float64, error) {
	if s.Atmosphere == 0 {
		return standardAtmosphere, nil
	}
	return s.Atmosphere, airRange.Check("Seal.Atmosphere", s.Atmosphere)
}

// saturation returns the saturation vapour pressure in Pa at t °C, over ice below
// freezing (Magnus formula in the WMO's form).
func saturation(t float64) float64 {
	if t < 0 {
		return 611.2 * math.Exp(22.46*t/(272.62+t))
	}
	return 611.2 * math.Exp(17.62*t/(243.12+t))
}
