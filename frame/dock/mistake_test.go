package dock_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// What the plan does not know is refused by name, never guessed.
func TestMissingInputs(t *testing.T) {
	for _, c := range []struct {
		swap  []string
		check string
		says  string
	}{
		{[]string{`"length": "24 ft"`, `"length": "unknown"`}, "Tilt of the deck", "frame.length"},
		{[]string{`"length": "24 ft"`, `"length": "unknown"`}, "Worst joist", "frame.length"},
		{[]string{`"girth": "6 ft 1 in"`, `"girth": "unknown"`}, "Draft of the deepest float with nobody", "floats[1].girth"},
		{[]string{`"mass": "22 lb"`, `"mass": "unknown"`}, "Weight of one plastic drum", "floats[1].mass"},
		{[]string{`"mass": "670 lb"`, `"mass": "unknown"`}, "Ice for one crossing", "ice.crossing.mass"},
		{[]string{`"size": "2x6", "species"`, `"size": "unknown", "species"`}, "Weight of one deck board", "frame.decking.size"},
		{[]string{`"size": "2x6", "species"`, `"size": "unknown", "species"`}, "Ice for the finished dock parked some", "frame.decking.size"},
		{[]string{`"people": [`, `"people": "unknown", "weights": [], "_note": [`, `"weights": [`, `"_note": [`}, "Tilt of the deck", "people"},
	} {
		in := demoText(t, "swim", c.swap...)
		if strings.Count(in, `"_note": [`) > 1 {
			in = strings.Replace(in, `"_note": [
    { "name"`, `"_note": [
    { "_note"`, 1)
		}
		d, err := dock.Read("test.json", strings.NewReader(in))
		if err != nil {
			t.Errorf("%q: %v", c.swap, err)
			continue
		}
		r := reported(t, d, measure.US)
		got := check(t, r, c.check)
		var e *measure.Error
		if got.Verdict() != measure.NoAnswer || !errors.As(got.Err, &e) || !errors.Is(got.Err, measure.ErrUnknown) || e.Field != c.says {
			t.Errorf("%q: %v, want no answer for want of %s", c.swap, got, c.says)
		}
		sound(t, r)
	}
}

// Ten mistakes, of reading and of building, are reported together, each with
// its line.
func TestTenMistakes(t *testing.T) {
	in := `{
  "name": "ten mistakes",
  "units": "metric",
  "frame": {
    "length": "24",
    "width": "10 ft", "colour": "red",
    "joists": { "size": "2x9", "species": "Southern Pine", "marks": ["0 in", "16 in"] },
    "rims": { "size": "2x8", "species": "sothern pin" },
    "decking": { "size": "2x6", "species": "Hem-Fir", "grade": "No.7" }
  },
  "floats": [
    { "name": "a", "shape": "block", "girth": "70 in", "length": "36 in", "mass": "22 lb", "lies": "along", "bears": "under joists", "places": [{ "along": "1 ft", "across": "11 ft" }] },
    { "name": "b", "shape": "barrel", "length": "36 in", "mass": "-2 lb", "lies": "along", "bears": "under joists" }
  ]
}`
	_, err := dock.Read("ten.json", strings.NewReader(in))
	var all plan.Errors
	if !errors.As(err, &all) {
		t.Fatalf("%v", err)
	}
	want := []string{"units", "frame.length", "frame.colour", "frame.joists.size", "frame.rims.species", "frame.decking.grade", "floats[1].girth", "floats[1].places[1].across", "floats[2].shape", "floats[2].mass"}
	if len(all) != len(want) {
		t.Fatalf("%d errors, want %d:\n%v", len(all), len(want), err)
	}
	for i, e := range all {
		if e.Path != want[i] {
			t.Errorf("error %d is about %s, want %s", i+1, e.Path, want[i])
		}
		if !strings.HasPrefix(e.Error(), "ten.json:") || !strings.Contains(e.Error(), "want ") {
			t.Errorf("%v names no place or nothing that is accepted", e)
		}
	}
}

