package moor_test

import (
	"testing"

	"example.org/floewright/internal/published"
)

func TestPublished(t *testing.T) {
	checks, err := published.Of("float/moor")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range checks {
		t.Run(c.Name(), func(t *testing.T) {
			if err := c.Verify(); err != nil {
				t.Error(err)
			}
		})
	}
}
