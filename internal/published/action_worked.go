package published

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/ice"
	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

// actionWorked checks single values, each by the call its row names.
func actionWorked() ([]Check, error) {
	table, err := rows("action_worked")
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
			Quantity: r["quantity"], Source: measure.Source{Title: r["source"], Status: st},
			Printed: r["printed"], Unit: r["unit"], Because: r["because"],
			Compute: func() (float64, error) { return actionCall(r["call"]) },
			Carried: strings.HasPrefix(r["call"], "bond ratio"),
		}
		if r["relative"] != "" {
			if c.Relative, err = r.num("relative"); err != nil {
				return nil, err
			}
		}
		if r["because"] != "" {
			if c.Within, err = r.num("within"); err != nil {
				return nil, err
			}
		}
		out = append(out, c)
	}
	return out, nil
}

func actionCall(name string) (float64, error) {
	what, arg, _ := strings.Cut(name, " ")
	switch what {
	case "rise", "force":
		return actionWallAt(what, arg)
	case "bond":
		return actionBond(arg)
	case "wedge":
		return actionWedge(arg)
	case "drag", "strip", "current":
		return actionDrag(what, arg)
	case "slope", "slope30", "buckling", "crushing":
		return actionFace(what, arg)
	}
	return math.NaN(), fmt.Errorf("no call is named %q", name)
}

// actionWallAt is the long wall of 0.30 m of ice.
func actionWallAt(what, edge string) (float64, error) {
	c := action.Cover{Thickness: 0.3, Modulus: actionOne(5e9), Flexure: actionOne(0.7e6), Foundation: 9810}
	l, err := c.Wall(0, action.Span{})
	if err != nil {
		return 0, err
	}
	rise := l.Crack.Low
	if edge == "hinged" {
		rise = l.Crack.High
	}
	if what == "rise" {
		return rise / measure.Millimetre, nil
	}
	if l, err = c.Wall(rise, action.Span{}); edge == "hinged" {
		return l.Elastic.Low / measure.Kilonewton, err
	}
	return l.Elastic.High / measure.Kilonewton, err
}

// actionBond is bond on wood: on a pile, or the stress at an end of its range.
func actionBond(arg string) (float64, error) {
	if text, ok := strings.CutPrefix(arg, "ratio "); ok {
		ratio, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return 0, err
		}
		s, err := action.Adhesion("wood", ratio, 1)
		if ratio > 1 {
			return s.Low / measure.Kilopascal, err
		}
		return s.High / measure.Kilopascal, err
	}
	s, err := action.Adhesion("wood", 0.2, 0.4)
	if err != nil {
		return 0, err
	}
	l, err := action.Cover{Thickness: 0.4}.Uplift(action.Body{Length: 0.2, Smooth: true, Bond: s}, 0.1)
	if err != nil {
		return 0, err
	}
	return l.Caps[1].High / measure.Kilonewton, nil
}

// actionWedge is the cap by bending over σ h²/6 and 8 tan(π/8)·2, or over σ h²
// for a point.
func actionWedge(arg string) (float64, error) {
	α, err := strconv.ParseFloat(arg, 64)
	if err != nil {
		return 0, err
	}
	plate := ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33}
	l, err := plate.CharacteristicLength()
	if err != nil {
		return 0, err
	}
	c := action.Cover{Thickness: 0.3, Modulus: actionOne(1e9), Flexure: actionOne(1e6)}
	lift, err := c.Uplift(action.Body{Length: math.Max(2*α*l*(1-1e-12), 1e-6)}, 1)
	if err != nil {
		return 0, err
	}
	over := lift.Caps[0].High / (1e6 * 0.09)
	if α == 0 {
		return over, nil
	}
	return over / (16 * math.Tan(math.Pi/8) / 6), nil
}

// actionDrag is the drive on a square mile, a strip of it, or by current.
func actionDrag(what, end string) (float64, error) {
	d := action.Drift{Wind: 15, Reach: measure.Mile, Face: action.Face{Width: 6}, Cover: action.Cover{Thickness: 0.3}}
	switch what {
	case "strip":
		d.Width = 6
	case "current":
		d.Wind, d.Current, d.Reach, d.Width = 0, 0.1, 500, 200
	}
	p, err := d.Push()
	if end == "low" {
		return p.Drive.Low / measure.Kilonewton, err
	}
	return p.Drive.High / measure.Kilonewton, err
}

// actionFace is what 0.30 m of ice bears on 3 m of face; the coefficient of the
// slope is taken at 45 degrees without friction, rise or Poisson's ratio.
func actionFace(what, end string) (float64, error) {
	c := action.Cover{Thickness: 0.3, Modulus: actionOne(2e9), Flexure: actionOne(0.7e6), Crushing: actionOne(1.5e6)}
	face := action.Face{Width: 3, Height: 0.5, Slope: math.Pi / 4, Friction: actionOne(0.2)}
	if end == "coefficient" {
		c.Poisson, face.Height, face.Friction = 1e-9, 0, actionOne(1e-15)
	}
	if what == "slope30" {
		face.Slope = math.Pi / 6
	}
	p, err := action.Drift{Reach: 1000, Face: face, Cover: c}.Push()
	if err != nil {
		return 0, err
	}
	i := map[string]int{"crushing": 0, "buckling": 1, "slope": 2, "slope30": 2}[what]
	switch end {
	case "high":
		return p.Caps[i].High, nil
	case "coefficient":
		k := 1000 * measure.Gravity
		return p.Caps[i].Low / 3 / (0.7e6 * math.Sqrt(math.Sqrt(k*math.Pow(0.3, 5)/2e9))), nil
	}
	return p.Caps[i].Low, nil
}
