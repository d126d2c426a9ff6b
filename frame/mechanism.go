package frame

import (
	"fmt"

	"example.org/floewright/internal/fault"
)

// ErrMechanism is the class of every [*MechanismError]; package rack has the same value.
var ErrMechanism = fault.ErrMechanism

// ErrUnsettled is given when no state of balance was found within the rounding
// of the numbers or the steps allowed: supports of wildly different stiffness,
// or a support whose force falls or jumps as it sinks. Packages float and rack have the
// same value.
var ErrUnsettled = fault.ErrUnsettled

// A MechanismError says that a part is free to move: no rest, too few of them,
// a hinge too many, or supports that have all let go or reached their limit.
type MechanismError struct {
	Place  string  // what moves most: "x = 2.4 m"
	X, Y   float64 // where that is, m
	Motion string  // how it moves: "moves up or down", "turns about x = 1 m"
}

// Error names the place and the motion.
func (e *MechanismError) Error() string {
	return fmt.Sprintf("frame: %s at %s: it %s", ErrMechanism.Error(), e.Place, e.Motion)
}

// Unwrap returns [ErrMechanism].
func (e *MechanismError) Unwrap() error { return ErrMechanism }
