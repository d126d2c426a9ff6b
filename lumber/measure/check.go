package measure

import (
	"math"
	"strings"
)

// A Verdict is the outcome of a [Check].
type Verdict int

// The verdicts. NoAnswer is the zero value: a check is no permission until a
// rule was applied to known numbers.
const (
	NoAnswer Verdict = iota
	Short
	Holds
)

// String returns "no answer", "short" or "holds".
func (v Verdict) String() string {
	switch v {
	case Short:
		return "short"
	case Holds:
		return "holds"
	}
	return "no answer"
}

// Knowledge says how an input is known. The zero value is the cautious one.
type Knowledge int

// The three ways to know an input.
const (
	Unknown  Knowledge = iota // said to be unknown; a cautious value stands in, or none
	Assumed                   // not said; a default stands in
	Measured                  // given by the caller
)

// String returns "unknown", "assumed" or "measured".
func (k Knowledge) String() string {
	switch k {
	case Assumed:
		return "assumed"
	case Measured:
		return "measured"
	}
	return "unknown"
}

// An Assumption is one input that a check rests on.
type Assumption struct {
	Name    string    // what it is: "moisture of the wood"
	Text    string    // the value used, with its unit, and why
	Known   Knowledge // measured, assumed or unknown
	Decides bool      // another plausible value could change the verdict
}

// A Check is the common result of every rule in the library: a value, a limit,
// which side is good, by whose rule, and what it rests on.
type Check struct {
	Name    string
	Kind    Kind    // of Value and Limit
	Value   float64 // in the SI unit of Kind
	Limit   float64 // in the SI unit of Kind
	AtLeast bool    // Value must be at least Limit; otherwise at most
	Rule    *Source // the governing rule; nil is no answer
	Factors []Factor
	Rests   []Assumption
	Notes   []string // warnings and remarks that belong to the result
	Err     error    // why there is no answer

	// Hazard marks a rule on which nobody's life may be staked (ice). Its
	// Holds prints as "not ruled out by" and the rule.
	Hazard bool
}

// Refuse returns a check without an answer, carrying the reason.
func Refuse(name string, why error) Check {
	return Check{Name: name, Value: math.NaN(), Limit: math.NaN(), Err: why}
}

// Verdict compares Value with Limit in the good direction. It is NoAnswer when
// there is no rule, when Err is set, when Value or Limit is not finite, and when
// an unknown input decides: no verdict is better than its weakest input.
func (c Check) Verdict() Verdict {
	if c.Rule == nil || c.Err != nil || !finite(c.Value) || !finite(c.Limit) {
		return NoAnswer
	}
	for _, a := range c.Rests {
		if a.Known != Measured && a.Known != Assumed && a.Decides {
			return NoAnswer
		}
	}
	if c.Meets() {
		return Holds
	}
	return Short
}

// Meets reports whether the bare numbers meet the limit, whatever they rest on.
// It is false where either is NaN. The verdict is [Check.Verdict].
func (c Check) Meets() bool {
	if c.AtLeast {
		return c.Value >= c.Limit
	}
	return c.Value <= c.Limit
}

// Ratio returns the share of the limit that is used, above 1 where it is short:
// Value/Limit, or Limit/Value where the value must be at least the limit. It is
// for sorting and printing, and NaN unless both are positive; the verdict never
// depends on it. By definition.
func (c Check) Ratio() float64 {
	if !(c.Value > 0 && c.Limit > 0) {
		return math.NaN()
	}
	if c.AtLeast {
		return c.Limit / c.Value
	}
	return c.Value / c.Limit
}

// Words returns the verdict as it may be printed: "holds", "short" or "no
// answer"; where Hazard is set, "not ruled out by" the rule instead of "holds".
func (c Check) Words() string {
	v := c.Verdict()
	if v == Holds && c.Hazard {
		return "not ruled out by " + c.Rule.String()
	}
	return v.String()
}

// Numbers returns value and limit in the system s: "11 in, at least 7 in".
// Where there is no value it says so.
func (c Check) Numbers(s System) string {
	text := "no value"
	if finite(c.Value) {
		text = c.Kind.Print(c.Value, s)
	}
	if !finite(c.Limit) {
		return text
	}
	side := ", at most "
	if c.AtLeast {
		side = ", at least "
	}
	return text + side + c.Kind.Print(c.Limit, s)
}

// String returns the check on one line in SI.
func (c Check) String() string {
	var b strings.Builder
	b.WriteString(c.Name + ": " + c.Numbers(SI) + ": " + c.Words())
	if c.Err != nil {
		b.WriteString(" (" + c.Err.Error() + ")")
	} else if c.Rule != nil && !(c.Hazard && c.Verdict() == Holds) {
		b.WriteString(" (" + c.Rule.String() + ")")
	}
	return b.String()
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
