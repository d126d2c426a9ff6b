package dock_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// built reads a demo plan with values swapped.
func built(t testing.TB, name string, swap ...string) *dock.Dock {
	t.Helper()
	d, err := dock.Read(name, strings.NewReader(demoText(t, name, swap...)))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestShape holds the shape against the layout, which lays the same dock out by
// itself, and against a tape: 10 by 24 has the diagonal 26.
func TestShape(t *testing.T) {
	for _, name := range []string{"swim", "work"} {
		d := built(t, name)
		s, err := d.Shape()
		if err != nil || s.Err != nil {
			t.Fatal(err, s.Err)
		}
		if name == "swim" && math.Abs(s.Diagonal-26*measure.Foot) > 1e-9 {
			t.Errorf("diagonal %g m", s.Diagonal)
		}
		l, err := d.Layout()
		if err != nil {
			t.Fatal(err)
		}
		joists := 0
		for _, p := range l.Drawing.Pieces {
			if p.Kind != layout.Joist {
				continue
			}
			j := s.Joists[joists]
			if math.Abs((j.X0+j.X1)/2-p.From.X) > 1e-9 || math.Abs(j.X1-j.X0-p.Width) > 1e-9 ||
				math.Abs(j.Y0-min(p.From.Y, p.To.Y)) > 1e-9 || math.Abs(j.Y1-max(p.From.Y, p.To.Y)) > 1e-9 {
				t.Errorf("%s: %s lies at %v, the shape has %v", name, p.Name, p.From, j)
			}
			if at := s.Marks[joists]; math.Abs(at-j.X0) > 1e-3 || s.Centre {
				t.Errorf("%s: %s is marked at %g, its near face lies at %g", name, p.Name, at, j.X0)
			}
			joists++
		}
		if joists != len(s.Joists) || len(s.Rims) != 4 {
			t.Errorf("%s: %d joists, %d in the shape; %d plies of rims", name, joists, len(s.Joists), len(s.Rims))
		}
		for _, r := range s.Rims {
			if r.Y0 < -1e-9 || r.Y1 > s.Width+1e-9 || math.Abs(r.X1-r.X0-s.Length) > 1e-9 {
				t.Errorf("%s: rim %v", name, r)
			}
		}
		for i, f := range s.Floats {
			drum := l.Drawing.Drums[i]
			long, broad := drum.Diameter, drum.Length
			if drum.Along {
				long, broad = broad, long
			}
			if math.Hypot(f.X-drum.At.X, f.Y-drum.At.Y) > 1e-9 || math.Abs(f.Long-long) > 1e-9 || math.Abs(f.Broad-broad) > 1e-9 {
				t.Errorf("%s: float %d %v, laid out as %v", name, i+1, f, drum)
			}
		}
		if len(s.Floats) != len(l.Drawing.Drums) {
			t.Errorf("%s: %d floats", name, len(s.Floats))
		}
	}
}

// TestShapeUnknown: what is not known is named, and what is known stays.
func TestShapeUnknown(t *testing.T) {
	if _, err := built(t, "swim", `"length": "24 ft"`, `"length": "unknown"`).Shape(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("a frame of unknown length: %v", err)
	}
	s, err := built(t, "swim", `"girth": "6 ft 1 in"`, `"girth": "unknown"`).Shape()
	if err != nil || len(s.Joists) != 14 || len(s.Floats) != 0 || !errors.Is(s.Err, measure.ErrUnknown) || len(s.Cleats) != 4 {
		t.Errorf("drums of unknown girth: %v; %d joists, %d floats, %v", err, len(s.Joists), len(s.Floats), s.Err)
	}
	s, err = built(t, "swim", `"mass": "22 lb"`, `"mass": "unknown"`).Shape()
	if err != nil || len(s.Floats) != 18 || s.Err != nil {
		t.Errorf("drums of unknown mass have a place: %v, %v", err, s.Err)
	}
	s, err = built(t, "swim", `"along": "2 ft",`, `"along": "unknown",`).Shape()
	if err != nil || len(s.Fixed) != 1 || !errors.Is(s.Err, measure.ErrUnknown) {
		t.Errorf("a bench nobody knows where: %v, %v", err, s)
	}
	s, err = built(t, "swim", `"marks_at": "near face"`, `"marks_at": "centre"`, `"0 in", "20-1/2 in"`, `"3/4 in", "20-1/2 in"`, `"23 ft 10-1/2 in"`, `"23 ft 11 in"`).Shape()
	if err != nil || !s.Centre || math.Abs(s.Marks[0]-0.75*measure.Inch) > 1e-9 {
		t.Errorf("marks of middles: %v, %v", err, s.Marks)
	}
}

// TestAlong: joists that run along lie the other way.
func TestAlong(t *testing.T) {
	d := built(t, "work", `"joists_run": "across"`, `"joists_run": "along"`)
	s, err := d.Shape()
	if err != nil || s.Across || len(s.Marks) < 5 || s.Marks[len(s.Marks)-1] > s.Width {
		t.Fatal(err, s)
	}
	for _, j := range s.Joists {
		if !(j.X1-j.X0 > 5 && j.Y1-j.Y0 < 0.05) {
			t.Errorf("joist %v", j)
		}
	}
	e, err := d.Envelope(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	g, err := e.Diagram()
	if err != nil || g.From != "near end" && g.From != "near side" {
		t.Errorf("%v, %v", g, err)
	}
}

// TestRightingMeetsRest: two ways to the heel under the crowd, the curve by a couple
// with the weight in the middle and the rest with the weight at the edge, agree.
func TestRightingMeetsRest(t *testing.T) {
	aside := func(across string) *dock.Dock {
		return built(t, "swim", `"along": "23 ft 6 in", "across": "5 ft"`, `"along": "0 ft 6 in", "across": "`+across+`"`, `"mass": "45 lb"`, `"mass": "400 lb"`)
	}
	near, far := turned(t, "0.3 m"), turned(t, "2.1 m")
	edges := map[string]bool{}
	for _, d := range []*dock.Dock{built(t, "swim"), built(t, "work"), aside("9 ft"), aside("1 ft"), near, far} {
		c, err := d.Righting()
		if err != nil || c.Err != nil {
			t.Fatal(err, c)
		}
		rights, heels := at(c.Heel, c.Rights, c.AtRest), at(c.Heel, c.Heels, c.AtRest)
		if math.Abs(rights-heels) > 0.03*heels {
			t.Errorf("at rest under the crowd at the %s, %g deg, it rights with %g N·m and heels with %g N·m", c.Edge, c.AtRest*180/math.Pi, rights, heels)
		}
		// A weight that is moved along the deck moves as far, level, as the deck's cosine.
		if last := len(c.Heel) - 1; math.Abs(c.Heels[last]-c.Heels[0]*math.Cos(c.Heel[last])) > 1e-9*c.Heels[0] {
			t.Errorf("it heels with %g N·m level and with %g N·m at %g", c.Heels[0], c.Heels[last], c.Heel[last])
		}
		edges[c.Edge] = true
		crowd, err := d.Crowded()
		if err != nil || crowd.Rest.Tilt() < c.AtRest-1e-9 || crowd.Edge != c.Edge || crowd.People == 0 {
			t.Errorf("%v, %v", crowd, err)
		}
		if !(c.Wet > c.AtRest) { // it rests with a dry deck
			t.Errorf("the edge goes under at %g, at rest it heels %g", c.Wet, c.AtRest)
		}
	}
	if len(edges) != 4 {
		t.Errorf("the crowd stood at %v only", edges)
	}
}

// turned is the work float turned by a quarter, broader than long, its chest at a place
// along it.
func turned(t testing.TB, chest string) *dock.Dock {
	t.Helper()
	// Joists along a dock of 2.4 m by 6.0 m are those across one of 6.0 m by 2.4 m.
	text := strings.NewReplacer(`"length": "6.0 m"`, `"length": "2.4 m"`, `"width": "2.4 m"`, `"width": "6.0 m"`, `"joists_run": "across"`, `"joists_run": "along"`,
		`"lies": "along"`, `"lies": "across"`).Replace(demoText(t, "work"))
	for _, x := range []string{"0.72", "2.24", "3.76", "5.28"} {
		for _, y := range []string{"0.5", "1.9"} {
			text = strings.Replace(text, `{ "along": "`+x+` m", "across": "`+y+` m" }`, `{ "along": "`+y+` m", "across": "`+x+` m" }`, 1)
		}
	}
	text = strings.Replace(text, `"along": "0.6 m", "across": "1.2 m", "above"`, `"along": "`+chest+`", "across": "0.6 m", "above"`, 1)
	text = strings.Replace(text, `"along": "6.0 m", "across": "1.2 m", "above"`, `"along": "1.2 m", "across": "6.0 m", "above"`, 1)
	d, err := dock.Read("turned", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// at interpolates.
func at(xs, ys []float64, x float64) float64 {
	i := 1
	for i < len(xs)-1 && xs[i] < x {
		i++
	}
	return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
}

// TestRightingOverTheEnds: a dock that is broader than long tilts most over an end,
// by as much as the same dock turned by a quarter does over a side.
func TestRightingOverTheEnds(t *testing.T) {
	side := built(t, "work")
	end := turned(t, "1.2 m")
	a, err := side.Righting()
	b, err2 := end.Righting()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	if !strings.HasSuffix(a.Edge, "side") || !strings.HasSuffix(b.Edge, "end") {
		t.Errorf("over the %s, and turned over the %s", a.Edge, b.Edge)
	}
	if math.Abs(a.AtRest-b.AtRest) > 1e-3 || math.Abs(a.Wet-b.Wet) > 1e-3 || len(a.Heel) != len(b.Heel) {
		t.Fatalf("rest at %g and %g, edge under at %g and %g", a.AtRest, b.AtRest, a.Wet, b.Wet)
	}
	for i := range a.Rights {
		if math.Abs(a.Rights[i]-b.Rights[i]) > 1e-2*math.Abs(a.Heels[i]) {
			t.Errorf("at %g: %g and %g N·m", a.Heel[i], a.Rights[i], b.Rights[i])
		}
	}
}

// TestCapsized: under a crowd too heavy the dock has its curve and no rest.
func TestCapsized(t *testing.T) {
	d := built(t, "swim", `"count": 2, "mass": "185 lb"`, `"count": 12, "mass": "185 lb"`)
	c, err := d.Righting()
	if err != nil || c.Err == nil || c.AtRest != 0 || len(c.Heel) < 10 {
		t.Fatalf("%v, %v", err, c)
	}
	for i := range c.Heel {
		if c.Rights[i] > c.Heels[i] {
			t.Errorf("at %g it rights more than it heels", c.Heel[i])
		}
	}
}

// TestDiagram: what acts on the member is in balance, the moment's slope is the shear,
// and its greatest is the envelope's.
func TestDiagram(t *testing.T) {
	for _, name := range []string{"swim", "work"} {
		e, err := reported(t, built(t, name), measure.SI).Envelope()
		if err != nil {
			t.Fatal(err)
		}
		g, err := e.Diagram()
		if err != nil {
			t.Fatal(err)
		}
		up, about, most := 0.0, 0.0, 0.0
		for _, p := range g.Pushes {
			up += p.Force
			about += p.Force * (g.Length - p.At)
			most = math.Max(most, math.Abs(p.Force))
		}
		for _, p := range g.Points {
			up -= p.P
			about -= p.P * (g.Length - p.From)
		}
		for _, l := range g.Spread {
			up -= l.Q * (l.To - l.From)
			about -= l.Q * (l.To - l.From) * (g.Length - (l.From+l.To)/2)
		}
		if math.Abs(up) > 1e-6*most {
			t.Errorf("%s: %g N left over", name, up)
		}
		jumps := 0.0 // what crossing members twist in
		for i := 1; i < len(g.X); i++ {
			h := g.X[i] - g.X[i-1]
			if !(h > 0) {
				t.Fatalf("%s: station %d at %g after %g", name, i, g.X[i], g.X[i-1])
			}
			if h < 2e-5 {
				jumps += g.Moment[i] - g.Moment[i-1] - g.Shear[i-1]*h
				continue
			}
			// The shear falls evenly between stations, so the trapezoid is exact but for where
			// they stand.
			if d := g.Moment[i] - g.Moment[i-1] - h*(g.Shear[i]+g.Shear[i-1])/2; math.Abs(d) > 4e-5*most {
				t.Errorf("%s: between %g and %g m the moment changes by %g N·m too much", name, g.X[i-1], g.X[i], d)
			}
		}
		last := len(g.X) - 1
		if d := g.Moment[last] - g.Moment[0] - about - jumps; math.Abs(d) > 1e-3*most {
			t.Errorf("%s: moments at the ends differ by %g N·m too much", name, d)
		}
		low, high := 0.0, 0.0
		for _, m := range g.Moment {
			low, high = math.Min(low, m), math.Max(high, m)
		}
		worst := 0.0
		for _, m := range e.Members {
			if m.Name == g.Member {
				worst = m.Hog.Value
				if high/g.Sags > -low/g.Hogs {
					worst = m.Sag.Value
				}
			}
			if c := m.Checks[0]; c.Value/c.Limit > g.Check.Value/g.Check.Limit+1e-9 {
				t.Errorf("%s: %s is worse than %s", name, c.Name, g.Check.Name)
			}
		}
		if got := math.Max(high, -low); math.Abs(got-worst) > 1e-5*worst {
			t.Errorf("%s: greatest moment %g, in the envelope %g", name, got, worst)
		}
		share := math.Max(high/g.Sags, -low/g.Hogs)
		if math.Abs(share-g.Check.Value/g.Check.Limit) > 1e-3 {
			t.Errorf("%s: the moments take %g of the wood, the check has %g of %g", name, share, g.Check.Value, g.Check.Limit)
		}
	}
}

// TestLines: a box of 2 by 3 by 6 has the diagonal 7; the demo's lines run where its
// plan says.
func TestLines(t *testing.T) {
	l := dock.Lead{Cleat: [3]float64{1, 1, 0.5}, Foot: [3]float64{3, 4, 7}}
	if got := l.At(0.5); math.Abs(got-7) > 1e-12 {
		t.Errorf("7 is %g", got)
	}
	lines, err := built(t, "swim").Lines()
	if err != nil {
		t.Fatal(err)
	}
	pine, lake := lines.Leads[0], lines.Leads[3]
	if pine.Cleat[0] != 0 || pine.Cleat[1] != 0 || math.Abs(pine.Foot[0]+30*measure.Foot) > 1e-9 || math.Abs(pine.Foot[2]-3*measure.Foot) > 1e-9 ||
		math.Abs(pine.Made-34*measure.Foot) > 1e-9 {
		t.Errorf("%v", pine)
	}
	if math.Abs(lake.Cleat[0]-24*measure.Foot) > 1e-9 || math.Abs(lake.Cleat[1]-10*measure.Foot) > 1e-9 || math.Abs(lake.Foot[2]+9*measure.Foot) > 1e-9 {
		t.Errorf("%v", lake)
	}
	state, err := built(t, "swim").Empty()
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for _, h := range state.Freeboards() {
		least = math.Min(least, h)
	}
	if lines.Deck != least || !(lines.Low < 0 && lines.High > 0 && lines.Draft > 0 && lines.Bed > lines.Draft) {
		t.Errorf("%+v, lowest edge %g", lines, least)
	}
	for i := range lines.Leads { // from anchors below the way grows as the water rises
		if grows := lines.Leads[i].At(lines.High) > lines.Leads[i].At(lines.Low); grows != (i > 0) {
			t.Errorf("line %d: %g m at low water, %g m at high", i, lines.Leads[i].At(lines.Low), lines.Leads[i].At(lines.High))
		}
	}
	odd, err := built(t, "swim", `"kind": "chain grade 30"`, `"kind": "unknown"`, `"length": "34 ft"`, `"length": "unknown"`).Lines()
	if err != nil || odd.Leads[0].Made != 0 || odd.Leads[1].At(0) != lines.Leads[1].At(0) {
		t.Errorf("lines of unknown make: %v", err)
	}
	for _, swap := range [][2]string{
		{`"to": "old pine"`, `"to": "unknown"`},
		{`"along": "-30 ft"`, `"along": "unknown"`},
		{`"corner": "near end, near side"`, `"corner": "unknown"`},
		{`"level_low": "-1 ft 6 in"`, `"level_low": "unknown"`},
		{`"depth": "9 ft", "kind"`, `"depth": "unknown", "kind"`},
		{`"girth": "6 ft 1 in"`, `"girth": "unknown"`},
		{`"level_high": "1 ft"`, `"level_high": "-2 ft"`},
	} {
		if _, err := built(t, "swim", swap[0], swap[1]).Lines(); err == nil {
			t.Errorf("%s is drawn", swap[1])
		}
	}
}

// TestNothingToDraw: a dock, a report and an envelope of nothing refuse.
func TestNothingToDraw(t *testing.T) {
	var d dock.Dock
	_, e1 := d.Shape()
	_, e2 := d.Empty()
	_, e3 := d.Crowded()
	_, e4 := d.Righting()
	_, e5 := d.Lines()
	_, e6 := new(dock.Report).Envelope()
	_, e7 := new(dock.Envelope).Diagram()
	_, e8 := reported(t, &d, measure.US).Envelope()
	for i, err := range []error{e1, e2, e3, e4, e5, e6, e7, e8} {
		if !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%d: %v", i+1, err)
		}
	}
	none, err := dock.Build(&plan.Plan{})
	if err != nil {
		t.Fatal(err)
	}
	for i, call := range []func() error{
		func() error { _, err := none.Shape(); return err },
		func() error { _, err := none.Crowded(); return err },
		func() error { _, err := none.Righting(); return err },
		func() error { _, err := none.Lines(); return err },
	} {
		if err := call(); !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("an empty plan, %d: %v", i, err)
		}
	}
	if _, err := built(t, "swim", `"crowd_from_edge": "6 in"`, `"crowd_from_edge": "unknown"`, `"girth": "6 ft 1 in"`, `"girth": "unknown"`).Crowded(); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("drums of unknown girth: %v", err)
	}
}

// An envelope in which a caller put a situation that it does not have has no diagram.
func TestDiagramOfASpoiltEnvelope(t *testing.T) {
	for _, i := range []int{-1, 1 << 30} {
		for sag := range 3 {
			e, err := built(t, "work").Envelope(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			switch sag {
			case 0:
				e.Members[0].Sag.Situation = i
			case 1:
				e.Members[0].Hog.Situation = i
			default:
				e.Situations[e.Members[0].Sag.Situation].Duration = lumber.Duration(i)
			}
			if g, err := e.Diagram(); !errors.Is(err, measure.ErrUnknown) {
				t.Errorf("%+v, %v", g, err)
			}
		}
	}
}
