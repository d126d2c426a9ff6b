package lumber

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// combined returns the interaction of bending both ways and axial force, where
// at least two of them act. The value is the sum of shares, the limit 1.
func (m Member) combined(d Demand, v Design) (measure.Check, bool) {
	acting := 0
	for _, x := range []float64{d.Moment, d.FlatMoment, d.Axial} {
		if x != 0 {
			acting++
		}
	}
	if acting < 2 {
		return measure.Check{}, false
	}
	c := measure.Check{Kind: measure.Ratio, Limit: 1, Rule: srcBoth}
	if d.Axial > 0 {
		c.Name = "bending with tension"
		c.Value, c.Err = m.withTension(d, v)
	} else {
		c.Name = "bending with compression"
		if d.Axial == 0 {
			c.Name = "bending both ways"
		}
		c.Value, c.Err = m.withCompression(d, v)
	}
	if c.Err != nil {
		c.Value = math.NaN()
	}
	return c, true
}

// withTension: ft/Ft' + fb/Fb* ≤ 1 on the tension side, with Fb* without CL, and
// (fb - ft)/Fb** ≤ 1 on the compression side, with CL. NDS 3.9.1; bending the
// other way adds its share to both.
func (m Member) withTension(d Demand, v Design) (float64, error) {
	if v.Ft.Err != nil {
		return 0, v.Ft.Err
	}
	ft := d.Axial / m.whole().Area()
	pulled := ft / v.Ft.Value
	pressed := 0.0
	if f := math.Abs(d.Moment) / m.whole().Modulus(); f > 0 {
		if v.Fb.Err != nil {
			return 0, v.Fb.Err
		}
		pulled += f / v.Fb.without("CL")
		pressed = (f - ft) / v.Fb.Value
	}
	if f := math.Abs(d.FlatMoment) / m.modulusAcross(); f > 0 {
		if v.FbAcross.Err != nil {
			return 0, v.FbAcross.Err
		}
		pulled += f / v.FbAcross.without("CL")
		pressed += f / v.FbAcross.Value
	}
	return math.Max(pulled, pressed), nil
}

// withCompression, with 1 for bending on edge and 2 for bending on the flat:
//
//	(fc/Fc')² + f1/[F1'(1 - fc/FcE1)] + f2/{F2'[1 - fc/FcE2 - (f1/FbE)²]} ≤ 1
//
// NDS 3.9.2. Where a bracket is not positive the member buckles: an error.
func (m Member) withCompression(d Demand, v Design) (float64, error) {
	s := m.ply()
	f := [2]float64{math.Abs(d.Moment) / m.whole().Modulus(), math.Abs(d.FlatMoment) / m.modulusAcross()}
	strength := [2]Strength{v.Fb, v.FbAcross}
	fc := -d.Axial / m.whole().Area()
	var euler [2]float64
	if fc > 0 {
		if v.Fc.Err != nil {
			return 0, v.Fc.Err
		}
		vert, side, err := m.slenderness()
		if err != nil {
			return 0, err
		}
		euler = [2]float64{eulerStress(v.Emin.Value, vert), eulerStress(v.Emin.Value, side)}
	} else {
		euler = [2]float64{math.Inf(1), math.Inf(1)}
	}
	edge, flat := 0, 1
	if s.Width > s.Depth { // it lies flat: the vertical axis is the strong one
		edge, flat = 1, 0
	}
	for i := range f {
		if f[i] > 0 && strength[i].Err != nil {
			return 0, strength[i].Err
		}
	}
	fbe := math.Inf(1)
	if f[edge] > 0 && f[flat] > 0 {
		var err error
		if fbe, err = m.fbE(v, edge); err != nil {
			return 0, err
		}
	}
	sum := 0.0
	if fc > 0 {
		sum = math.Pow(fc/v.Fc.Value, 2)
	}
	first := 1 - fc/euler[edge]
	second := 1 - fc/euler[flat] - math.Pow(f[edge]/fbe, 2)
	if !(first > 0) || (f[flat] > 0 && !(second > 0)) {
		return 0, &measure.Error{
			Field: "Axial", Kind: measure.Force, Value: d.Axial, Class: measure.ErrRange,
			Want: "less than the load at which the member buckles (NDS 3.9.2)",
		}
	}
	if f[edge] > 0 {
		sum += f[edge] / (strength[edge].Value * first)
	}
	if f[flat] > 0 {
		sum += f[flat] / (strength[flat].Value * second)
	}
	return sum, nil
}

// fbE returns the buckling stress of bending on edge; infinite where CL is 1 by
// rule.
func (m Member) fbE(v Design, edge int) (float64, error) {
	s, fb, held := m.whole(), v.Fb, m.Held
	if edge == 1 {
		s, fb, held = m.ply().Turned(), v.FbAcross, false
		m.Unbraced = math.Max(m.Unbraced, m.Length)
	}
	if s.Depth <= s.Width || held || nominalDepth(s.Depth) <= 2*nominalDepth(s.Width) {
		return math.Inf(1), nil
	}
	lu, err := m.lateralLength()
	if err != nil {
		return 0, err
	}
	le, err := EffectiveLength(m.Loading, lu, s.Depth)
	if err != nil {
		return 0, err
	}
	_, fbe, err := beamStability(fb.without("CL", "Cfu"), v.Emin.Value, le, s.Depth, s.Width)
	return fbe, err
}
