package published

import (
	"fmt"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

var lumberProperties = map[string]lumber.Property{
	"Fb": lumber.Fb, "Ft": lumber.Ft, "Fv": lumber.Fv, "FcPerp": lumber.FcPerp, "Fc": lumber.Fc, "E": lumber.E, "Emin": lumber.Emin,
}

// lumberFactors checks the tables of adjustment factors, entry by entry.
func lumberFactors() ([]Check, error) {
	table, err := rows("lumber_factors")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		src, err := lumberSource("NDS and its Supplement", "2018", r["symbol"], r["status"])
		if err != nil {
			return nil, err
		}
		p, ok := lumberProperties[r["property"]]
		if !ok {
			return nil, fmt.Errorf("lumber_factors: property %q", r["property"])
		}
		what := []string{r["symbol"], "of", r["property"]}
		for _, column := range []string{"table", "grade", "thickness", "width", "condition"} {
			if r[column] != "" {
				what = append(what, r[column])
			}
		}
		c := Check{
			Package: lumberPackage, Source: src, Quantity: strings.Join(what, " "), Printed: r["printed"], Step: lumberExact, Carried: r["symbol"] != "Cb",
			Compute: func() (float64, error) {
				f, err := lumberFactor(r, p)
				return f.Value, err
			},
		}
		if r["symbol"] == "Cb" { // rounded from its formula
			c.Step = 0.01
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// lumberExact is for printed factors that are exact: 0.9 is not 0.92.
const lumberExact = 1e-9

// lumberFactor calls the function a row is about.
func lumberFactor(r row, p lumber.Property) (measure.Factor, error) {
	s, g, err := lumberFactorCase(r)
	if err != nil {
		return measure.Factor{}, err
	}
	switch r["symbol"] {
	case "CD":
		for t := lumber.Permanent; t <= lumber.TenMinutes; t++ {
			if t.String() == r["condition"] {
				return t.Factor(p)
			}
		}
	case "CM":
		return lumber.WetService(p, g, s, false)
	case "Ct":
		moisture, temperature, _ := strings.Cut(r["condition"], " ")
		celsius := map[string]float64{"100": measure.Fahrenheit(100), "125": measure.Fahrenheit(125), "150": measure.Fahrenheit(150)}[temperature]
		return lumber.Temperature(p, celsius, moisture == "dry")
	case "CF":
		return lumber.SizeFactor(p, g, s)
	case "Cfu":
		return lumber.FlatUse(p, g, s.Turned())
	case "Ci":
		return lumber.Incising(p, false)
	case "Cr":
		return lumber.RepetitiveMember(s, true, 1)
	case "Cb":
		length, err := row{"x": r["condition"]}.num("x")
		if err != nil {
			return measure.Factor{}, err
		}
		return lumber.BearingArea(length*measure.Inch, true)
	}
	return measure.Factor{}, fmt.Errorf("lumber_factors: %q under %q", r["symbol"], r["condition"])
}

// lumberFactorCase returns the section and the grade a row speaks of.
func lumberFactorCase(r row) (lumber.Section, lumber.Grade, error) {
	if r["width"] == "" {
		return lumber.Section{}, lumber.Grade{}, nil
	}
	size := r["thickness"] + "x" + r["width"]
	if r["thickness"] == "4" && (r["width"] == "2" || r["width"] == "3") {
		size = r["width"] + "x4"
	}
	s, err := lumber.Size(size)
	if err != nil {
		return s, lumber.Grade{}, err
	}
	species := map[string]string{"4A": "Douglas Fir-Larch", "4B": "Southern Pine", "4D": "Douglas Fir-Larch", "4D pine": "Southern Pine", "": "Hem-Fir"}[r["table"]]
	grade := r["grade"]
	if grade == "" {
		grade = "No.2"
	}
	g, err := lumber.Lookup(species, grade, s)
	return s, g, err
}
