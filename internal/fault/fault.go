// Package fault holds the ways in which a body finds no rest, each as one error value.
// Packages float, frame and frame/rack work out the same dock by different models; each
// exports the states that it can meet under its own name, as the value that stands here, so
// that errors.Is finds a state whichever of them met it. Their messages say which it was.
package fault

import "errors"

// The states. They are answers, not bad input.
var (
	ErrCapsizes  = errors.New("capsizes")
	ErrMechanism = errors.New("nothing holds it")
	ErrUnsettled = errors.New("no balance found")
)
