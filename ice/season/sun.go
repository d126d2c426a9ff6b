package season

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// solarConstant is 0.0820 MJ/(m² min) in W/m², as FAO-56 prints it.
const solarConstant = 0.0820e6 / 60

var fao = &measure.Source{
	Title:   "R. G. Allen and others, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56",
	Edition: "1998", Locator: "equations 21 to 25", Status: measure.Memory,
}

// Sun returns the mean power of the sun over one day, in W/m² on a level
// surface above the air, at a latitude in degrees (north positive) on a day of
// the year from 1 to 366:
//
//	S = (G/π) d [ω sin φ sin δ + cos φ cos δ sin ω]
//	d = 1 + 0.033 cos J,  δ = 0.409 sin(J - 1.39),  cos ω = -tan φ tan δ,  J = 2π day/365
//
// with ω kept within 0 and π: polar night gives 0. The error is of class
// measure.ErrRange for a latitude beyond the poles or a day that no year has.
// Source: FAO Irrigation and Drainage Paper 56, 1998, equations 21 to 25. Within
// 12.5 units in the last place of its two terms, worst near the poles.
// Worst at (88.59, 243), ordered as in testdata/accuracy.csv.
func Sun(latitude float64, day int) (float64, error) {
	if err := latitudes.Check("latitude", latitude); err != nil {
		return math.NaN(), err
	}
	if err := (measure.Range{Lo: 1, Hi: 366, Source: fao}).Check("day of the year", float64(day)); err != nil {
		return math.NaN(), err
	}
	return sunAt(latitude, day), nil
}

var latitudes = measure.Range{Kind: measure.Ratio, Lo: -90, Hi: 90, Source: &measure.Source{Title: "degrees of latitude, south negative", Status: measure.Exact}}

func sunAt(latitude float64, day int) float64 {
	j := 2 * math.Pi * float64(day) / 365
	sinδ, cosδ := math.Sincos(0.409 * math.Sin(j-1.39))
	sinφ, cosφ := math.Sincos(latitude * math.Pi / 180)
	a, b := sinφ*sinδ, cosφ*cosδ
	ω := math.Pi // the sun does not set
	switch {
	case a <= -b:
		return 0 // it does not rise
	case a < b:
		ω = math.Acos(-a / b)
	}
	return math.Max(0, solarConstant/math.Pi*(1+0.033*math.Cos(j))*(ω*a+b*math.Sin(ω)))
}

// sunThrough returns the mean over the day of G d sin(e)^(1+power), in W/m²: a
// low sun loses more on its way through the air and off the surface. With a
// power of 0 it is Sun. Sixteen even steps of half a day are exact to 1 % of
// the summer's sun.
func sunThrough(latitude float64, day int, power float64) float64 {
	j := 2 * math.Pi * float64(day) / 365
	sinδ, cosδ := math.Sincos(0.409 * math.Sin(j-1.39))
	sinφ, cosφ := math.Sincos(latitude * math.Pi / 180)
	const steps = 16
	sum := 0.0
	for i := range steps {
		if x := sinφ*sinδ + cosφ*cosδ*math.Cos((float64(i)+0.5)*math.Pi/steps); x > 0 {
			sum += math.Pow(x, 1+power)
		}
	}
	return solarConstant * (1 + 0.033*math.Cos(j)) * sum / steps
}
