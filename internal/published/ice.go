package published

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

func iceChecks() ([]Check, error) {
	var out []Check
	for _, set := range []func() ([]Check, error){
		iceClasses, iceBack, iceRows, iceWeights, iceFinland, iceManual, iceRules, iceKelvin, icePlates, iceRectangles,
		iceCreep, iceFreeboard, iceDock, iceCover, iceCritical, iceWedges, iceEdges, iceHauls, iceMore,
	} {
		checks, err := set()
		if err != nil {
			return nil, err
		}
		out = append(out, checks...)
	}
	for i := range out {
		if out[i].Package == "" {
			out[i].Package = "ice"
		}
	}
	return out, nil
}

// pressureUnits are the units in which a bearing coefficient is printed.
var pressureUnits = map[string]float64{
	"psi": measure.PSI, "kg/cm2": measure.KilogramForce / 1e-4, "kPa": measure.Kilopascal,
}

// iceClass returns a bearing class by name.
func iceClass(name string) (ice.Class, error) {
	for _, c := range ice.Classes() {
		if c.Name == name {
			return c, nil
		}
	}
	return ice.Class{}, fmt.Errorf("no bearing class is named %q", name)
}

// iceReported returns the class of a row: by name, or made of a coefficient
// that a source reports without making it a class.
func iceReported(r row) (ice.Class, error) {
	if r["class"] != "" {
		return iceClass(r["class"])
	}
	a, err := r.num("reported")
	return ice.Class{Name: "reported", A: a * pressureUnits[r["reported_unit"]], Source: &measure.Source{Title: r["source"]}}, err
}

// iceClasses checks A in three units: the load, in the unit, on ice 0.2 m thick
// over the square of its thickness.
func iceClasses() ([]Check, error) {
	table, err := rows("ice_classes")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		unit := pressureUnits[r["unit"]]
		out = append(out, Check{
			Quantity: "A of " + r["what"] + " in " + r["unit"],
			Source:   measure.Source{Title: r["source"], Status: st},
			Printed:  r["printed"], Unit: r["unit"],
			Compute: func() (float64, error) {
				if r["class"] == "parked" {
					h, err := ice.StandingClasses()[0].Thickness(measure.Tonne * measure.Gravity)
					return measure.Tonne * measure.Gravity / (h * h) / unit, err
				}
				c, err := iceReported(r)
				if err != nil {
					return 0, err
				}
				p, err := c.Load(0.2)
				return p / (0.2 * 0.2) / unit, err
			},
		})
	}
	return carried(out...), nil
}

// iceBack checks coefficients worked out from reported loads: a class with
// that coefficient needs the reported thickness under the reported load.
func iceBack() ([]Check, error) {
	table, err := rows("ice_back")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		mass, err := r.num("mass_kg")
		if err != nil {
			return nil, err
		}
		h, err := r.num("thickness_cm")
		if err != nil {
			return nil, err
		}
		printed, err := r.num("printed")
		if err != nil {
			return nil, err
		}
		unit := pressureUnits[r["unit"]]
		out = append(out, Check{
			Quantity: fmt.Sprintf("A from %s kg on %s cm in %s", r["mass_kg"], r["thickness_cm"], r["unit"]),
			Source:   measure.Source{Title: r["source"], Status: st},
			Printed:  r["printed"], Unit: r["unit"],
			Compute: func() (float64, error) {
				c := ice.Class{Name: "reported", A: printed * unit, Source: &measure.Source{Title: r["source"]}}
				need, err := c.Thickness(mass * measure.Gravity)
				ratio := need / (h / 100)
				return printed * ratio * ratio, err
			},
		})
	}
	return out, nil
}

// iceTable returns a public table by name.
func iceTable(name string) (ice.Table, error) {
	for _, t := range ice.Tables() {
		if t.Name == name {
			return t, nil
		}
	}
	return ice.Table{}, fmt.Errorf("no table is named %q", name)
}

// iceRows checks every row of the public tables in centimetres.
func iceRows() ([]Check, error) {
	table, err := rows("ice_rows")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		n, err := r.num("row")
		if err != nil {
			return nil, err
		}
		t, err := iceTable(r["table"])
		if err != nil {
			return nil, err
		}
		if int(n) >= len(t.Rows) {
			return nil, fmt.Errorf("table %s has no row %g", t.Name, n)
		}
		row := t.Rows[int(n)]
		source := *t.Source
		source.Status = st
		out = append(out, Check{
			Quantity: fmt.Sprintf("%s (row %g%s), %s in cm", r["load"], n, r["end"], r["as_printed"]),
			Source:   source,
			Printed:  r["cm"], Unit: "cm",
			Compute: func() (float64, error) {
				if r["end"] == "upper" {
					return row.Top * 100, nil
				}
				return row.Thickness * 100, nil
			},
		})
	}
	return carried(out...), nil
}

// iceWeights checks the weight table both ways, by its formula and by its rows.
func iceWeights() ([]Check, error) {
	table, err := rows("ice_weights")
	if err != nil {
		return nil, err
	}
	class, err := iceClass("public weight table")
	if err != nil {
		return nil, err
	}
	list, err := iceTable("minnesota-weight")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		lb, err := r.num("lb")
		if err != nil {
			return nil, err
		}
		in, err := r.num("in")
		if err != nil {
			return nil, err
		}
		source := *class.Source
		source.Status = st
		out = append(out,
			Check{
				Quantity: "weight on " + r["in"] + " in by P = 50 h²", Source: source,
				Printed: r["lb"], Unit: "lb",
				Compute: func() (float64, error) {
					p, err := class.Load(in * measure.Inch)
					return p / measure.PoundForce, err
				},
			},
			Check{
				Quantity: "thickness under " + r["lb"] + " lb by P = 50 h²", Source: source,
				Printed: r["in"], Unit: "in", Relative: 1e-12,
				Compute: func() (float64, error) {
					h, err := class.Thickness(lb * measure.PoundForce)
					return h / measure.Inch, err
				},
			},
			Check{
				Quantity: "row for a weight just below " + r["lb"] + " lb", Source: source,
				Printed: r["in"], Unit: "in", Relative: 1e-12, Carried: true,
				Compute: func() (float64, error) {
					h, err := list.Thickness(math.Max(800, lb-1) * measure.Pound)
					return h / measure.Inch, err
				},
			},
			Check{
				Quantity: "row for ice just thicker than " + r["in"] + " in", Source: source,
				Printed: r["lb"], Unit: "lb", Relative: 1e-12, Carried: true,
				Compute: func() (float64, error) {
					m, err := list.Load((in + 0.4) * measure.Inch)
					return m / measure.Pound, err
				},
			},
		)
	}
	return out, nil
}
