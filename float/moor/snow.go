package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Snow lies on the deck through the winter: a weight that lowers fittings and
// pin lines, for the float and for the states of a hinge.
type Snow struct {
	Ground  float64 // Pa, the building code's ground snow load; 0: not known
	Depth   float64 // m, lying on the deck; 0: what the ground load leaves on an open deck
	Density float64 // kg/m³; 0: by the ground load, 500 without one, old wet snow
}

var (
	srcSnow     = src("ASCE 7-10 and 7-16", "", "equations 7.3-1 and 7.7-1, figure 7-9", measure.Quoted)
	snowDepth   = measure.Range{Kind: measure.Length, Lo: 0, Hi: 10, Source: srcSense}
	snowDensity = measure.Range{Kind: measure.Density, Lo: 0, Hi: 917, Source: src("Clear ice", "", "917 kg/m³", measure.Memory)}
	snowGround  = measure.Range{Kind: measure.Pressure, Lo: 0, Hi: 300 * measure.PSF, Source: srcSense}
)

// wettest is old wet snow, 300 to 500 kg/m³ (read in a table of snow weights).
const wettest = 500

func (s Snow) filled() (Snow, error) {
	if s.Density == 0 && s.Ground > 0 {
		s.Density = math.Min(0.13*s.Ground/measure.PSF+14, 30) * measure.PCF
	} else if s.Density == 0 {
		s.Density = wettest
	}
	return s, first(
		snowGround.Check("ground snow load", s.Ground), snowDepth.Check("depth of snow", s.Depth), snowDensity.Check("density of snow", s.Density),
	)
}

// Pressure returns what the snow weighs on the deck, Pa: its depth times its
// density, or without a depth 0.7 of the ground load (ASCE 7, flat roof, all other
// factors 1). By the ground load, in psf, its density is 0.13 pg + 14, at most 30
// lb/ft³. Measured: new light snow 30 to 70, settled 200 to 300, old wet snow 300
// to 500 kg/m³.
func (s Snow) Pressure() (float64, error) {
	if s.Ground == 0 && s.Depth == 0 {
		return 0, unknown("snow", "its depth, or the ground snow load")
	}
	s, err := s.filled()
	if err != nil {
		return 0, err
	}
	if s.Depth == 0 {
		return 0.7 * s.Ground, nil
	}
	return s.Depth * s.Density * measure.Gravity, nil
}

// Drift returns the height, m, of the drift that wind blows against a wall or a
// shed from a length of deck or ice upwind, m, and what it weighs at its highest,
// Pa: 0.43 ∛lu ∜(pg+10) - 1.5, in feet and psf, with lu of at least 20 ft (ASCE 7).
func (s Snow) Drift(upwind float64) (height, pressure float64, err error) {
	if s.Ground == 0 {
		return 0, 0, unknown("ground snow load", "the building code's")
	}
	s, err = s.filled()
	if err := first(err, measure.Range{Kind: measure.Length, Lo: 0, Hi: 600 * measure.Foot, Source: srcSnow}.Check("length upwind", upwind)); err != nil {
		return 0, 0, err
	}
	lu := math.Max(upwind/measure.Foot, 20)
	height = (0.43*math.Cbrt(lu)*math.Pow(s.Ground/measure.PSF+10, 0.25) - 1.5) * measure.Foot
	return height, height * s.Density * measure.Gravity, nil
}
