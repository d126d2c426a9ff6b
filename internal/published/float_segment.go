package published

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// twoUnits is two units in the last place of a number just below a power of two,
// the narrowest reading.
const twoUnits = 2.0 / (1 << 53)

// floatSegmentChecks compares a level cylinder of unit diameter and length with
// the circle's segment in many digits. An input such as 0.999 is no binary
// number; near full, where the fraction hardly depends on it, that is harmless.
func floatSegmentChecks() ([]Check, error) {
	unit := float.Cylinder{Diameter: 1, Length: 1}
	table, err := rows("float_segment")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		h, err := r.num("h_over_D")
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		add := func(what, column string, relative float64, of func(float.Wet) float64) {
			k := Check{
				Package: "float", Quantity: what + " at h/D = " + r["h_over_D"],
				Source:  measure.Source{Title: "Segment of a circle in multiple precision", Locator: "h/D = " + r["h_over_D"], Status: st},
				Printed: r[column], Relative: relative,
				Compute: func() (float64, error) { return of(unit.Wet(0.5-h, r3.Vec{Z: 1})), nil },
			}
			if want, err := r.num(column); err == nil && want == 0 {
				k.Relative, k.Step = 0, 1e-15
			}
			out = append(out, k)
		}
		// The height 0.5 - h costs digits of a small h; Displaced takes the draft itself.
		loss := 4e-16 / min(h, 1)
		out = append(out, Check{
			Package: "float", Quantity: "volume displaced at h/D = " + r["h_over_D"],
			Source:  measure.Source{Title: "Segment of a circle in multiple precision", Locator: "h/D = " + r["h_over_D"], Status: st},
			Printed: r["area_over_D2"], Relative: 5e-16,
			Compute: func() (float64, error) { return unit.Displaced(h) },
		})
		add("wet section", "area_over_D2", loss+1e-15, func(w float.Wet) float64 { return w.Volume })
		add("waterplane", "chord_over_D", loss+1e-15/max(1-h, 1e-7), func(w float.Wet) float64 { return w.Plane })
		add("centroid above the bottom", "centroid_above_bottom_over_D", 2*loss+1e-15, func(w float.Wet) float64 {
			return 0.5 + w.VolumeMoment.Z/w.Volume
		})
	}

	table, err = rows("float_segment_ends")
	if err != nil {
		return nil, err
	}
	for _, r := range table {
		h, err := r.num("h")
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		out = append(out, Check{
			Package: "float", Quantity: "volume displaced",
			Source:  measure.Source{Title: "Segment of a circle in multiple precision", Locator: "draft " + r["h"], Status: st},
			Printed: r["area"], Relative: twoUnits,
			Compute: func() (float64, error) { return unit.Displaced(h) },
		})
		if h <= 0.5 {
			area, err := r.num("area")
			if err != nil {
				return nil, err
			}
			// The area's own rounding moves the draft by up to ⅔ of half a unit more.
			out = append(out, Check{
				Package: "float", Quantity: "draft of that volume",
				Source:  measure.Source{Title: "Segment of a circle in multiple precision", Locator: "draft " + r["h"], Status: st},
				Printed: r["h"], Relative: twoUnits,
				Compute: func() (float64, error) { return unit.Draft(area) },
			})
		}
	}

	table, err = rows("float_segment_inverse")
	if err != nil {
		return nil, err
	}
	for _, r := range table {
		f, err := r.num("fraction")
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		// Above half full a rounding of the volume moves the draft by more.
		relative := 9e-16
		if f > 0.5 {
			relative = 4e-16 / (1 - f)
		}
		out = append(out, Check{
			Package: "float", Quantity: "draft at the fraction " + r["fraction"] + " of full",
			Source:  measure.Source{Title: "Segment of a circle in multiple precision", Locator: "fraction " + r["fraction"], Status: st},
			Printed: r["h_over_D"], Relative: relative,
			Compute: func() (float64, error) { return unit.Draft(f * unit.Volume()) },
		})
	}
	more, err := segmentTables()
	return append(out, more...), err
}

// segmentTables compares with printed tables of segments.
func segmentTables() ([]Check, error) {
	table, err := rows("float_segment_tables")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: "float", Quantity: r["quantity"],
			Source:  measure.Source{Title: r["table"], Status: st},
			Printed: r["printed"],
		}
		tube := float.Cylinder{Diameter: 2, Length: 1}
		if r["quantity"] == "fraction" {
			h, err := r.num("h_over_D")
			if err != nil {
				return nil, err
			}
			c.Source.Locator = "h/D = " + r["h_over_D"]
			c.Compute = func() (float64, error) {
				v, err := tube.Displaced(2 * h)
				return v / tube.Volume(), err
			}
			out = append(out, c)
			continue
		}
		angle, err := r.num("angle_deg")
		if err != nil {
			return nil, err
		}
		c.Source.Locator = r["angle_deg"] + " deg"
		axis := math.Cos(angle * math.Pi / 360) // above the water
		switch r["quantity"] {
		case "area":
			c.Compute = func() (float64, error) { return tube.Wet(axis, r3.Vec{Z: 1}).Volume, nil }
		case "chord":
			c.Compute = func() (float64, error) { return tube.Wet(axis, r3.Vec{Z: 1}).Plane, nil }
		case "height":
			c.Compute = func() (float64, error) { return tube.Draft(tube.Wet(axis, r3.Vec{Z: 1}).Volume) }
		default:
			return nil, fmt.Errorf("float_segment_tables: no quantity %q", r["quantity"])
		}
		out = append(out, c)
	}
	return out, nil
}
