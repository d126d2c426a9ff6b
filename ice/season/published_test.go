package season_test

import (
	"testing"

	"example.org/floewright/internal/published"
)

// TestPublished runs every outside check of the package; the subtest's name is
// the citation.
func TestPublished(t *testing.T) {
	checks, err := published.Of("ice/season")
	if err != nil {
		t.Fatal(err)
	}
	if len(checks) < 45 {
		t.Fatalf("only %d outside checks", len(checks))
	}
	for _, c := range checks {
		t.Run(c.Name(), func(t *testing.T) {
			if err := c.Verify(); err != nil {
				t.Error(err)
			}
		})
	}
}
