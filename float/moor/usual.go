package moor

import (
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// Usual returns a sourced figure of the trade by name, in SI: Lo and Hi are the
// span printed, equal where it is one figure, infinite on the side that is open. An
// unknown name lists the others: the loads and widths of ramps, the speed and the
// added mass of boats alongside, waves in a berth, winds, snow, holdings of anchors by
// their weight. The last are told too differently to stand on: no check uses them.
func Usual(name string) (measure.Range, error) {
	t, err := load()
	if err != nil {
		return measure.Range{}, err
	}
	var names []string
	for _, u := range t.usual {
		if u.name == name {
			return u.span, nil
		}
		names = append(names, u.name)
	}
	return measure.Range{}, &measure.Error{Field: "usual figure", Text: name, Class: measure.ErrName, Want: strings.Join(slices.Compact(names), "; ")}
}

// usualUnits are the units of the table, SI per unit.
var usualUnits = map[string]struct {
	kind measure.Kind
	si   float64
}{
	"":        {measure.Ratio, 1},
	"psf":     {measure.Pressure, measure.PSF},
	"lbf":     {measure.Force, measure.PoundForce},
	"lbf/ft":  {measure.LineLoad, measure.PLF},
	"lbf/ft3": {measure.Density, measure.PCF},
	"kg/m3":   {measure.Density, 1},
	"in":      {measure.Length, measure.Inch},
	"ft":      {measure.Length, measure.Foot},
	"ft/s":    {measure.Speed, measure.Foot},
	"mph":     {measure.Speed, measure.MPH},
	"m/s":     {measure.Speed, 1},
	"deg":     {measure.Angle, math.Pi / 180},
}
