package moor_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// Whatever a survey says is the worst is the worst of rests found one by one.
func TestSurveyBruteForce(t *testing.T) {
	m := sixLines()
	m.Posts = []moor.Post{{Name: "pile", At: [2]float64{-3, 0}, Stiffness: 2e4, Play: 0.3, Hold: strong("pile")}}
	levels := []float64{-0.6, 0, 0.3}
	storm := steady(2500)
	const n = 24
	s, err := m.Survey(levels, storm, n)
	if err != nil {
		t.Fatal(err)
	}
	most := make([]float64, len(m.Ties))
	pushed, turned, moved, holding, chain := 0.0, 0.0, 0.0, math.Inf(1), 0.0
	for _, level := range levels {
		for k := range n {
			load, _ := storm(2 * math.Pi * float64(k) / n)
			p, err := m.Rest(level, load)
			if err != nil {
				t.Fatal(err)
			}
			for i, h := range p.Hangs {
				most[i] = math.Max(most[i], h.Tension())
			}
			c0, err := m.Ties[0].Line.Tension(0, p.Hangs[0])
			if err != nil {
				t.Fatal(err)
			}
			chain = math.Max(chain, c0)
			pushed = math.Max(pushed, math.Hypot(p.Pushes[0][0], p.Pushes[0][1]))
			turned = math.Max(turned, math.Abs(p.Turn))
			for _, tie := range m.Ties {
				sin, cos := math.Sincos(p.Turn)
				moved = math.Max(moved, math.Hypot(p.X+(cos-1)*tie.At[0]-sin*tie.At[1], p.Y+sin*tie.At[0]+(cos-1)*tie.At[1]))
			}
			c, err := m.Ties[0].Ground.Check(p.Hangs[0].Pull, p.Hangs[0].Lift)
			if err != nil {
				t.Fatal(err)
			}
			holding = math.Min(holding, c.Limit-c.Value)
		}
	}
	opt := cmpopts.EquateApprox(1e-6, 1e-9)
	got := []float64{s.Posts[0].Tension, s.Turn, s.Offset}
	for i, e := range s.Ties {
		got = append(got, e.Tension)
		if math.Abs(e.Hang.Tension()-e.Tension) > 1e-9 || e.Name != m.Ties[i].Name {
			t.Errorf("%+v", e)
		}
		load, _ := storm(e.Direction)
		if p, err := m.Rest(e.Level, load); err != nil || math.Abs(p.Hangs[i].Tension()-e.Tension) > 1e-6*e.Tension {
			t.Errorf("%s at its worst: %g N, found again %+v, %v", e.Name, e.Tension, p.Hangs, err)
		}
	}
	load, _ := storm(s.Posts[0].Direction)
	if p, err := m.Rest(s.Posts[0].Level, load); err != nil || math.Abs(math.Hypot(p.Pushes[0][0], p.Pushes[0][1])-pushed) > 1e-6*pushed {
		t.Errorf("the pile at its worst: %v, %v", p.Pushes, err)
	}
	load, _ = storm(s.OffsetDirection)
	if p, err := m.Rest(s.OffsetLevel, load); err != nil || math.Abs(math.Hypot(p.X, p.Y)-s.Offset) > 3.4*math.Abs(p.Turn)+1e-6 {
		t.Errorf("moved %g m, found again %g, %g m, %v", s.Offset, p.X, p.Y, err)
	}
	if d := cmp.Diff(append([]float64{pushed, turned, moved}, most...), got, opt); d != "" {
		t.Error(d)
	}
	for _, c := range s.Checks {
		if c.Name == "north-east, piece 1 from the ground: tension in chain" && math.Abs(c.Value-chain) > 1e-6*chain {
			t.Errorf("chain bears %g N, by brute force %g N", c.Value, chain)
		}
		if c.Name == "north-east, ground: dead weight sliding" && math.Abs(c.Limit-c.Value-holding) > 1e-3 {
			t.Errorf("block has %g N to spare, by brute force %g N", c.Limit-c.Value, holding)
		}
	}
	// Fitting, two pieces or one, links, ground; fitting, post and its ground.
	if want := 4*5 + 2*3 + 3; len(s.Checks) != want {
		t.Errorf("%d checks, want %d", len(s.Checks), want)
	}
}

