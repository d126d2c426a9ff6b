package svg_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"example.org/floewright/internal/svg"
)

// wellFormed reads a text as XML to its end and returns how often each element
// occurs.
func wellFormed(t testing.TB, text string) map[string]int {
	t.Helper()
	n := map[string]int{}
	ids := map[string]bool{}
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		if err != nil {
			t.Fatalf("no XML: %v\n%s", err, text)
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		n[e.Name.Local]++
		seen := map[string]bool{}
		for _, a := range e.Attr {
			if seen[a.Name.Local] {
				t.Errorf("attribute %s twice on %s", a.Name.Local, e.Name.Local)
			}
			seen[a.Name.Local] = true
			if a.Name.Local == "id" {
				if ids[a.Value] {
					t.Errorf("id %q twice", a.Value)
				}
				ids[a.Value] = true
			}
			for _, bad := range []string{"NaN", "Inf", "-0 ", "-0.00", "e+"} {
				if strings.Contains(a.Value+" ", bad) && a.Name.Local != "id" {
					t.Errorf("%s=%q on %s", a.Name.Local, a.Value, e.Name.Local)
				}
			}
		}
	}
}

// apart fails where two texts overlap or one leaves the sheet.
func apart(t testing.TB, d *svg.Drawing) {
	t.Helper()
	w, h := d.Size()
	labels := d.Labels()
	for i, a := range labels {
		if !a.Box.Inside(svg.Box{X1: w, Y1: h}) {
			t.Errorf("%q leaves the sheet: %+v", a.Text, a.Box)
		}
		for _, b := range labels[:i] {
			if a.Box.Overlaps(b.Box) {
				t.Errorf("%q lies over %q", a.Text, b.Text)
			}
		}
	}
}

