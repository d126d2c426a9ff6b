package sheet_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// demoPlanFile reads an embedded plan with texts in it replaced: old, new, old, new.
func demoPlanFile(t testing.TB, name string, swap ...string) *plan.Plan {
	t.Helper()
	f, err := plan.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	s := string(b)
	for i := 0; i < len(swap); i += 2 {
		if !strings.Contains(s, swap[i]) {
			t.Fatalf("demo %s has no %q", name, swap[i])
		}
		s = strings.Replace(s, swap[i], swap[i+1], 1)
	}
	p, err := plan.Read(name+".json", strings.NewReader(s))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// demoDock builds an embedded plan with texts in it replaced.
func demoDock(t testing.TB, name string, swap ...string) *dock.Dock {
	t.Helper()
	d, err := dock.Build(demoPlanFile(t, name, swap...))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// every is what can be drawn of a dock.
var every = []string{"plan", "section", "cutting", "winter", "heeled", "righting", "moments", "lines"}

// drawn draws a dock: every picture is there or missing with a reason, is well formed,
// and has no text over another.
func drawn(t testing.TB, d *dock.Dock, r *dock.Report) *sheet.Drawn {
	t.Helper()
	defer sheet.Watch(func(d *svg.Drawing) { apart(t, d) })()
	g, err := sheet.Draw(d, r)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range every {
		p, there := g.Picture(name)
		for _, n := range g.Missing {
			if n.Code != name {
				continue
			}
			if there || n.Text == "" {
				t.Errorf("%s is drawn, and missing since %q", name, n.Text)
			}
			there = true
		}
		if !there {
			t.Errorf("%s is neither drawn nor missing", name)
		}
		if p.SVG != "" {
			wellFormed(t, p.SVG)
			if strings.Contains(p.SVG+p.Desc, "NaN") || p.Title == "" || len(p.Desc) < 40 {
				t.Errorf("%s: %q, %q", name, p.Title, p.Desc)
			}
		}
	}
	if len(g.Pictures)+len(g.Missing) != len(every) {
		t.Errorf("%d pictures and %d missing", len(g.Pictures), len(g.Missing))
	}
	return g
}

// TestDraw draws both demos in both systems.
func TestDraw(t *testing.T) {
	for name, missing := range map[string]string{"swim": "winter", "work": "winter lines"} {
		d := demoDock(t, name)
		for _, u := range []measure.System{measure.US, measure.SI} {
			g := drawn(t, d, reported(t, d, u))
			var without []string
			for _, n := range g.Missing {
				without = append(without, n.Code)
			}
			if got := strings.Join(without, " "); got != missing {
				t.Errorf("%s: without %s, want without %s: %v", name, got, missing, g.Missing)
			}
			r := reported(t, d, u)
			if p, _ := g.Picture("cutting"); !strings.Contains(p.Desc, fmt.Sprintf("%d boards of stock", len(r.Shop.Cutting.Boards))) {
				t.Errorf("%s: %d boards are cut: %s", name, len(r.Shop.Cutting.Boards), p.Desc)
			}
			again, err := sheet.Draw(d, r)
			if err != nil || len(again.Pictures) != len(g.Pictures) {
				t.Fatal(err)
			}
			for i := range g.Pictures {
				if g.Pictures[i] != again.Pictures[i] {
					t.Errorf("%s: the same dock has two pictures %s", name, g.Pictures[i].Name)
				}
			}
		}
	}
}

// TestDrawAgrees: the heights in the end view and in the section are those at which
// the dock floats.
func TestDrawAgrees(t *testing.T) {
	for _, name := range []string{"swim", "work"} {
		d := demoDock(t, name)
		r := &dock.Report{Units: measure.US}
		g := drawn(t, d, r)
		c, err := d.Crowded()
		if err != nil {
			t.Fatal(err)
		}
		low := math.Inf(1)
		for _, h := range c.Rest.Freeboards() {
			low = min(low, h)
		}
		p, _ := g.Picture("heeled")
		if want := "the other " + measure.FeetInches(low, 4); !strings.Contains(p.Desc, want) {
			t.Errorf("%s: %s; want %s", name, p.Desc, want)
		}
		sides := map[string]svg.Box{}
		stop := sheet.Watch(func(d *svg.Drawing) {
			for _, l := range d.Labels() {
				if strings.HasPrefix(p.Title, "End") {
					sides[l.Text] = l.Box
				}
			}
		})
		if _, err := sheet.Draw(d, r); err != nil {
			t.Fatal(err)
		}
		stop()
		// They stand at the near side, which is on the left and low.
		if a := sides[measure.FeetInches(low, 4)]; c.Edge != "near side" || a.X1 == 0 || a.X1 > p.Width/2 {
			t.Errorf("%s: the lower edge at %v, people at the %s", name, a, c.Edge)
		}
		s, err := d.Shape()
		if err != nil {
			t.Fatal(err)
		}
		empty, err := d.Empty()
		if err != nil {
			t.Fatal(err)
		}
		f := s.Floats[c.Deep]
		top := r3.Vec{X: f.X - s.Length/2, Y: f.Y - s.Width/2, Z: s.Depth + s.Deck}
		p, _ = g.Picture("section")
		for _, h := range []float64{empty.Height(top), c.Rest.Height(top)} {
			// Square to the deck and upright differ by the tilt's square.
			if a, b := measure.FeetInches(h, 4), measure.FeetInches(h/c.Rest.Up.Z, 4); !strings.Contains(p.SVG, "deck "+a) && !strings.Contains(p.SVG, "deck "+b) {
				t.Errorf("%s: the section does not show the deck %s over the water", name, a)
			}
		}
	}
}

var tags = regexp.MustCompile(`<[^>]*>`)

// TestDrawUnknown: what is not known takes away no more pictures than need it.
func TestDrawUnknown(t *testing.T) {
	for _, c := range []struct {
		path, value string
		without     string // of plan, section, heeled, righting, lines
		says        string // in the plan or the section
	}{
		{"floats[1].girth", "unknown", "section heeled righting lines", "Not all floats"},
		{"floats[1].mass", "unknown", "heeled righting lines", "Where the water stands is not known"},
		{"frame.length", "unknown", "plan section heeled righting lines", ""},
		{"weights[2].along", "unknown", "heeled righting lines", "Not all floats and fixed things"},
		{"site.depth", "unknown", "lines", ""},
		{"people[1].count", "12", "heeled", "finds no rest"},
		{"people[1].count", "1", "", ""},
		{"frame.joists.marks_at", "near face", "", ""},
	} {
		p, err := demoPlanFile(t, "swim").Vary(c.path, c.value)
		if err != nil {
			t.Fatal(err)
		}
		d, err := dock.Build(p)
		if err != nil {
			t.Fatal(err)
		}
		g := drawn(t, d, &dock.Report{Units: measure.SI})
		var without []string
		text := ""
		for _, name := range []string{"plan", "section", "heeled", "righting", "lines"} {
			p, ok := g.Picture(name)
			if !ok {
				without = append(without, name)
			}
			if name == "plan" || name == "section" {
				text += strings.Join(strings.Fields(tags.ReplaceAllString(p.SVG, " ")), " ")
			}
		}
		if got := strings.Join(without, " "); got != c.without {
			t.Errorf("%s %s: without %q, want without %q: %v", c.path, c.value, got, c.without, g.Missing)
		}
		if !strings.Contains(text, c.says) {
			t.Errorf("%s %s: no picture says %q", c.path, c.value, c.says)
		}
	}
}

// blocks are the places of the work float, and row those of one on a single row.
const (
	blocks = `"places": [
        { "along": "0.72 m", "across": "0.5 m" }, { "along": "0.72 m", "across": "1.9 m" },
        { "along": "2.24 m", "across": "0.5 m" }, { "along": "2.24 m", "across": "1.9 m" },
        { "along": "3.76 m", "across": "0.5 m" }, { "along": "3.76 m", "across": "1.9 m" },
        { "along": "5.28 m", "across": "0.5 m" }, { "along": "5.28 m", "across": "1.9 m" }
      ]`
	row = `"places": [
        { "along": "0.72 m", "across": "0.6 m" }, { "along": "2.24 m", "across": "0.6 m" },
        { "along": "3.76 m", "across": "0.6 m" }, { "along": "5.28 m", "across": "0.6 m" }
      ]`
)

// TestDrawOthers draws docks of other makes.
func TestDrawOthers(t *testing.T) {
	chest := `"along": "0.6 m", "across": "1.2 m", "above"`
	var grid []string // of a dock of 12 m by 6 m
	for x := 1; x < 12; x += 2 {
		for y := 1; y < 6; y += 2 {
			grid = append(grid, fmt.Sprintf(`{ "along": "%d m", "across": "%d m" }`, x, y))
		}
	}
	for name, c := range map[string]struct {
		demo    string
		swap    []string
		without string // what is not drawn beside winter and lines
	}{
		"joists along": {"work", []string{`"joists_run": "across"`, `"joists_run": "along"`}, ""},
		"finger on a row": {"work", []string{
			`"width": "2.4 m"`, `"width": "1.2 m"`, blocks, row, chest, `"along": "0.6 m", "across": "0.6 m", "above"`,
			`"count": 3`, `"count": 1`,
		}, "heeled"},
		"large": {"work", []string{
			`"length": "6.0 m"`, `"length": "12 m"`, `"width": "2.4 m"`, `"width": "6 m"`, blocks, `"places": [` + strings.Join(grid, ", ") + `]`,
			`"length": "2.44 m", "count": 16`, `"length": "6.1 m", "count": 60`,
		}, ""},
		"narrow spacing":  {"work", []string{`"spacing": "400 mm"`, `"spacing": "200 mm"`}, ""},
		"drums in boards": {"swim", []string{`"20-1/2 in", "3 ft 8 in"`, `"28 in", "3 ft 8 in"`}, ""},
		"lies along":      {"swim", []string{`"lies": "across", "bears": "between joists"`, `"lies": "along", "bears": "under joists"`}, ""},
		"marks of middles": {"swim", []string{
			`"marks_at": "near face"`, `"marks_at": "centre"`, `"0 in", "20-1/2 in"`, `"3/4 in", "20-1/2 in"`,
			`"23 ft 10-1/2 in"`, `"23 ft 11 in"`,
		}, ""},
	} {
		d := demoDock(t, c.demo, c.swap...)
		g := drawn(t, d, reported(t, d, measure.SI))
		var without []string
		for _, n := range g.Missing {
			if n.Code != "winter" && n.Code != "lines" {
				without = append(without, n.Code)
			}
		}
		if got := strings.Join(without, " "); got != c.without {
			t.Errorf("%s: without %q: %v", name, got, g.Missing)
		}
	}
}

// TestLevelsThatDiffer: a lake that stands is drawn at one level, one that only rises at
// two, and one that does both at three.
func TestLevelsThatDiffer(t *testing.T) {
	for levels, want := range map[string]string{
		`"level_low": "0 ft", "level_high": "0 ft"`: "at 1 water level,", `"level_low": "0 ft", "level_high": "1 ft"`: "at 2 water levels,",
		`"level_low": "-1 ft", "level_high": "0 ft"`: "at 2 water levels,", `"level_low": "-1 ft", "level_high": "1 ft"`: "at 3 water levels,",
	} {
		g := drawn(t, demoDock(t, "swim", `"level_low": "-1 ft 6 in", "level_high": "1 ft"`, levels), &dock.Report{Units: measure.US})
		if p, ok := g.Picture("lines"); !ok || !strings.Contains(p.Desc, want) {
			t.Errorf("%s: %q, want %q", levels, p.Desc, want)
		}
	}
}

func TestDrawNothing(t *testing.T) {
	d := demoDock(t, "swim")
	for _, c := range []struct {
		d *dock.Dock
		r *dock.Report
	}{{nil, nil}, {d, nil}, {nil, &dock.Report{}}} {
		if g, err := sheet.Draw(c.d, c.r); g != nil || !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%v, %v", g, err)
		}
	}
	g := drawn(t, new(dock.Dock), new(dock.Report))
	if len(g.Pictures) != 0 {
		t.Errorf("of nothing %d pictures are drawn", len(g.Pictures))
	}
	if _, ok := (*sheet.Drawn)(nil).Picture("plan"); ok {
		t.Error("nothing has a plan")
	}
}

// TestDocs keeps the pictures at the top of the README: -update draws them anew.
func TestDocs(t *testing.T) {
	d := demoDock(t, "swim")
	g := drawn(t, d, &dock.Report{Units: d.Units()})
	root := filepath.Join("..", "..")
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"plan", "section"} {
		p, _ := g.Picture(name)
		path := filepath.Join(root, "docs", name+".svg")
		if *update {
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(p.SVG), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		b, err := os.ReadFile(path)
		if err != nil || string(b) != p.SVG {
			t.Errorf("%s is not what the demo's %s looks like: run the tests with -update (%v)", path, name, err)
		}
		if !strings.Contains(string(readme), "(docs/"+name+".svg)") {
			t.Errorf("the README does not show docs/%s.svg", name)
		}
	}
}

// FuzzDraw: whatever single value of a demo plan is replaced by whatever text, what is
// drawn is sound and what is not has a reason.
func FuzzDraw(f *testing.F) {
	var paths []string
	for _, e := range plan.Explain() {
		for _, i := range []string{"[1]", "[2]"} {
			paths = append(paths, strings.ReplaceAll(e.Path, "[]", i))
		}
	}
	f.Add(true, uint(1), "unknown")
	f.Add(false, uint(40), "0 in")
	f.Add(true, uint(9), "1 ft")
	for i := 0; i < len(paths); i += 7 {
		f.Add(i%2 == 0, uint(i), "unknown")
		f.Add(i%2 == 1, uint(i), "3 ft")
	}
	f.Fuzz(func(t *testing.T, swim bool, at uint, value string) {
		name := "work"
		if swim {
			name = "swim"
		}
		p, err := demoPlanFile(t, name).Vary(paths[at%uint(len(paths))], value)
		if err != nil {
			return
		}
		d, err := dock.Build(p)
		if err != nil {
			return
		}
		drawn(t, d, &dock.Report{Units: measure.System(at % 2)})
	})
}

// BenchmarkDraw draws all pictures of a dock beside its report.
func BenchmarkDraw(b *testing.B) {
	d := demoDock(b, "swim")
	r := reported(b, d, measure.US)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := sheet.Draw(d, r); err != nil {
			b.Fatal(err)
		}
	}
}

// reported returns the dock's report.
func reported(t testing.TB, d *dock.Dock, units measure.System) *dock.Report {
	t.Helper()
	r, err := d.Report(context.Background(), units)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