// A path that ends in something undescribed has no answer, whichever part it is.
func TestSurveyFollowsToGround(t *testing.T) {
	storm := steady(500)
	levels := []float64{0}
	good, err := fourLines().Survey(levels, storm, 12)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range good.Checks {
		if c.Verdict() != measure.Holds {
			t.Fatalf("the whole mooring: %v", c)
		}
	}
	if w := good.Worst(); w.Verdict() != measure.Holds || !strings.Contains(w.Name, "ground") {
		t.Errorf("worst of the whole mooring: %v", w)
	}
	for name, undo := range map[string]func(*moor.Tie){
		"fitting":                    func(t *moor.Tie) { t.Fitting = moor.Gear{} },
		"fitting of unknown source":  func(t *moor.Tie) { t.Fitting.Source = nil },
		"piece 1 from the ground":    func(t *moor.Tie) { t.Line.Pieces[0].Gear = moor.Gear{} },
		"piece 2 from the ground":    func(t *moor.Tie) { t.Line.Pieces[1].Gear = moor.Gear{} },
		"link":                       func(t *moor.Tie) { t.Links[0] = moor.Gear{Name: "shackle"} },
		"ground":                     func(t *moor.Tie) { t.Ground = nil },
		"ground of soft mud":         func(t *moor.Tie) { t.Ground = moor.DeadWeight{Mass: 900, Density: 2400, Bottom: "soft mud"} },
		"ground of unknown bottom":   func(t *moor.Tie) { t.Ground = moor.DeadWeight{Mass: 900, Density: 2400} },
		"ground of unknown material": func(t *moor.Tie) { t.Ground = moor.DeadWeight{Mass: 900, Bottom: "sand"} },
		"ground of unknown holding":  func(t *moor.Tie) { t.Ground = moor.Rated{Name: "oak"} },
	} {
		m := fourLines()
		undo(&m.Ties[2])
		s, err := m.Survey(levels, storm, 12)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		w := s.Worst()
		part, _, _ := strings.Cut(name, " of ")
		if w.Verdict() != measure.NoAnswer || !errors.Is(w.Err, measure.ErrUnknown) || !strings.HasPrefix(w.Name, "south-west, "+part) {
			t.Errorf("%s: %v", name, w)
		}
	}
	m := fourLines()
	m.Posts = []moor.Post{{Name: "pile", Stiffness: 1e4, Play: 1}}
	if s, err := m.Survey(levels, storm, 12); err != nil || s.Worst().Verdict() != measure.NoAnswer {
		t.Errorf("a post of unknown strength: %v", err)
	}
	m.Ties[0].Ground = moor.DeadWeight{Mass: math.NaN(), Density: 2400, Bottom: "sand"}
	if _, err := m.Survey(levels, storm, 12); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a malformed block: %v", err)
	}
}

// A shore line bears most at its upper end, the tree's; a link anywhere in it
// must bear that.
func TestSurveyShoreLine(t *testing.T) {
	m := fourLines()
	m.Ties = append(m.Ties, moor.Tie{
		Name: "oak", At: [2]float64{-3, 0}, Height: 0.3, Foot: [2]float64{-12, 0}, FootZ: 6,
		Line:    moor.Line{Shore: true, Pieces: []moor.Piece{{Gear: strong("wire"), Length: 10.9, Weight: 8}}},
		Fitting: strong("cleat"), Links: []moor.Gear{strong("shackle")}, Ground: moor.Rated{Name: "trunk", Hold: 50e3},
	})
	s, err := m.Survey([]float64{0}, steady(800), 12)
	if err != nil {
		t.Fatal(err)
	}
	value := map[string]float64{}
	for _, c := range s.Checks {
		value[c.Name] = c.Value
	}
	wire, link, cleat := value["oak, piece 1 from the ground: tension in wire"], value["oak, link: tension in shackle"], value["oak, fitting: tension in cleat"]
	if link != wire || math.Abs(wire-cleat-8*5.7) > 0.5 || value["oak, ground: trunk"] != wire {
		t.Errorf("wire %g N, shackle %g N, cleat %g N, tree %g N", wire, link, cleat, value["oak, ground: trunk"])
	}
}

