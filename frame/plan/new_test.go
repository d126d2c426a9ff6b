package plan_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// usual is a tight-head drum of 55 gal, common practice, no source.
func usual(units measure.System, length, width float64, drums int) plan.Start {
	return plan.Start{Units: units, Length: length * measure.Foot, Width: width * measure.Foot, Drum: "drum", Girth: 73 * measure.Inch, Long: 35 * measure.Inch, Mass: 22 * measure.Pound, Drums: drums, Material: "steel"}
}

// TestNew: for every size there is a plan that reads without a mistake, or an error
// that names a field; drums carry the load, are as many as asked, and lie inside.
func TestNew(t *testing.T) {
	made := 0
	for _, units := range []measure.System{measure.US, measure.SI} {
		for length := 5.0; length <= 60; length += 5 {
			for width := 3.0; width <= 30; width += 3 {
				for _, drums := range []int{0, 4, 30} {
					s := usual(units, length, width, drums)
					text, err := s.JSON()
					if err != nil {
						var e *measure.Error
						if !errors.As(err, &e) || e.Field == "" {
							t.Errorf("%+v: %v", s, err)
						}
						continue
					}
					made++
					p, err := plan.Read("new", bytes.NewReader(text))
					if err != nil {
						t.Fatalf("%+v: %v", s, err)
					}
					f := &p.Floats[0]
					n := len(f.Bays)*len(f.Marks) + len(f.Places)
					if n < drums || n < 4 && len(f.Places) > 0 {
						t.Errorf("%+v: %d drums", s, n)
					}
					for _, at := range f.Places { // of a narrow dock: clear of the rims
						if a := at.Across.Value; a < 3*measure.Inch+73*measure.Inch/6.2832 || a > s.Width-3*measure.Inch-73*measure.Inch/6.2832 {
							t.Errorf("%+v: a drum at %g m across lies under a rim", s, a)
						}
					}
					if len(f.Places) > 0 {
						continue
					}
					last := f.Bays[len(f.Bays)-1].Value
					if last != len(p.Frame.Joists.Marks)-1 || f.Bays[0].Value != 1 {
						t.Errorf("%+v: drums in bays %v of %d", s, f.Bays, len(p.Frame.Joists.Marks)-1)
					}
					for i := 1; i < len(p.Frame.Joists.Marks); i++ {
						if gap := p.Frame.Joists.Marks[i].Value - p.Frame.Joists.Marks[i-1].Value; gap < 4*measure.Inch || gap > 24.01*measure.Inch {
							t.Errorf("%+v: joist %d lies %g m from the one before", s, i+1, gap)
						}
					}
					for _, m := range f.Marks {
						if m.Value-s.Long/2 < 3*measure.Inch || m.Value+s.Long/2 > s.Width-3*measure.Inch+1e-3 {
							t.Errorf("%+v: a drum at %g m lies under a rim", s, m.Value)
						}
					}
				}
			}
		}
	}
	if made < 250 {
		t.Errorf("only %d plans were made", made)
	}
	for _, s := range []plan.Start{{}, usual(measure.US, 1, 10, 0), usual(measure.US, 24, 2, 0), usual(measure.US, 24, 10, -1), usual(measure.US, 24, 10, 900)} {
		if _, err := s.JSON(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%+v: %v", s, err)
		}
	}
}

// TestNewNotes: every object of a new plan has a note, and every unknown field is
// explained in that of its object, or of the first one like it.
func TestNewNotes(t *testing.T) {
	text, err := usual(measure.US, 24, 10, 0).JSON()
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	unknowns := 0
	var look func(path string, o map[string]any)
	look = func(path string, o map[string]any) {
		note := fmt.Sprint(o["_note"])
		if o["_note"] == nil {
			t.Errorf("%s has no note", path)
		}
		for key, v := range o {
			switch v := v.(type) {
			case string:
				if v == "unknown" {
					unknowns++
					if !strings.Contains(note, key+": ") && path != "stock[1]" && path != "stock[2]" && path != "stock[3]" {
						t.Errorf("%s.%s is not explained", path, key)
					}
				}
			case map[string]any:
				look(path+"."+key, v)
			case []any:
				for i, one := range v {
					if o, ok := one.(map[string]any); ok {
						look(fmt.Sprintf("%s[%d]", key, i), o)
					}
				}
			}
		}
	}
	look("", root)
	if unknowns < 40 || len(text) > 16000 {
		t.Errorf("%d unknowns in %d bytes", unknowns, len(text))
	}
}

// A plan to start from: an invented dock on drums of the trade's usual size.
func ExampleStart_JSON() {
	text, err := plan.Start{Length: 24 * measure.Foot, Width: 10 * measure.Foot, Girth: 73 * measure.Inch, Long: 35 * measure.Inch, Mass: 22 * measure.Pound, Volume: 60 * measure.USGallon, Material: "plastic"}.JSON()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := plan.Read("new.json", bytes.NewReader(text))
	if err != nil {
		fmt.Println(err)
		return
	}
	f := p.Floats[0]
	fmt.Printf("%s: %d drums in %d bays, %d joists\n", p.Name.Value, len(f.Bays)*len(f.Marks), len(f.Bays), len(p.Frame.Joists.Marks))
	// Output:
	// New dock, 24 ft by 10 ft: 21 drums in 7 bays, 14 joists
}

