package published

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// wetColumns are the columns of data/float_cylinder.csv and what they hold,
// with the accuracy asked for: of the volume's own scale for its moments, of the
// waterplane's for its.
var wetColumns = []struct {
	column  string
	unit    string
	of      func(float.Wet) float64
	scale   func(w float.Wet, lever float64) float64
	epsilon float64
}{
	{"volume", "m3", func(w float.Wet) float64 { return w.Volume }, ofVolume(0), 4e-15},
	{"x dV", "m4", func(w float.Wet) float64 { return w.VolumeMoment.X }, ofVolume(1), 4e-15},
	{"y dV", "m4", func(w float.Wet) float64 { return w.VolumeMoment.Y }, ofVolume(1), 4e-15},
	{"z dV", "m4", func(w float.Wet) float64 { return w.VolumeMoment.Z }, ofVolume(1), 4e-15},
	{"plane", "m2", func(w float.Wet) float64 { return w.Plane }, ofPlane(0), 3e-14},
	{"x dA", "m3", func(w float.Wet) float64 { return w.PlaneMoment.X }, ofPlane(1), 3e-14},
	{"y dA", "m3", func(w float.Wet) float64 { return w.PlaneMoment.Y }, ofPlane(1), 3e-14},
	{"z dA", "m3", func(w float.Wet) float64 { return w.PlaneMoment.Z }, ofPlane(1), 3e-14},
	{"xx", "m4", func(w float.Wet) float64 { return w.PlaneInertia[0] }, ofPlane(2), 3e-14},
	{"yy", "m4", func(w float.Wet) float64 { return w.PlaneInertia[1] }, ofPlane(2), 3e-14},
	{"zz", "m4", func(w float.Wet) float64 { return w.PlaneInertia[2] }, ofPlane(2), 3e-14},
	{"xy", "m4", func(w float.Wet) float64 { return w.PlaneInertia[3] }, ofPlane(2), 3e-14},
	{"xz", "m4", func(w float.Wet) float64 { return w.PlaneInertia[4] }, ofPlane(2), 3e-14},
	{"yz", "m4", func(w float.Wet) float64 { return w.PlaneInertia[5] }, ofPlane(2), 3e-14},
}

func ofVolume(power float64) func(float.Wet, float64) float64 {
	return func(w float.Wet, lever float64) float64 { return w.Volume * math.Pow(lever, power) }
}

func ofPlane(power float64) func(float.Wet, float64) float64 {
	return func(w float.Wet, lever float64) float64 { return w.Plane * math.Pow(lever, power) }
}

// floatCylinderChecks compares tilted cylinders, in every regime of the closed
// forms, with quadrature in 40 digits. Where the wet or the dry hoof is thin, a
// rounding of the given height moves it by more than the closed forms do, and
// the accuracy asked for is that rounding's.
func floatCylinderChecks() ([]Check, error) {
	table, err := rows("float_cylinder")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		var v [6]float64
		for i, c := range []string{"diameter", "length", "height", "up_x", "up_y", "up_z"} {
			if v[i], err = r.num(c); err != nil {
				return nil, err
			}
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		body := float.Cylinder{Diameter: v[0], Length: v[1]}
		height, up := v[2], r3.Vec{X: v[3], Y: v[4], Z: v[5]}
		want := float.Wet{}
		if want.Volume, err = r.num("volume"); err != nil {
			return nil, err
		}
		if want.Plane, err = r.num("plane"); err != nil {
			return nil, err
		}
		// Rounding of the height against the depth of the thinner hoof.
		reach := body.Diameter/2*math.Hypot(up.Y, up.Z) + body.Length/2*math.Abs(up.X)
		near := reach - math.Abs(height)
		loss := 4e-16 * reach / near
		for _, k := range wetColumns {
			printed, err := r.num(k.column)
			if err != nil {
				return nil, err
			}
			tolerance := (k.epsilon + loss) * max(k.scale(want, max(body.Length/2, body.Diameter/2)), math.Abs(printed))
			out = append(out, Check{
				Package: "float", Quantity: k.column,
				Source:  measure.Source{Title: "Tilted cylinder by quadrature in 40 digits", Locator: r["case"], Status: st},
				Printed: r[k.column], Unit: k.unit,
				Because: "rounding, of the given height where a hoof is thin", Within: tolerance,
				Compute: func() (float64, error) { return k.of(body.Wet(height, up)), nil },
			})
		}
	}
	return out, nil
}
