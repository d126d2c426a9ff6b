package published

import (
	"fmt"
	"math"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// A moorWorked value computes one row of the worked tables, by "id part".
type moorWorked func() (float64, error)

const (
	moorDegree          = math.Pi / 180
	moorOldGravity      = 9.81 // gravity of the rows V01 to V16 and M13 to M15
	moorPound, moorFoot = measure.PoundForce, measure.Foot
)

func moorWindTo(w moor.Wind, moorHeight, averaging float64) moorWorked {
	return func() (float64, error) {
		r, err := w.To(moorHeight, averaging)
		return r.Speed, err
	}
}

func moorSea(method string, f moor.Fetch, of func(moor.Sea) float64) moorWorked {
	return func() (float64, error) {
		s, err := f.Waves(method)
		return of(s), err
	}
}

func moorHeight(s moor.Sea) float64 { return s.Height }

func moorPeriod(s moor.Sea) float64 { return s.Period }

func moorGrown(s moor.Sea) float64 { return s.Grown }

// moorPulled hangs a line of one piece under a level pull.
func moorPulled(l moor.Line, pull, rise float64, of func(moor.Hang) float64) moorWorked {
	return func() (float64, error) {
		h, err := l.Pull(pull, rise)
		return of(h), err
	}
}

func moorChain(w, l, ea float64) moor.Line {
	return moor.Line{Pieces: []moor.Piece{{Length: l, Weight: w, Stretch: ea}}}
}

// moorCable hangs free, in pounds-force and feet.
func moorCable(w, l float64) moor.Line {
	c := moorChain(w, l, 0)
	c.Shore = true
	return c
}

func moorEnergy(i moor.Impact, unit float64) moorWorked {
	return func() (float64, error) {
		e, err := i.Energy()
		return e / unit, err
	}
}

// moorBlock is the 500 kg block of the anchor rows.
var moorBlock = moor.DeadWeight{Mass: 500, Density: 2400, Friction: 0.45, Design: measure.Factor{Value: 1}}

func moorLimit(c measure.Check, err error) (float64, error) { return c.Limit, err }

func moorRamp(l, drop float64) moor.Ramp { return moor.Ramp{Length: l, Width: 1, Shore: drop} }

func moorSlopeLimit(name string) moorWorked {
	return func() (float64, error) {
		r := moorRamp(10, 1)
		r.Limit = name
		return moorLimit(r.Check(0, 0))
	}
}

func moorDesign(use string) moorWorked {
	return func() (float64, error) {
		f, err := moor.Factor("design", use)
		return f.Value, err
	}
}

// moorExposed returns Kz at 15 ft, from speeds.
func moorExposed(exposure string) moorWorked {
	return func() (float64, error) {
		w, err := (moor.Wind{Speed: 1, Exposure: exposure}).To(15*moorFoot, 3)
		return w.Speed * w.Speed, err
	}
}

func moorEnd(of, name string) moorWorked {
	return func() (float64, error) {
		f, err := moor.Factor("end of "+of, name)
		return f.Value, err
	}
}

func moorAngle(rise, level float64) moorWorked {
	return func() (float64, error) {
		a, err := moorRamp(math.Hypot(rise, level), rise).Angle(0)
		return a / moorDegree, err
	}
}

// moorTon1200 returns the reach of the offshore example's chain when it has
// 1200 kN at the top.
func moorTon1200(ea float64) moorWorked {
	return func() (float64, error) {
		w := 376 * moorOldGravity
		l := moorChain(w, 600, ea)
		// Stretching, the top is a little steeper: find the pull by halving.
		lo, hi := 0.0, 1.2e6
		var h moor.Hang
		for range 100 {
			mid := (lo + hi) / 2
			var err error
			if h, err = l.Pull(mid, 200); err != nil {
				return 0, err
			}
			if h.Tension() < 1.2e6 {
				lo = mid
			} else {
				hi = mid
			}
		}
		return h.Reach, nil
	}
}

func moorWorkedChecks() ([]Check, error) {
	of := map[string]moorWorked{}
	for _, set := range []map[string]moorWorked{moorLoadValues(), moorWaveValues(), moorLineValues(), moorGroundValues(), moorSnowValues(), moorRestValues()} {
		for k, v := range set {
			of[k] = v
		}
	}
	computed, err := rows("moor_worked")
	if err != nil {
		return nil, err
	}
	var out []Check
	used := map[string]bool{}
	find := func(r row) (moorWorked, error) {
		k := r["id"] + " " + r["part"]
		f := of[k]
		if f == nil {
			return nil, fmt.Errorf("moor: no call computes row %s", k)
		}
		used[k] = true
		return f, nil
	}
	for _, r := range computed {
		f, err := find(r)
		if err != nil {
			return nil, err
		}
		title := "Worked values of mooring and loads at 30 digits"
		if r["source"] != "" {
			title = "Worked by the formula of " + r["source"]
		}
		out = append(out, moorNear(r["title"]+", "+r["inputs"], measure.Source{Title: title, Locator: r["id"], Status: measure.Independent}, r["computed"], r["unit"], f))
	}
	printed, err := rows("moor_printed")
	if err != nil {
		return nil, err
	}
	for _, r := range printed {
		f, err := find(r)
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		c := Check{
			Package: "float/moor", Quantity: r["quantity"], Source: measure.Source{Title: r["source"], Locator: r["id"], Status: st},
			Printed: r["printed"], Unit: r["unit"], Because: r["because"], Compute: f,
			Carried: r["id"] == "K01" || r["id"] == "K04" || r["id"] == "K05", // factors and limits of tables
		}
		for column, to := range map[string]*float64{"step": &c.Step, "within": &c.Within} {
			if r[column] == "" {
				continue
			}
			if *to, err = r.num(column); err != nil {
				return nil, err
			}
		}
		out = append(out, c)
	}
	for k := range of {
		if !used[k] {
			return nil, fmt.Errorf("moor: no row prints %s", k)
		}
	}
	return out, nil
}