func TestElements(t *testing.T) {
	d := svg.New("all", "Every <element>", `Says "what" & why`, 100, 80)
	d.Line(svg.Point{1, 2}, svg.Point{3, -0.0001}, svg.Dimension)
	d.Polyline(svg.Curve, svg.Point{1, 2}, svg.Point{3, 4}, svg.Point{5, 6})
	d.Polyline(svg.Curve, svg.Point{1, 2})
	d.Polygon(svg.Style{svg.Outline, svg.Wood}, svg.Point{1, 2}, svg.Point{3, 4}, svg.Point{5, 6})
	for _, f := range []svg.Fill{svg.Open, svg.White, svg.Black, svg.Pale, svg.Waste, svg.Ground} {
		d.Rect(svg.Box{9, 8, 1, 2}, svg.Style{svg.NoLine, f})
	}
	d.Circle(svg.Point{50, 40}, 3, svg.Style{svg.Hidden, svg.White})
	d.Arc(svg.Point{50, 40}, 5, 0, 4, svg.Centre)
	d.Arrow(svg.Point{0, 0}, svg.Point{10, 0}, svg.Outline)
	d.Arrow(svg.Point{0, 0}, svg.Point{1, 0}, svg.Outline)
	d.Group()
	d.Clip(svg.Box{0, 0, 50, 50})
	d.Circle(svg.Point{50, 40}, 0, svg.Style{})
	d.End()
	d.End()
	d.Text(svg.Point{50, 70}, " 5 < 6 & \x00 \xff\n7 ", svg.TextStyle{})
	d.Text(svg.Point{5, 70}, "up", svg.TextStyle{Up: true, Bold: true, Anchor: svg.Start})
	d.Text(svg.Point{95, 70}, "end", svg.TextStyle{Anchor: svg.End, Size: svg.Small})
	d.Text(svg.Point{95, 70}, " ", svg.TextStyle{})
	d.Path(&svg.Path{}, svg.Style{})
	text, err := d.SVG()
	if err != nil {
		t.Fatal(err)
	}
	n := wellFormed(t, text)
	for name, want := range map[string]int{
		"svg": 1, "title": 1, "desc": 1, "line": 3, "polyline": 1, "polygon": 1, "rect": 1 + 6 + 1 + 3,
		"circle": 2, "path": 2 + 3, "g": 2, "clipPath": 1, "pattern": 3, "text": 3,
	} {
		if n[name] != want {
			t.Errorf("%d of %s, want %d\n%s", n[name], name, want, text)
		}
	}
	for _, want := range []string{
		`role="img"`, `aria-labelledby="all-title all-desc"`, `Every &lt;element&gt;`, `viewBox="0 0 100 80"`, `y2="0"`, "5 &lt; 6 &amp; \uFFFD \uFFFD 7",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
	again, _ := d.SVG()
	if again != text {
		t.Error("a second writing differs")
	}
}

// TestRefuses shows that each number and each misuse that no drawing can hold is
// an error and leaves nothing behind.
func TestRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(-1)
	for name, draw := range map[string]func(d *svg.Drawing){
		"line":       func(d *svg.Drawing) { d.Line(svg.Point{nan, 0}, svg.Point{}, svg.Outline) },
		"far":        func(d *svg.Drawing) { d.Line(svg.Point{2e6, 0}, svg.Point{}, svg.Outline) },
		"polyline":   func(d *svg.Drawing) { d.Polyline(svg.Outline, svg.Point{0, inf}, svg.Point{}) },
		"rect":       func(d *svg.Drawing) { d.Rect(svg.Box{0, 0, inf, 1}, svg.Style{}) },
		"circle":     func(d *svg.Drawing) { d.Circle(svg.Point{}, nan, svg.Style{}) },
		"radius":     func(d *svg.Drawing) { d.Circle(svg.Point{}, -1, svg.Style{}) },
		"arc":        func(d *svg.Drawing) { d.Arc(svg.Point{}, 1, 0, nan, svg.Outline) },
		"arrow":      func(d *svg.Drawing) { d.Arrow(svg.Point{}, svg.Point{nan, 1}, svg.Outline) },
		"text":       func(d *svg.Drawing) { d.Text(svg.Point{nan, 1}, "x", svg.TextStyle{}) },
		"size":       func(d *svg.Drawing) { d.Text(svg.Point{1, 1}, "x", svg.TextStyle{Size: math.Inf(1)}) },
		"clip":       func(d *svg.Drawing) { d.Clip(svg.Box{nan, 0, 1, 1}) },
		"open":       func(d *svg.Drawing) { d.Group() },
		"close":      func(d *svg.Drawing) { d.End() },
		"place":      func(d *svg.Drawing) { d.Place("x", svg.Spot{At: svg.Point{nan, 1}}) },
		"leader":     func(d *svg.Drawing) { d.Leader(svg.Point{nan, 1}, 5, "x", svg.TextStyle{}) },
		"across":     func(d *svg.Drawing) { d.Across(nan, 1, 1, 1, "x", svg.TextStyle{}) },
		"upright":    func(d *svg.Drawing) { d.Upright(1, 2, nan, 1, "x", svg.TextStyle{}) },
		"running":    func(d *svg.Drawing) { d.RunningX([]svg.Mark{{nan, "x"}}, 1, 9, 0, 90, svg.TextStyle{}) },
		"no room":    func(d *svg.Drawing) { d.RunningY(make([]svg.Mark, 30), 1, 9, 0, 90, svg.TextStyle{}) },
		"axis":       func(d *svg.Drawing) { d.Plot(svg.Box{20, 20, 80, 80}, svg.Axis{Lo: nan}, svg.Axis{Hi: 1}) },
		"empty axis": func(d *svg.Drawing) { d.Plot(svg.Box{20, 20, 80, 80}, svg.Axis{Lo: 1, Hi: 1}, svg.Axis{Hi: 1}) },
		"curve": func(d *svg.Drawing) {
			d.Plot(svg.Box{20, 20, 80, 80}, svg.Axis{Hi: 1}, svg.Axis{Hi: 1}).Curve([]float64{1}, []float64{nan}, svg.Curve)
		},
		"lengths": func(d *svg.Drawing) {
			d.Plot(svg.Box{20, 20, 80, 80}, svg.Axis{Hi: 1}, svg.Axis{Hi: 1}).Band([]float64{1}, []float64{1, 2}, []float64{1}, svg.Style{})
		},
		"full": func(d *svg.Drawing) { d.Place(strings.Repeat("wide ", 50), svg.Spot{}) },
	} {
		t.Run(name, func(t *testing.T) {
			d := svg.New("x", "x", "x", 100, 100)
			draw(d)
			text, err := d.SVG()
			if err == nil || text != "" {
				t.Fatalf("no error, but %s", text)
			}
			if d.Err() != err {
				t.Errorf("Err is %v, SVG said %v", d.Err(), err)
			}
			d.Line(svg.Point{}, svg.Point{1, 1}, svg.Outline)
			if _, again := d.SVG(); again != err {
				t.Errorf("the first error was lost: %v", again)
			}
		})
	}
	for _, d := range []*svg.Drawing{
		svg.New("", "x", "x", 1, 1), svg.New("1a", "x", "x", 1, 1), svg.New("A", "x", "x", 1, 1), svg.New("a\"", "x", "x", 1, 1),
		svg.New("a", " ", "x", 1, 1), svg.New("a", "x", "x", 0, 1), svg.New("a", "x", "x", math.NaN(), 1),
	} {
		if _, err := d.SVG(); err == nil {
			t.Error("a bad drawing has no error")
		}
	}
}