func TestBuildMistakes(t *testing.T) {
	for _, c := range []struct {
		swap []string
		path string
		says string
	}{
		{[]string{`"23 ft 10-1/2 in"`, `"24 ft 10-1/2 in"`}, "frame.joists.marks[14]", "outside the frame"},
		{[]string{`"3 ft 8 in"`, `"21 in"`}, "frame.joists.marks[3]", "overlaps"},
		{[]string{`"bays": [1, 3, 5, 9, 11, 13]`, `"bays": [1, 3, 5, 9, 11, 14]`}, "floats[1].bays[6]", "from 1 to 13"},
		{[]string{`"8 ft 2-3/8 in"]`, `"18 ft 2-3/8 in"]`}, "floats[1].marks[3]", "beyond the frame"},
		{[]string{`"bays": [1, 3, 5, 9, 11, 13],`, ``}, "floats[1].bays", "it is missing; want the bays"},
		{[]string{`"marks": ["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `"_note": ""`}, "floats[1].marks", "it is missing; want the floats' centres"},
		{[]string{`"bays": [1, 3, 5, 9, 11, 13],`, `"bays": [1], "places": [{"along":"1 ft","across":"1 ft"}],`}, "floats[1].places", "not both"},
		{[]string{`"girth": "6 ft 1 in"`, `"girth": "6 ft 1 in", "height": "1 ft"`}, "floats[1].height", "drum has neither"},
		{[]string{`"marks_at": "near face"`, `"marks_at": "near face", "spacing": "16 in"`}, "frame.joists.spacing", "not both"},
		{[]string{`"size": "2x6", "species"`, `"size": "2 mm x 6 mm", "species"`}, "frame.decking.size", "side of a dressed size"},
		{[]string{`"rims": { "size": "2x10"`, `"rims": { "size": "19.6 in x 19.6 in"`, `"plies": 2`, `"plies": 3`, `"species": "Southern Pine", "grade": "No.1"`, `"species": "Southern Pine", "grade": "No.2"`}, "frame.rims.size", "no room"},
	} {
		_, err := dock.Read("f", strings.NewReader(demoText(t, "swim", c.swap...)))
		var all plan.Errors
		if !errors.As(err, &all) {
			t.Errorf("%q: %v", c.swap, err)
			continue
		}
		if all[0].Path != c.path || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %v, want %s: %s", c.swap, err, c.path, c.says)
		}
	}
	one := strings.Replace(demoText(t, "swim"), `"marks_at": "near face",`, `"marks": ["0 in"], "_note2": [`, 1)
	if _, err := dock.Read("f", strings.NewReader(one)); err == nil {
		t.Error("one joist gives no error")
	}
	if _, err := dock.Build(nil); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no plan: %v", err)
	}
	if _, err := dock.Read("f", strings.NewReader("{")); err == nil {
		t.Error("half a file gives no error")
	}
}

// Names of the trade and of the plan's own entries that are not found are told all
// together, with their lines, and beside what reading found.
func TestNames(t *testing.T) {
	in := demoText(t, "swim",
		`"fastener": "10d common nail"`, `"fastener": "77d nail"`, `"finish": "hot-dip galvanized",`, `"finish": "gold",`,
		`"bracket_finish": "galvanized sheet G185"`, `"bracket_finish": "paint"`, `"deck_finish": "stainless 316"`, `"deck_finish": "lead"`,
		`"gap": "0 in"`, `"gap": "0 in", "screw": "big screw"`,
		`"to": "old pine"`, `"to": "young pine"`, `"leak_tested": "yes"`, `"leak_tested": "perhaps"`)
	_, err := dock.Read("f", strings.NewReader(in))
	var all plan.Errors
	if !errors.As(err, &all) {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, e := range all {
		got[e.Path] = e.Error()
	}
	for path, says := range map[string]string{
		"hardware.joist_ends.fastener":       "10d common nail",
		"hardware.joist_ends.finish":         "stainless 304",
		"hardware.joist_ends.bracket_finish": "galvanized sheet G185",
		"hardware.deck_finish":               `or "unknown"`,
		"frame.decking.screw":                "No.10 wood screw",
		"mooring.lines[1].to":                `"old pine", "screw 1"`,
		"hardware.drums[1].leak_tested":      `"yes" or "no"`,
	} {
		if !strings.Contains(got[path], says) {
			t.Errorf("%s: %q, want a list with %s", path, got[path], says)
		}
		delete(got, path)
	}
	if len(got) > 0 {
		t.Errorf("and %v", got)
	}
	for _, c := range []struct{ from, to, path string }{
		{`"kind": "nylon 3-strand", "size": "7/8 in", "length": "34 ft"`, `"kind": "spaghetti", "size": "7/8 in", "length": "34 ft"`, ".kind"},
		{`"size": "7/8 in", "length": "34 ft"`, `"size": "19 ft", "length": "34 ft"`, ".size"},
		{`"to": "screw 1", "cleat_breaks": "6000 lbf", "shackle": "1/2 in"`, `"to": "screw 1", "shackle": "9 ft"`, ".shackle"},
		{`"ties": [`, `"ties": [ { "floats": "corks" },`, "hardware.ties[1].floats"},
		{`"drums": [`, `"drums": [ { "floats": "corks" },`, "hardware.drums[1].floats"},
		{`"stock": [`, `"stock": [ { "size": "plank", "length": "10 ft" },`, "stock[1].size"},
		{`"hauled_out": "no"`, `"hauled_out": "no", "haul_out": { "kind": "wire rope 7x19 galvanized", "size": "1/4 in", "end": "a good one" }`, "mooring.haul_out.end"},
	} {
		_, err := dock.Read("f", strings.NewReader(demoText(t, "swim", c.from, c.to)))
		if !errors.As(err, &all) || !strings.HasSuffix(all[0].Path, c.path) || !errors.Is(all[0], measure.ErrName) && !errors.Is(all[0], measure.ErrSyntax) {
			t.Errorf("%s: %v", c.to, err)
		}
	}
	for _, word := range []string{"unknown", "all"} {
		if _, err := dock.Read("f", strings.NewReader(demoText(t, "swim", `"ties": [`, `"ties": [ { "floats": "`+word+`" },`))); err != nil {
			t.Errorf("%s: %v", word, err)
		}
	}
}

// What a check lacks is told all together: the first by its path, others of the same
// object by their names.
func TestAllThatIsMissing(t *testing.T) {
	d, err := dock.Read("f", strings.NewReader(demoText(t, "swim", `"by": "hanger", `, ``, `"count": 10, `, ``, `"fastener": "10d common nail"`, `"fastener": "unknown"`)))
	if err != nil {
		t.Fatal(err)
	}
	c := check(t, reported(t, d, measure.US), "Joist's end carried")
	var e *measure.Error
	if !errors.As(c.Err, &e) || e.Field != "hardware.joist_ends.by" || e.Want != "it in the plan, and with it fastener, count" {
		t.Errorf("%v", c.Err)
	}
}

// Floats for which no place is given hold nothing up, and nothing is reckoned as if
// they were not there.
func TestFloatsWithoutPlace(t *testing.T) {
	in := demoText(t, "swim", `"floats": [`, `"floats": [ { "name": "more", "shape": "drum", "girth": "6 ft", "length": "3 ft", "mass": "22 lb", "lies": "across", "bears": "between joists" },`)
	d, err := dock.Read("f", strings.NewReader(in))
	if err != nil {
		t.Fatal(err)
	}
	c := check(t, reported(t, d, measure.US), "Weight of the whole dock")
	var e *measure.Error
	if c.Verdict() != measure.NoAnswer || !errors.As(c.Err, &e) || e.Field != "floats[1].places" {
		t.Errorf("%v", c)
	}
}

func TestBuild(t *testing.T) {
	p, err := plan.Read("swim", strings.NewReader(demoText(t, "swim")))
	if err != nil {
		t.Fatal(err)
	}
	d, err := dock.Build(p)
	if err != nil || d.Units() != measure.US {
		t.Fatal(err)
	}
	if r := reported(t, new(dock.Dock), measure.SI); r.Status() == dock.AllHold || new(dock.Dock).Units() != measure.US {
		t.Errorf("a dock of nothing holds: %+v", r)
	} else {
		sound(t, r)
		for _, topic := range r.Topics {
			for _, c := range topic.Checks {
				if c.Verdict() != measure.NoAnswer {
					t.Errorf("a dock of nothing: %v", c)
				}
			}
		}
	}
	q, err := p.Vary("frame.joists.size", "2x9")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := dock.Build(q); !errors.Is(err, measure.ErrName) {
		t.Errorf("%v", err)
	}
}
