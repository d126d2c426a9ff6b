package action_test

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.org/floewright/ice/action"
	"example.org/floewright/lumber/measure"
)

func TestCheck(t *testing.T) {
	c := action.Cover{Thickness: 0.3}
	lift, err := c.Uplift(drum, -0.05)
	if err != nil {
		t.Fatal(err)
	}
	wall, err := c.Wall(0.02, action.Span{})
	if err != nil {
		t.Fatal(err)
	}
	push, err := action.Drift{Wind: 10, Reach: 1000, Face: action.Face{Width: 3}, Cover: c}.Push()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range []struct {
		name  string
		high  float64
		kind  measure.Kind
		check func(string, float64) (measure.Check, error)
	}{
		{"body", lift.Force.High, measure.Force, lift.Check},
		{"wall", wall.Force.High, measure.LineLoad, wall.Check},
		{"push", push.Force.High, measure.Force, push.Check},
	} {
		holds, err := k.check(k.name, k.high)
		if err != nil || holds.Verdict() != measure.Holds || holds.Kind != k.kind || !strings.HasPrefix(holds.Words(), "not ruled out by ") || len(holds.Rests) < 2 {
			t.Errorf("%s, capacity as the force: %v, %v", k.name, holds, err)
		}
		if strings.Contains(strings.Join(holds.Notes, "\n"), "expect loss") {
			t.Errorf("%s: a check that is not short expects loss", k.name)
		}
		short, err := k.check(k.name, k.high*0.999)
		if err != nil || short.Verdict() != measure.Short || short.Notes[0] != "slack the lines, cut it free, or expect loss" {
			t.Errorf("%s, capacity below the force: %v, %q, %v", k.name, short, short.Notes, err)
		}
		none, err := k.check(k.name, nan)
		if err != nil || none.Verdict() != measure.NoAnswer || !errors.Is(none.Err, measure.ErrUnknown) {
			t.Errorf("%s, capacity unknown: %v, %v", k.name, none, err)
		}
		for _, x := range []float64{-1, inf, -inf} {
			if bad, err := k.check(k.name, x); err == nil || bad.Verdict() != measure.NoAnswer {
				t.Errorf("%s, capacity %g: %v, %v", k.name, x, bad, err)
			}
		}
	}
}

// What could not be computed has no answer and carries why; only malformed data
// is an error.
func TestCheckOfFailures(t *testing.T) {
	for _, c := range []struct {
		thickness float64
		class     error
		malformed bool
	}{{nan, measure.ErrUnknown, false}, {4, measure.ErrRange, false}, {-1, measure.ErrRange, true}, {inf, measure.ErrRange, true}, {0, measure.ErrRange, true}} {
		cover := action.Cover{Thickness: c.thickness}
		lift, _ := cover.Uplift(drum, 0.1)
		wall, _ := cover.Wall(0.1, action.Span{})
		push, _ := action.Drift{Wind: 10, Reach: 100, Face: action.Face{Width: 3}, Cover: cover}.Push()
		for i, check := range []func(string, float64) (measure.Check, error){lift.Check, wall.Check, push.Check} {
			got, err := check("line", 1e9)
			if got.Verdict() != measure.NoAnswer || !errors.Is(got.Err, c.class) || (err != nil) != c.malformed {
				t.Errorf("check %d, thickness %g: %v, %v", i, c.thickness, got, err)
			}
		}
	}
	for _, check := range []func(string, float64) (measure.Check, error){action.Lift{}.Check, action.Push{}.Check} {
		if got, err := check("", 1); err != nil || got.Verdict() != measure.NoAnswer {
			t.Errorf("zero value: %v, %v", got, err)
		}
	}
}

// permission is every word that would read as one.
var permission = regexp.MustCompile(`(?i)\bgo(es|ing)?\b|safe|\ballow(s|ed|able|ance)?\b|\bok(ay)?\b`)

