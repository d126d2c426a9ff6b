package main

import (
	"errors"
	"fmt"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
)

func init() {
	calls = append(calls, call{"frame/dock", func() (string, error) {
		names := plan.Demos()
		for _, name := range names {
			text, err := plan.Demo(name)
			if err != nil {
				return "", err
			}
			if d, err := dock.Read(name, text); err != nil || d == nil {
				return "", fmt.Errorf("plan %s gives no dock: %w", name, err)
			}
		}
		_, err := dock.Read("empty.json", strings.NewReader(`{}`))
		if list := plan.Errors(nil); !errors.As(err, &list) || len(list) == 0 {
			return "", fmt.Errorf("an empty plan gives no list of errors: %v", err)
		}
		return fmt.Sprintf("builds the docks %s", strings.Join(names, " and ")), nil
	}})
}
