package season

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Rule is a handbook's square-root law, h = α √(degree-days of frost), with
// the range of α for one kind of water. The sources print α in inches per root
// of a Fahrenheit degree-day.
type Rule struct {
	Name   string
	Lo, Hi float64 // α as printed, in/√(°F·day)
	Source *measure.Source
}

var corps = &measure.Source{
	Title: "US Army Corps of Engineers, table of α after Michel", Locator: "as carried in three public source files", Status: measure.Quoted,
}

var rules = []Rule{
	{"windy lake, no snow", 0.8, 0.8, corps},
	{"average lake with snow", 0.5, 0.7, corps},
	{"average river with snow", 0.4, 0.5, corps},
	{"sheltered small river with rapid flow", 0.2, 0.4, corps},
	{"ideal bare ice", 1.0438, 1.0438, &measure.Source{Title: "√(2 k/(ρ L)) with k 2.24, ρ 916, L 334 000 (Ashton)", Locator: "upper limit, never reached", Status: measure.Independent}},
	{"bare ice of a textbook", 0.983, 0.983, &measure.Source{Title: "a text on cold-climate engineering, as quoted on in-depthoutdoors.com", Status: measure.Quoted}},
	{"practice", 0.4, 0.6, &measure.Source{Title: "iceboating.net, quoting a page of the US Army Corps of Engineers", Status: measure.Quoted}},
}

// Rules returns the square-root laws of the handbooks. Their spread is part of
// the answer, and each has its source.
func Rules() []Rule { return append([]Rule(nil), rules...) }

// Alpha returns the range of α in m/√(°C·day).
func (r Rule) Alpha() (lo, hi float64) {
	unit := measure.Inch / math.Sqrt(measure.FahrenheitDay)
	return r.Lo * unit, r.Hi * unit
}

var degreeDays = measure.Range{Kind: measure.DegreeDays, Lo: 0, Hi: 2e4, Source: own("no lake has more frost in a winter")}

// Thickness returns the range of thickness in m after so many °C·day of frost
// since ice-on. Within 1.3 units in the last place.
// Worst at (0.8366, 39.81), ordered as in testdata/accuracy.csv.
func (r Rule) Thickness(frost float64) (lo, hi float64, err error) {
	if err := degreeDays.Check("degree-days of frost", frost); err != nil {
		return math.NaN(), math.NaN(), err
	}
	lo, hi = r.Alpha()
	if !(lo >= 0 && hi >= lo && hi <= math.MaxFloat64) {
		return math.NaN(), math.NaN(), &measure.Error{Field: "α", Value: r.Lo, Class: measure.ErrRange, Want: "two numbers of 0 or more, finite, the lesser first"}
	}
	return lo * math.Sqrt(frost), hi * math.Sqrt(frost), nil
}

// AlphaOf returns α in m/√(°C·day) of ice that was measured: its thickness in m over
// the root of the frost in °C·day, by definition.
// Within 1.4 units in the last place.
// Worst at (0.1189, 1.024), ordered as in testdata/accuracy.csv.
func AlphaOf(thickness, frost float64) (float64, error) {
	if err := depthRange.Check("thickness", thickness); err != nil {
		return math.NaN(), err
	}
	r := degreeDays
	r.OpenLo = true
	if err := r.Check("degree-days of frost", frost); err != nil {
		return math.NaN(), err
	}
	return thickness / math.Sqrt(frost), nil
}

// Growth is the improved law of Ashton, here with a constant layer of dry snow:
//
//	h = √[(h₀ + c)² + 2 k F/(ρ L)] - c,  c = k/H + k hs/ks
//
// with F the frost in K·s. The daily model uses the same law with snow, white
// ice and slush that change from day to day.
type Growth struct {
	Exchange         float64 // H, W/(m² K)
	Conductivity     float64 // k, W/(m K)
	Density          float64 // ρ, kg/m³
	Latent           float64 // L, J/kg
	SnowDepth        float64 // hs, m
	SnowConductivity float64 // ks, W/(m K); counts only under snow
}

// Ashton returns the law for bare ice with the constants that Ashton gives and
// a heat exchange of 20 W/(m² K), the middle of his range of 10 to 30.
func Ashton() Growth {
	return Growth{Exchange: 20, Conductivity: iceK, Density: 916, Latent: fusion}
}

func (g Growth) check() error {
	for _, f := range []struct {
		name   string
		x      float64
		lo, hi float64
		open   bool
	}{
		{"heat exchange", g.Exchange, 0, 1e4, true},
		{"conductivity of ice", g.Conductivity, 0, 5, true},
		{"density of ice", g.Density, 500, 1000, false},
		{"heat of fusion", g.Latent, 1e5, 4e5, false},
		{"snow depth", g.SnowDepth, 0, 5, false},
	} {
		if err := (measure.Range{Lo: f.lo, Hi: f.hi, OpenLo: f.open, Source: paramRange}).Check(f.name, f.x); err != nil {
			return err
		}
	}
	if g.SnowDepth > 0 {
		return (measure.Range{Lo: 0.01, Hi: 3, Source: paramRange}).Check("conductivity of snow", g.SnowConductivity)
	}
	return nil
}

// Thickness returns the thickness in m that ice of h0 m grows to in so many °C·day of
// frost, by Ashton's law. It keeps its digits for thin growth: within 2.5 units in the
// last place, worst from open water under snow.
// Worst at (0, 29.46, 30.43, 0.1978, 0.1693), ordered as in testdata/accuracy.csv.
func (g Growth) Thickness(h0, frost float64) (float64, error) {
	if err := g.check(); err != nil {
		return math.NaN(), err
	}
	if err := depthRange.Check("thickness at first", h0); err != nil {
		return math.NaN(), err
	}
	if err := degreeDays.Check("degree-days of frost", frost); err != nil {
		return math.NaN(), err
	}
	c := g.Conductivity / g.Exchange
	if g.SnowDepth > 0 {
		c += g.Conductivity * g.SnowDepth / g.SnowConductivity
	}
	return h0 + thicken(h0+c, 2*g.Conductivity*daySeconds*frost/(g.Density*g.Latent)), nil
}

// Ideal returns the thickness in m from open water in so many °C·day of frost, without
// any resistance but the ice's own, √(2 k F/(ρ L)): the law of Stefan, an upper limit.
// Within 1.6 units in the last place.
// Worst at (0.0001768), ordered as in testdata/accuracy.csv.
func (g Growth) Ideal(frost float64) (float64, error) {
	if err := g.check(); err != nil {
		return math.NaN(), err
	}
	if err := degreeDays.Check("degree-days of frost", frost); err != nil {
		return math.NaN(), err
	}
	return math.Sqrt(2 * g.Conductivity * daySeconds * frost / (g.Density * g.Latent)), nil
}
