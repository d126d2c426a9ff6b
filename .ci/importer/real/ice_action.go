package main

import (
	"fmt"
	"math"

	"example.org/floewright/ice/action"
)

func init() {
	calls = append(calls, call{"ice/action", func() (string, error) {
		lift, err := action.Cover{Thickness: 0.3}.Uplift(action.Body{Length: 0.58}, -0.05)
		if err != nil {
			return "", err
		}
		if !(lift.Force.Low > 0 && lift.Force.Low <= lift.Force.High) {
			return "", fmt.Errorf("a drum in the ice feels %g to %g N", lift.Force.Low, lift.Force.High)
		}
		if _, err := (action.Cover{Thickness: math.NaN()}).Wall(0.1, action.Span{}); err == nil {
			return "", fmt.Errorf("ice of no known thickness presses a wall")
		}
		return fmt.Sprintf("a drum frozen in 0.3 m of ice feels %.0f to %.0f kN", lift.Force.Low/1e3, lift.Force.High/1e3), nil
	}})
}
