package measure

import (
	"math"
	"strconv"
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
// which side is good, by whose rule, and what it rests on. Value and Limit are NaN where
// there is none, as [Refuse] sets them; in JSON they are null then. One made by hand is taken
// at its word: the zero Check has no answer, a value of 0 and a limit of 0.
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

	// Steps name the whole values from 0 on, where Value and Limit are steps of a
	// scale and no count: "no" and "yes", or coatings by what they stand. A single
	// name says that there was nothing to ask.
	Steps []string

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
// Where there is no value it says so. A value that does not meet the limit but would
// print like it gets a digit more until they differ, four at most; closer ones are
// "just over" or "just under" it. A length that a hazard asks for is rounded up.
func (c Check) Numbers(s System) string {
	text := "no value"
	if len(c.Steps) > 0 {
		return c.named(text)
	}
	if c.Err != nil && c.Value == 0 && c.Limit == 0 {
		return text
	}
	if finite(c.Value) {
		text = c.Kind.Format(c.Value, s)
	}
	if !finite(c.Limit) {
		return text
	}
	limit := c.Kind.Format(c.Limit, s)
	if c.Hazard && c.AtLeast && c.Kind == Length {
		limit = Upward(c.Limit, s)
		for more := 1; more <= 4 && c.Meets() && text != limit && c.Value < upward(c.Limit, s, more-1); more++ {
			text, limit = c.Kind.print(c.Value, s, more), c.Kind.print(upward(c.Limit, s, more), s, more)
		}
	}
	if finite(c.Value) && !c.Meets() && text == limit {
		text, limit = c.apart(s)
	}
	side := ", at most "
	if c.AtLeast {
		side = ", at least "
	}
	return text + side + limit
}

// named prints value and limit by the names of their steps: "no; must be yes", "2
// (snow), at least 3 (rain)".
func (c Check) named(text string) string {
	step := func(x float64) string {
		switch i := int(x); {
		case !(x >= 0 && x < float64(len(c.Steps))):
			return Count.Format(x, SI)
		case len(c.Steps) < 3:
			return c.Steps[i]
		default:
			return strconv.Itoa(i) + " (" + c.Steps[i] + ")"
		}
	}
	side := ", at most "
	switch {
	case len(c.Steps) < 3:
		side = "; must be "
	case c.AtLeast:
		side = ", at least "
	}
	if finite(c.Value) {
		text = step(c.Value)
	}
	if !finite(c.Limit) || len(c.Steps) == 1 {
		return text
	}
	return text + side + step(c.Limit)
}

// apart prints a value and a limit that it misses by less than a digit.
func (c Check) apart(s System) (value, limit string) {
	for more := 1; more <= 4; more++ {
		value, limit = c.Kind.print(c.Value, s, more), c.Kind.print(c.Limit, s, more)
		if value != limit {
			return value, limit
		}
	}
	value, limit = c.Kind.Format(c.Value, s), c.Kind.Format(c.Limit, s)
	if c.AtLeast {
		return "just under " + value, limit
	}
	return "just over " + value, limit
}

// String returns the check on one line in SI, as [Check.Format] does.
func (c Check) String() string { return c.Format(SI) }

// Format returns the check on one line in the system s: its name, value and limit, the
// verdict in words, and the rule it is by, or why there is no answer.
func (c Check) Format(s System) string {
	var b strings.Builder
	b.WriteString(c.Name + ": " + c.Numbers(s) + ": " + c.Words())
	if c.Err != nil {
		b.WriteString(" (" + RestateError(c.Err, s).Error() + ")")
	} else if c.Rule != nil && !(c.Hazard && c.Verdict() == Holds) {
		b.WriteString(" (" + c.Rule.String() + ")")
	}
	return b.String()
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
