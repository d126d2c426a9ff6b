package sheet_test

import (
	"testing"

	"example.org/floewright/internal/published"
)

// TestPublished compares the package with every outside value recorded for it.
func TestPublished(t *testing.T) {
	checks, err := published.Of("frame/sheet")
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
