package svg_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/internal/svg"
)

// TestNoOverlap fills sheets with texts of all kinds where they want to stand on
// one another, and finds none over another.
func TestNoOverlap(t *testing.T) {
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 1))
		d := svg.New("s", "s", "s", 240, 200)
		v := svg.Fit(0, 0, 10, 6, svg.Box{40, 60, 200, 140})
		for range 5 {
			a, b := v.At(10*r.Float64(), 6*r.Float64()), v.At(10*r.Float64(), 6*r.Float64())
			d.Across(a.X, b.X, a.Y, b.Y, "12 ft 6-1/2 in", svg.TextStyle{Size: svg.Small})
			d.Upright(a.Y, b.Y, a.X, b.X, "7-1/4 in", svg.TextStyle{Size: svg.Small})
			d.Leader(a, 6, "a swim ladder", svg.TextStyle{Size: svg.Small, Bold: true})
			d.BlockLine(a, b)
		}
		var marks []svg.Mark
		for range 14 {
			marks = append(marks, svg.Mark{At: v.At(10*r.Float64(), 0).X, Text: "23 ft 10-1/2 in"})
		}
		d.RunningX(marks, 150, 158, 20, 220, svg.TextStyle{Size: svg.Small})
		apart(t, d)
		text, err := d.SVG()
		if err != nil {
			t.Fatal(seed, err)
		}
		wellFormed(t, text)
	}
}

// TestOverlapIsSeen proves that the check of the tests can fail.
func TestOverlapIsSeen(t *testing.T) {
	d := svg.New("s", "s", "s", 100, 100)
	a := d.Text(svg.Point{50, 50}, "one", svg.TextStyle{})
	b := d.Text(svg.Point{52, 51}, "two", svg.TextStyle{})
	if !a.Overlaps(b) || d.Free(b) {
		t.Error("two texts on one place are taken for apart")
	}
	if c := (svg.Box{a.X1, a.Y0, a.X1 + 5, a.Y1}); a.Overlaps(c) {
		t.Error("neighbours that touch are taken for overlapping")
	}
	if d.Free(svg.Box{-1, 0, 5, 5}) || !d.Free(svg.Box{0, 0, 5, 5}) {
		t.Error("the edge of the sheet")
	}
}

// TestPlacePrefers: a free spot in order, else past what is blocked, else beside.
func TestPlacePrefers(t *testing.T) {
	d := svg.New("s", "s", "s", 60, 40)
	spots := []svg.Spot{{At: svg.Point{20, 20}}, {At: svg.Point{40, 20}}}
	first := d.Place("abc", spots...)
	second := d.Place("abc", spots...)
	third := d.Place("abc", spots...)
	if first != svg.TextBox(spots[0].At, "abc", svg.TextStyle{}) || second != svg.TextBox(spots[1].At, "abc", svg.TextStyle{}) {
		t.Errorf("%v, %v are not the spots", first, second)
	}
	if math.Hypot(third.X0-first.X0, third.Y0-first.Y0) > 2*(first.Y1-first.Y0) {
		t.Errorf("the third went far: %v", third)
	}
	d = svg.New("s", "s", "s", 60, 40)
	d.Block(svg.Box{0, 0, 40, 40})
	if b := d.Place("abc", spots[0]); b.X0 < 40 {
		t.Errorf("a text over what is blocked: %v", b)
	}
	d.Block(svg.Box{0, 0, 60, 40})
	d.Place("abc", spots[0])
	if d.Err() != nil {
		t.Errorf("no text on a sheet that is all blocked: %v", d.Err())
	}
	for range 200 {
		d.Place("abc", spots[0])
	}
	if !errors.Is(d.Err(), svg.ErrRoom) {
		t.Errorf("200 texts found room: %v", d.Err())
	}
	apart(t, d)
}

