package ice

import (
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// heavier says whether a row is for a given mass that moves on clear ice.
func (r Row) heavier() bool { return !math.IsNaN(r.Mass) && !r.Standing && !r.White && !r.Off }

// Thickness reads the table, in m, for a moving mass in kg: the row for the next
// heavier mass, never less than a row for a lighter one, and the upper end of a
// printed range. Nothing is interpolated. The error is of class
// measure.ErrUnknown where the table names no mass, measure.ErrRange outside
// the masses that it names.
func (t Table) Thickness(mass float64) (float64, error) {
	row, err := t.byMass(mass)
	return row.Top, err
}

func (t Table) byMass(mass float64) (Row, error) {
	least, lightest, most := math.Inf(1), math.Inf(1), 0.0
	for _, r := range t.Rows {
		if !r.heavier() {
			continue
		}
		lightest, most = math.Min(lightest, r.Mass), math.Max(most, r.Mass)
		if r.Mass >= mass {
			least = math.Min(least, r.Mass)
		}
	}
	if most == 0 {
		return Row{Top: math.NaN()}, unknown("table "+t.Name, "no row for a moving load names its mass")
	}
	if err := (measure.Range{Kind: measure.Mass, Lo: lightest, Hi: most, Source: t.Source}).Check("mass", mass); err != nil {
		return Row{Top: math.NaN()}, err
	}
	var best Row
	for _, r := range t.Rows {
		if r.heavier() && r.Mass <= least && r.Top > best.Top {
			best = r
		}
	}
	return best, nil
}

// Load reads the table the other way: the heaviest moving mass in kg whose row,
// and every row for a lighter mass, asks for no more than the thickness h in m.
// Errors as for Thickness; ice thinner than the lightest row is out of range.
func (t Table) Load(h float64) (float64, error) {
	thinnest, heaviest := math.Inf(1), math.Inf(1)
	for _, r := range t.Rows {
		if !r.heavier() {
			continue
		}
		thinnest = math.Min(thinnest, r.Top)
		if !(r.Top <= h) {
			heaviest = math.Min(heaviest, r.Mass)
		}
	}
	if math.IsInf(thinnest, 1) {
		return math.NaN(), unknown("table "+t.Name, "no row for a moving load names its mass")
	}
	r := measure.Range{Kind: measure.Length, Lo: thinnest, Hi: thickest, Source: t.Source}
	if err := r.Check("effective thickness", h); err != nil {
		return math.NaN(), err
	}
	best := 0.0
	for _, row := range t.Rows {
		if row.heavier() && row.Mass < heaviest && row.Top <= h {
			best = math.Max(best, row.Mass)
		}
	}
	if best == 0 { // a lighter row asks for thicker ice than a heavier one
		return math.NaN(), unknown("table "+t.Name, "its lightest row asks for thicker ice than a heavier one")
	}
	return best, nil
}

// thickestRow returns the row of the kinds that asks for the thickest ice; top
// takes the upper end of printed ranges. The thickness is 0 where there is none.
// A row for a machine at rest is left out; people stop on their way.
func (t Table) thickestRow(top bool, kinds ...string) (Row, float64) {
	var best Row
	most := 0.0
	for _, r := range t.Rows {
		if r.Off || r.White || !slices.Contains(kinds, r.Kind) || r.Standing && r.Kind != "person" {
			continue
		}
		h := r.Thickness
		if top {
			h = r.Top
		}
		if h > most {
			best, most = r, h
		}
	}
	return best, most
}

// byKind reads the table for people or a machine: the strictest row that
// speaks of the load.
//
//	no machine     the rows for one person
//	2 or 3 people  and those for a group, lower end of a printed range
//	4 and more     and those for a group, upper end
//	a machine      the rows for it, upper end, in place of all these
func (t Table) byKind(c Crossing) (Row, float64) {
	if c.Machine != NoMachine {
		return t.thickestRow(true, machines[c.Machine].kinds...)
	}
	row, h := t.thickestRow(true, "person")
	if c.People > 1 {
		if r, x := t.thickestRow(c.People >= several, "small group", "group", "car or group"); x > h {
			row, h = r, x
		}
	}
	return row, h
}

// byWeight reads the table for the mass of the load: the next heavier row, and
// above the heaviest row no less than that.
func (t Table) byWeight(c Crossing) (Row, float64) {
	mass := c.counted()
	var best Row
	if row, err := t.byMass(mass); err == nil {
		best = row
	}
	for _, r := range t.Rows {
		if r.heavier() && r.Mass <= mass && r.Top > best.Top {
			best = r
		}
	}
	return best, best.Top
}
