package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// iceFinland checks the largest mass by thickness, and the coefficient that
// follows from it.
func iceFinland() ([]Check, error) {
	table, err := rows("ice_finland")
	if err != nil {
		return nil, err
	}
	list, err := iceTable("finland")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		cm, err := r.num("cm")
		if err != nil {
			return nil, err
		}
		mass := func() (float64, error) { return list.Load(cm / 100) }
		computed := *list.Source
		computed.Status = st
		out = append(out,
			Check{Quantity: "mass on " + r["cm"] + " cm", Source: *list.Source, Printed: r["kg"], Unit: "kg", Compute: mass},
			Check{
				Quantity: "A from the row of " + r["cm"] + " cm", Source: computed, Printed: r["A_kg_cm2"], Unit: "kg/cm2",
				Compute: func() (float64, error) {
					m, err := mass()
					return m / (cm * cm), err
				},
			})
	}
	return carried(out...), nil
}

// iceManual checks Table 2-1: the coefficient and the spacing in thicknesses
// that follow from each row.
func iceManual() ([]Check, error) {
	table, err := rows("ice_tm_table_2_1")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, air := range []struct{ name, in, psi string }{
		{"tm-mild", "in_mild", "A_psi_mild"}, {"tm-cold", "in_cold", "A_psi_cold"},
	} {
		list, err := iceTable(air.name)
		if err != nil {
			return nil, err
		}
		if len(list.Rows) != len(table) {
			return nil, fmt.Errorf("table %s has %d rows, want %d", list.Name, len(list.Rows), len(table))
		}
		computed := *list.Source
		computed.Status = measure.Independent
		for i, r := range table {
			row := list.Rows[i]
			what := r["type"] + ", " + r["tons"] + " tons"
			out = append(out,
				Check{
					Quantity: "thickness, " + what, Source: *list.Source, Printed: r[air.in], Unit: "in",
					Compute: func() (float64, error) { return row.Thickness / measure.Inch, nil },
				},
				Check{
					Quantity: "A, " + what, Source: computed, Printed: r[air.psi], Unit: "psi",
					Compute: func() (float64, error) {
						return row.Mass * measure.Gravity / (row.Thickness * row.Thickness) / measure.PSI, nil
					},
				},
				Check{
					Quantity: "spacing, " + what, Source: *list.Source, Printed: r["spacing_ft"], Unit: "ft",
					Compute: func() (float64, error) { return row.Spacing / measure.Foot, nil },
				})
			if air.name == "tm-mild" {
				out = append(out, Check{
					Quantity: "spacing in thicknesses, " + what, Source: computed, Printed: r["spacing_over_h"],
					Compute: func() (float64, error) { return row.Spacing / row.Thickness, nil },
				})
			}
		}
	}
	return carried(out...), nil
}

