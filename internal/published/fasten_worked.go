package published

import (
	"errors"
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// fastenBearing holds dowel bearing strengths.
func fastenBearing() ([]Check, error) {
	table, err := rows("conn_fe")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		x, err := r.nums("G", "D")
		if err != nil {
			return nil, err
		}
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		p := fasten.Piece{Grade: wood(x[0]), Thickness: 0.1}
		if r["direction"] == "perpendicular" {
			p.Angle = math.Pi / 2
		}
		out = append(out, Check{
			Package: fastenPackage, Source: connectionTable("12.3.3", "", st), Printed: r["printed"], Unit: "psi", Relative: 1e-12,
			Quantity: fmt.Sprintf("Fe at G = %s, D = %s in, %s", r["G"], r["D"], r["direction"]),
			Compute: func() (float64, error) {
				fe, err := p.Bearing(x[1] * measure.Inch)
				return fe / measure.PSI, err
			},
		})
	}
	for _, c := range []struct {
		name, printed string
		piece         fasten.Piece
	}{
		{"A36 plate, 1.5 Fu", "87000", fasten.Piece{Material: fasten.Plate, Thickness: 0.25 * measure.Inch}},
		{"A653 Grade 33 sheet, 1.375 Fu", "61850", fasten.Piece{Material: fasten.Sheet, Thickness: 0.06 * measure.Inch}},
		{"concrete of 2500 psi", "7500", fasten.Piece{Material: fasten.Concrete, Thickness: 0.1}},
	} {
		out = append(out, Check{
			Carried: true,
			Package: fastenPackage, Source: connectionTable("12.3.3", "course notes of a university", measure.Quoted),
			Quantity: "Fe of " + c.name, Printed: c.printed, Unit: "psi", Relative: 1e-12,
			Compute: func() (float64, error) {
				fe, err := c.piece.Bearing(0.5 * measure.Inch)
				return fe / measure.PSI, err
			},
		})
	}
	return out, nil
}

// fastenModes holds every yield mode of two joints worked by hand.
func fastenModes() ([]Check, error) {
	src := connectionTable("12.3.1A", "hand values in the check values of a structural office", measure.Quoted)
	var out []Check
	for _, c := range []struct {
		mode, printed string
		joint         fasten.Joint
	}{
		{"Im", "2718.75", steelMain()},
		{"Is", "1050", steelMain()},
		{"II", "582.917", steelMain()},
		{"IIIm", "825.728", steelMain()},
		{"IIIs", "783.149", steelMain()},
		{"IV", "981.519", steelMain()},
		{"IIIm", "534.2114", bolted(0.5, 1, 3.5)},
	} {
		out = append(out, Check{
			Package: fastenPackage, Source: src, Printed: c.printed, Unit: "lbf",
			Quantity: fmt.Sprintf("1/2 bolt, main %.3g in, side %.3g in: mode %s", c.joint.Main.Thickness/measure.Inch, c.joint.Side.Thickness/measure.Inch, c.mode),
			Compute:  func() (float64, error) { return modeOf(c.joint, c.mode) },
		})
	}
	return out, nil
}

func modeOf(j fasten.Joint, name string) (float64, error) {
	y, err := j.Yield()
	for _, m := range y.Modes {
		if m.Name == name {
			return m.Z / measure.PoundForce, err
		}
	}
	return 0, errors.Join(err, fmt.Errorf("no mode %s", name))
}

// bolted returns two pieces of Douglas Fir-Larch under a bolt, inches, loaded
// along the grain, threads out of the way.
func bolted(d, main, side float64) fasten.Joint {
	return fasten.Joint{
		Fastener: fasten.Fastener{Kind: fasten.Bolt, Diameter: d * measure.Inch}, Shank: true,
		Main: fasten.Piece{Grade: wood(0.5), Thickness: main * measure.Inch},
		Side: fasten.Piece{Grade: wood(0.5), Thickness: side * measure.Inch},
	}
}

func steelMain() fasten.Joint {
	j := bolted(0.5, 0.25, 1.5)
	j.Main.Material = fasten.Plate
	return j
}

