package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// lumberExamples checks worked examples of books and courses, each by the call a
// user would make.
func lumberExamples() ([]Check, error) {
	table, err := rows("lumber_examples")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		src, err := lumberSource(r["title"], "", r["locator"], r["status"])
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: lumberPackage, Source: src, Quantity: r["quantity"], Printed: r["printed"], Unit: r["unit"],
			Compute: func() (float64, error) { return lumberExample(r["id"]) },
			Carried: r["id"] == "M1", // a design value, looked up
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// lumberExample computes one example, in its printed unit.
func lumberExample(id string) (float64, error) {
	kind, rest, _ := strings.Cut(id, " ")
	switch {
	case kind == "sec":
		return lumberSectionExample(rest)
	case kind == "plf":
		s, err := lumber.Size(rest)
		return 35 * measure.PCF * s.Area() * measure.Foot / measure.Pound, err
	case strings.HasPrefix(id, "C-"):
		ratio, err := row{"x": id[2:]}.num("x")
		if err != nil {
			return 0, err
		}
		return lumberStabilityAt(ratio)
	case strings.HasPrefix(id, "B") && rest != "":
		return lumberBeamExample(kind, rest)
	case strings.HasPrefix(id, "G"), strings.HasPrefix(id, "K"):
		return lumberColumnExample(id)
	case strings.HasPrefix(id, "P"):
		return lumberFormwork(id)
	}
	return lumberAdjusted(id)
}

func lumberSectionExample(what string) (float64, error) {
	size, symbol, _ := strings.Cut(what, " ")
	s, err := lumber.Size(size)
	const in = measure.Inch
	switch symbol {
	case "A":
		return s.Area() / (in * in), err
	case "S":
		return s.Modulus() / (in * in * in), err
	}
	return s.Inertia() / (in * in * in * in), err
}

// lumberStabilityAt returns CL where FbE is a ratio of Fb*: RB is 10 here.
func lumberStabilityAt(ratio float64) (float64, error) {
	const fb = 1000 * measure.PSI
	f, err := lumber.BeamStability(fb, ratio*fb*100/1.2, 1, 0.25, 0.05)
	return f.Value, err
}

// lumberBeamExample computes the beams held sideways at a distance.
func lumberBeamExample(id, what string) (float64, error) {
	b := map[string]struct {
		species, size string
		unbraced      float64
		plies         int
		dry, incised  bool
	}{
		"B1": {"dfl", "2x10", 16, 1, true, false},
		"B2": {"spf", "2x8", 8, 1, false, false},
		"B3": {"sp", "2x8", 10, 2, false, false},
		"B4": {"hf", "2x6", 3, 1, false, true},
	}[id]
	m, err := lumberMember(b.species, "No.2", b.size)
	if err != nil {
		return 0, err
	}
	m.Unbraced, m.Plies, m.Dry, m.Smooth, m.Loading = b.unbraced*measure.Foot, b.plies, b.dry, !b.incised, "uniform"
	if what == "le" {
		le, err := lumber.EffectiveLength(m.Loading, m.Unbraced, m.Section.Depth)
		return le / measure.Inch, err
	}
	d, err := m.Adjusted(lumber.TenYears)
	if err != nil {
		return 0, err
	}
	le, err := lumber.EffectiveLength(m.Loading, m.Unbraced, m.Section.Depth)
	if err != nil {
		return 0, err
	}
	rb := math.Sqrt(le*m.Section.Depth) / m.Whole().Width
	switch what {
	case "RB":
		return rb, nil
	case "FbE":
		return 1.2 * d.Emin.Value / (rb * rb) / measure.PSI, d.Emin.Err
	}
	if what == "Fb'" {
		return d.Fb.Value / measure.PSI, d.Fb.Err
	}
	for _, f := range d.Fb.Factors {
		if f.Symbol == "CL" {
			return f.Value, nil
		}
	}
	return 0, fmt.Errorf("%s has no CL", id)
}

// lumberColumnExample computes the columns; those of the textbook use the older form,
// 0.3 E for 0.822 Emin'.
func lumberColumnExample(id string) (float64, error) {
	star, emin, slender := 1897.5, 550000.0, 21.818
	area := 1.0
	if strings.HasPrefix(id, "G") {
		s := lumber.Section{Width: 3.5 * measure.Inch, Depth: 7.25 * measure.Inch}
		length := float64(id[1]-'0') * measure.Foot
		star, emin, slender = 1000, 1.3e6*0.3/0.822, length/s.Width
		area = s.Area() / (measure.Inch * measure.Inch)
	}
	f, err := lumber.ColumnStability(star*measure.PSI, emin*measure.PSI, slender)
	if err != nil {
		return 0, err
	}
	switch id[len(id)-1:] {
	case "1":
		return lumberRatioOf(f.Value) * star, nil
	case "a":
		return lumberRatioOf(f.Value), nil
	case "2", "b":
		return f.Value, nil
	case "3":
		return f.Value * star, nil
	}
	return f.Value * star * area / 1000, nil
}

// lumberRatioOf inverts the column formula for a = FcE/Fc*: with c = 0.8 the factor C is
// the lesser root of C² - C (1 + a)/c + a/c = 0, so that a = C (1 - c C)/(1 - C).
func lumberRatioOf(c float64) float64 { return c * (1 - 0.8*c) / (1 - c) }

// lumberFormwork computes the examples of the book on formwork. Its continuous
// members carry M = w l²/10 and V = 5/8 w (l - 2 d).
func lumberFormwork(id string) (float64, error) {
	const in, lb = measure.Inch, measure.PoundForce
	s, err := lumber.Size(map[string]string{"P3": "3x8", "P4": "3x8", "P10": "4x6", "P11": "4x6"}[id])
	if err != nil {
		if s, err = lumber.Size("2x4"); err != nil {
			return 0, err
		}
	}
	m := lumber.Member{Section: s, Dry: true, Smooth: true, Held: true}
	continuous := func(fb, fv, w float64) (bending, shear float64, err error) {
		m.Grade = lumber.Grade{Species: "the example", Fb: psiOf(fb), Fv: psiOf(fv)}
		d, err := m.Adjusted(lumber.TenYears)
		w *= measure.PLF
		return safe(10*d.Fb.Value*s.Modulus()/w) / in, (d.Fv.Value*s.Area()/1.5/(0.625*w) + 2*s.Depth) / in, err
	}
	switch id {
	case "P1":
		checks, err := m.Check(lumber.Demand{Moment: 500 * measure.PLF * 30 * in * 30 * in / 10}, lumber.TenYears)
		if err != nil {
			return 0, err
		}
		return checks[0].Value * s.Modulus() / (lb * in), nil
	case "P2":
		return s.Modulus() / (in * in * in), nil
	case "P3":
		a, l := 36*in, 108*in
		return 200 * lb * a * (3*l*l/4 - a*a) / (6 * 1.6e6 * measure.PSI * s.Inertia()) / in, nil
	case "P4":
		l := 108 * in
		return 5 * 150 * measure.PLF * l * l * l * l / (384 * 1.6e6 * measure.PSI * s.Inertia()) / in, nil
	case "P5":
		x, _, err := continuous(1875, 218, 825)
		return x, err
	case "P6":
		_, x, err := continuous(1875, 218, 825)
		return x, err
	case "P8", "P9":
		s, err := lumber.Size("2x4")
		if err != nil {
			return 0, err
		}
		g, err := lumber.Lookup("Southern Pine", "No.1", s)
		if err != nil {
			return 0, err
		}
		d, err := lumber.Member{Section: s, Grade: g, Smooth: true, Held: true}.Adjusted(lumber.SevenDays)
		if id == "P8" {
			return d.Fv.Value / measure.PSI, err
		}
		return d.E.Value / measure.PSI, err
	case "P10":
		x, _, err := continuous(1328, 212, 520)
		return x, err
	case "P11":
		_, x, err := continuous(1328, 212, 520)
		return x, err
	}
	return 0, fmt.Errorf("no example %q", id)
}

// lumberAdjusted computes adjusted values, notches, shrinkage and measure.
func lumberAdjusted(id string) (float64, error) {
	switch id {
	case "W1", "W2":
		m, err := lumberMember("Douglas Fir-Larch", "No.1", "2x8")
		if err != nil {
			return 0, err
		}
		m.Smooth, m.Held = true, true
		d, err := m.Adjusted(lumber.Snow)
		if id == "W1" {
			return d.Fb.Value / measure.PSI, err
		}
		return d.Ft.Value / measure.PSI, err
	case "M1", "M2", "M4":
		m, err := lumberMember("Hem-Fir", "No.2", "2x10")
		if err != nil {
			return 0, err
		}
		m.Dry, m.Smooth, m.Held, m.Length = true, true, true, 1e-3
		d, err := m.Adjusted(lumber.Snow)
		switch id {
		case "M1":
			return d.Fb.Reference.Printed, err
		case "M2":
			return d.Ft.Value / measure.PSI, err
		}
		// a column of a millimetre has no stability to lose
		return d.Fc.Value / measure.PSI, err
	case "M5":
		m, err := lumberMember("Hem-Fir", "No.2", "6x14")
		if err != nil {
			return 0, err
		}
		// 13.5 in. deep in the example: surfaced green
		m.Section.Depth = 13.5 * measure.Inch
		f, err := lumber.SizeFactor(lumber.Fb, m.Grade, m.Section)
		return f.Value, err
	case "C1":
		return lumberStabilityAt(2.83)
	case "BR1":
		m, err := lumberMember("spf", "No.2", "2x8")
		if err != nil {
			return 0, err
		}
		m.Smooth, m.Held = true, true
		checks, err := m.Check(lumber.Demand{Reaction: 1, Bearing: 1.5 * measure.Inch}, lumber.TenYears)
		if err != nil {
			return 0, err
		}
		for _, c := range checks {
			if c.Name == "bearing" {
				return c.Limit / c.Value / measure.PoundForce, nil
			}
		}
		return 0, fmt.Errorf("no bearing among the checks")
	case "N7.25", "N6":
		m, err := lumberMember("spf", "No.2", "2x8")
		if err != nil {
			return 0, err
		}
		m.Smooth, m.Held = true, true
		if id == "N7.25" {
			c, err := m.CheckJoint(m.Section.Depth, 5, 0, lumber.TenYears)
			return c.Limit / measure.PoundForce, err
		}
		checks, err := m.CheckNotch(lumber.Notch{Depth: 1.25 * measure.Inch}, 0, lumber.TenYears)
		if err != nil {
			return 0, err
		}
		return checks[0].Limit / measure.PoundForce, nil
	case "S1", "S2":
		w, t, err := lumber.Shrinkage(0.15)
		if id == "S1" {
			return 100 * w, err
		}
		return 100 * t, err
	case "gap":
		g, err := lumber.Gap(5.5*measure.Inch, 0.30, 0, 0.15)
		return g / measure.Inch, err
	case "BF":
		return lumber.BoardFeet("5/4x6", 16*measure.Foot)
	case "BF8":
		return lumber.BoardFeet("2x8", 12*measure.Foot)
	}
	return 0, fmt.Errorf("no example %q", id)
}