// FuzzStart: whatever the start, a plan that reads, or an error.
func FuzzStart(f *testing.F) {
	f.Add(7.3, 3.05, 1.85, 0.89, 10.0, 0, "drum", false)
	f.Add(2.0, 1.2, 0.6, 0.3, 1.0, 3, "a,\"b\\", true)
	f.Fuzz(func(t *testing.T, length, width, girth, long, mass float64, drums int, name string, si bool) {
		s := plan.Start{Length: length, Width: width, Girth: girth, Long: long, Mass: mass, Drums: drums, Drum: name}
		if si {
			s.Units = measure.SI
		}
		text, err := s.JSON()
		if err != nil {
			return
		}
		if _, err := plan.Read("new", bytes.NewReader(text)); err != nil {
			t.Errorf("%+v: %v", s, err)
		}
	})
}

// What decides a verdict, or is asked for once its neighbour is known, is asked from the
// start.
func TestNewAsks(t *testing.T) {
	for width, want := range map[float64][]string{
		2.4: {`"dries": "unknown"`, `"slack": "unknown"`, `"stiffness": "unknown"`, `"blocks": "yes"`, `"block_fastener": "unknown"`, `"block_fasteners": "unknown"`},
		1.2: {`"stops": "`, `"block_fastener": "unknown"`},
	} {
		text, err := plan.Start{Units: measure.SI, Length: 4, Width: width, Girth: 1.85, Long: 0.886, Mass: 10}.JSON()
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range want {
			if !strings.Contains(string(text), w) {
				t.Errorf("%g m wide: no %s", width, w)
			}
		}
	}
}

// TestNewCount: where another number of drums comes out than asked for, the note at the
// floats says so, and which bays hold drums is true. Rows of three lie in a dock 10 ft
// wide, of one in a dock 3 ft 6 in wide, and a narrow dock has two rows.
func TestNewCount(t *testing.T) {
	for _, c := range []struct {
		s    plan.Start
		want string // at the floats
	}{
		{usual(measure.US, 24, 10, 0), "Put a tape"},
		{usual(measure.US, 24, 10, 21), "Put a tape"},
		{usual(measure.US, 24, 10, 22), "22 were asked for; 8 rows of 3 make it 24: rows are filled."},
		{usual(measure.US, 24, 10, 4), "4 were asked for; 7 rows of 3 make it 21: so many hold up the deck"},
		{usual(measure.US, 8, 5, 3), "3 were asked for; 2 rows of 2 make it 4: rows are filled."},
	} {
		text, err := c.s.JSON()
		if err != nil {
			t.Fatalf("%+v: %v", c.s, err)
		}
		var o struct {
			Frame struct {
				Joists struct {
					Note any `json:"_note"`
				}
			}
			Floats []struct {
				Note any `json:"_note"`
				Bays []int
			}
		}
		if err := json.Unmarshal(text, &o); err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(strings.TrimPrefix(fmt.Sprint(o.Floats[0].Note), "["), c.want) {
			t.Errorf("%+v: %q, want %q", c.s, o.Floats[0].Note, c.want)
		}
		note := fmt.Sprint(o.Frame.Joists.Note)
		for _, bay := range o.Floats[0].Bays {
			if !strings.Contains(note, fmt.Sprintf("%d", bay)) {
				t.Errorf("%+v: bay %d holds drums: %q", c.s, bay, note)
			}
		}
		if strings.Contains(note, "wide") || strings.Contains(note, "narrow") {
			t.Errorf("%+v: %q", c.s, note)
		}
	}
	heavy := usual(measure.US, 24, 10, 0)
	heavy.Mass = 195
	if text, err := heavy.JSON(); err != nil || !strings.Contains(string(text), "fewer than hold up 35.0 psf on the whole deck") {
		t.Errorf("drums that hold up next to nothing: %v", err)
	}
}

// TestNewWide: the stops of a row that fills a broad dock stand as far apart as the dock
// is broad, and the plan reads; what it says of its drums is there too.
func TestNewWide(t *testing.T) {
	broad := 0
	for _, units := range []measure.System{measure.US, measure.SI} {
		for width := 10.6; width <= 14.5; width += 0.1 {
			for _, long := range []float64{0.5, 0.9, 1.2} {
				s := plan.Start{Units: units, Length: 7.3, Width: width, Girth: 1.85, Long: long, Mass: 10}
				text, err := s.JSON()
				if err != nil {
					t.Fatalf("%+v: %v", s, err)
				}
				if _, err := s.Remark(); err != nil {
					t.Errorf("%+v has a plan and no remark: %v", s, err)
				}
				p, err := plan.Read("new", bytes.NewReader(text))
				if err != nil {
					t.Fatal(err)
				}
				if p.Floats[0].Stops.Value > 10 {
					broad++
				}
			}
		}
	}
	if broad == 0 {
		t.Error("no stops stand more than 10 m apart: nothing was tried")
	}
}
