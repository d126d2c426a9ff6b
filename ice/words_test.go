package ice_test

import (
	"fmt"
	"math"
	"regexp"
	"testing"

	"example.org/floewright/ice"
	"example.org/floewright/lumber/measure"
)

// permission is every word that would read as one.
var permission = regexp.MustCompile(`(?i)\bgo(es|ing)?\b|safe|\ballow(s|ed|able|ance)?\b|\bok(ay)?\b`)

// texts calls every exported function and method of the package that produces
// text, or errors, or values that print themselves, and returns what they print.
func texts(t *testing.T) []string {
	t.Helper()
	var out []string
	add := func(xs ...any) {
		for _, x := range xs {
			switch x := x.(type) {
			case nil:
			case *measure.Source:
				if x != nil {
					out = append(out, x.String(), x.Title, x.Edition, x.Locator)
				}
			case measure.Check:
				out = append(out, x.Name, x.String(), x.Words(), x.Numbers(measure.SI), x.Numbers(measure.US))
				out = append(out, x.Notes...)
				for _, f := range x.Factors {
					out = append(out, f.String(), f.Name, f.Source.String())
				}
				for _, a := range x.Rests {
					out = append(out, a.Name, a.Text)
				}
				out = append(out, x.Rule.String(), fmt.Sprint(x.Err))
			default:
				out = append(out, fmt.Sprintf("%v|%+v", x, x))
			}
		}
	}
	for i := -1; i < 6; i++ {
		add(ice.Water(i), ice.Season(i), ice.Cracks(i), ice.Finding(i), ice.Machine(i), ice.Scheme(i), ice.Scheme(i).Source())
		_, _, err := ice.Scheme(i).Effective(ice.Hole{Clear: math.NaN()})
		add(err)
		_, _, err = ice.Scheme(i).Effective(ice.Hole{Clear: -1})
		add(err)
	}
	for _, c := range append(ice.Classes(), ice.Class{}, ice.Class{Name: "other", Source: &measure.Source{Title: "a guide"}}) {
		add(c.Name, c.Printed, c.Source, c.Range.Source, c.Range)
		_, err := c.Load(-1)
		add(err)
		_, err = c.Thickness(1e12)
		add(err)
	}
	for _, c := range ice.StandingClasses() {
		_, err := c.Thickness(-1)
		add(c.Name, c.Printed, c.Source, c.Range, err)
	}
	for _, table := range ice.Tables() {
		add(table.Name, table.Source)
		for _, r := range table.Rows {
			add(r.Load, r.Kind, r.Note, r.Printed, r.Source)
		}
		for _, x := range []float64{-1, 1e9} {
			_, err := table.Load(x)
			add(err)
			_, err = table.Thickness(x)
			add(err)
		}
	}
	for _, c := range ice.Cautions() {
		add(c.Text, c.Publisher, c.Status)
	}
	add(ice.ErrUnfit)
	for _, p := range []ice.Plate{{}, {Thickness: 1}, {Thickness: 1, E: 1e9, Nu: 1}, {Thickness: 1, E: 1e9, Foundation: 1}, demoPlate()} {
		_, err := p.At([]ice.Patch{{}}, 0, 0)
		add(err)
		_, source, err := p.EdgeDeflection(-1)
		add(source, err)
		_, source, err = p.FictitiousRadius(-1)
		add(source, err)
	}
	for _, load := range []ice.Crossing{{Mass: 90}, {Mass: 900, People: 9}, {Mass: 3000, Machine: ice.Truck}, {Mass: 7e4}, {}} {
		c, err := ice.Compare(load)
		add(err, c.String(), c.Silent)
		_, source, err := load.Spacing()
		add(source, err)
	}
	for _, thaw := range ice.Thaws() {
		add(thaw.Source)
		for _, h := range []float64{-1, 3, 24} {
			_, err := thaw.Factor(h)
			add(err)
		}
	}
	sheets := []ice.Sheet{sound(1), sound(0.1), {}, {Scheme: 9}, {Age: -1}}
	for _, worsen := range barred {
		for _, h := range []float64{2, 0.02} {
			s := sound(h)
			worsen(&s)
			sheets = append(sheets, s)
		}
	}
	for c := ice.UnknownCracks; c <= ice.CrossingCracks; c++ {
		s := sound(1)
		s.Cracks = c
		s.Holes[0].White, s.Air[1].High = 0.1, 1
		sheets = append(sheets, s)
	}
	for _, s := range sheets {
		for _, load := range []ice.Crossing{{Mass: 90, People: 1}, {Mass: 900, People: 12}, {Mass: 2500, Machine: ice.Truck}, {Mass: 60000}, {Mass: -1}, {Mass: 1, People: -1}, {Mass: 1, Machine: 77}} {
			c, err := s.Crossing(load)
			add(c, err)
			for _, hours := range []float64{0, 3, 100, -1} {
				c, err = s.Required(load, hours)
				add(c, err)
			}
		}
		for _, hours := range []float64{0, 3, 100, -1} {
			c, err := s.ParkedHours(ice.Crossing{Mass: 300, People: 1}, hours)
			add(c, err)
		}
		for _, stand := range standTexts() {
			f, err := s.Flooding(stand)
			add(f.Check, f.Governs, err)
			c, err := s.Beside(stand, ice.Crossing{Mass: 90, People: 1})
			add(c, err)
			_, _, err = s.Sag(stand, 60*measure.Day)
			add(err)
			c, err = stand.Gauge.Check(9 * measure.Day)
			add(c, err)
		}
		for _, speed := range []float64{-1, 1, 30} {
			c, err := s.Hauling(ice.Haul{Load: ice.Crossing{Mass: 7500, Machine: ice.Truck}, Speed: speed})
			add(c, err)
		}
	}
	return append(out, partTexts()...)
}

