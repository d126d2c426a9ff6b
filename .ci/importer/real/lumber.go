package main

import (
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

func init() {
	calls = append(calls, call{"lumber", func() (string, error) {
		s, err := lumber.Size("2x8")
		if err != nil {
			return "", err
		}
		if math.Abs(s.Width-1.5*measure.Inch) > 1e-12 || math.Abs(s.Depth-7.25*measure.Inch) > 1e-12 {
			return "", fmt.Errorf("a 2x8 is dressed to %+v, want 1-1/2 in by 7-1/4 in", s)
		}
		if _, err := lumber.Size("3x99"); err == nil {
			return "", fmt.Errorf("a 3x99 has a size")
		}
		return "a 2x8 is " + measure.FeetInches(s.Width, 16) + " by " + measure.FeetInches(s.Depth, 16), nil
	}})
}
