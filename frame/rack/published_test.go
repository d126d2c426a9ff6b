package rack_test

import (
	"testing"

	"example.org/floewright/internal/published"
)

// TestPublished compares with every outside value on record. The subtest's name
// is the citation.
func TestPublished(t *testing.T) {
	checks, err := published.Of("frame/rack")
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
