package main

import (
	"fmt"
	"math"

	"example.org/floewright/ice"
)

func init() {
	calls = append(calls, call{"ice", func() (string, error) {
		classes := ice.Classes()
		if len(classes) == 0 {
			return "", fmt.Errorf("no bearing class")
		}
		for _, c := range classes {
			if c.Source == nil {
				return "", fmt.Errorf("class %q has no source", c.Name)
			}
			if f, err := c.Load(math.NaN()); err == nil {
				return "", fmt.Errorf("class %q carries %g N on ice of no known thickness", c.Name, f)
			}
		}
		// A dock on ice that nobody drilled has no answer, nor have the people.
		load := ice.Stand{Loads: []ice.Patch{{A: 1, B: 3, Force: 5000}}, Stay: 21 * 86400}
		flood, err := ice.Sheet{}.Flooding(load)
		if err != nil {
			return "", err
		}
		beside, err := ice.Sheet{}.Beside(load, ice.Crossing{Mass: 90, People: 1})
		if err != nil {
			return "", err
		}
		for _, c := range []string{flood.Check.Words(), beside.Words()} {
			if c != "no answer" {
				return "", fmt.Errorf("ice that nobody drilled gets %q", c)
			}
		}
		return fmt.Sprintf("%d bearing classes, each with its source; undrilled ice has no answer", len(classes)), nil
	}})
}
