package plan_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

func demo(t testing.TB, name string) *plan.Plan {
	t.Helper()
	r, err := plan.Demo(name)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Read(name, r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestDemosRead(t *testing.T) {
	for _, name := range plan.Demos() {
		p := demo(t, name)
		if !strings.Contains(p.Name.Value, "invented") {
			t.Errorf("%s: the name %q does not say that the plan is invented", name, p.Name.Value)
		}
	}
	p := demo(t, "swim")
	if got, want := p.Frame.Length.Value, 24*measure.Foot; math.Abs(got-want) > 1e-12 {
		t.Errorf("length %g m, want %g m", got, want)
	}
	if n := len(p.Frame.Joists.Marks); n != 14 {
		t.Errorf("%d joist marks, want 14", n)
	}
	if n := len(p.Floats[0].Bays) * len(p.Floats[0].Marks); n != 18 {
		t.Errorf("%d drums, want 18", n)
	}
	if _, err := plan.Demo("raft"); !errors.Is(err, measure.ErrName) {
		t.Errorf("an unknown demo: %v", err)
	}
}

// wrap puts one field into an otherwise small plan.
const small = `{"name":"x","frame":{"length":"20 ft","width":"8 ft","joists":{"size":"2x8"},"rims":{"size":"2x8"},"decking":{"size":"2x6"}},"floats":[]}`

func TestKnowledge(t *testing.T) {
	p, err := plan.Read("small", strings.NewReader(strings.Replace(small, `"floats":[]`,
		`"floats":"unknown","people":[{"who":"adult"},{"who":"unknown","mass":"unknown","count":"unknown"}],"site":{"water":"unknown"},"ice":"unknown"`, 1)))
	if err != nil {
		t.Fatal(err)
	}
	a, u := p.People[0], p.People[1]
	for _, c := range []struct {
		name          string
		known, want   measure.Knowledge
		value, value0 float64
	}{
		{"mass left out", a.Mass.Known, measure.Assumed, a.Mass.Value, 185 * measure.Pound},
		{"mass unknown", u.Mass.Known, measure.Unknown, u.Mass.Value, 185 * measure.Pound},
		{"count left out", a.Count.Known, measure.Assumed, float64(a.Count.Value), 1},
		{"count unknown", u.Count.Known, measure.Unknown, float64(u.Count.Value), 0},
		{"length given", p.Frame.Length.Known, measure.Measured, p.Frame.Length.Value, 20 * measure.Foot},
	} {
		if c.known != c.want || math.Abs(c.value-c.value0) > 1e-12 {
			t.Errorf("%s: %v %g, want %v %g", c.name, c.known, c.value, c.want, c.value0)
		}
	}
	if p.Site.Water.Known != measure.Unknown || p.Site.Water.Value != "" {
		t.Errorf("water: %+v", p.Site.Water)
	}
	if j := p.Frame.Joists.Weighed; j.Known != measure.Unknown || plan.Has(j) {
		t.Errorf("a weight without a default: %+v", j)
	}
	if len(p.Floats) != 0 || len(p.Ice.Holes) != 0 {
		t.Error("an unknown list is not empty")
	}
}

// Every way of getting one field wrong names line, column, field, value and what
// is accepted.
func TestOneMistake(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		says           []string
	}{
		{"no unit", `"20 ft"`, `"20"`, []string{"f:1:31: frame.length: ", `"20" cannot be read`, "no unit", "12 ft 6-1/2 in"}},
		{"other kind", `"20 ft"`, `"20 psf"`, []string{"frame.length", "psf", "unit of pressure"}},
		{"out of range", `"20 ft"`, `"0.5 m"`, []string{"frame.length", `"0.5 m"`, "from 4 ft (1 m) to 196 ft (60 m)"}},
		{"NaN", `"20 ft"`, `"NaN"`, []string{"frame.length", "NaN"}},
		{"bare number", `"20 ft"`, `20`, []string{"frame.length", "20", "a number", "in quotes"}},
		{"null", `"20 ft"`, `null`, []string{"frame.length", "null", "from 4 ft"}},
		{"object for a text", `"20 ft"`, `{}`, []string{"frame.length", "an object"}},
		{"unknown field", `"name":"x"`, `"name":"x","heigth":"1 m"`, []string{"f:1:13: heigth: ", "unknown name", "one of name, units"}},
		{"twice", `"name":"x"`, `"name":"x","name":"y"`, []string{"name", "twice"}},
		{"missing", `"length":"20 ft",`, ``, []string{"frame.length: not known: it is missing", "unknown"}},
		{"empty text", `"name":"x"`, `"name":" "`, []string{"name", "empty"}},
		{"control character", `"name":"x"`, `"name":"x\u001b[31m"`, []string{"name", "not one line"}},
		{"choice", `"name":"x"`, `"name":"x","units":"imperial"`, []string{"units", "imperial", `"us" or "si"`}},
		{"list wanted", `"floats":[]`, `"floats":7`, []string{"floats", "a list"}},
		{"object wanted", `"floats":[]`, `"floats":["drum"]`, []string{"floats[1]", "an object"}},
		{"count as text", `"floats":[]`, `"floats":[],"people":[{"who":"adult","count":"2"}]`, []string{"people[1].count", "a text", "whole number from 1 to 200"}},
		{"count not whole", `"floats":[]`, `"floats":[],"people":[{"who":"adult","count":2.5}]`, []string{"people[1].count", "2.5", "whole number"}},
		{"count out of range", `"floats":[]`, `"floats":[],"people":[{"who":"adult","count":0}]`, []string{"people[1].count", "0", "from 1 to 200"}},
		{"price with a unit", `"floats":[]`, `"floats":[],"stock":[{"size":"2x8","length":"8 ft","price":"12 USD"}]`, []string{"stock[1].price", "12 USD", "without unit"}},
		{"price negative", `"floats":[]`, `"floats":[],"stock":[{"size":"2x8","length":"8 ft","price":-1}]`, []string{"stock[1].price", "-1", "from 0"}},
		{"no such day", `"floats":[]`, `"floats":[],"ice":{"weather":[{"date":"2027-02-30","high":"1 C","low":"-1 C"}]}`, []string{"ice.weather[1].date", "2027-02-30", "2027-01-16"}},
		{"list item", `"size":"2x8"}`, `"size":"2x8","marks":["0 in","x"]}`, []string{"frame.joists.marks[2]", "does not begin with a number"}},
		{"bay item", `"floats":[]`, `"floats":[{"name":"d","shape":"drum","length":"36 in","mass":"20 lb","lies":"along","bears":"between joists","bays":[1,0]}]`, []string{"floats[1].bays[2]", "from 1 to 400"}},
		{"syntax", `"floats":[]`, `"floats":[}`, []string{"f:1:", "invalid character"}},
		{"cut short", `"floats":[]}`, `"floats":[`, []string{"ends too early"}},
		{"something behind", `"floats":[]}`, `"floats":[]} x`, []string{"something follows"}},
		{"no object", small, `[]`, []string{"an object"}},
		{"empty file", small, ``, []string{"ends too early"}},
		{"not text", `"name":"x"`, "\"name\":\"\xff\"", []string{"UTF-8"}},
		{"deep", small, strings.Repeat("[", 40) + strings.Repeat("]", 40), []string{"nested deeper"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := strings.Replace(small, c.old, c.new, 1)
			_, err := plan.Read("f", strings.NewReader(in))
			var all plan.Errors
			if !errors.As(err, &all) || len(all) != 1 {
				t.Fatalf("%d errors, want one: %v", len(all), err)
			}
			for _, s := range c.says {
				if !strings.Contains(err.Error(), s) {
					t.Errorf("%q does not say %q", err, s)
				}
			}
			if all[0].At.Line < 1 || all[0].At.Column < 1 {
				t.Errorf("no place: %+v", all[0].At)
			}
		})
	}
}

// A plan with ten different mistakes gets ten errors, in the order of its lines.
func TestTenMistakes(t *testing.T) {
	const in = `{
  "name": "ten mistakes",
  "units": "feet",
  "frame": {
    "length": "24",
    "width": "10 psf",
    "joists_run": "sideways",
    "moisture": "NaN",
    "joists": { "size": "2x8", "marks": ["0 in", "--4 in"] },
    "rims": { "size": "2x8", "plies": 9 },
    "decking": { "size": "2x6", "colour": "green" }
  },
  "floats": [
    { "name": "d", "shape": "drum", "length": "99 ft", "mass": "22 lb", "lies": "along", "bears": "under joists" },
    { "name": "e", "shape": "drum", "length": "36 in", "lies": "along", "bears": "under joists" }
  ]
}`
	_, err := plan.Read("ten.json", strings.NewReader(in))
	var all plan.Errors
	if !errors.As(err, &all) {
		t.Fatal(err)
	}
	want := []string{"units", "frame.length", "frame.width", "frame.joists_run", "frame.moisture", "frame.joists.marks[2]", "frame.rims.plies", "frame.decking.colour", "floats[1].length", "floats[2].mass"}
	if len(all) != len(want) {
		t.Fatalf("%d errors, want %d:\n%v", len(all), len(want), err)
	}
	for i, e := range all {
		if e.Path != want[i] {
			t.Errorf("error %d is about %s, want %s", i+1, e.Path, want[i])
		}
		if i > 0 && e.At.Line < all[i-1].At.Line {
			t.Errorf("error %d is out of order", i+1)
		}
		var m *measure.Error
		if !errors.As(e, &m) || m.Want == "" {
			t.Errorf("%v does not say what is accepted", e)
		}
	}
	if !errors.Is(err, measure.ErrSyntax) || !errors.Is(err, measure.ErrName) || !errors.Is(err, measure.ErrRange) {
		t.Error("the classes of the errors cannot be found")
	}
}

// A slip of JSON is placed on the character that shows it, with what is wanted.
func TestSyntaxPlaces(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"{\n  \"name\": \"x\"\n  \"frame\": {}\n}", `f:3:3: invalid character '"' after object key:value pair; want a comma before it, or the closing bracket`},
		{"{\"floats\": [1 2]}", "f:1:15: invalid character '2' after array element; want a comma before it, or the closing bracket"},
		{"{\"name\": \"x\",}", "f:1:14: invalid character '}' looking for beginning of object key string; want a value or a name in quotes; is there a comma too many?"},
		{"{\"name\" \"x\"}", `f:1:9: invalid character '"' after object key; want a colon`},
		{"{\"name\": x}", "f:1:10: invalid character 'x' looking for beginning of value; want a value or a name in quotes; is there a comma too many?"},
		{"{\"name\": tru}", "f:1:13: invalid character '}' in literal true (expecting 'e')"},
	} {
		_, err := plan.Read("f", strings.NewReader(c.in))
		if err == nil || err.Error() != c.want {
			t.Errorf("%q: %v, want %s", c.in, err, c.want)
		}
		if !errors.Is(err, plan.ErrJSON) || !errors.Is(err, measure.ErrSyntax) {
			t.Errorf("%q: %v is not of classes ErrJSON and ErrSyntax", c.in, err)
		}
	}
}

