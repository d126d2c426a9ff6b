package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Load pushes the dock level: along x, along y, and turning it about z at the
// origin, counter-clockwise seen from above.
type Load struct{ X, Y, Turn float64 } // N, N, N·m

// Turned returns the load turned by an angle, rad, counter-clockwise (geometry); seen
// from a dock that has turned by as much the other way.
func (l Load) Turned(by float64) Load {
	sin, cos := math.Sincos(by)
	return Load{float64(l.X*cos) - float64(l.Y*sin), float64(l.X*sin) + float64(l.Y*cos), l.Turn}
}

// Plus returns both loads together: statics.
func (l Load) Plus(o Load) Load { return Load{l.X + o.X, l.Y + o.Y, l.Turn + o.Turn} }

// at returns a force in the direction θ that acts at a place.
func at(force, θ float64, place [2]float64) Load {
	x, y := force*math.Cos(θ), force*math.Sin(θ)
	return Load{x, y, place[0]*y - place[1]*x}
}

// A Face is something of the dock that wind or current pushes on: the sides of
// the frame and of the drums above water, a shed, people, a boat alongside;
// for current, what is under water. From a slanting direction it shows the sum
// of both areas' projections, as a box does.
type Face struct {
	Name   string
	End    float64    // m², seen along x
	Side   float64    // m², seen along y
	Height float64    // m, of its middle above the water; for wind only
	Shape  float64    // a ratio: force over pressure and area; 0: 2.0, the most of any shape listed, under water 1.2
	At     [2]float64 // m, its middle on plan
	Row    int        // of as many equal boats one behind the other, of which End and Side are one; 0: one
}

func (f Face) check() error {
	return first(
		areaOrZero.Check(f.Name+": end area", f.End), areaOrZero.Check(f.Name+": side area", f.Side),
		coefficientRange.Check(f.Name+": shape factor", f.Shape),
		measure.Range{Lo: 0, Hi: 1000, Source: srcSense}.Check(f.Name+": boats in a row", float64(f.Row)),
		anyLength.Check(f.Name+": place along", f.At[0]), anyLength.Check(f.Name+": place across", f.At[1]),
	)
}

func (f Face) area(θ float64) float64 {
	return f.End*math.Abs(math.Cos(θ)) + f.Side*math.Abs(math.Sin(θ))
}

// shapes are force factors of shapes across the wind.
var shapes = []tabled{
	shape("flat plate, square", 1.2, "1.1 to 1.2", "Hoerner, Fluid-dynamic drag", "flat plates"),
	shape("endless strip", 2, "a long low wall clear of the water", "Hoerner, Fluid-dynamic drag", "flat plates"),
	shape("small boat, side", 1.5, "1.2 to 1.5", "ASCE Manual 50 and UFC 4-152-07, small craft berthing", ""),
	shape("cylinder across", 1.2, "long and smooth, in any wind a dock sees", "Hoerner, Fluid-dynamic drag", "cylinders"),
	shape("person standing", 1.3, "0.84 m² of drag area over 0.65 m² seen", "Hoerner, Fluid-dynamic drag", "people"),
}

func shape(name string, value float64, why, title, at string) tabled {
	return tabled{factor: measure.Factor{Symbol: "Cd", Name: name, Value: value, Why: why, Source: src(title, "", at, measure.Memory)}}
}

// boldest is the greatest of the shapes; a test compares.
const boldest = 2

// shielded returns how many times the force on one boat a row of n equal boats
// takes: the first all of it, the second half, each other 30 %. (Marinas and
// Small Craft Harbors, 2nd edition 2000, as reported in a trade article.)
func shielded(n int) float64 {
	if n <= 1 {
		return 1
	}
	return 1.5 + 0.3*float64(n-2)
}

// A Wind is a wind speed as measured or forecast.
type Wind struct {
	Speed     float64 // m/s
	Height    float64 // m above the water where it holds; 0: 10 m, as forecasts are
	Averaging float64 // s over which it is the mean; 0: an hour, from which gusts rise most
	Air       float64 // kg/m³; 0: that of the ASCE 7 constant, 1.2267

	// Exposure takes Speed for the design wind of an ASCE 7 map, a 3 s gust at 10 m
	// over open land, and finds it over "C", open land, or "D", a lake of a mile or
	// more upwind. "" moves a wind that blew over the lake by the 1/7 power law.
	Exposure string
}

var (
	// windHeight is where the 1/7 power law is used.
	windHeight = measure.Range{
		Kind: measure.Length, Lo: 0.3, Hi: 20,
		Source: src(cem+" and "+spm, "", "1/7 power law, up to 20 m", measure.Memory),
	}
	// windTime spans both formulas of the averaging time.
	windTime = measure.Range{Kind: measure.Time, Lo: 1, Hi: 36000, Source: src(cem, "Part II Chapter 2", "Figure II-2-1", measure.Memory)}
	// windFloor is the height below which ASCE 7 lets the wind fall no further.
	windFloor = measure.Range{Kind: measure.Length, Lo: 15 * measure.Foot, Hi: 20, Source: src("ASCE 7-16", "", "Table 26.10-1", measure.Memory)}
	windAir   = measure.Range{Kind: measure.Density, Lo: 0.8, Hi: 1.6, Source: srcSense}
)

// ascePressure is 0.00256 psf per mph² in Pa per (m/s)²; the unrounded constant
// is 0.00255528. ASCE 7 in SI prints 0.613.
const ascePressure = 0.00256 * measure.PSF / (measure.MPH * measure.MPH)