// fastenWorked holds worked numbers.
func fastenWorked() ([]Check, error) {
	table, err := rows("conn_worked")
	if err != nil {
		return nil, err
	}
	var out []Check
	for _, r := range table {
		st, err := status(r["status"])
		if err != nil {
			return nil, err
		}
		x, err := r.nums("printed", "tolerance")
		if err != nil {
			return nil, err
		}
		compute := workedJoints[r["id"]]
		if compute == nil {
			return nil, fmt.Errorf("conn_worked: nothing computes %s", r["id"])
		}
		c := Check{
			Package: fastenPackage, Source: measure.Source{Title: r["source"], Locator: r["locator"], Status: st},
			Quantity: r["quantity"], Printed: r["printed"], Unit: r["unit"], Step: 2 * x[1], Compute: compute,
		}
		if st == measure.Independent {
			c.Step, c.Relative = 0, x[1]/math.Abs(x[0])
		}
		if err := r.deviation(&c); err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// The units that the worked numbers come in.
const (
	lbf       = measure.PoundForce
	lbfPerIn  = measure.PoundForce / measure.Inch
	dryDegree = 20
)

var dryJoint = fasten.Service{Dry: true, Seasoned: true, Temperature: dryDegree}

// listed looks a fastener up and gives it a length in inches, 0 for its own.
func listed(name string, length float64) fasten.Fastener {
	f, err := fasten.Lookup(name)
	if err != nil {
		return fasten.Fastener{} // its use fails
	}
	if length > 0 {
		f.Length = length * measure.Inch
	}
	return f
}

// driven returns a driven fastener through a side piece into a main piece of 3.5
// in, both of one specific gravity.
func driven(f fasten.Fastener, side, g float64) fasten.Joint {
	return fasten.Joint{
		Fastener: f, Service: dryJoint,
		Main: fasten.Piece{Grade: wood(g), Thickness: 3.5 * measure.Inch},
		Side: fasten.Piece{Grade: wood(g), Thickness: side * measure.Inch},
	}
}

// across turns the load across the grain of both pieces.
func across(j fasten.Joint) fasten.Joint {
	j.Main.Angle, j.Side.Angle = math.Pi/2, math.Pi/2
	return j
}

func yieldOf(j fasten.Joint) func() (float64, error) {
	return func() (float64, error) {
		y, err := j.Yield()
		return y.Z / lbf, err
	}
}

// pullOf returns one capacity of a joint pulled apart, for ten years.
func pullOf(j fasten.Joint, name string) func() (float64, error) {
	return func() (float64, error) {
		all, err := j.Pull(lumber.TenYears)
		for _, c := range all {
			if c.Name == name {
				return c.Value / lbf, errors.Join(err, c.Err)
			}
		}
		return 0, errors.Join(err, fmt.Errorf("no capacity %q", name))
	}
}

// lateralOf returns the adjusted lateral value, for ten years.
func lateralOf(j fasten.Joint, scale float64) func() (float64, error) {
	return func() (float64, error) {
		c, err := j.Lateral(lumber.TenYears)
		return c.Value / scale, errors.Join(err, c.Err)
	}
}

func perInch(f fasten.Fastener, g, share float64) func() (float64, error) {
	return func() (float64, error) {
		w, err := f.Withdrawal(g)
		return share * w / lbfPerIn, err
	}
}

func groupOf(n int, d, s, e, main, side float64) func() (float64, error) {
	return func() (float64, error) {
		f, err := fasten.GroupAction(n, d*measure.Inch, s*measure.Inch, e*main*lbf, e*side*lbf, false)
		return f.Value, err
	}
}

func bearingAt(d, degrees float64) func() (float64, error) {
	return func() (float64, error) {
		p := fasten.Piece{Grade: wood(0.5), Thickness: 0.1, Angle: degrees * math.Pi / 180}
		fe, err := p.Bearing(d * measure.Inch)
		return fe / measure.PSI, err
	}
}

func gapped(gap float64) func() (float64, error) {
	j := bolted(0.5, 1.5, 1.5)
	j.Gap = gap * measure.Inch
	return yieldOf(j)
}
