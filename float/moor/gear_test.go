package moor_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// Every row names its source and status, breaks at more than it works at, and
// grows with its size.
func TestGearTable(t *testing.T) {
	all, err := moor.Gears("")
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string]bool{}
	for _, g := range all {
		kinds[g.Kind] = true
		if g.Source == nil || g.Source.Status < measure.Memory || g.Source.Title == "" || !(g.Size > 0) || !(g.Break > g.Working) {
			t.Errorf("%+v", g)
		}
		for _, o := range all {
			if o.Kind == g.Kind && o.Size > g.Size && o.Break <= g.Break {
				t.Errorf("%s breaks at %g N, %s at %g N", o.Name, o.Break, g.Name, g.Break)
			}
		}
		found, err := moor.Lookup(g.Kind, strings.TrimSuffix(g.Name, " "+g.Kind))
		if err != nil || found.Break > g.Break {
			t.Errorf("%s: looked up %+v, %v", g.Name, found, err)
		}
	}
	if len(kinds) != 13 {
		t.Errorf("%d kinds: %v", len(kinds), kinds)
	}
}

// Two sources of one size: the weaker by default, both in the list.
func TestGearConflict(t *testing.T) {
	g, err := moor.Lookup("polypropylene 3-strand", "3/8")
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "3/8 in polypropylene", g.Break/measure.PoundForce, 2430, 1e-9)
	n := 0
	all, _ := moor.Gears("polypropylene 3-strand")
	for _, o := range all {
		if o.Size == g.Size {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d sources listed", n)
	}
	for size, want := range map[string]bool{"9.525 mm": true, " 3/8 in ": true, "3/8": true, "0.375": true, "2 in": false} {
		if _, err := moor.Lookup("polypropylene 3-strand", size); (err == nil) != want {
			t.Errorf("size %q: %v", size, err)
		}
	}
}

// The limit is breaking load times the weakest end and wetness over the design
// factor, and never above the printed working load.
func TestGearCheck(t *testing.T) {
	nylon, err := moor.Lookup("nylon 3-strand", "1/2 in")
	if err != nil {
		t.Fatal(err)
	}
	limit := func(g moor.Gear) float64 {
		c, err := g.Check(10)
		if err != nil || c.Verdict() != measure.Holds {
			t.Fatalf("%v, %v", c, err)
		}
		return c.Limit / measure.PoundForce
	}
	almost(t, "knotted, wet, 12", limit(nylon), 5750*0.5*0.85/12, 1e-9)
	splice, _ := moor.Factor("end of rope", "eye splice on thimble")
	knot, _ := moor.Factor("end of rope", "figure-eight knot")
	nylon.Ends = []measure.Factor{splice}
	almost(t, "spliced", limit(nylon), 5750*0.9*0.85/12, 1e-9)
	nylon.Ends = []measure.Factor{splice, knot}
	almost(t, "the weaker end", limit(nylon), 5750*0.65*0.85/12, 1e-9)
	nylon.Dry = true
	almost(t, "dry", limit(nylon), 5750*0.65/12, 1e-9)
	nylon.Design, _ = moor.Factor("design", "rope, mooring")
	almost(t, "not above the working load", limit(nylon), 525, 1e-9)

	wire, _ := moor.Lookup("wire rope 7x19 galvanized", "1/4 in")
	clips, _ := moor.Factor("end of wire rope", "wire rope clips")
	wire.Ends = []measure.Factor{clips}
	almost(t, "wire with clips", limit(wire), 7000*0.7/5, 1e-9)
	chain, _ := moor.Lookup("chain grade 30", "3/8")
	almost(t, "chain at four", limit(chain), 2650, 1e-9)
	chain43, _ := moor.Lookup("chain grade 43", "3/8")
	almost(t, "grade 43 breaks at three times", chain43.Break/measure.PoundForce, 3*5400, 1e-9)
	almost(t, "grade 43 over bends", limit(chain43), 3*5400/4., 1e-9)
	shackle, _ := moor.Lookup("shackle", "1/2")
	almost(t, "shackle", limit(shackle), 4000, 1e-9)
	c, err := shackle.Check(1e6)
	if err != nil || c.Verdict() != measure.Short || !strings.Contains(strings.Join(c.Notes, " "), "from memory") {
		t.Errorf("%v %q, %v", c, c.Notes, err)
	}
	own := moor.Gear{Name: "ring", Working: 900, Source: source}
	if c, err := own.Check(899); err != nil || c.Verdict() != measure.Holds || c.Limit != 900 {
		t.Errorf("%v, %v", c, err)
	}
	own = moor.Gear{Name: "ring", Break: 1000, Source: source}
	if c, err := own.Check(201); err != nil || c.Verdict() != measure.Short || c.Limit != 200 {
		t.Errorf("%v, %v", c, err)
	}
	poly, _ := moor.Lookup("polypropylene 3-strand", "1/2")
	if c, err := poly.Check(1); err != nil || !strings.Contains(strings.Join(c.Notes, " "), "sun") || len(c.Rests) != 1 {
		t.Errorf("%+v, %v", c, err)
	}
}

func TestGearRefuses(t *testing.T) {
	nan := math.NaN()
	good := moor.Gear{Name: "ring", Break: 1000, Source: source}
	for name, f := range map[string]func() error{
		"tension": func() error { _, err := good.Check(nan); return err },
		"break":   func() error { _, err := moor.Gear{Break: nan, Source: source}.Check(1); return err },
		"working": func() error { _, err := moor.Gear{Working: -1, Source: source}.Check(1); return err },
		"end": func() error {
			g := good
			g.Ends = []measure.Factor{{Name: "x", Value: 1.5}}
			_, err := g.Check(1)
			return err
		},
		"design": func() error { g := good; g.Design.Value = 0.5; _, err := g.Check(1); return err },
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, err := range map[string]error{
		"kind":   func() error { _, err := moor.Lookup("hemp", "1/2"); return err }(),
		"size":   func() error { _, err := moor.Lookup("chain grade 30", "9 in"); return err }(),
		"end":    func() error { _, err := moor.Factor("end of rope", "glue"); return err }(),
		"factor": func() error { _, err := moor.Factor("design", "hope"); return err }(),
	} {
		if !errors.Is(err, measure.ErrName) || !strings.Contains(err.Error(), "want") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := moor.Lookup("chain grade 30", "thick"); !errors.Is(err, measure.ErrSyntax) {
		t.Errorf("size in words: %v", err)
	}
	if c, err := (moor.Gear{}).Check(5); err != nil || c.Verdict() != measure.NoAnswer || !errors.Is(c.Err, measure.ErrUnknown) {
		t.Errorf("nothing known: %v, %v", c, err)
	}
}
