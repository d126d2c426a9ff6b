package main

import (
	"errors"
	"fmt"
	"strings"

	"example.org/floewright/frame/plan"
)

func init() {
	calls = append(calls, call{"frame/plan", func() (string, error) {
		names := plan.Demos()
		if len(names) == 0 {
			return "", fmt.Errorf("no embedded plan")
		}
		for _, name := range names {
			text, err := plan.Demo(name)
			if err != nil {
				return "", err
			}
			if _, err := plan.Read(name, text); err != nil {
				return "", err
			}
		}
		_, err := plan.Read("ice.json", strings.NewReader(`{"frozen": "yes"}`))
		if list := plan.Errors(nil); !errors.As(err, &list) || len(list) == 0 {
			return "", fmt.Errorf("an unknown field gives no list of errors: %v", err)
		}
		return fmt.Sprintf("reads the embedded plans %s", strings.Join(names, " and ")), nil
	}})
}
