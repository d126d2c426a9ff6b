package sheet_test

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

// FuzzEdges: both edges of a deck lie their width apart, level they are alike, and a line
// is no shorter than it reaches, and longest where the water is farthest.
func FuzzEdges(f *testing.F) {
	f.Add(3.0, 0.184, 0.038, 0.1, 0.2, 9.0, -3.0, 0.3)
	f.Add(0.0, 0.0, 0.0, math.Pi, 0.0, 0.0, 0.0, 0.0)
	f.Add(math.NaN(), math.Inf(1), -1.0, 5e-324, 1e300, math.NaN(), 1e300, -1e300)
	f.Fuzz(func(t *testing.T, width, depth, deck, heel, height, x, z, rise float64) {
		e := sheet.Heeled{Width: width, Depth: depth, Deck: deck, Heel: heel, Height: height}
		a, b := e.Edges()
		if !math.IsNaN(heel) && !math.IsInf(heel, 0) {
			if math.IsNaN(a) || math.IsNaN(b) || math.Abs(a-b) > math.Abs(width)*(1+1e-9)+1e-9 && math.Abs(width) < 1e4 {
				t.Fatalf("%+v has its edges at %g and %g", e, a, b)
			}
			if heel == 0 && a != b {
				t.Fatalf("level, at %g and %g", a, b)
			}
		}
		tie := sheet.Tie{Name: "line", FarX: x, FarY: width, FarZ: z, Over: height}
		l := tie.At(sheet.Level{Name: "high", Rise: rise})
		if sum := math.Abs(x) + math.Abs(width) + math.Abs(z) + math.Abs(height) + math.Abs(rise); sum < 1e100 {
			if !(l >= math.Abs(x)*(1-1e-12) && l >= math.Abs(z-height-rise)*(1-1e-12) && l <= sum*(1+1e-12)) {
				t.Fatalf("%+v is %g m long with the water risen by %g", tie, l, rise)
			}
		}
	})
}

// FuzzVerdicts: each check has its row, with the verdict in the words that may be printed.
func FuzzVerdicts(f *testing.F) {
	f.Add("checks", "deck edge", 0.3, 0.2, true, true, 0)
	f.Add("", "\x00", math.NaN(), math.Inf(1), false, false, 7)
	f.Fuzz(func(t *testing.T, caption, name string, value, limit float64, atLeast, hazard bool, system int) {
		checks := []measure.Check{
			{Name: name, Kind: measure.Length, Value: value, Limit: limit, AtLeast: atLeast, Hazard: hazard, Rule: &measure.Source{Title: "a rule", Status: measure.Read}},
			measure.Refuse(name, errors.New("nobody knows")),
		}
		table := sheet.Verdicts(caption, checks, measure.System(system))
		if table.Caption != caption || len(table.Rows) != len(checks) {
			t.Fatalf("%+v", table)
		}
		for i, r := range table.Rows {
			all := strings.Join(r.Cells, " ")
			if strings.Contains(all, "NaN") || !strings.Contains(strings.ToLower(all), strings.ToLower(checks[i].Verdict().String())) && checks[i].Verdict() != measure.Holds {
				t.Fatalf("%v is %q", checks[i], r.Cells)
			}
			if hazard && checks[i].Verdict() == measure.Holds && strings.Contains(all, "holds") && !strings.Contains(name, "holds") {
				t.Fatalf("a hazard holds: %q", r.Cells)
			}
		}
	})
}

// FuzzFiles: a document's files bear plain names, each once, and all or none of any files
// are written, with what they hold, inside their folder.
func FuzzFiles(f *testing.F) {
	f.Add("dock", "a.svg", "b.svg", "text")
	f.Add("", "../a", "", "\x00")
	f.Add("x", "a", "a", "")
	bay, err := sheet.Section{Clear: 0.5, JoistThick: 0.04, JoistDepth: 0.2, Deck: 0.04, Broad: 0.4, High: 0.4}.Draw()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, title, first, second, text string) {
		d := sheet.Document{Title: cutAt(title, 200), Date: day(), Method: "by hand", Cards: []sheet.Card{{Name: cutAt(first, 30), Title: "a", Blocks: []sheet.Block{sheet.Paragraph(cutAt(text, 300)), bay}}}}
		files, err := d.Files()
		if err != nil && files != nil {
			t.Fatal("files beside an error")
		}
		seen := map[string]bool{}
		for _, x := range files {
			if seen[x.Name] || x.Name != filepath.Base(x.Name) || len(x.Data) == 0 {
				t.Fatalf("%q", x.Name)
			}
			seen[x.Name] = true
		}
		if strings.ContainsRune(first+second, 0) || len(first)+len(second) > 100 {
			return // names that no file system takes
		}
		folder := filepath.Join(t.TempDir(), "out")
		wanted := []sheet.File{{Name: first, Data: []byte(text)}, {Name: second, Data: []byte(title)}}
		err = sheet.WriteFiles(folder, wanted)
		there, _ := os.ReadDir(folder)
		if err != nil {
			if len(there) > 0 || errors.Is(err, fs.ErrPermission) {
				t.Fatalf("%v, and %d files", err, len(there))
			}
			return
		}
		for _, w := range wanted {
			if b, err := os.ReadFile(filepath.Join(folder, w.Name)); err != nil || filepath.Dir(filepath.Join(folder, w.Name)) != folder || string(b) != string(w.Data) && first != second {
				t.Fatalf("%q holds %q, %v", w.Name, b, err)
			}
		}
		if out, _ := os.ReadDir(filepath.Dir(folder)); len(out) != 1 {
			t.Fatalf("%v beside the folder", out)
		}
	})
}
