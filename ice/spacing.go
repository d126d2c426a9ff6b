package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// The distances that public bodies ask for between loads.
var spacings = []struct {
	from    float64 // kg: for masses above this
	machine Machine // and for this machine or a heavier one
	metres  float64
	source  *measure.Source
}{
	{0, NoMachine, 10 * measure.Yard, &measure.Source{Title: "Aspen Times, quoting a Colorado agency", Locator: "10 yards between companions", Status: measure.Quoted}},
	{0, Snowmobile, 50, &measure.Source{Title: "Finnish Meteorological Institute, vehicles on ice", Locator: "50 m between vehicles", Status: measure.Read}},
	{7000, NoMachine, 1000, &measure.Source{Title: "Saskatchewan Highways, winter roads", Locator: "1 km between loads over 7000 kg", Status: measure.Read}},
}

// Spacing returns the least distance in m to the next load, and who asks for
// it, its source: the greatest of the rules that were read or quoted. Loads that are nearer
// to each other count as one, see [Other]. Anything but one person alone takes the
// spacing of the tables by weight as well. The error is of class measure.ErrRange above the heaviest load that they name.
func (c Crossing) Spacing() (float64, *measure.Source, error) {
	if err := c.check(); err != nil {
		return math.NaN(), nil, err
	}
	mass := c.own()
	best, source := 0.0, (*measure.Source)(nil)
	take := func(x float64, s *measure.Source) {
		if x > best {
			best, source = x, s
		}
	}
	for _, s := range spacings {
		if mass > s.from && c.Machine >= s.machine {
			take(s.metres, s.source)
		}
	}
	if c.Machine == NoMachine && c.People <= 1 && mass <= person {
		return best, source, nil
	}
	heaviest := 0.0
	for _, t := range loadTables() {
		if t.Source.Status < measure.Quoted {
			continue
		}
		least := math.Inf(1)
		for _, r := range t.Rows {
			if !math.IsNaN(r.Spacing) {
				heaviest = math.Max(heaviest, r.Mass)
				if r.Mass >= mass {
					least = math.Min(least, r.Mass)
				}
			}
		}
		for _, r := range t.Rows {
			if r.Spacing > 0 && r.Mass <= least {
				take(r.Spacing, t.Source)
			}
		}
	}
	if err := (measure.Range{Kind: measure.Mass, Lo: 0, Hi: heaviest, Source: manualGuide}).Check("mass of the load", mass); err != nil {
		return math.NaN(), nil, err
	}
	return best, source, nil
}