// A dock that turns far is told of, since its storm is that on the unturned one.
func TestSurveyNotes(t *testing.T) {
	m := fourLines()
	s, err := m.Survey([]float64{0}, func(float64) (moor.Load, error) { return moor.Load{Turn: 3000}, nil }, 1)
	if err != nil || s.Turn > 0.35 != (len(s.Notes) > 0) || s.Turn == 0 {
		t.Errorf("turned %g rad, notes %q, %v", s.Turn, s.Notes, err)
	}
	s, err = m.Survey([]float64{0}, func(float64) (moor.Load, error) { return moor.Load{Turn: 50}, nil }, 1)
	if err != nil || !(s.Turn > 0 && s.Turn < 0.35) || len(s.Notes) != 0 {
		t.Errorf("turned %g rad, notes %q, %v", s.Turn, s.Notes, err)
	}
	m.Ties = m.Ties[:2]
	s, err = m.Survey([]float64{0}, func(float64) (moor.Load, error) { return moor.Load{X: 1500}, nil }, 1)
	if err != nil || s.Turn > 0.35 != (len(s.Notes) > 0) {
		t.Errorf("turned %g rad, notes %q, %v", s.Turn, s.Notes, err)
	}
}

func TestSurveyRefuses(t *testing.T) {
	m := fourLines()
	bad := func(float64) (moor.Load, error) { return moor.Load{X: math.NaN()}, nil }
	for name, f := range map[string]func() error{
		"no directions": func() error { _, err := m.Survey([]float64{0}, steady(1), 0); return err },
		"no levels":     func() error { _, err := m.Survey(nil, steady(1), 8); return err },
		"NaN level":     func() error { _, err := m.Survey([]float64{math.NaN()}, steady(1), 8); return err },
		"NaN load":      func() error { _, err := m.Survey([]float64{0}, bad, 8); return err },
		"no storm":      func() error { _, err := m.Survey([]float64{0}, nil, 8); return err },
		"NaN rest":      func() error { _, err := m.Rest(0, moor.Load{Turn: math.NaN()}); return err },
		"NaN band":      func() error { _, err := m.Bands(math.NaN(), 1); return err },
		"upside down":   func() error { _, err := m.Bands(1, 0); return err },
		"NaN offset":    func() error { _, _, _, err := m.Lengths([]float64{0}, steady(1), 8, math.NaN(), 1); return err },
		"NaN place": func() error {
			n := fourLines()
			n.Ties[1].Foot[0] = math.NaN()
			_, err := n.Rest(0, moor.Load{})
			return err
		},
		"no spring": func() error {
			n := moor.Mooring{Posts: []moor.Post{{}}}
			_, err := n.Rest(0, moor.Load{})
			return err
		},
		"bad line": func() error {
			n := fourLines()
			n.Ties[1].Line.Pieces = nil
			_, err := n.Rest(0, moor.Load{})
			return err
		},
	} {
		if err := f(); !errors.Is(err, measure.ErrRange) && !errors.Is(err, measure.ErrUnknown) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := m.Forces(moor.Position{}); !errors.Is(err, measure.ErrName) {
		t.Errorf("another mooring's position: %v", err)
	}
	failing := errors.New("no wind today")
	if _, err := m.Survey([]float64{0}, func(float64) (moor.Load, error) { return moor.Load{}, failing }, 8); !errors.Is(err, failing) {
		t.Errorf("a storm that fails: %v", err)
	}
}

// With a line lost the others carry more and the dock goes farther.
func TestLosses(t *testing.T) {
	m := fourLines()
	levels, storm := []float64{0}, steady(1500)
	whole, err := m.Survey(levels, storm, 24)
	if err != nil {
		t.Fatal(err)
	}
	all, err := m.Losses(levels, storm, 24)
	if err != nil || len(all) != 4 {
		t.Fatal(len(all), err)
	}
	for i, s := range all {
		if s.Lost != m.Ties[i].Name || s.Err != nil || len(s.Ties) != 3 || !(s.Offset > whole.Offset) || !(s.Worst().Value > whole.Worst().Value) {
			t.Errorf("without %s: %+v", s.Lost, s)
		}
	}
	two := moor.Mooring{Ties: m.Ties[:1], Posts: nil}
	all, err = two.Losses(levels, storm, 4)
	if err != nil || len(all) != 1 || !errors.Is(all[0].Err, moor.ErrAdrift) {
		t.Errorf("the only line lost: %+v, %v", all, err)
	}
}
