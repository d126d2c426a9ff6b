package main

import (
	"errors"
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

func init() {
	calls = append(calls, call{"lumber/measure", func() (string, error) {
		x, err := measure.Length.Parse("12 ft 6 in")
		if err != nil {
			return "", err
		}
		if want := 12.5 * measure.Foot; math.Abs(x-want) > 1e-12 {
			return "", fmt.Errorf("12 ft 6 in is read as %g m, want %g m", x, want)
		}
		if _, err := measure.Length.Parse("40 psf"); !errors.As(err, new(*measure.Error)) {
			return "", fmt.Errorf("40 psf is read as a length: %v", err)
		}
		if v := (measure.Check{}).Verdict(); v != measure.NoAnswer {
			return "", fmt.Errorf("a check without a rule says %v", v)
		}
		return "12 ft 6 in is " + measure.Length.Format(x, measure.SI), nil
	}})
}
