package sheet_test

import (
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares a text with the file of that name in testdata. The files are our
// own output, looked at once in a browser: they show that it has not changed, and
// vouch for no number in it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-want +got):\n%s", name, diff)
	}
}

// wellFormed reads a text as XML to its end.
func wellFormed(t testing.TB, text string) {
	t.Helper()
	ids := map[string]bool{}
	for dec := xml.NewDecoder(strings.NewReader(text)); ; {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("no XML: %v", err)
		}
		e, _ := tok.(xml.StartElement)
		for _, a := range e.Attr {
			if a.Name.Local == "id" && ids[a.Value] {
				t.Errorf("id %q twice", a.Value)
			}
			ids[a.Value] = ids[a.Value] || a.Name.Local == "id"
		}
	}
}

// apart fails where two texts of a drawing overlap or one leaves the sheet.
func apart(t testing.TB, d *svg.Drawing) {
	t.Helper()
	w, h := d.Size()
	labels := d.Labels()
	for i, a := range labels {
		if !a.Box.Inside(svg.Box{X1: w, Y1: h}) {
			t.Errorf("%q leaves the sheet of %.0f by %.0f: %.1f", a.Text, w, h, a.Box)
		}
		for _, b := range labels[:i] {
			if a.Box.Overlaps(b.Box) {
				t.Errorf("%q lies over %q", a.Text, b.Text)
			}
		}
	}
}

func TestPictures(t *testing.T) {
	for _, u := range []struct {
		name   string
		system measure.System
	}{{"us", measure.US}, {"si", measure.SI}} {
		for _, d := range demos(u.system) {
			seen := 0
			stop := sheet.Watch(func(d *svg.Drawing) {
				seen++
				apart(t, d)
			})
			p, err := d.Draw()
			stop()
			if err != nil {
				t.Errorf("%T: %v", d, err)
				continue
			}
			t.Run(u.name+"/"+p.Name, func(t *testing.T) {
				if seen != 1 {
					t.Errorf("%d drawings were looked at", seen)
				}
				wellFormed(t, p.SVG)
				if p.Title == "" || len(p.Desc) < 40 || !strings.Contains(p.SVG, `role="img"`) {
					t.Errorf("what a screen reader says: %q, %q", p.Title, p.Desc)
				}
				golden(t, u.name+"-"+p.Name+".svg", p.SVG)
			})
		}
	}
}
