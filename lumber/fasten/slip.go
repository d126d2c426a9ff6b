package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Slip returns how far a path of joints gives, m, when a force (N) runs through
// all of them one after the other: in each the play of a bolt's hole, and the
// force over the load/slip modulus of its fasteners,
//
//	γ = 180 000 D^1.5 lbf/in wood to wood, 270 000 D^1.5 wood to metal.
//
// Every bolt of a joint is taken to lie at the wrong side of its hole at first.
// Without a force it is the play alone. Nails and screws thinner than 1/4 in have
// no published modulus: an error where there is a force. NDS 11.3.6.
func Slip(force float64, path ...Joint) (float64, error) {
	if err := forces.Check("force", force); err != nil {
		return 0, err
	}
	sum := 0.0
	for _, j := range path {
		if err := j.check(); err != nil {
			return 0, err
		}
		s, err := j.Fastener.resolve()
		if err != nil {
			return 0, err
		}
		if s.kind == Bolt {
			hole, err := j.hole(s.d)
			if err != nil {
				return 0, err
			}
			sum += math.Max(0, hole-j.Fastener.Diameter)
		}
		if force == 0 {
			continue
		}
		if s.d < 0.25-hair {
			return 0, &measure.Error{Field: "slip of a " + s.kind.String(), Why: "no modulus is published below 1/4 in", Class: measure.ErrNotComputed}
		}
		gamma := modulus(s.d, j.Side.Material.steel() || j.Main.Material.steel()) * measure.PoundForce / measure.Inch
		sum += force / (gamma * float64(j.count()))
	}
	return sum, nil
}
