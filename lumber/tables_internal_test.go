package lumber

import (
	"errors"
	"testing"
)

// TestTablesLoad: the embedded tables load, all of them; one that did not would be a fault
// of the build, and stop the program that lists it.
func TestTablesLoad(t *testing.T) {
	if all, err := load(); err != nil || len(all.grades) < 170 {
		t.Fatal(err)
	}
	if all, err := trees(); err != nil || len(all) < 25 {
		t.Fatal(len(all), err)
	}
	if len(Grades()) < 170 || len(Trees()) < 25 {
		t.Errorf("%d grades and %d trees are listed", len(Grades()), len(Trees()))
	}
	defer func() {
		if recover() == nil {
			t.Error("a table that does not load passes for one")
		}
	}()
	embedded(Trees(), errors.New("a torn file"))
}