func TestFit(t *testing.T) {
	b := svg.Box{10, 20, 110, 60}
	for _, c := range []struct{ x0, y0, x1, y1, scale float64 }{
		{0, 0, 10, 1, 10}, {0, 0, 1, 10, 4}, {-1, 0, 1, 0, 50}, {2, 1, 2, 5, 10}, {3, 3, 3, 3, 40},
	} {
		v := svg.Fit(c.x0, c.y0, c.x1, c.y1, b)
		if math.Abs(v.Scale-c.scale) > 1e-12 {
			t.Errorf("%v: scale %g, want %g", c, v.Scale, c.scale)
		}
		mid := v.At((c.x0+c.x1)/2, (c.y0+c.y1)/2)
		if math.Hypot(mid.X-60, mid.Y-40) > 1e-9 {
			t.Errorf("%v: the middle lies at %v", c, mid)
		}
		if got := v.Box(c.x1, c.y1, c.x0, c.y0); !got.Inside(b) {
			t.Errorf("%v: %v leaves %v", c, got, b)
		}
		if up := v.At(c.x0, c.y0+1); up.Y >= v.At(c.x0, c.y0).Y {
			t.Error("up is not up")
		}
	}
}

func FuzzDrawing(f *testing.F) {
	f.Add("title", "a label", 10.0, 20.0, 30.0, 3)
	f.Add("\x00\xff<&", "]]>\"'", math.NaN(), math.Inf(1), -1e300, 200)
	f.Add("x", "wide wide wide", 99.0, 99.0, 1e-300, 40)
	f.Fuzz(func(t *testing.T, title, label string, x, y, z float64, n int) {
		d := svg.New("f", title, label, 120, 90)
		d.Circle(svg.Point{x, y}, math.Abs(z), svg.Style{svg.Heavy, svg.Waste})
		d.Arrow(svg.Point{x, y}, svg.Point{z, x}, svg.Curve)
		d.Arc(svg.Point{x, y}, z, y, x, svg.Centre)
		d.Across(x, y, 30, z, label, svg.TextStyle{})
		d.Upright(x, z, 30, y, label, svg.TextStyle{Size: svg.Small})
		d.Leader(svg.Point{z, y}, 5, label, svg.TextStyle{})
		d.Leader(svg.Point{x, y}, 5, title, svg.TextStyle{Bold: true})
		for k := range min(max(n, 0), 40) {
			d.Place(svg.Shorten(label, 60, svg.TextStyle{}), svg.Spot{At: svg.Point{x + float64(k), y}})
		}
		apart(t, d)
		text, err := d.SVG()
		if (err != nil) != (text == "") {
			t.Fatalf("error %v with %d bytes", err, len(text))
		}
		if err == nil {
			wellFormed(t, text)
		}
	})
}
