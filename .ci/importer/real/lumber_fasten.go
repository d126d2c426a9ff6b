package main

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

func init() {
	calls = append(calls, call{"lumber/fasten", func() (string, error) {
		lag, err := fasten.Lookup("1/2 x 4 lag screw")
		if err != nil {
			return "", err
		}
		w, err := lag.Withdrawal(0.5)
		if err != nil {
			return "", err
		}
		got := w * measure.Inch / measure.PoundForce
		if want := 1800 * math.Pow(0.5, 1.5) * math.Pow(0.5, 0.75); math.Abs(got/want-1) > 1e-9 {
			return "", fmt.Errorf("a 1/2 in. lag screw holds %g lbf/in in G 0.50, want %g", got, want)
		}
		if _, err := fasten.Lookup("17d nail"); err == nil {
			return "", fmt.Errorf("there is a 17d nail")
		}
		return fmt.Sprintf("a 1/2 in. lag screw holds %.0f lbf per inch of thread in G 0.50", got), nil
	}})
}
