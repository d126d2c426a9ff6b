package ice_test

import (
	"flag"
	"os/exec"
	"path/filepath"
	"testing"
)

var seasonData = flag.String("season-data", "", "folder with the open records of lake ice that the season model is measured on")

// TestSeasonData measures the season's model on open records that are not part
// of the library, by way of its own package's test of the same name.
func TestSeasonData(t *testing.T) {
	if *seasonData == "" {
		t.Skip("no records of lake ice: give their folder as -season-data=DIR")
	}
	dir, err := filepath.Abs(*seasonData)
	if err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("go", "test", "./season", "-count=1", "-run=^TestSeasonData$", "-v", "-season-data="+dir).CombinedOutput()
	t.Logf("%s", out)
	if err != nil {
		t.Fatal(err)
	}
}