// standTexts are loads that stand well, badly, and not at all.
func standTexts() []ice.Stand {
	outside := frame(100)
	outside.Loads[0].X = 50
	return []ice.Stand{{}, {Stay: -1}, frame(100), frame(9000), outside, watched(frame(100), 5, 0.04, 0.003), watched(frame(100), 5, -0.01, 0.003)}
}

// partTexts are what the pieces without a check say.
func partTexts() []string {
	var out []string
	add := func(xs ...any) {
		for _, x := range xs {
			out = append(out, fmt.Sprint(x))
		}
	}
	for s := ice.ByName; s <= ice.AtDock; s++ {
		add(s)
	}
	for c := ice.UnknownCracks; c <= ice.CrossingCracks; c++ {
		_, source := c.Share()
		add(source)
	}
	p := demoPlate()
	for _, strength := range []float64{-1, 5e5} {
		b, err := p.Breakthrough(ice.Patch{A: 0.5}, strength, 0)
		add(b, b.Source, err)
	}
	_, err := p.Edge(-1, 1)
	add(err)
	_, err = p.FloodLoad(-1)
	add(err)
	_, _, err = ice.Wave{}.Critical()
	add(err)
	_, _, err = ice.Creep{}.Strain(1, 1)
	add(err)
	_, err = ice.Cover{Ice: -1}.Freeboard()
	add(err)
	_, err = ice.Cover{}.Slush(0)
	add(err)
	_, err = ice.Pad{}.Shovelled(p, 0, 0)
	add(err)
	_, err = ice.MeltIn(-1, 0)
	add(err)
	_, err = ice.Gauge{{Age: -1}}.Fall()
	add(err)
	_, err = ice.Gauge{}.Fall()
	add(err)
	return out
}

func TestNoWordOfPermission(t *testing.T) {
	all := texts(t)
	if len(all) < 1000 {
		t.Fatalf("only %d texts were produced", len(all))
	}
	seen := map[string]bool{}
	for _, s := range all {
		if seen[s] {
			continue
		}
		seen[s] = true
		if w := permission.FindString(s); w != "" {
			t.Errorf("%q in %q", w, s)
		}
	}
	for _, s := range []string{"you may go", "it is safe", "allowed", "unsafe"} {
		if !permission.MatchString(s) {
			t.Errorf("the pattern lets %q through", s)
		}
	}
}
