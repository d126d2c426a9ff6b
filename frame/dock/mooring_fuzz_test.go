package dock_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

const noHinge = `"hinged_to": "nothing", "has_ramp": "no", "hauled_out": "no"`

const allThere = `"hinged_to": "pier", "hinge": { "edge": "far side", "pins": 3, "width": "8 ft", "diameter": "1 in", "plate": "1/2 in", "height": "12 in", "neighbour_height": "14 in", "pin_breaks": "9000 lbf" },
    "has_ramp": "yes", "ramp": { "length": "12 ft", "mass": "200 lb", "shore_height": "4 ft" },
    "hauled_out": "yes", "haul_out": { "slope": "10 deg", "parts": 2, "kind": "nylon 3-strand", "size": "7/8 in", "holding": "20000 lbf" }`

// paths returns every field that the two topics know, in the first and second item
// of each list.
func paths() []string {
	var out []string
	for _, e := range plan.Explain() {
		if !strings.HasPrefix(e.Path, "mooring.") && !strings.HasPrefix(e.Path, "local.") && !strings.HasPrefix(e.Path, "site.") {
			continue
		}
		for _, i := range []string{"[1]", "[2]"} {
			out = append(out, strings.ReplaceAll(e.Path, "[]", i))
		}
	}
	return out
}

func topics(d *dock.Dock) []measure.Check { return append(dock.Mooring(d), dock.Local(d)...) }

// Knowing less of the mooring never turns a check that was short, or had no answer,
// into one that holds, and the checks stay the same ones.
func TestUnknownMooringNeverImproves(t *testing.T) {
	if testing.Short() {
		t.Skip("a report for each field takes its time")
	}
	for _, swap := range [][]string{
		nil,
		{`"wind_speed": "25 mph"`, `"wind_speed": "70 mph"`, noHinge, allThere},
		{
			`"kind": "tested", "mass": "28 lb", "holding": "3600 lbf", "steepest": "20 deg" }`, `"kind": "dead weight", "material": "steel", "mass": "400 lb", "bottom": "sand" }`,
			`"current": "0 mph"`, `"current": "3 mph", "current_to": "200 deg", "fetch": { "n": "2 mi", "ne": "2 mi", "e": "5 mi", "se": "2 mi", "s": "2 mi", "sw": "2 mi", "w": "2 mi", "nw": "2 mi" }`,
			`"depth": "9 ft",
    "shore`, `"depth": "3 ft",
    "shore`, `"most_reach": "100 ft"`, `"most_reach": "10 ft"`, `"flotation_rule": "any"`, `"flotation_rule": "no drums"`,
		},
	} {
		p, err := plan.Read("base", strings.NewReader(demoText(t, "swim", swap...)))
		if err != nil {
			t.Fatal(err)
		}
		d, err := dock.Build(p)
		if err != nil {
			t.Fatal(err)
		}
		before := topics(d)
		for _, path := range paths() {
			q, err := p.Vary(path, "unknown")
			if errors.Is(err, measure.ErrName) {
				continue // a list or an object
			}
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			if d, err = dock.Build(q); err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			now := topics(d)
			if len(now) != len(before) {
				t.Fatalf("%s: %d checks, %d before", path, len(now), len(before))
			}
			for i, c := range now {
				if before[i].Verdict() != measure.Holds && c.Verdict() == measure.Holds {
					t.Errorf("%s unknown: %v, was %v", path, c, before[i])
				}
			}
		}
	}
}

// Whatever one field says, every check has numbers and a rule, or says why not.
func FuzzMooring(f *testing.F) {
	all := paths()
	for i := range all {
		f.Add(uint(i), "0 mph")
		f.Add(uint(i), "1e5 m")
	}
	f.Add(uint(0), "149 mph")
	f.Fuzz(func(t *testing.T, at uint, value string) {
		p, err := plan.Read("swim", strings.NewReader(demoText(t, "swim", noHinge, allThere)))
		if err != nil {
			t.Fatal(err)
		}
		if p, err = p.Vary(all[at%uint(len(all))], value); err != nil {
			return
		}
		d, err := dock.Build(p)
		if err != nil {
			return
		}
		for _, c := range topics(d) {
			if c.Err == nil && (c.Rule == nil || math.IsNaN(c.Value+c.Limit) || math.IsInf(c.Value+c.Limit, 0)) {
				t.Errorf("%s: value %g, limit %g, rule %v and no error", c.Name, c.Value, c.Limit, c.Rule)
			}
		}
	})
}
