package fasten

import "testing"

// TestTablesLoad: the embedded tables load, all of them; one that did not would be a fault
// of the build, and stop the program that lists it.
func TestTablesLoad(t *testing.T) {
	if _, err := load(); err != nil {
		t.Fatal(err)
	}
	if len(Fasteners()) == 0 || len(Finishes()) == 0 {
		t.Errorf("%d fasteners and %d finishes are listed", len(Fasteners()), len(Finishes()))
	}
}
