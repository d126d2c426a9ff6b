package main

import (
	"fmt"
	"math"

	"example.org/floewright/frame"
)

func init() {
	calls = append(calls, call{"frame", func() (string, error) {
		beam := frame.Beam{
			Length: 3, EI: 1e5,
			Rests: []frame.Rest{{At: 0}, {At: 3}},
			Loads: []frame.Load{frame.Uniform(0, 3, 800)},
		}
		line, err := beam.Solve()
		if err != nil {
			return "", err
		}
		moment := line.At(1.5).Moment
		if want := 800 * 3 * 3 / 8.; math.Abs(moment-want) > 1e-6 {
			return "", fmt.Errorf("a simple span has a moment of %g N·m, want %g N·m", moment, want)
		}
		if _, err := (&frame.Beam{Length: 3, EI: 1e5, Loads: beam.Loads}).Solve(); err == nil {
			return "", fmt.Errorf("a beam on nothing has a solution")
		}
		return fmt.Sprintf("a simple span of 3 m under 800 N/m has a moment of %.0f N·m", moment), nil
	}})
}
