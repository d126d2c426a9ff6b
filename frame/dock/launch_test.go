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

func swappedDock(t *testing.T, name string, swaps ...string) *dock.Dock {
	t.Helper()
	d, err := dock.Read(name, strings.NewReader(demoText(t, name, swaps...)))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestLaunchCorners: the four heights lie in one plane about the dock's lowest corner,
// and a float full of water lowers the corner that it lies next to.
func TestLaunchCorners(t *testing.T) {
	for _, demo := range plan.Demos() {
		l, err := swappedDock(t, demo).Launch()
		if err != nil {
			t.Fatal(err)
		}
		c := l.Corners
		if flat := c[0].Height - c[1].Height + c[2].Height - c[3].Height; math.Abs(flat) > 1e-9 {
			t.Errorf("%s: corners %g m out of a plane", demo, flat)
		}
		low := check(t, demoReport(t, demo), "Water to the deck's lowest corner").Value
		least := math.Inf(1)
		for _, k := range c {
			least = min(least, k.Height)
			if !(k.Leak < k.Height) || !(k.Within > 0) || k.Float == "" {
				t.Errorf("%s: %+v", demo, k)
			}
		}
		if math.Abs(least-low) > 1e-9 {
			t.Errorf("%s: lowest corner %g m, on the sheet %g m", demo, least, low)
		}
	}
}

// TestLaunchGust: the wind's push grows with the square of its speed, so that twice
// the hands hold in a wind the square root of two times as fast.
func TestLaunchGust(t *testing.T) {
	two, err := swappedDock(t, "swim").Launch()
	if err != nil || two.Err != nil || two.Hands != 2 {
		t.Fatal(two, err)
	}
	four, err := swappedDock(t, "swim", `"stock": [`, `"shop": { "carriers": 4 }, "stock": [`).Launch()
	if err != nil || four.Hands != 4 {
		t.Fatal(four, err)
	}
	if got := four.Gust / two.Gust; math.Abs(got-math.Sqrt2) > 1e-9 {
		t.Errorf("four hands hold in %g times the wind of two", got)
	}
	// By hand: the side shows 24 ft x the deck's height over the water, in a gust at
	// 10 m brought down to its middle, with a drag of 1 to 2.
	l := two
	push := 200 / (0.5 * 1.25 * l.Gust * l.Gust * 24 * measure.Foot * l.Corners[0].Height)
	if push < 0.4 || push > 2 {
		t.Errorf("a drag, with the wind at that height, of %g", push)
	}
}

// TestIceAsked: the heavier the load the thicker the ice, a load that stands asks for
// more than one that passes, and nothing is ever answered.
func TestIceAsked(t *testing.T) {
	as := swappedDock(t, "swim").IceAsked()
	if len(as) != 4 {
		t.Fatalf("%d loads", len(as))
	}
	for i, a := range as {
		if a.Err != nil || !(a.Check.Limit > 0) || a.Check.Verdict() != measure.NoAnswer {
			t.Errorf("%s: %v, %v", a.Load, a.Check, a.Err)
		}
		if !(a.White > a.Check.Limit) || !(a.Thawed > a.White) {
			t.Errorf("%s: %g m of clear ice, %g with white ice on it, %g after a thaw", a.Load, a.Check.Limit, a.White, a.Thawed)
		}
		if i > 0 && (a.Mass < as[i-1].Mass || a.Check.Limit < as[i-1].Check.Limit) {
			t.Errorf("%s, %g kg: %g m after %g m", a.Load, a.Mass, a.Check.Limit, as[i-1].Check.Limit)
		}
	}
	// Two people ask for more than one (CCOHS, January 2005: 20 cm for two or three,
	// read), and a number that is not known, or less than a piece's carriers, asks for none.
	if u := swappedDock(t, "swim", `"mass": "670 lb", "people": 3`, `"mass": "670 lb", "people": 1`).IceAsked()[1]; !errors.Is(u.Err, measure.ErrRange) || u.Check.Limit > 0 {
		t.Errorf("one for a rim of three: %+v", u)
	}
	alone := as[0].Check.Limit
	if as[1].Check.Limit < 0.2-1e-9 || alone >= as[1].Check.Limit {
		t.Errorf("a crew of two: %g m, of one: %g m", as[1].Check.Limit, alone)
	}
	if u := swappedDock(t, "swim", `"mass": "670 lb", "people": 3`, `"mass": "670 lb", "people": "unknown"`).IceAsked()[1]; !errors.Is(u.Err, measure.ErrUnknown) {
		t.Errorf("a crew of unknown number: %+v", u)
	}
	if as := swappedDock(t, "swim", `"crossing": { "mass": "670 lb", "people": 3 }`, `"crossing": { "mass": "unknown", "people": 3 }`).IceAsked(); as[1].Err == nil {
		t.Errorf("a crew of unknown weight: %+v", as[1])
	}
}

// TestRegressionPlateCapsized: where the dock turns over with everyone in a corner, the
// number there was that of no number.
func TestRegressionPlateCapsized(t *testing.T) {
	d := swappedDock(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 30, "mass": "185 lb"`)
	e, err := d.Envelope(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	p, err := d.Plate(e)
	if err != nil || p.People != 0 || p.Limit == "" {
		t.Errorf("thirty in a corner: %+v, %v", p, err)
	}
}

// TestMend: whatever is short says how it is mended, and nothing else does.
func TestMend(t *testing.T) {
	short := 0
	for _, name := range []string{"swim", "work"} {
		for _, topic := range demoReport(t, name).Topics {
			for _, c := range topic.Checks {
				mended := false
				for _, n := range c.Notes {
					mended = mended || strings.HasPrefix(n, "usual ways out: ")
				}
				if mended != (c.Verdict() == measure.Short) {
					t.Errorf("%s: %s is %v, mended: %v", name, c.Name, c.Verdict(), mended)
				}
				if mended {
					short++
				}
			}
		}
	}
	if short < 5 {
		t.Errorf("only %d are short", short)
	}
}

// Within does not reach past half of the way to a float full of water, so that the tape
// tells the one from the other: on a small dock on many drums it would.
func TestWithinHalfOfTheLeak(t *testing.T) {
	capped := 0
	for _, size := range [][2]float64{{12, 8}, {16, 8}, {24, 10}, {40, 12}} {
		text, err := plan.Start{Length: size[0] * measure.Foot, Width: size[1] * measure.Foot, Girth: 73 * measure.Inch, Long: 35 * measure.Inch, Mass: 23 * measure.Pound}.JSON()
		if err != nil {
			t.Fatal(err)
		}
		d, err := dock.Read("new", strings.NewReader(string(text)))
		if err != nil {
			t.Fatal(err)
		}
		l, err := d.Launch()
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range l.Corners {
			half := (c.Height - c.Leak) / 2
			if !(c.Within > 0) || half > 0 && c.Within > half {
				t.Errorf("%v: %+v", size, c)
			}
			if c.Within == half {
				capped++
			}
		}
	}
	if capped == 0 {
		t.Error("no corner of these is so near to its leak")
	}
}