func TestPositions(t *testing.T) {
	in := "\ufeff{\n  \"name\": \"ä\", \"units\": \"x\"}"
	_, err := plan.Read("f", strings.NewReader(in))
	if err == nil || !strings.Contains(err.Error(), "f:2:25: units") {
		t.Errorf("columns count characters, not bytes: %v", err)
	}
}

func TestReaderFails(t *testing.T) {
	_, err := plan.Read("f", iotest.ErrReader(errors.New("disk gone")))
	if err == nil || !strings.Contains(err.Error(), "disk gone") {
		t.Errorf("%v", err)
	}
	_, err = plan.Read("f", strings.NewReader(strings.Repeat(" ", 1<<20+1)))
	if err == nil || !strings.Contains(err.Error(), "larger than") {
		t.Errorf("%v", err)
	}
}

// The faulty values of a plan are unknown beside the error, so that a later stage
// can go on.
func TestFaultyPlanIsReturned(t *testing.T) {
	p, err := plan.Read("f", strings.NewReader(strings.Replace(small, `"20 ft"`, `"20"`, 1)))
	if err == nil || p == nil {
		t.Fatal("want a plan and an error")
	}
	if plan.Has(p.Frame.Length) || p.Frame.Length.Known != measure.Unknown || p.Frame.Width.Known != measure.Measured {
		t.Errorf("%+v %+v", p.Frame.Length, p.Frame.Width)
	}
}

