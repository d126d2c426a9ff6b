package sheet_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/internal/svg"
	"example.org/floewright/lumber/measure"
)

// TestEdges holds the deck's edges against plane geometry: their difference is
// the width times the sine of the heel, their mean the middle of the deck.
func TestEdges(t *testing.T) {
	for _, heel := range []float64{0, 0.1, -0.1, 0.7} {
		e := sheet.Heeled{Width: 3, Depth: 0.2, Deck: 0.05, Heel: heel, Height: 0.15}
		negative, positive := e.Edges()
		if d := negative - positive - 3*math.Sin(heel); math.Abs(d) > 1e-12 {
			t.Errorf("heel %g: the edges differ by %g too much", heel, d)
		}
		if d := (negative+positive)/2 - 0.15 - 0.25*math.Cos(heel); math.Abs(d) > 1e-12 {
			t.Errorf("heel %g: the middle is off by %g", heel, d)
		}
	}
	// 3-4-5: a deck of 5 m that heels by asin 3/5 has one edge 3 m over the other.
	e := sheet.Heeled{Width: 5, Heel: math.Asin(0.6)}
	if negative, positive := e.Edges(); math.Abs(negative-1.5) > 1e-12 || math.Abs(positive+1.5) > 1e-12 {
		t.Errorf("edges at %g and %g", negative, positive)
	}
}

// TestTie: a box of 2 by 3 by 6 has the diagonal 7.
func TestTie(t *testing.T) {
	tie := sheet.Tie{X: 1, Y: 1, Over: 0.5, FarX: 3, FarY: 4, FarZ: 7, Spare: 0.25}
	if got := tie.At(sheet.Level{Rise: 0.5}); math.Abs(got-7.25) > 1e-12 {
		t.Errorf("length %g, want 7.25", got)
	}
	if low, high := tie.At(sheet.Level{Rise: 0}), tie.At(sheet.Level{Rise: 1}); !(low > high) {
		t.Errorf("a line to a point above grows as the water rises: %g, %g", low, high)
	}
}

// TestZero: data that say nothing are refused by name, and nothing panics.
func TestZero(t *testing.T) {
	for _, d := range []drawer{
		sheet.Plan{}, sheet.Section{}, sheet.Heeled{}, sheet.Moments{}, sheet.Cutting{}, sheet.Righting{}, sheet.Winter{}, sheet.Lines{},
	} {
		p, err := d.Draw()
		var bad *measure.Error
		if !errors.As(err, &bad) || bad.Field == "" || p.SVG != "" {
			t.Errorf("%T: %v", d, err)
		}
	}
}

// numbers calls f with each number that can be set below v, by its path.
func numbers(v reflect.Value, path string, f func(path string, x reflect.Value)) {
	switch v.Kind() {
	case reflect.Float64:
		f(path, v)
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[time.Time]() {
			return
		}
		for i := range v.NumField() {
			numbers(v.Field(i), path+"."+v.Type().Field(i).Name, f)
		}
	case reflect.Slice:
		for i := range min(v.Len(), 2) {
			numbers(v.Index(i), path+"[]", f)
		}
	}
}

// TestEveryNumberIsChecked puts NaN, both infinities and a huge number into each
// number of each picture in turn: every one is refused.
func TestEveryNumberIsChecked(t *testing.T) {
	tried := 0
	for _, d := range demos(measure.US) {
		v := reflect.New(reflect.TypeOf(d)).Elem()
		v.Set(reflect.ValueOf(d))
		numbers(v, v.Type().Name(), func(path string, x reflect.Value) {
			was := x.Float()
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e20, -1e20} {
				x.SetFloat(bad)
				tried++
				p, err := v.Interface().(drawer).Draw()
				if err == nil || p.SVG != "" {
					t.Errorf("%s = %g is drawn", path, bad)
				}
				if !errors.Is(err, measure.ErrRange) && !errors.Is(err, svg.ErrNumber) {
					t.Errorf("%s = %g: %v", path, bad, err)
				}
			}
			x.SetFloat(was)
		})
	}
	if tried < 400 {
		t.Errorf("only %d numbers were tried", tried)
	}
}

