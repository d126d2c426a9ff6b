package moor_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// Two floats that heel differently meet between, by how stiffly each resists; a
// pier takes no heel; the outermost pins take the twist up and down.
func TestHingeTwist(t *testing.T) {
	h := moor.Hinge{Width: 2, Pins: 2, Diameter: 0.02, Plate: 0.01}
	dock, err1 := moor.Afloat(0, 0.4, 10, 30, 12, 2.5)
	old, err2 := moor.Afloat(0, 0.4, 20, 60, 36, 3)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	dock.Heel = 0.04
	j, err := h.Tie(dock, old, 0, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	// Stiffnesses ρgI of 12 and 36 m⁴: the broad one gives a quarter of the way.
	const ρg = 1000 * measure.Gravity
	almost(t, "heel", j.Heel, 0.01, 1e-12)
	almost(t, "twist", j.Twist, 36*ρg*0.01, 1e-6)
	almost(t, "twist on the dock", j.Twist, 12*ρg*0.03, 1e-6)
	almost(t, "pin", j.Pin, j.Twist/2, 1e-9)
	almost(t, "no step", j.Lift, 0, 1e-9)
	dock.Height += 0.01
	k, err := h.Tie(dock, old, 800, 0, 60)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "pin with a step too", k.Pin, math.Hypot(430, k.Lift/2+k.Twist/2), 1e-9)
	dock.Height -= 0.01
	pier, err := h.Tie(dock, moor.Side{Height: 0.4}, 0, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	almost(t, "level with the pier", pier.Heel, 0, 0)
	almost(t, "twist on the pier", pier.Twist, 12*ρg*0.04, 1e-6)
	if _, err := h.Tie(moor.Side{Height: 0.4, Heel: 0.01}, moor.Side{Height: 0.4}, 0, 0, 0); !errors.Is(err, measure.ErrRange) || !strings.Contains(err.Error(), "heel") {
		t.Errorf("two stiff sides with a heel between: %v", err)
	}
	dock.Heel = math.NaN()
	if _, err := h.Tie(dock, old, 0, 0, 0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no heel: %v", err)
	}
	if _, err := moor.Afloat(0, 0.4, 1, 1, 0, 1); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no inertia across: %v", err)
	}
}

// hinged is a dock held by two pins to a neighbour at its shore end, and by two
// lines at the other.
func hinged() *moor.Mooring {
	m := fourLines()
	m.Ties = m.Ties[:2:2]
	for _, y := range []float64{1, -1} {
		m.Posts = append(m.Posts, moor.Post{
			Name: map[float64]string{1: "left pin", -1: "right pin"}[y], At: [2]float64{-3, y}, Stiffness: 1e6,
			Fitting: strong("bracket"), Hold: strong("pin"), Ground: moor.Rated{Name: "neighbour", Hold: 50e3},
		})
	}
	return m
}

// What the pins take of the storm and what the lines take is all of it; the
// neighbour gets the pins' part, and its own mooring then carries it.
func TestPassed(t *testing.T) {
	m, storm := hinged(), steady(2000)
	for _, θ := range []float64{0, 1, 2.5, 4} {
		load, err := storm(θ)
		if err != nil {
			t.Fatal(err)
		}
		p, err := m.Rest(0.2, load)
		if err != nil {
			t.Fatal(err)
		}
		forces, err := m.Forces(p)
		if err != nil {
			t.Fatal(err)
		}
		got, err := m.Passed(0.2, storm)(θ)
		if err != nil {
			t.Fatal(err)
		}
		lines := moor.Load{}
		for _, f := range forces[:2] {
			lines = lines.Plus(moor.Load{X: f.X, Y: f.Y}.Turned(p.Turn))
		}
		almost(t, "along", got.X, load.X+lines.X, 1e-5*2000)
		almost(t, "across", got.Y, load.Y+lines.Y, 1e-5*2000)
		left, err1 := m.Passed(0.2, storm, "left pin")(θ)
		right, err2 := m.Passed(0.2, storm, "right pin")(θ)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		almost(t, "turn about the origin", got.Turn, -3*got.Y-(left.X-right.X), 1e-6*2000)
		almost(t, "one pin and the other", left.X+right.X, got.X, 1e-9*2000)
	}
	// The neighbour lies 6 m shorewards and is moored by four lines of its own.
	neighbour := fourLines()
	for i := range neighbour.Ties {
		neighbour.Ties[i].At[0] -= 6
		neighbour.Ties[i].Foot[0] -= 6
	}
	passed := m.Passed(0, storm)
	with := func(θ float64) (moor.Load, error) {
		own, err1 := steady(500)(θ)
		more, err2 := passed(θ)
		return own.Plus(more), errors.Join(err1, err2)
	}
	alone, err1 := neighbour.Survey([]float64{0}, steady(500), 8)
	both, err2 := neighbour.Survey([]float64{0}, with, 8)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if !(both.Worst("ground").Ratio() > alone.Worst("ground").Ratio()) {
		t.Errorf("the neighbour's anchors: %v alone, %v with the dock", alone.Worst("ground"), both.Worst("ground"))
	}
	if _, err := m.Passed(0, nil)(0); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no storm: %v", err)
	}
	if _, err := m.Passed(0, storm, "middle pin")(0); !errors.Is(err, measure.ErrName) {
		t.Errorf("no such pin: %v", err)
	}
	if _, err := m.Passed(math.NaN(), storm)(0); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no level: %v", err)
	}
	failing := errors.New("no wind today")
	if _, err := m.Passed(0, func(float64) (moor.Load, error) { return moor.Load{}, failing })(0); !errors.Is(err, failing) {
		t.Errorf("a storm that fails: %v", err)
	}
}