// TestNoPlan: what ends the reading is told apart from mistakes within a plan, and a
// reader's error keeps its own class.
func TestNoPlan(t *testing.T) {
	for _, in := range []string{"", "[]", "{} {}", "{\"name\": \"\xff\"}", strings.Repeat("[", 40), strings.Repeat(" ", 2<<20)} {
		if p, err := plan.Read("", strings.NewReader(in)); p != nil || !errors.Is(err, plan.ErrJSON) || !errors.Is(err, measure.ErrSyntax) || measure.Class(err) != "syntax" || strings.HasPrefix(err.Error(), ":") {
			t.Errorf("%.20q: %v", in, err)
		}
	}
	for _, in := range []string{"{}", strings.Replace(small, `"20 ft"`, `"20"`, 1)} {
		if _, err := plan.Read("", strings.NewReader(in)); err == nil || errors.Is(err, plan.ErrJSON) {
			t.Errorf("%q: %v", in, err)
		}
	}
	if _, err := plan.Read("", strings.NewReader("{}")); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("fields that are missing: %v", err)
	}
	torn := errors.New("the line broke")
	if p, err := plan.Read("", iotest.ErrReader(torn)); p != nil || !errors.Is(err, torn) || errors.Is(err, plan.ErrJSON) || errors.Is(err, measure.ErrSyntax) {
		t.Errorf("a reader that fails: %v", err)
	}
}

