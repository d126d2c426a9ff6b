package float

import (
	"errors"
	"math"
	"strings"

	"example.org/floewright/internal/fault"
	"example.org/floewright/lumber/measure"
)

// The ways in which a platform finds no rest. A [*Failure] belongs to one of
// them; errors.Is finds it. They are answers, not bad input: measure.Class calls them "other".
// ErrCapsizes and ErrUnsettled are the values that package frame has under the same names.
var (
	ErrSinks     = errors.New("sinks")
	ErrCapsizes  = fault.ErrCapsizes
	ErrNoFloat   = errors.New("no float carries it")
	ErrUnsettled = fault.ErrUnsettled
)

// A Failure says how a platform fails to float, and by how much.
type Failure struct {
	Class error // ErrSinks, ErrCapsizes, ErrNoFloat or ErrUnsettled

	// Short is what is lacking. Where it sinks or has no float: buoyancy, kg.
	// Where it capsizes: righting moment, N·m, about the axis of Heel and Trim
	// and at the tilt where least is lacking; 0 where it was in balance and fell
	// over by itself. Where no rest was found: the imbalance over the weight.
	Short float64

	Heel, Trim float64 // rad, the attitude in which it was given up
}

// Error names the failure and what is lacking, with units.
func (f *Failure) Error() string {
	var b strings.Builder
	b.WriteString("platform: ")
	if f.Class != nil {
		b.WriteString(f.Class.Error())
	}
	switch f.Class {
	case ErrSinks, ErrNoFloat:
		b.WriteString("; " + measure.Mass.Format(f.Short, measure.SI) + " of buoyancy lacking")
	case ErrCapsizes:
		b.WriteString(" past a heel of " + measure.Angle.Format(f.Heel, measure.SI) + " and a trim of " +
			measure.Angle.Format(f.Trim, measure.SI) + "; " +
			measure.Moment.Format(f.Short, measure.SI) + " of righting moment lacking")
	}
	return b.String()
}

// Unwrap returns the class, for errors.Is.
func (f *Failure) Unwrap() error { return f.Class }

// Check returns a check that the platform cannot meet: short, with how it fails in the
// place of a number ("capsizes; must be afloat", [measure.Check.Steps]), since a dock that
// found no rest has none; the form is our choice. Rule, notes, and what the check rests on
// stay. Where no rest was found for another reason there is no answer.
func (f *Failure) Check(of measure.Check) measure.Check {
	if f == nil || f.Class != ErrSinks && f.Class != ErrCapsizes && f.Class != ErrNoFloat {
		of.Value = math.NaN()
		if f != nil && of.Err == nil {
			of.Err = f
		}
		return of
	}
	of.Kind, of.Steps = measure.Count, []string{f.Class.Error(), "afloat"}
	of.Value, of.Limit, of.AtLeast = 0, 1, true
	return of
}

// attitude returns heel and trim of an up vector in body axes:
//
//	n = (-sin trim, -sin heel cos trim, cos heel cos trim)
func attitude(x, y, z float64) (heel, trim float64) {
	return math.Atan2(-y, z) + 0, math.Atan2(-x, math.Hypot(y, z)) + 0
}

// upright is the inverse of attitude.
func upright(heel, trim float64) (x, y, z float64) {
	sh, ch := math.Sincos(heel)
	st, ct := math.Sincos(trim)
	return -st, -sh * ct, ch * ct
}
