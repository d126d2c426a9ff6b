package published

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

func frameChecks() ([]Check, error) {
	var out []Check
	for _, part := range []func() ([]Check, error){
		frameBeamChecks, frameCoefficientChecks, frameVarying, frameMoving, frameInfluence, frameShear, frameWorked,
		frameFoundationFunctions, frameFoundationFinite, frameFoundationWorked, frameGrids, frameTorsion, frameAfloat, frameGrillages,
	} {
		checks, err := part()
		if err != nil {
			return nil, err
		}
		out = append(out, checks...)
	}
	return out, nil
}

// frameBeamChecks compares with formulas of beam tables at given inputs. Their
// values are given with twelve digits.
func frameBeamChecks() ([]Check, error) {
	table, err := rows("frame_beams")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		c, err := frameCheck(r, r["value"])
		if err != nil {
			return nil, err
		}
		c.Quantity = r["text"] + ": " + r["quantity"] + " = " + r["formula"] + " at " + r["inputs"]
		c.Relative = 2e-11
		out = append(out, c)
	}
	return out, nil
}

// frameCoefficientChecks compares with coefficients to the digits printed.
func frameCoefficientChecks() ([]Check, error) {
	table, err := rows("frame_beam_coefficients")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		c, err := frameCheck(r, r["printed"])
		if err != nil {
			return nil, err
		}
		c.Quantity = r["case"] + ": " + r["quantity"]
		out = append(out, c)
	}
	return out, nil
}

func frameCheck(r row, printed string) (Check, error) {
	st, err := status(r["status"])
	if err != nil {
		return Check{}, err
	}
	in, err := frameInputs(r["inputs"])
	if err != nil {
		return Check{}, err
	}
	build, ok := frameBeams[r["case"]]
	if !ok {
		return Check{}, fmt.Errorf("frame: no beam for case %q", r["case"])
	}
	return Check{
		Package: "frame",
		Source:  measure.Source{Title: r["title"], Edition: r["edition"], Locator: r["locator"], Status: st},
		Printed: printed,
		Compute: func() (float64, error) {
			b := build(in)
			l, err := b.Solve()
			if err != nil {
				return 0, err
			}
			return frameProbe(l, in, r["probe"])
		},
	}, nil
}

// frameInputs reads "L=4 w=1000".
func frameInputs(text string) (map[string]float64, error) {
	in := map[string]float64{}
	for _, f := range strings.Fields(text) {
		name, value, ok := strings.Cut(f, "=")
		x, err := strconv.ParseFloat(value, 64)
		if !ok || err != nil {
			return nil, fmt.Errorf("frame: input %q is no name=number", f)
		}
		in[name] = x
	}
	return in, nil
}

// frameProbe reads one quantity off a solved beam: "push 1", "-moment 8",
// "deflection 2", "sag", "hog" and "down" (as sizes), "up", "shear" (as a size),
// "x of down"; a divisor in words may follow after a slash.
func frameProbe(l *frame.Line, in map[string]float64, probe string) (float64, error) {
	what, unit, _ := strings.Cut(probe, "/")
	what, negative := strings.CutPrefix(what, "-")
	what, where := strings.CutPrefix(what, "x of ")
	what, inverse := strings.CutPrefix(what, "c of ")
	name, arg, _ := strings.Cut(what, " ")
	x := 0.0
	if arg != "" {
		var err error
		if x, err = strconv.ParseFloat(arg, 64); err != nil {
			return 0, err
		}
	}
	e := l.Extremes()
	var d frame.Diagram
	var v float64
	switch name {
	case "push":
		v = l.Push[int(x)]
	case "moment":
		v = l.At(x).Moment
	case "deflection":
		v = l.At(x).Deflection
	case "slope":
		v = l.At(x).Slope
	case "sag":
		d, v = e.Sag, e.Sag.Moment
	case "hog":
		d, v = e.Hog, -e.Hog.Moment
	case "up":
		d, v = e.Up, e.Up.Deflection
	case "down":
		d, v = e.Down, -e.Down.Deflection
	case "shear":
		d, v = e.Shear, math.Abs(e.Shear.Shear)
	default:
		return 0, fmt.Errorf("frame: no probe %q", probe)
	}
	if where {
		v = d.X
	}
	if negative {
		v = -v
	}
	length := in["L"]
	if inverse {
		return in["w"] * math.Pow(length, 4) / (v * in["EI"]), nil
	}
	switch unit {
	case "":
		return v, nil
	case "L":
		return v / length, nil
	case "(wL^2)":
		return v / (in["w"] * length * length), nil
	case "(wL^4/EI)":
		return v * in["EI"] / (in["w"] * math.Pow(length, 4)), nil
	case "(PL^3/EI)":
		return v * in["EI"] / (in["P"] * math.Pow(length, 3)), nil
	}
	return 0, fmt.Errorf("frame: no divisor %q", unit)
}