// iceRules checks worked figures and rules that no table holds.
func iceRules() ([]Check, error) {
	read := func(title, at string) measure.Source {
		return measure.Source{Title: title, Locator: at, Status: measure.Read}
	}
	const (
		anchorage = "University of Alaska Anchorage, notice on travel over ice, October 2004"
		minnesota = "Minnesota Department of Natural Resources, ice thickness guidelines"
		manual    = "US Army TM 5-852-1 / AFR 88-19 Vol 1"
		finnish   = "Finnish Meteorological Institute, vehicles on ice"
	)
	parked := func(lb float64) func() (float64, error) {
		return func() (float64, error) {
			h, err := ice.StandingClasses()[0].Thickness(lb * measure.PoundForce)
			return h / measure.Inch, err
		}
	}
	up := func(f func() (float64, error)) func() (float64, error) {
		return func() (float64, error) {
			x, err := f()
			return math.Ceil(x), err
		}
	}
	formulas := []Check{
		{Quantity: "h = 4 S √W, 500 lb, S = 2", Source: read(anchorage, ""), Printed: "4", Unit: "in", Relative: 1e-12, Compute: parked(500)},
		{Quantity: "h = 4 S √W, 3500 lb, S = 2, rounded up", Source: read(anchorage, ""), Printed: "11", Unit: "in", Relative: 1e-12, Compute: up(parked(3500))},
		{Quantity: "h = 4 S √W, 4000 lb, S = 2, rounded up", Source: read(anchorage, ""), Printed: "12", Unit: "in", Relative: 1e-12, Compute: up(parked(4000))},
		{
			Quantity: "h = 5 √W, 4 tons", Source: read("Alaska Science Forum, Ice Travel", ""), Printed: "10", Unit: "in", Relative: 1e-12,
			Compute: func() (float64, error) {
				c, err := iceClass("slow vehicles")
				if err != nil {
					return 0, err
				}
				h, err := c.Thickness(4 * measure.Ton * measure.Gravity)
				return h / measure.Inch, err
			},
		},
		{
			Quantity: "P = h²/16, 12 in", Source: read(manual, "2-4"), Printed: "9", Unit: "ton", Relative: 1e-12,
			Compute: func() (float64, error) {
				c, err := iceClass("rough guide")
				if err != nil {
					return 0, err
				}
				p, err := c.Load(12 * measure.Inch)
				return p / measure.Gravity / measure.Ton, err
			},
		},
	}
	out := []Check{ // figures read back
		{
			Quantity: "1 in of snow ice counts as half an inch of clear ice", Source: read(manual, "2-4; printed 1k, read as 1/2"), Printed: "0.5", Unit: "in", Relative: 1e-12,
			Compute: func() (float64, error) {
				h, _, err := ice.HalfWhite.Effective(ice.Hole{White: measure.Inch, Hard: true, Looked: true})
				return h / measure.Inch, err
			},
		},
		{
			Quantity: "white ice: factor on the thickness", Source: read(minnesota, "white ice"), Printed: "2", Relative: 1e-12,
			Compute: func() (float64, error) {
				_, f, err := ice.DoubleWhite.Effective(ice.Hole{White: 0.3, Hard: true, Looked: true})
				return f, err
			},
		},
		{
			Quantity: "above freezing 6 of 24 h: factor on the thickness", Source: read(minnesota, "as printed in the Albert Lea Tribune, 2013"), Printed: "2", Relative: 1e-12,
			Compute: func() (float64, error) { return ice.Thaws()[0].Factor(6) },
		},
		{
			Quantity: "above freezing 6 of 24 h: factor on the load",
			Source:   measure.Source{Title: "US Army Corps of Engineers EM 1110-2-1612", Edition: "2002", Status: measure.Memory}, Printed: "1.3", Relative: 1e-12,
			Compute: func() (float64, error) {
				f, err := ice.Thaws()[1].Factor(6)
				return f * f, err
			},
		},
		{
			Quantity: "distance between vehicles", Source: read(finnish, ""), Printed: "50", Unit: "m",
			Compute: func() (float64, error) {
				d, _, err := ice.Crossing{Mass: 1500, Machine: ice.Car}.Spacing()
				return d, err
			},
		},
		{
			Quantity: "distance between loads over 7000 kg", Source: read("Saskatchewan Highways, winter roads", ""), Printed: "1000", Unit: "m",
			Compute: func() (float64, error) {
				d, _, err := ice.Crossing{Mass: 7500, Machine: ice.Truck}.Spacing()
				return d, err
			},
		},
		{
			Quantity: "vehicle on an effective thickness of 30 cm", Source: read(finnish, "table"), Printed: "4.5", Unit: "t",
			Compute: func() (float64, error) {
				t, err := iceTable("finland")
				if err != nil {
					return 0, err
				}
				m, err := t.Load(0.30)
				return m / measure.Tonne, err
			},
		},
	}
	for _, c := range []struct {
		cracks  ice.Cracks
		printed string
	}{{ice.OneCrack, "0.5"}, {ice.CrossingCracks, "0.25"}} {
		out = append(out, Check{
			Quantity: "share of the intact load at " + c.cracks.String(), Source: read(finnish, "cracks"), Printed: c.printed, Relative: 1e-7,
			Compute: func() (float64, error) {
				load := ice.Crossing{Mass: 90, People: 1}
				intact, err := ice.Sheet{Water: ice.Lake, Cracks: ice.NoCracks}.Required(load, 0)
				if err != nil {
					return 0, err
				}
				cracked, err := ice.Sheet{Water: ice.Lake, Cracks: c.cracks}.Required(load, 0)
				ratio := intact.Limit / cracked.Limit
				return ratio * ratio, err
			},
		})
	}
	out = append(out, Check{
		Quantity: "share of the load on hard river ice", Source: read("Maine Warden Service and Forest Resources Association, ice chart", ""),
		Printed: "0.85", Relative: 1e-7,
		Compute: func() (float64, error) {
			load := ice.Crossing{Mass: 90, People: 1}
			lake, err := ice.Sheet{Water: ice.Lake}.Required(load, 0)
			if err != nil {
				return 0, err
			}
			river, err := ice.Sheet{Water: ice.River}.Required(load, 0)
			ratio := lake.Limit / river.Limit
			return ratio * ratio, err
		},
	})
	white, err := iceWhite(minnesota)
	return append(append(formulas, carried(out...)...), white...), err
}

// iceWhite checks the list for white ice against twice the list for clear ice.
func iceWhite(title string) ([]Check, error) {
	clear, err := iceTable("minnesota")
	if err != nil {
		return nil, err
	}
	white, err := iceTable("minnesota-white")
	if err != nil {
		return nil, err
	}
	var out []Check
	for i, r := range white.Rows {
		base := clear.Rows[i+1] // the first row says where to stay off
		for _, end := range []struct {
			name          string
			printed, from float64
		}{{"", r.Thickness, base.Thickness}, {", upper end", r.Top, base.Top}} {
			out = append(out, Check{
				Quantity: r.Load + end.name + ", white ice, from the list for clear ice",
				Source:   measure.Source{Title: title, Locator: "white ice", Status: measure.Read},
				Printed:  fmt.Sprintf("%.0f", end.printed/measure.Inch), Unit: "in", Relative: 1e-12,
				Compute: func() (float64, error) {
					_, f, err := ice.DoubleWhite.Effective(ice.Hole{White: 0.3, Hard: true, Looked: true})
					return f * end.from / measure.Inch, err
				},
			})
		}
	}
	return carried(out...), nil
}
