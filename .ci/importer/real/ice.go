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
		return fmt.Sprintf("%d bearing classes, each with its source", len(classes)), nil
	}})
}