// TestRefusesShapes: lists that do not belong together, or do not fit.
func TestRefusesShapes(t *testing.T) {
	for name, change := range map[string]func() drawer{
		"stations fall":     func() drawer { m := demoMoments(measure.US); m.X[5] = m.X[4]; return m },
		"moments missing":   func() drawer { m := demoMoments(measure.US); m.Moment = m.Moment[1:]; return m },
		"heel falls":        func() drawer { r := demoRighting(measure.US); r.Heel[3] = 0; return r },
		"rights missing":    func() drawer { r := demoRighting(measure.US); r.Rights = nil; return r },
		"heels missing":     func() drawer { r := demoRighting(measure.US); r.Heels = r.Heels[:3]; return r },
		"band missing":      func() drawer { w := demoWinter(measure.US); w.Thin = nil; return w },
		"middle over thick": func() drawer { w := demoWinter(measure.US); w.Middle[9] = w.Thick[9] + 1; return w },
		"odds missing":      func() drawer { w := demoWinter(measure.US); w.Asked[0].Odds = w.Asked[0].Odds[:9]; return w },
		"odds of 101":       func() drawer { w := demoWinter(measure.US); w.Asked[0].Odds[4] = 1.01; return w },
		"hole too early":    func() drawer { w := demoWinter(measure.US); w.Holes[0].When = w.First.AddDate(0, 0, -1); return w },
		"mark too late":     func() drawer { w := demoWinter(measure.US); w.Marks[0].When = w.First.AddDate(2, 0, 0); return w },
		"too much cut":      func() drawer { k := demoCutting(measure.US); k.Boards[0].Pieces[0].Length += 0.05; return k },
		"support outside":   func() drawer { m := demoMoments(measure.US); m.Supports[0] = m.Length + 1; return m },
		"too many marks":    func() drawer { p := demoPlan(measure.US); p.Along = make([]float64, 500); return p },
	} {
		d := change()
		if p, err := d.Draw(); !errors.Is(err, measure.ErrRange) || p.SVG != "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestLastCut: a piece that ends with the board needs no saw cut there.
func TestLastCut(t *testing.T) {
	board := sheet.Board{Length: 2, Kerf: 0.003, Pieces: []sheet.Piece{{Name: "a", Length: 1}, {Name: "b", Length: 0.997}}}
	p, err := sheet.Cutting{Units: measure.SI, Boards: []sheet.Board{board}}.Draw()
	if err != nil || strings.Contains(p.SVG, "left over ") {
		t.Errorf("%v, or something is left of a board that is all used", err)
	}
	board.Pieces[1].Length = 0.9975
	if _, err = (sheet.Cutting{Boards: []sheet.Board{board}}).Draw(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("two pieces with a saw cut of 3 mm fit into 0.5 mm: %v", err)
	}
}

// TestWaterWords: a deck that the water covers is said to be under it.
func TestWaterWords(t *testing.T) {
	s := demoSection(measure.SI)
	s.Water = []sheet.Waterline{{Name: "swamped", Height: s.JoistDepth + s.Deck + 0.1}}
	p, err := s.Draw()
	if err != nil || !strings.Contains(p.SVG, "deck 100 mm") || !strings.Contains(p.SVG, "under water") || strings.Contains(p.SVG, "above") {
		t.Errorf("%v, or other words", err)
	}
}

// TestContacts: where a drum bears shows only where it touches.
func TestContacts(t *testing.T) {
	s := demoSection(measure.US)
	words := strings.Fields(s.Bears)[0]
	for name, c := range map[string]struct {
		change func(*sheet.Section)
		want   bool
	}{
		"wedged":               {func(*sheet.Section) {}, true},
		"10 mm lower":          {func(s *sheet.Section) { s.Middle -= 0.01 }, false},
		"under the deck":       {func(s *sheet.Section) { s.Clear = 0.7; s.Middle = s.JoistDepth - s.High/2 }, true},
		"short of it":          {func(s *sheet.Section) { s.Clear = 0.7; s.Middle = s.JoistDepth - s.High/2 - 0.01 }, false},
		"block under":          {func(s *sheet.Section) { s.Round = false; s.Broad = 1; s.High = 0.4; s.Middle = -0.2 }, true},
		"block, a gap":         {func(s *sheet.Section) { s.Round = false; s.Broad = 1; s.High = 0.4; s.Middle = -0.22 }, false},
		"drum under a joist":   {func(s *sheet.Section) { s.Middle = -s.High / 2; s.Aside = (s.Clear + s.JoistThick) / 2 }, true},
		"drum under a third":   {func(s *sheet.Section) { s.Middle = -s.High / 2; s.Aside = 1; s.Others = []float64{1} }, true},
		"drum under no joist":  {func(s *sheet.Section) { s.Middle = -s.High / 2 }, false},
		"block beside joists":  {func(s *sheet.Section) { s.Round = false; s.Broad = 0.1; s.High = 0.4; s.Middle = -0.2 }, false},
		"wedged, but off":      {func(s *sheet.Section) { s.Aside = 0.05 }, false},
		"aside under the deck": {func(s *sheet.Section) { s.Clear = 0.8; s.Middle = s.JoistDepth - s.High/2; s.Aside = 0.1 }, true},
		"touching, unsaid":     {func(s *sheet.Section) { s.Bears = "" }, false},
	} {
		s := demoSection(measure.US)
		c.change(&s)
		p, err := s.Draw()
		if err != nil || strings.Contains(p.SVG, ">"+words) != c.want {
			t.Errorf("%s: %v, or the words are there or not", name, err)
		}
	}
}

// crowded returns pictures with as much on them as they take, and with as little.
func crowded(u measure.System) []drawer {
	long := strings.Repeat("a very long name ", 12)
	p := demoPlan(u)
	for i := range 100 {
		p.Along = append(p.Along, float64(i)*2.7*in)
	}
	for i := range 26 {
		p.Across = append(p.Across, float64(i)*4*in)
		p.Things = append(p.Things, sheet.Thing{Name: long, X: float64(i%5) * ft, Y: float64(i%3) * ft})
	}
	p.Ends = [2]string{long, long}
	p.Floats[0].Name = long

	s := demoSection(u)
	s.Name, s.Bears = long, long
	for i := range 4 {
		s.Water = append(s.Water, sheet.Waterline{Name: long, Height: float64(i) * 1e-3})
	}
	e := demoHeeled(u)
	e.Load, e.Heel = long, -e.Heel
	flat := demoHeeled(u)
	flat.Heel, flat.People = 0, nil
	under := demoHeeled(u)
	under.Height, under.Heel = -0.5, 0.4

	m := demoMoments(u)
	m.Member = long
	for i := range 20 {
		m.Points = append(m.Points, sheet.PointLoad{X: 12*ft + float64(i)*1e-3, Force: float64(i-10) * 500})
	}
	zero := sheet.Moments{Units: u, Length: 2, X: []float64{0, 2}, Moment: []float64{0, 0}}
	k := demoCutting(u)
	for i := range k.Boards {
		k.Boards[i].Size = long
		k.Boards[i].Pieces[0].Name = long
	}
	many := sheet.Board{Length: 5}
	for range 60 {
		many.Pieces = append(many.Pieces, sheet.Piece{Name: "shim", Length: 0.01})
	}
	k.Boards = append(k.Boards, many, sheet.Board{Length: 1})

	r := demoRighting(u)
	r.Load, r.Rest = long, r.DeckWet
	bare := sheet.Righting{Units: u, Heel: []float64{0, 1}, Rights: []float64{0, 0}}
	over := demoRighting(u)
	for i := range over.Rights {
		over.Rights[i] *= -1
	}
	over.DeckWet = 3
	w := demoWinter(u)
	w.Asked = append(w.Asked, w.Asked[0], w.Asked[1], w.Asked[0], sheet.Asked{Name: long, Thick: 0.1})
	w.Marks = append(w.Marks, sheet.Day{When: w.First, Name: long}, sheet.Day{When: w.First.AddDate(0, 0, 159), Name: long})
	iceless := sheet.Winter{Units: u, First: w.First, Thin: []float64{0, 0}, Middle: []float64{0, 0}, Thick: []float64{0, 0}}
	l := demoLines(u)
	l.Levels = append(l.Levels, sheet.Level{Name: long, Rise: 0.001})
	for range 14 {
		l.Ties = append(l.Ties, sheet.Tie{Name: long, FarX: 14, FarZ: -2})
	}
	lone := sheet.Lines{Units: u, Length: 5, Bed: 2, Levels: []sheet.Level{{Name: "now"}}}
	return []drawer{p, s, e, flat, under, m, zero, k, r, bare, over, w, iceless, l, lone}
}

// TestCrowded draws them: no text over another, none off the sheet.
func TestCrowded(t *testing.T) {
	defer sheet.Watch(func(d *svg.Drawing) { apart(t, d) })()
	for _, u := range []measure.System{measure.US, measure.SI} {
		for _, d := range crowded(u) {
			if _, err := d.Draw(); err != nil {
				t.Errorf("%T: %v", d, err)
			}
		}
	}
}

// labels returns the texts of a picture with where they stand.
func labels(t testing.TB, d drawer) map[string]svg.Box {
	t.Helper()
	out := map[string]svg.Box{}
	defer sheet.Watch(func(d *svg.Drawing) {
		for _, l := range d.Labels() {
			out[l.Text] = l.Box
		}
	})()
	if _, err := d.Draw(); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestForces: what pushes up stands below the member, forces at one place are one, and
// small ones are left out and said to be.
func TestForces(t *testing.T) {
	m := sheet.Moments{
		Units: measure.SI, Length: 2, X: []float64{0, 2}, Moment: []float64{10, -10}, Limit: 20, LimitHog: 15, From: "near side", When: "in spring",
		Points: []sheet.PointLoad{{X: 1.5, Force: -700}, {X: 0.5, Force: 200}, {X: 0.5, Force: 100}, {X: 1, Force: 2}},
	}
	got := labels(t, m)
	down, ok := got["300 N"]
	up, ok2 := got["700 N"]
	if !ok || !ok2 || !(down.Y1 < up.Y0 && down.X1 < up.X0) {
		t.Errorf("300 N down at %v, 700 N up at %v", down, up)
	}
	if _, there := got["2.0 N"]; there {
		t.Error("2 N beside 700 N are drawn")
	}
	said := ""
	for s := range got {
		said += s + " "
	}
	for _, want := range []string{"Forces under 7.0 N are left out.", "from the axis at the near side, m", "When: in spring."} {
		if !strings.Contains(said, want) {
			t.Errorf("the picture does not say %q: %q", want, said)
		}
	}
}

// TestMade: a line made shorter than its way is named, others are not.
func TestMade(t *testing.T) {
	l := demoLines(measure.SI)
	l.Ties[0].Made, l.Ties[1].Made = 20, 1
	p, err := l.Draw()
	if err != nil || !strings.Contains(p.SVG, "levels: B.") || !strings.Contains(p.SVG, "as made") {
		t.Errorf("%v, or line B is not said to be too short", err)
	}
	l.Ties[1].Made = 0
	p, err = l.Draw()
	if err != nil || strings.Contains(p.SVG, "levels: ") || !strings.Contains(p.SVG, "not known") {
		t.Errorf("%v, or a line that nobody measured is too short", err)
	}
}

// TestRims: rims that reach below the joists are drawn, seen from their ends or from
// the side.
func TestRims(t *testing.T) {
	e := demoHeeled(measure.SI)
	plain, err := e.Draw()
	if err != nil {
		t.Fatal(err)
	}
	e.Rim = 0.05
	side, err := e.Draw()
	if err != nil {
		t.Fatal(err)
	}
	e.Broad = 0.076
	ends, err := e.Draw()
	if err != nil || strings.Count(ends.SVG, "<polygon") <= strings.Count(side.SVG, "<polygon") || side.SVG == plain.SVG {
		t.Errorf("%v, or the rims' ends are not drawn", err)
	}
	e.Along, e.Sides = true, [2]string{"near end", "far end"}
	if p, err := e.Draw(); err != nil || !strings.HasPrefix(p.Title, "Side view") || !strings.Contains(strings.Join(strings.Fields(tags.ReplaceAllString(p.SVG, " ")), " "), "On the left: near end") {
		t.Errorf("%v, %q", err, p.Title)
	}
	s := demoSection(measure.SI)
	bare, _ := s.Draw()
	s.Rim = 0.05
	if p, err := s.Draw(); err != nil || strings.Count(p.SVG, "<rect") != strings.Count(bare.SVG, "<rect")+1 {
		t.Errorf("%v, or the rim behind is not drawn", err)
	}
}

// TestMarks: joists' marks stand at the foot, floats' at the top.
func TestMarks(t *testing.T) {
	p := sheet.Plan{Units: measure.SI, Length: 6, Width: 2.4, Along: []float64{0, 1}, FloatsAlong: []float64{3}, FloatsAcross: []float64{1.2}, Across: []float64{0.5}}
	got := labels(t, p)
	joist, float, left, right := got["1.000 m"], got["3.000 m"], got["1.200 m"], got["500 mm"]
	if !(float.Y1 < joist.Y0) || !(left.X1 < right.X0) || joist == (svg.Box{}) || left == (svg.Box{}) {
		t.Errorf("joist %v, float %v; across: float %v, joist %v", joist, float, left, right)
	}
}

// TestLimitIsTold: what the member may carry is said where it is known, either way or
// one way and the other.
func TestLimitIsTold(t *testing.T) {
	for _, c := range []struct {
		limit, hog float64
		want       string
	}{{0, 0, ""}, {20, 0, "either way"}, {20, 15, "over the line and"}} {
		p, err := sheet.Moments{Units: measure.SI, Length: 2, X: []float64{0, 2}, Moment: []float64{10, -10}, Limit: c.limit, LimitHog: c.hog}.Draw()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(tags.ReplaceAllString(p.SVG, " ")), " ")
		if strings.Contains(text, "Dashed") != (c.want != "") || !strings.Contains(text, c.want) {
			t.Errorf("limits %g and %g N·m: %q", c.limit, c.hog, text)
		}
	}
}

// TestOneScale: what is as high as it is wide is drawn to one scale, and said to be;
// what is long and flat is not.
func TestOneScale(t *testing.T) {
	for bed, want := range map[float64]string{4: "to one scale", 0.5: "to different scales", 60: "to different scales"} {
		p, err := sheet.Lines{Units: measure.SI, Length: 5, Bed: bed, Levels: []sheet.Level{{Name: "now"}}, Ties: []sheet.Tie{{Name: "a", FarX: 10, FarZ: -bed}}}.Draw()
		if text := strings.Join(strings.Fields(tags.ReplaceAllString(p.SVG, " ")), " "); err != nil || !strings.Contains(text, want) {
			t.Errorf("%v, or water of %g m is not drawn %s: %q", err, bed, want, text)
		}
	}
}

// TestColumns: the lengths of lines stand in columns, as far apart as each other, right
// of the names and inside the picture.
func TestColumns(t *testing.T) {
	l := demoLines(measure.SI)
	l.Levels = []sheet.Level{{Name: "low", Rise: -0.3}, {Name: "mean"}, {Name: "high", Rise: 0.4}}
	got := labels(t, l)
	var at []float64
	for _, box := range got {
		if math.Abs(box.Y0-got["A: old pine"].Y0) < 1e-9 && box.X0 > 2 {
			at = append(at, box.X0)
		}
	}
	if slices.Sort(at); len(at) != 3 {
		t.Fatalf("%d lengths beside the name: %v", len(at), got)
	}
	if low, mean, high := at[0], at[1], at[2]; !(low > 24) || math.Abs((mean-low)-(high-mean)) > 1e-9 || !(mean > low+8) || !(high < 130-8) {
		t.Errorf("columns at %g, %g and %g", at[0], at[1], at[2])
	}
}
