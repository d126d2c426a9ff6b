package fasten

import (
	"fmt"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// Lateral returns what the whole joint carries across its fasteners for loads of
// a duration:
//
//	Z' = n Z CD CM Ct Cg CΔ Ceg Ctn
//
// Distances that are not known make it rest on them, so that its check has no
// answer. NDS Table 11.3.1; the impact duration is not for joints and is not in
// the list of durations.
func (j Joint) Lateral(t lumber.Duration) (Capacity, error) {
	y, err := j.Yield()
	if err != nil {
		return Capacity{}, err
	}
	cd, err := duration(t)
	if err != nil {
		return Capacity{}, err
	}
	ct, err := j.temperature()
	if err != nil {
		return Capacity{}, err
	}
	c := Capacity{
		Name: "lateral", Reference: y.Z, Fasteners: j.count(), Value: y.Z * float64(j.count()),
		Governing: "mode " + y.Governing, Rule: y.Rule, Rests: j.rests(), Notes: append(y.Notes, j.warnings()...),
	}
	c.factor(cd)
	c.factor(j.sideways(inches(j.Fastener.Diameter), j.alone()))
	c.factor(ct)
	if cg, err := j.group(); err != nil {
		c.Err, c.Value = err, 0
	} else {
		c.factor(cg)
	}
	delta, open := j.spacing()
	c.factor(delta)
	c.Rests = append(c.Rests, open...)
	if j.endGrain() {
		c.factor(measure.Factor{Symbol: "Ceg", Name: "end grain", Value: 0.67, Why: "driven into end grain", Source: srcCeg})
	}
	if j.Toe {
		c.factor(measure.Factor{Symbol: "Ctn", Name: "toe-nail", Value: 0.83, Why: "driven at a slant", Source: srcCtn})
	}
	return c, nil
}

// alone reports whether the joint has one fastener, or one row along the grain of
// every wooden piece.
func (j Joint) alone() bool {
	if j.count() == 1 {
		return true
	}
	for _, p := range j.pieces() {
		if p.Material == Wood && !p.along() {
			return false
		}
	}
	return j.rows() == 1
}

// endGrain reports whether a piece takes the fastener in its end grain.
func (j Joint) endGrain() bool {
	for _, p := range j.pieces() {
		if p.Material == Wood && p.EndGrain {
			return true
		}
	}
	return false
}

// warnings says what a builder should know of such a joint.
func (j Joint) warnings() []string {
	var out []string
	if j.Loose {
		out = append(out, "left loose: a loose joint hammers and wears; movement belongs in a hinge pin, joints are drawn up snug")
	}
	if j.Fastener.Kind == LagScrew || j.Fastener.Kind == WoodScrew {
		out = append(out, "turned in, never hammered; lead holes as listed")
	}
	d := inches(j.Fastener.Diameter)
	if d >= 0.25-hair {
		return out
	}
	return append(out, j.splitting(d)...)
}

// splitting compares the distances of thin fasteners with the commentary's advice
// on wooden side pieces.
func (j Joint) splitting(d float64) []string {
	type advice struct {
		what      string
		has, need float64
	}
	pick := func(nailed, bored float64) float64 {
		if j.Prebored {
			return bored * d
		}
		return nailed * d
	}
	var list []advice
	for _, p := range j.pieces() {
		if p.Material != Wood || p.EndGrain {
			continue
		}
		end := pick(15, 10)
		if p.Away || p.across() {
			end = pick(10, 5)
		}
		list = append(list,
			advice{"end distance, " + p.name, orUnknown(p.End), end},
			advice{"edge distance, " + p.name, orUnknown(p.Edge), 2.5 * d})
	}
	if j.perRow() > 1 {
		row := pick(15, 10)
		if j.Main.across() && j.Side.across() {
			row = pick(10, 5)
		}
		list = append(list, advice{"spacing in the row", orUnknown(j.Spacing), row})
	}
	if j.rows() > 1 {
		list = append(list, advice{"spacing of rows", orUnknown(j.Between), pick(5, 3)})
	}
	var out []string
	for _, a := range list {
		if !(a.has >= a.need-hair) {
			out = append(out, fmt.Sprintf("against splitting: %s at least %s (%s)", a.what, measure.FeetInches(a.need*measure.Inch, 16), srcSplit))
		}
	}
	return out
}