func TestSpread(t *testing.T) {
	for _, c := range []struct {
		at, want []float64
		lo, hi   float64
	}{
		{nil, nil, 0, 1},
		{[]float64{5}, []float64{5}, 0, 10},
		{[]float64{-5}, []float64{1}, 0, 10},
		{[]float64{99}, []float64{9}, 0, 10},
		{[]float64{2, 8}, []float64{2, 8}, 0, 10},
		{[]float64{5, 5}, []float64{4, 6}, 0, 10},                             // each half the way
		{[]float64{5, 5, 5}, []float64{3, 5, 7}, 0, 10},                       //
		{[]float64{8, 5, 8}, []float64{7, 5, 9}, 0, 10},                       // order of the list, not of the items
		{[]float64{0, 0, 9}, []float64{1, 3, 9}, 0, 10},                       // held by the edge
		{[]float64{10, 12.1, 12.1}, []float64{9.4, 11.4, 13.4}, 0, 30},        // a run of two pushes a third
		{[]float64{4, 4.5, 6, 6.5}, []float64{2.25, 4.25, 6.25, 8.25}, 0, 10}, // one run
	} {
		size := slices.Repeat([]float64{2}, len(c.at))
		got, ok := svg.Spread(c.at, size, c.lo, c.hi)
		if !ok || len(got) != len(c.want) {
			t.Errorf("%v: %v, %v", c.at, got, ok)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12 {
				t.Errorf("%v: got %v, want %v", c.at, got, c.want)
				break
			}
		}
	}
	if _, ok := svg.Spread([]float64{1, 2, 3}, []float64{2, 2, 2}, 0, 5); ok {
		t.Error("6 fit in 5")
	}
	if _, ok := svg.Spread([]float64{1, 2, 3}, []float64{2, 2, 2}, 0, 6); !ok {
		t.Error("6 do not fit in 6")
	}
}

// FuzzSpread: whatever the places, the items keep their order, stay inside and
// do not overlap; and no pair could move back together.
func FuzzSpread(f *testing.F) {
	f.Add(1.0, 2.0, 2.1, 9.0, 1.5)
	f.Add(5.0, 5.0, 5.0, 5.0, 2.0)
	f.Add(-80.0, 80.0, 0.0, 3.0, 0.5)
	f.Fuzz(func(t *testing.T, a, b, c, e, size float64) {
		at := []float64{a, b, c, e}
		for _, x := range append(at, size) {
			if !(math.Abs(x) < 1e6) {
				t.Skip()
			}
		}
		size = math.Abs(size)
		got, ok := svg.Spread(at, slices.Repeat([]float64{size}, 4), -100, 100)
		if ok != (4*size <= 200+1e-9) {
			t.Fatalf("size %g: %v", size, ok)
		}
		if !ok {
			return
		}
		for i := range at {
			if got[i] < -100+size/2-1e-6 || got[i] > 100-size/2+1e-6 {
				t.Errorf("%v outside", got)
			}
			for j := range at {
				if at[i] < at[j] && got[j]-got[i] < size-1e-6 {
					t.Errorf("%v, size %g from %v", got, size, at)
				}
			}
		}
	})
}

func TestFold(t *testing.T) {
	o := svg.TextStyle{}
	const text = "Both diagonals are equal when the frame is square; ÄÖÜ pneumonoultramicroscopicsilicovolcanoconiosis"
	for _, width := range []float64{0, 1, 12, 40, 80, 1000} {
		lines := svg.Fold(text, width, o)
		for _, l := range lines {
			if svg.Width(l, o) > width && len([]rune(l)) > 1 {
				t.Errorf("%q is wider than %g", l, width)
			}
		}
		if got := strings.Join(lines, ""); strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(text, " ", "") {
			t.Errorf("%g: letters were lost: %q", width, lines)
		}
	}
	if got := svg.Shorten("swim ladder", 100, o); got != "swim ladder" {
		t.Error(got)
	}
	if got := svg.Shorten("swim  ladder of the north shore", 30, o); !strings.HasSuffix(got, "...") || svg.Width(got, o) > 30 {
		t.Error(got, svg.Width(got, o))
	}
}

