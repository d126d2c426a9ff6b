package fasten

import (
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// A Capacity is the adjusted design value of a whole joint and how it came
// about: Value = Reference × Fasteners × every factor.
type Capacity struct {
	Name      string           // "lateral", "withdrawal", "head pull-through"
	Reference float64          // N, one fastener, before adjustment
	Fasteners int              // how many share the load
	Factors   []measure.Factor // in the order of NDS Table 11.3.1
	Value     float64          // N, all fasteners; 0 where there is no answer
	Governing string           // what limits it: a yield mode, the washer, the steel
	Rule      *measure.Source
	Rests     []measure.Assumption
	Notes     []string
	Err       error // why there is no answer
}

// factor multiplies the capacity and keeps the factor.
func (c *Capacity) factor(f measure.Factor) {
	c.Factors = append(c.Factors, f)
	c.Value *= f.Value
}

// String returns the capacity with its factors, in lbf: "lateral 546 lbf = 2 × 400
// lbf × CD 1 × CM 0.7 ... (mode IIIs)".
func (c Capacity) String() string {
	if c.Err != nil {
		return c.Name + ": no answer (" + c.Err.Error() + ")"
	}
	var b strings.Builder
	b.WriteString(c.Name + " " + measure.Force.Format(c.Value, measure.US) + " = " + strconv.Itoa(c.Fasteners) + " × " + measure.Force.Format(c.Reference, measure.US))
	for _, f := range c.Factors {
		b.WriteString(" × " + f.Symbol + " " + strconv.FormatFloat(f.Value, 'g', 3, 64))
	}
	if c.Governing != "" {
		b.WriteString(" (" + c.Governing + ")")
	}
	return b.String()
}

// against returns the check of a force, N, against the capacity.
func (c Capacity) against(force float64) measure.Check {
	k := measure.Check{
		Name: c.Name, Kind: measure.Force, Value: force, Limit: c.Value, Rule: c.Rule,
		Factors: c.Factors, Rests: c.Rests, Notes: c.Notes, Err: c.Err,
	}
	if c.Err != nil {
		k.Limit = math.NaN()
	}
	if c.Governing != "" {
		k.Notes = append([]string{"governs: " + c.Governing}, k.Notes...)
	}
	return k
}

// refused returns a capacity without an answer.
func refused(name string, rule *measure.Source, why error) Capacity {
	return Capacity{Name: name, Rule: rule, Err: why}
}

// duration returns CD. The list of durations has no impact: its 2.0 is barred for
// connections.
func duration(t lumber.Duration) (measure.Factor, error) {
	f, err := t.Factor(lumber.Fv)
	return f, err
}

// temperature returns Ct, NDS Table 11.3.4.
func (s Service) temperature() (measure.Factor, error) {
	f := measure.Factor{Symbol: "Ct", Name: "temperature", Value: 1, Why: "at most 100 °F", Source: srcCt}
	r := measure.Range{Kind: measure.Temperature, Lo: -90, Hi: measure.Fahrenheit(150), Source: srcCt}
	if err := r.Check("Temperature", s.Temperature); err != nil {
		return f, err
	}
	const slack = 1e-9
	switch fahrenheit := measure.ToFahrenheit(s.Temperature); {
	case fahrenheit <= 100+slack:
		return f, nil
	case fahrenheit <= 125+slack:
		f.Value, f.Why = 0.7, "100 to 125 °F, wet"
		if s.Dry {
			f.Value, f.Why = 0.8, "100 to 125 °F, dry"
		}
	default:
		f.Value, f.Why = 0.5, "125 to 150 °F, wet"
		if s.Dry {
			f.Value, f.Why = 0.7, "125 to 150 °F, dry"
		}
	}
	return f, nil
}

// sideways returns CM for lateral loads, NDS Table 11.3.3. Alone says that the
// fastener is single, or the only row, along the grain.
func (s Service) sideways(d float64, alone bool) measure.Factor {
	f := measure.Factor{Symbol: "CM", Name: "wet service", Value: 0.7, Why: "wet in use", Source: srcCM}
	switch {
	case s.Dry && s.Seasoned:
		f.Value, f.Why = 1, "made dry and kept dry"
	case s.Dry && d < 0.25-hair:
		f.Why = "made wet, used dry"
	case s.Dry && alone:
		f.Value, f.Why, f.Source = 1, "made wet, used dry, one fastener or one row along the grain", srcCMPin
	case s.Dry:
		f.Value, f.Why = 0.4, "made wet, used dry: shrinking splits the wood between fasteners"
	}
	return f
}

// out returns CM for withdrawal.
func (s Service) out(k Kind) measure.Factor {
	f := measure.Factor{Symbol: "CM", Name: "wet service", Value: 0.7, Why: "wet in use", Source: srcCM}
	dry := s.Dry && s.Seasoned
	switch {
	case k == RingNail:
		f.Value, f.Why = 1, "ring shank, any moisture"
	case k == Nail && s.Soaked && !s.Dry:
		f.Value, f.Why = 1, "made wet and never dry"
	case k == Nail && !dry:
		f.Value, f.Why = 0.25, "a smooth nail works loose as wood gets wet and dry by turns"
	case dry:
		f.Value, f.Why = 1, "made dry and kept dry"
	case s.Dry:
		f.Value, f.Why = 1, "dry in use"
	}
	return f
}

// head returns CM for head pull-through.
func (s Service) head() measure.Factor {
	f := measure.Factor{Symbol: "CM", Name: "wet service", Value: 0.7, Why: "wet in use", Source: srcCM}
	if s.Dry {
		f.Value, f.Why = 1, "dry in use"
	}
	return f
}

// rests says what a capacity assumes of its service.
func (s Service) rests() []measure.Assumption {
	a := measure.Assumption{Name: "moisture of the joint", Text: "wet in use", Known: measure.Assumed}
	switch {
	case s.Dry && s.Seasoned:
		a.Text, a.Known = "19 % or less when made and in use", measure.Measured
	case s.Dry:
		a.Text, a.Known = "made wet, 19 % or less in use", measure.Measured
	case s.Soaked:
		a.Text, a.Known = "under water for good", measure.Measured
	}
	return []measure.Assumption{a}
}
