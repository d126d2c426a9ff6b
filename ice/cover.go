package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Cover is a wide sheet with snow on it that floats freely: no load bends it.
// Zero densities are clear ice, 917 kg/m³, and packed snow, 400 kg/m³.
type Cover struct {
	Ice, Snow               float64 // m
	IceDensity, SnowDensity float64 // kg/m³
}

// densities are of ice and snow; the snow's of a public lake-ice model: 200 new,
// 300 on the mean, 400 at most (read).
var (
	rangeIceDensity  = measure.Range{Kind: measure.Density, Lo: 800, Hi: 920, Source: own("white ice, full of air, to clear ice")}
	rangeSnowDensity = measure.Range{Kind: measure.Density, Lo: 50, Hi: wetSnow, Source: &measure.Source{Title: "public lake-ice model, file of constants", Locator: "density of snow", Status: measure.Read}}
	rangeCover       = measure.Range{Kind: measure.Length, Lo: 0, Hi: thickest, Source: sizeRange}
)

func (c *Cover) settle() error {
	if c.IceDensity == 0 {
		c.IceDensity = clearIce
	}
	if c.SnowDensity == 0 {
		c.SnowDensity = wetSnow
	}
	for _, f := range []struct {
		name string
		x    float64
		r    measure.Range
	}{
		{"ice", c.Ice, rangeCover},
		{"snow", c.Snow, rangeCover},
		{"density of the ice", c.IceDensity, rangeIceDensity},
		{"density of the snow", c.SnowDensity, rangeSnowDensity},
	} {
		if err := f.r.Check(f.name, f.x); err != nil {
			return err
		}
	}
	return nil
}

// Freeboard returns how far the top of the ice stands above the water in m, h (1 -
// ρi/ρw) - ρs hs/ρw, after Archimedes; negative where the snow pushes it under: with
// a hole or a crack it floods, without one the water waits under pressure.
// Within 0.4 units in the last place of its terms.
func (c Cover) Freeboard() (float64, error) {
	if err := c.settle(); err != nil {
		return math.NaN(), err
	}
	return c.Ice*(1-c.IceDensity/freshWater) - c.Snow*c.SnowDensity/freshWater, nil
}

// MostSnow returns the depth of snow in m that uses up the [Cover.Freeboard]. Within 1.4
// units in the last place.
// Worst at (0.05933, 0, 864.9, 261.5), ordered as in testdata/accuracy.csv.
func (c Cover) MostSnow() (float64, error) {
	if err := c.settle(); err != nil {
		return math.NaN(), err
	}
	return c.Ice * (freshWater - c.IceDensity) / c.SnowDensity, nil
}

// Slush returns how deep the wet snow of the given density in kg/m³ lies on the
// ice once water has come up to its level, with no compaction, in m:
//
//	z = [ρs hs - (ρw - ρi) h]/(ρw + ρs - ρslush)
//
// 0 where the ice floats free, at most the depth of the snow (hydrostatics). It freezes
// to white ice, and to what stands in it. Within 2.5 units in the last place of its
// terms.
// Worst at (0.06253, 0.2924, 911.1, 200.5, 922.4), ordered as in testdata/accuracy.csv.
func (c Cover) Slush(density float64) (float64, error) {
	if err := c.settle(); err != nil {
		return math.NaN(), err
	}
	r := measure.Range{Kind: measure.Density, Lo: 850, Hi: freshWater, Source: own("snow soaked with water")}
	if err := r.Check("density of the slush", density); err != nil {
		return math.NaN(), err
	}
	z := (float64(c.SnowDensity*c.Snow) - float64((freshWater-c.IceDensity)*c.Ice)) / (freshWater + c.SnowDensity - density)
	return math.Min(math.Max(0, z), c.Snow), nil
}

// A Pad is a cleared place whose snow lies on a bank along its four sides.
type Pad struct {
	X, Y float64 // middle, m
	A, B float64 // sides, m
	Snow float64 // kg/m² that was shovelled off
	Bank float64 // width of the bank, m
}

// Shovelled returns what shovelling does to a plate at a place x, y in m, by
// [Plate.At]: the snow taken off the pad and laid on the bank. A negative deflection
// is freeboard gained; under the bank the sheet sinks and bends, and there it also
// grows least: a weak ring round the pad (Saskatchewan Highways: weaker along banks
// of ploughed snow). What the cleared ice gains by growing is not counted here.
func (p Pad) Shovelled(plate Plate, x, y float64) (Bend, error) {
	side := measure.Range{Kind: measure.Length, Lo: 0, Hi: rangeSide.Hi, OpenLo: true, Source: sizeRange}
	for _, f := range []struct {
		name string
		x    float64
		r    measure.Range
	}{
		{"side A of the pad", p.A, side},
		{"side B of the pad", p.B, side},
		{"width of the bank", p.Bank, side},
		{"snow on the pad in kg/m²", p.Snow, measure.Range{Lo: 0, Hi: thickest * wetSnow, OpenLo: true, Source: sizeRange}},
	} {
		if err := f.r.Check(f.name, f.x); err != nil {
			return Bend{}, err
		}
	}
	force := p.Snow * measure.Gravity * p.A * p.B
	long, short := (p.A+2*p.Bank)*p.Bank, p.Bank*p.B
	q := force / (2*long + 2*short)
	dx, dy := (p.A+p.Bank)/2, (p.B+p.Bank)/2
	bank, err := plate.At([]Patch{
		{X: p.X, Y: p.Y - dy, A: p.A + 2*p.Bank, B: p.Bank, Force: q * long},
		{X: p.X, Y: p.Y + dy, A: p.A + 2*p.Bank, B: p.Bank, Force: q * long},
		{X: p.X - dx, Y: p.Y, A: p.Bank, B: p.B, Force: q * short},
		{X: p.X + dx, Y: p.Y, A: p.Bank, B: p.B, Force: q * short},
	}, x, y)
	if err != nil {
		return Bend{}, err
	}
	off, err := plate.At([]Patch{{X: p.X, Y: p.Y, A: p.A, B: p.B, Force: force}}, x, y)
	return Bend{
		Deflection: bank.Deflection - off.Deflection,
		Mx:         bank.Mx - off.Mx, My: bank.My - off.My, Mxy: bank.Mxy - off.Mxy,
	}, err
}

// latent is the heat of melting of ice in J/kg: G. D. Ashton, Ice in lakes and
// rivers (read).
const latent = 3.34e5

// MeltIn returns how deep a dark thing (a drum, a stack of lumber) sinks into
// the ice at most, in m, when it takes up heat from the sun at so many W/m² for
// a time in s, all of it melting ice below: q t/(ρi L), by definition of the latent
// heat. The heat taken up is
// the caller's: no measured figure for drums or lumber was found.
// Within 1.4 units in the last place.
// Worst at (634.3, 1.637), ordered as in testdata/accuracy.csv.
func MeltIn(absorbed, seconds float64) (float64, error) {
	if err := (measure.Range{Lo: 0, Hi: 1200, Source: own("the sun gives no more")}).Check("heat absorbed in W/m²", absorbed); err != nil {
		return math.NaN(), err
	}
	if err := rangeHeld.Check("time in the sun", seconds); err != nil {
		return math.NaN(), err
	}
	return absorbed * seconds / (clearIce * latent), nil
}