// TestWidth holds the table of widths against the widths of the two faces that
// set the wider of the common ones (computed independently by a browser from
// the faces DejaVu Sans and Liberation Sans, in thousandths of the size).
func TestWidth(t *testing.T) {
	for text, want := range map[string]struct{ plain, bold float64 }{
		"W":      {989, 1103},
		"M":      {863, 995},
		"i":      {278, 343},
		"0":      {636, 696},
		" ":      {318, 348},
		"?":      {556, 611},
		"é":      {615, 678},
		"æ":      {982, 1048},
		"Ж":      {1077, 1224},
		"²":      {401, 438},
		"\u0301": {0, 0},
	} {
		line := "n" + text + "n" // white space at the ends is dropped
		for _, o := range []svg.TextStyle{{Size: 1000}, {Size: 1000, Bold: true}} {
			have, least := svg.Width(line, o)-svg.Width("nn", o), want.plain
			if o.Bold {
				least = want.bold
			}
			if have < least || have > 1.4*least+200 {
				t.Errorf("%q bold %v: %.0f for %.0f", text, o.Bold, have, least)
			}
		}
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		lo, hi float64
		n      int
		want   string
	}{
		{0, 10, 5, "0 2 4 6 8 10"},
		{0, 1, 5, "0.0 0.2 0.4 0.6 0.8 1.0"},
		{-0.3, 0.3, 6, "-0.3 -0.2 -0.1 0.0 0.1 0.2 0.3"},
		{3, 3, 5, ""},
		{0, math.NaN(), 5, ""},
		{0, math.Inf(1), 5, ""},
		{0, 1, 0, ""},
		{0, 12345, 4, "0 5000 10000"},
		{17, 23, 3, "18 20 22"},
	} {
		var got []string
		for _, tick := range svg.Ticks(c.lo, c.hi, c.n) {
			got = append(got, tick.Text)
			var x float64
			if fmt.Sscan(tick.Text, &x); math.Abs(x-tick.At) > 1e-9 {
				t.Errorf("%q stands at %g", tick.Text, tick.At)
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%g to %g: %q, want %q", c.lo, c.hi, s, c.want)
		}
	}
}

func TestPlot(t *testing.T) {
	d := svg.New("p", "p", "p", 120, 80)
	x := svg.Axis{Lo: 0, Hi: 30, Ticks: svg.Ticks(0, 30, 40), Title: "heel, deg"}
	y := svg.Axis{Lo: -5, Hi: 5, Ticks: svg.Ticks(-5, 5, 5), Title: "moment, lbf·ft"}
	p := d.Plot(svg.Box{20, 10, 110, 60}, x, y)
	if at := p.At(30, 5); math.Hypot(at.X-110, at.Y-10) > 1e-9 {
		t.Errorf("the corner lies at %v", at)
	}
	if p.Box() != (svg.Box{20, 10, 110, 60}) {
		t.Error(p.Box())
	}
	p.Curve([]float64{0, 15, 30}, []float64{0, 4, 0}, svg.Curve)
	p.Curve(nil, nil, svg.Curve)
	p.Band([]float64{0, 15, 30}, []float64{0, 2, 0}, []float64{1, 4, 3}, svg.Style{Fill: svg.Pale})
	p.Level(3, svg.Hidden)
	p.Upright(12, svg.Hidden)
	d.Place("the curve", svg.Spot{At: p.At(15, 4)})
	apart(t, d)
	text, err := d.SVG()
	if err != nil {
		t.Fatal(err)
	}
	if n := wellFormed(t, text); n["clipPath"] != 4 {
		t.Errorf("%d clips", n["clipPath"])
	}
	if len(d.Labels()) >= 40+5+2 || len(d.Labels()) < 15 {
		t.Errorf("%d texts for axes with crowded ticks", len(d.Labels()))
	}
	last := d.Labels()[len(d.Labels())-1].Box
	if p.At(15, 4).Y > last.Y0 && p.At(15, 4).Y < last.Y1 {
		t.Error("the text lies on the curve")
	}
}
