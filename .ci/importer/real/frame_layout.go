package main

import (
	"fmt"
	"math"

	"example.org/floewright/frame/layout"
)

func init() {
	calls = append(calls, call{"frame/layout", func() (string, error) {
		γ, err := layout.Corner(3, 4, 5)
		if err != nil {
			return "", err
		}
		if math.Abs(γ-math.Pi/2) > 1e-15 {
			return "", fmt.Errorf("3, 4 and 5 make a corner of %g rad", γ)
		}
		if _, err := layout.Corner(1, 1, 3); err == nil {
			return "", fmt.Errorf("1, 1 and 3 close a triangle")
		}
		return "3, 4 and 5 make a right corner", nil
	}})
}