func TestWrong(t *testing.T) {
	p := demo(t, "swim")
	err := plan.Wrong(p.File, p.Frame.Joists.Size, &measure.Error{Text: "2x8", Want: "2x10", Class: measure.ErrName})
	if want := `swim:15:15: frame.joists.size: "2x8" unknown name; want 2x10`; err.Error() != want {
		t.Errorf("%q, want %q", err, want)
	}
	if !errors.Is(err, measure.ErrName) {
		t.Error("class lost")
	}
}

func TestTime(t *testing.T) {
	p := demo(t, "swim")
	now, ok := plan.Time(p.Ice.Now)
	if !ok || now.Format("2006-01-02 15:04") != "2027-02-06 09:00" {
		t.Errorf("%v %v", now, ok)
	}
	if day, ok := plan.Time(p.Ice.Weather[0].Date); !ok || day.Day() != 1 {
		t.Errorf("%v %v", day, ok)
	}
	if _, ok := plan.Time(plan.Name{}); ok {
		t.Error("an unknown time is known")
	}
}

// Vary changes one value, given or not, and nothing else.
func TestVary(t *testing.T) {
	p := demo(t, "work")
	q, err := p.Vary("frame.moisture", "19 %")
	if err != nil {
		t.Fatal(err)
	}
	if p.Frame.Moisture.Value != 0.6 || p.Frame.Moisture.Known != measure.Assumed || math.Abs(q.Frame.Moisture.Value-0.19) > 1e-15 {
		t.Errorf("moisture %v, varied %v", p.Frame.Moisture, q.Frame.Moisture)
	}
	q, err = p.Vary("people[1].count", "7")
	if err != nil || q.People[0].Count.Value != 7 || q.People[0].Mass != p.People[0].Mass {
		t.Errorf("count %v, %v", q.People[0].Count, err)
	}
	twice, err := q.Vary("frame.moisture", "19 %")
	if err != nil || twice.People[0].Count.Value != 7 || math.Abs(twice.Frame.Moisture.Value-0.19) > 1e-15 {
		t.Errorf("varied again: %v people, moisture %v, %v", twice.People[0].Count, twice.Frame.Moisture, err)
	}
	if got := p.Fingerprint(); len(got) != 12 || q.Fingerprint() != "" || new(plan.Plan).Fingerprint() != "" {
		t.Errorf("fingerprints %q, %q", got, q.Fingerprint())
	}
	if _, err := p.Vary("frame.moisture", "wet"); !errors.Is(err, measure.ErrSyntax) {
		t.Errorf("%v", err)
	}
	if _, err := new(plan.Plan).Vary("name", "x"); !errors.Is(err, measure.ErrUnknown) || (&plan.Error{}).Error() == "" {
		t.Errorf("a plan from nowhere: %v", err)
	}
	if got := plan.Plausible("people[12].mass"); len(got) != 2 {
		t.Errorf("plausible masses of a person: %q", got)
	}
	if got := plan.Plausible("name"); got != nil {
		t.Errorf("plausible names: %q", got)
	}
}