// A post is followed to ground as a line is, and each part of a mooring has its own
// worst.
func TestPostsFollowedToGround(t *testing.T) {
	storm, levels := steady(500), []float64{0}
	whole, err := hinged().Survey(levels, storm, 12)
	if err != nil {
		t.Fatal(err)
	}
	if w := whole.Worst(); w.Verdict() != measure.Holds {
		t.Fatalf("the whole mooring: %v", w)
	}
	for _, part := range []string{"fitting", "piece", "link", "ground", "post"} {
		w := whole.Worst(part)
		if !strings.Contains(w.Name, ", "+part) {
			t.Errorf("worst %s: %v", part, w)
		}
		for _, c := range whole.Checks {
			if strings.Contains(c.Name, ", "+part) && c.Ratio() > w.Ratio() {
				t.Errorf("worst %s: %v, though there is %v", part, w, c)
			}
		}
	}
	if w := whole.Worst("ground", "fitting"); w.Name != whole.Worst("ground").Name && w.Name != whole.Worst("fitting").Name {
		t.Errorf("worst of two parts: %v", w)
	}
	if w := whole.Worst("sail"); w.Verdict() != measure.NoAnswer {
		t.Errorf("no such part: %v", w)
	}
	for part, undo := range map[string]func(*moor.Post){
		"fitting": func(p *moor.Post) { p.Fitting = moor.Gear{} }, "post": func(p *moor.Post) { p.Hold = moor.Gear{} },
		"ground": func(p *moor.Post) { p.Ground = nil },
	} {
		m := hinged()
		undo(&m.Posts[1])
		s, err := m.Survey(levels, storm, 12)
		if err != nil {
			t.Fatal(err)
		}
		if w := s.Worst(); w.Verdict() != measure.NoAnswer || !strings.HasPrefix(w.Name, "right pin, "+part) || !errors.Is(w.Err, measure.ErrUnknown) {
			t.Errorf("%s of the right pin unknown: %v", part, w)
		}
	}
	m := hinged()
	m.Posts[0].Ground = moor.Rated{Name: "neighbour", Hold: 1}
	if s, err := m.Survey(levels, storm, 12); err != nil || s.Worst("ground").Verdict() != measure.Short {
		t.Errorf("a neighbour that holds nothing: %v", err)
	}
	m.Posts[0].Ground = moor.Rated{Name: "neighbour", Hold: math.NaN()}
	if _, err := m.Survey(levels, storm, 12); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a malformed neighbour: %v", err)
	}
	m = hinged()
	m.Posts[0].Fitting.Break = math.NaN()
	if _, err := m.Survey(levels, storm, 12); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a malformed bracket: %v", err)
	}
}

// A line to the shore that sags into the water is told of.
func TestSurveyWetLine(t *testing.T) {
	survey := func(length, weight float64) *moor.Survey {
		m := fourLines()
		m.Ties = append(m.Ties, moor.Tie{
			Name: "oak", At: [2]float64{-3, 0}, Height: 0.3, Foot: [2]float64{-12, 0}, FootZ: 1,
			Line: moor.Line{Shore: true, Pieces: []moor.Piece{{Gear: strong("wire"), Length: length, Weight: weight, Stretch: 1e6}}}, Fitting: strong("cleat"), Ground: moor.Rated{Name: "trunk", Hold: 50e3},
		})
		s, err := m.Survey([]float64{0}, steady(10), 4)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	if s := survey(10, 8); len(s.Notes) != 1 || !strings.HasPrefix(s.Notes[0], "oak: hangs into the water") {
		t.Errorf("a metre too long: %q", s.Notes)
	}
	if s := survey(8.9, 0.01); len(s.Notes) != 0 {
		t.Errorf("tight: %q", s.Notes)
	}
}