func (w Wind) filled() (Wind, error) {
	if w.Height == 0 {
		w.Height = 10
	}
	if w.Averaging == 0 {
		w.Averaging = 3600
		if w.Exposure != "" {
			w.Averaging = gust
		}
	}
	if err := w.mapped(); err != nil {
		return w, err
	}
	if w.Air == 0 {
		w.Air = 2 * ascePressure
	}
	return w, first(
		speedOrZero.Check("wind speed", w.Speed), windHeight.Check("height of the wind", w.Height),
		windTime.Check("averaging time", w.Averaging), windAir.Check("density of the air", w.Air),
	)
}

// exposures are the height, m, up to which the land is felt and the power of the
// height, of ASCE 7-16, Table 26.11-1 (C read in a testbed manual, D from memory).
var exposures = map[string][2]float64{"C": {900 * measure.Foot, 9.5}, "D": {700 * measure.Foot, 11.5}}

// mapped refuses a design wind that is not what the maps show.
func (w Wind) mapped() error {
	if w.Exposure == "" {
		return nil
	}
	if _, ok := exposures[w.Exposure]; !ok {
		return &measure.Error{Field: "exposure", Text: w.Exposure, Class: measure.ErrName, Want: "C or D, or none"}
	}
	maps := src("ASCE 7-16", "", "26.5.1, a 3 s gust at 33 ft over open land", measure.Memory)
	return first(
		measure.Range{Kind: measure.Length, Lo: 10, Hi: 33 * measure.Foot, Source: maps}.Check("height of the design wind", w.Height),
		measure.Range{Kind: measure.Time, Lo: gust, Hi: gust, Source: maps}.Check("averaging time of the design wind", w.Averaging),
	)
}

// exposed returns the pressure at a height, m, over that of the map's wind:
// Kz = 2.01 (z/zg)^(2/α), constant below 15 ft.
func exposed(exposure string, height float64) float64 {
	e := exposures[exposure]
	return 2.01 * math.Pow(math.Max(height, windFloor.Lo)/e[0], 2/e[1])
}

// overHour returns the mean over t seconds over the hourly mean:
//
//	1.277 + 0.296 tanh(0.9 log₁₀(45/t))   up to an hour (from memory; it gives CEM's answers)
//	1.5334 - 0.15 log₁₀ t                 longer (CEM, Example Problem II-2-2)
func overHour(t float64) float64 {
	switch {
	case t == 3600:
		return 1 // where the curves miss it by 0.00005
	case t < 3600:
		return 1.277 + 0.296*math.Tanh(0.9*math.Log10(45/t))
	}
	return -0.15*math.Log10(t) + 1.5334
}

// To returns the same wind at another height, m, and averaged over another
// time, s: the 1/7 power law, or Kz of its exposure, and the Coastal Engineering
// Manual's curve of averaging times. Heights run from 0.3 to 20 m, times from
// 1 s to 10 h. A wind with an exposure has none afterwards: it is at its place. The
// 1/7 law is within 4.5 units in the last place.
// Worst at (27.41, 2.696, 263.6, 12.53, 6831), ordered as in testdata/accuracy.csv.
func (w Wind) To(height, averaging float64) (Wind, error) {
	w, err := w.filled()
	if err := first(err, windHeight.Check("height", height), windTime.Check("averaging time", averaging)); err != nil {
		return Wind{}, err
	}
	rise := math.Pow(height/w.Height, 1./7)
	if w.Exposure != "" {
		rise = math.Sqrt(exposed(w.Exposure, height))
	}
	w.Speed *= rise * overHour(averaging) / overHour(w.Averaging)
	w.Height, w.Averaging, w.Exposure = height, averaging, ""
	return w, nil
}

// Pressure returns the pressure of the wind as it stands, ρV²/2, Pa (Bernoulli). Within
// 1.3 units in the last place.
// Worst at (37.03), ordered as in testdata/accuracy.csv.
func (w Wind) Pressure() (float64, error) {
	w, err := w.filled()
	if err != nil {
		return 0, err
	}
	return w.Air / 2 * w.Speed * w.Speed, nil
}

// gust is the averaging time, s, that small floats answer to.
const gust = 3

// Load returns the push of the wind on the faces, the wind blowing towards θ
// (rad from the x axis to the y axis), each at its own height in the 3 s gust of
// the wind, whatever it was averaged over. Below 15 ft the wind counts as no
// weaker than there, unless it is given lower: ASCE 7 holds it constant, while the
// 1/7 power law would leave 63 % of the pressure at 2 m.
func (w Wind) Load(θ float64, faces ...Face) (Load, error) {
	if err := anyAngle.Check("direction", θ); err != nil {
		return Load{}, err
	}
	var sum Load
	for _, f := range faces {
		if err := f.check(); err != nil {
			return Load{}, err
		}
		floor := windFloor.Lo
		if w.Height != 0 {
			floor = math.Min(floor, w.Height)
		}
		g, err := w.To(math.Max(f.Height, floor), gust)
		if err != nil {
			return Load{}, err
		}
		q, err := g.Pressure()
		if err != nil {
			return Load{}, err
		}
		if f.Shape == 0 {
			f.Shape = boldest
		}
		sum = sum.Plus(at(q*f.Shape*f.area(θ)*shielded(f.Row), θ, f.At))
	}
	return sum, nil
}