// TestVaryWrongPath: a path that names no value of this plan is refused, whether the
// field or the place in a list is not there; one that the plan leaves out is not.
func TestVaryWrongPath(t *testing.T) {
	p := demo(t, "work")
	for _, c := range []struct{ path, says string }{
		{"", `want a field with one value`},
		{"nonsense", `"nonsense" unknown name`},
		{"frame", "want a field with one value"},
		{"floats", "want a field with one value"},
		{"floats[1]", "want a field with one value"},
		{"frame.lenght", `work: frame.lenght: "lenght" unknown name; want a field with one value`},
		{"frame.length.", "want a field with one value"},
		{"floats.mass", "want a field with one value"},
		{"floats[0].mass", `"floats[0]" unknown name: there is no such place in the list; want a place from 1 to 1`},
		{"floats[7].mass", `"floats[7]" unknown name: there is no such place in the list; want a place from 1 to 1`},
		{"floats[].mass", "want a place from 1 to 1"},
		{"floats[-1].mass", "want a field with one value"},
		{"floats[01].mass", "unknown name"},
		{"floats[1].places[9].along", `"floats[1].places[9]" unknown name`},
		{"floats[1].bays[1]", "unknown name"},
		{"people[3].count", "want a place from 1 to 1"},
		{"mooring.lines[1].name", `"mooring.lines[1]" unknown name: there is no such place in the list; want a list with something in it`},
		{"nonsense[1].mass", "want a field with one value"},
		{"ice.gauge[1].when", "unknown name"},
		{"Frame.length", "unknown name"},
	} {
		q, err := p.Vary(c.path, "1 m")
		var all plan.Errors
		if q != nil || !errors.Is(err, measure.ErrName) || !errors.As(err, &all) || all[0].Path != c.path || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "0:0") {
			t.Errorf("%q: %v, %v", c.path, q != nil, err)
		}
	}
	for path, value := range map[string]string{
		"season.latitude": "45 deg", "loads.deck": "3 kPa", "floats[1].places[8].along": "5 m",
		"currency": "unknown", "stock[3].count": "16", "mooring.wind_speed": "9 m/s", "frame.joists.species": "unknown",
	} {
		if q, err := p.Vary(path, value); err != nil || q == nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	// Every value that the plan has can be named by its own path.
	for _, e := range plan.Explain() {
		path := strings.ReplaceAll(e.Path, "[]", "[1]")
		if q, err := p.Vary(path, "unknown"); q == nil && !errors.Is(err, measure.ErrName) {
			t.Errorf("%s: %v", path, err)
		}
	}
	if q, err := p.Vary(p.Floats[0].Mass.Path, "25 kg"); err != nil || q.Floats[0].Mass.Value != 25 {
		t.Errorf("by its own path: %v", err)
	}
}

// TestMistakesInBothUnits: a plan that does not say its units is told what is accepted in
// feet and pounds and in metres and kilograms, each end of it accepted; one that says them
// is told in its own.
func TestMistakesInBothUnits(t *testing.T) {
	for units, want := range map[string]string{
		``:                    "want a length from 4 ft (1 m) to 196 ft (60 m)",
		`"units":"unknown",`:  "want a length from 4 ft (1 m) to 196 ft (60 m)",
		`"units":"imperial",`: "want a length from 4 ft (1 m) to 196 ft (60 m)",
		`"units":"us",`:       "want a length from 4 ft to 196 ft",
		`"units":"SI",`:       "want a length from 1 m to 60 m",
	} {
		in := strings.Replace(strings.Replace(small, `"name"`, units+`"name"`, 1), `"20 ft"`, `"0.5 m"`, 1)
		if _, err := plan.Read("f", strings.NewReader(in)); err == nil || !strings.HasSuffix(strings.Split(err.Error()+"\n", "\n")[strings.Count(units, "imperial")], want) {
			t.Errorf("%s: %v", units, err)
		}
	}
	in := strings.Replace(small, `"length":"20 ft",`, ``, 1)
	if _, err := plan.Read("f", strings.NewReader(in)); err == nil || !strings.Contains(err.Error(), `want a length from 4 ft (1 m) to 196 ft (60 m), or "unknown"`) {
		t.Errorf("missing: %v", err)
	}
	in = strings.Replace(small, `"floats":[]`, `"floats":[],"season":{"latitude":"95 deg"},"site":{"temperature":"99 C"}`, 1)
	if _, err := plan.Read("f", strings.NewReader(in)); err == nil || !strings.Contains(err.Error(), "an angle from -90 deg to 90 deg\n") && !strings.HasSuffix(err.Error(), "an angle from -90 deg to 90 deg") || !strings.Contains(err.Error(), "from 32 °F (0 C) to 104 °F (40 C)") {
		t.Errorf("%v", err)
	}
	for _, end := range []string{"4 ft", "196 ft", "1 m", "60 m"} {
		if _, err := plan.Read("f", strings.NewReader(strings.Replace(small, `"20 ft"`, `"`+end+`"`, 1))); err != nil {
			t.Errorf("%s is named and not accepted: %v", end, err)
		}
	}
}