// Nothing that the package prints reads as a permission.
func TestWords(t *testing.T) {
	var texts []string
	add := func(xs ...any) {
		for _, x := range xs {
			switch x := x.(type) {
			case *measure.Source:
				texts = append(texts, x.String())
			case action.Span:
				texts = append(texts, x.Name, x.Source.String())
			case measure.Check:
				texts = append(texts, x.String(), x.Words(), x.Name, strings.Join(x.Notes, "\n"), fmt.Sprint(x.Rests))
			default:
				texts = append(texts, fmt.Sprint(x))
			}
		}
	}
	for _, x := range action.Thrusts() {
		add(x.Of, x.Printed, x.Applies, x.Source)
		_, err := x.On(-1, nan)
		add(err)
	}
	air, water := action.Drags()
	for _, s := range append(air, water...) {
		add(s)
	}
	for _, a := range action.Autumn() {
		add(a.Text, a.Publisher, a.Status)
	}
	for _, m := range []string{"wood", "steel", "aluminium", "polyethylene", "x"} {
		s, err := action.Adhesion(m, 0.3, 0.3)
		add(s, err)
		_, err = action.Adhesion(m, 30, 0.3)
		add(err)
	}
	for _, h := range []float64{nan, -1, 0.3, 9} {
		c := action.Cover{Thickness: h}
		for _, b := range []action.Body{drum, {Length: 1, Smooth: true}, {Length: 50}, {Length: 0.3, Smooth: true, Bond: one(1e5)}} {
			for _, level := range []float64{-0.1, 0.1} {
				l, err := c.Uplift(b, level)
				add(l.Notes, l.Rests, l.Force, l.Elastic, l.Moment, l.Crack, err)
				for _, limit := range []float64{0, 1e9, nan, -1} {
					check, err := l.Check("line", limit)
					add(check, err)
				}
				g, err := c.Grip(b, level, 2)
				add(g.Notes, g.Sideways, g.Squeeze, g.BracketUp, err)
			}
		}
		for _, slope := range []float64{0, 0.5, 1.5} {
			p, err := action.Drift{Wind: 9, Current: 0.1, Reach: 100, Face: action.Face{Width: 3, Slope: slope}, Cover: c}.Push()
			add(p.Notes, p.Rests, p.Caps, p.Force, p.Drive, err)
			check, err := p.Check("line", 1)
			add(check, err)
		}
	}
	s, err := action.ShortWall(5)
	add(s, err)
	if len(texts) < 300 {
		t.Fatalf("only %d texts", len(texts))
	}
	for _, x := range texts {
		if m := permission.FindString(x); m != "" {
			t.Errorf("%q in %q", m, x)
		}
	}
	if !permission.MatchString("Dam Safety") || permission.MatchString("governed") {
		t.Error("the pattern does not see what it should")
	}
}

// A body of no size is refused, not divided by.
func TestBodyOfNoSize(t *testing.T) {
	c := action.Cover{Thickness: 0.3}
	b := action.Body{Length: 1e-300, Breadth: 5e-324}
	if u, err := c.Uplift(b, 0.05); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%+v, %v", u, err)
	}
	if g, err := c.Grip(b, 0.05, 4); !errors.Is(err, measure.ErrRange) {
		t.Errorf("%+v, %v", g, err)
	}
}

// TestAutumnInOneSystem: restated, no caution has a unit of the other system, or one
// temperature twice.
func TestAutumnInOneSystem(t *testing.T) {
	twice := regexp.MustCompile(`°[FC],? \(?-?\d+(\.\d)? °[FC]`)
	other := map[measure.System]*regexp.Regexp{
		measure.US: regexp.MustCompile(`\d (m|mm|kg|°C)\b`), measure.SI: regexp.MustCompile(`\d (ft|in|lb|°F)\b`),
	}
	for _, c := range action.Autumn() {
		for s, units := range other {
			if text := measure.Restate(c.Text, s); twice.MatchString(text) || units.MatchString(text) {
				t.Errorf("%v: %s", s, text)
			}
		}
	}
}
