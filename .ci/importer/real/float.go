package main

import (
	"fmt"
	"math"

	"example.org/floewright/float"
)

func init() {
	calls = append(calls, call{"float", func() (string, error) {
		c := float.Cylinder{Diameter: 0.58, Length: 0.88}
		draft, err := c.Draft(c.Volume() / 2)
		if err != nil {
			return "", err
		}
		if want := c.Diameter / 2; math.Abs(draft-want) > 1e-9 {
			return "", fmt.Errorf("a half immersed drum has a draft of %g m, want its radius %g m", draft, want)
		}
		if _, err := c.Draft(2 * c.Volume()); err == nil {
			return "", fmt.Errorf("a drum displaces twice its volume")
		}
		return fmt.Sprintf("a drum 0.58 m across draws %.2f m half immersed", draft), nil
	}})
}
