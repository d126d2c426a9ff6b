package moor_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

var source = &measure.Source{Title: "Invented for the tests", Status: measure.OwnChoice}

func strong(name string) moor.Gear {
	return moor.Gear{Name: name, Kind: "chain", Break: 40e3, Source: source}
}

// fourLines moors a dock of 6 by 3 m over 3 m of water by chain to blocks off
// its corners; all of it invented.
func fourLines() *moor.Mooring {
	m := &moor.Mooring{}
	for i, c := range [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: []string{"north-east", "north-west", "south-west", "south-east"}[i],
			Line: moor.Line{Pieces: []moor.Piece{
				{Gear: strong("chain"), Length: 6, Weight: 20},
				{Gear: strong("rope"), Length: 5, Weight: 1, Stretch: 60e3},
			}},
			At: [2]float64{3 * c[0], 1.5 * c[1]}, Height: 0.3,
			Foot: [2]float64{(3 + 6.8) * c[0], (1.5 + 6.8) * c[1]}, FootZ: -3,
			Fitting: strong("cleat"), Links: []moor.Gear{strong("shackle")},
			Ground: moor.DeadWeight{Mass: 1300, Density: 2400, Bottom: "sand"},
		})
	}
	return m
}

func sixLines() *moor.Mooring {
	m := fourLines()
	for i, y := range []float64{1, -1} {
		m.Ties = append(m.Ties, moor.Tie{
			Name: []string{"north breast", "south breast"}[i],
			Line: moor.Line{Pieces: []moor.Piece{{Gear: strong("chain"), Length: 10.5, Weight: 20, Stretch: 5e6}}},
			At:   [2]float64{0, 1.5 * y}, Height: 0.3, Foot: [2]float64{0, (1.5 + 9) * y}, FootZ: -3,
			Fitting: strong("cleat"), Ground: moor.Rated{Name: "screw", Hold: 20e3, Steepest: 1},
		})
	}
	return m
}

func steady(force float64) moor.Storm {
	return func(θ float64) (moor.Load, error) {
		return moor.Load{X: force * math.Cos(θ), Y: force * math.Sin(θ), Turn: 0.4 * force * math.Sin(θ)}, nil
	}
}

// At rest the load, the lines and the posts balance.
func TestRestBalances(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 1))
	for i := range 400 {
		m := sixLines()
		if i%2 == 0 {
			m = fourLines()
		}
		if i%3 == 0 {
			m.Posts = []moor.Post{{Name: "pile", At: [2]float64{-3, 0}, Stiffness: 2e5, Play: 0.1 * rng.Float64()}}
		}
		load := moor.Load{X: 2000 * rng.NormFloat64(), Y: 2000 * rng.NormFloat64(), Turn: 1500 * rng.NormFloat64()}
		p, err := m.Rest(rng.Float64()-0.5, load)
		if err != nil {
			t.Fatalf("case %d %+v: %v", i, load, err)
		}
		forces, err := m.Forces(p)
		if err != nil {
			t.Fatal(err)
		}
		x, y, turn, size := load.X, load.Y, load.Turn, 1e-3
		sin, cos := math.Sincos(p.Turn)
		for _, f := range forces {
			ax, ay := cos*f.At[0]-sin*f.At[1], sin*f.At[0]+cos*f.At[1]
			x, y, turn = x+f.X, y+f.Y, turn+ax*f.Y-ay*f.X
			size += math.Hypot(f.X, f.Y)
		}
		if math.Abs(x)+math.Abs(y)+math.Abs(turn)/3 > 1e-8*size {
			t.Errorf("case %d: %g N, %g N, %g N·m left of %g N", i, x, y, turn, size)
		}
	}
}

// The stiffness of the moored dock is that of small loads, and symmetric: as
// much surge from a turning moment as turn from a surging force.
func TestRestReciprocity(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for i := range 60 {
		m := sixLines()
		m.Posts = []moor.Post{{At: [2]float64{3, 1}, Stiffness: 3000}}
		base := moor.Load{X: 1500 * rng.NormFloat64(), Y: 1500 * rng.NormFloat64(), Turn: 800 * rng.NormFloat64()}
		p, err := m.Rest(0.2, base)
		if err != nil {
			t.Fatal(err)
		}
		const d = 0.02 // N, N·m
		var give [3][3]float64
		for k := range 3 {
			step := [3]float64{}
			step[k] = d
			a, err1 := m.Rest(0.2, base.Plus(moor.Load{X: step[0], Y: step[1], Turn: step[2]}))
			b, err2 := m.Rest(0.2, base.Plus(moor.Load{X: -step[0], Y: -step[1], Turn: -step[2]}))
			if err1 != nil || err2 != nil {
				t.Fatal(err1, err2)
			}
			give[k] = [3]float64{(a.X - b.X) / (2 * d), (a.Y - b.Y) / (2 * d), (a.Turn - b.Turn) / (2 * d)}
		}
		for r := range 3 {
			for c := range 3 {
				scale := math.Sqrt(give[r][r] * give[c][c])
				if math.Abs(give[r][c]-give[c][r]) > 1e-4*scale {
					t.Errorf("case %d: give %d by %d is %g, by %d of %d %g", i, r, c, give[r][c], c, r, give[c][r])
				}
				// The stiffness times the give is the identity.
				sum := 0.0
				for k := range 3 {
					sum += p.Stiffness[r][k] * give[k][c]
				}
				want := 0.0
				if r == c {
					want = 1
				}
				if math.Abs(sum-want)*math.Sqrt(give[c][c]/give[r][r]) > 1e-3*math.Max(1, give[c][c]/give[r][r]) {
					t.Errorf("case %d: stiffness by give [%d][%d] is %g, want %g", i, r, c, sum, want)
				}
				if p.Stiffness[r][c] != p.Stiffness[c][r] {
					t.Errorf("case %d: stiffness is not symmetric", i)
				}
			}
		}
	}
}

// A mirrored dock under the mirrored load does the mirrored thing.
func TestRestMirrored(t *testing.T) {
	a, err1 := fourLines().Rest(0, moor.Load{X: 800, Y: 1300, Turn: 500})
	b, err2 := fourLines().Rest(0, moor.Load{X: 800, Y: -1300, Turn: -500})
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	opt := cmpopts.EquateApprox(1e-7, 1e-9)
	if d := cmp.Diff([]float64{a.X, a.Y, a.Turn, a.Hangs[0].Pull, a.Hangs[1].Pull}, []float64{b.X, -b.Y, -b.Turn, b.Hangs[3].Pull, b.Hangs[2].Pull}, opt); d != "" {
		t.Error(d)
	}
}

// More wind never leaves the windward line with less.
func TestRestMonotone(t *testing.T) {
	m := fourLines()
	last, far := -1.0, -1.0
	for f := 0.0; f < 12000; f += 100 {
		p, err := m.Rest(0, moor.Load{X: -f})
		if err != nil {
			t.Fatal(err)
		}
		if pull := p.Hangs[0].Tension(); pull < last || -p.X < far {
			t.Fatalf("at %g N: %g N in the line after %g N, moved %g m after %g m", f, pull, last, -p.X, far)
		}
		last, far = p.Hangs[0].Tension(), -p.X
	}
}

// Two pins of a hinge to a wall take surge, sway and turn without any line.
func TestRestPosts(t *testing.T) {
	m := moor.Mooring{Posts: []moor.Post{
		{Name: "left", At: [2]float64{0, 1}, Stiffness: 1e6}, {Name: "right", At: [2]float64{0, -1}, Stiffness: 1e6},
	}}
	p, err := m.Rest(0, moor.Load{X: 1000, Y: 500, Turn: 3000})
	if err != nil {
		t.Fatal(err)
	}
	// Each takes half of the forces; the moment pulls one out and pushes one in.
	want := [][2]float64{{-500 + 1500, -250}, {-500 - 1500, -250}}
	if d := cmp.Diff(want, p.Pushes, cmpopts.EquateApprox(0, 15)); d != "" {
		t.Error(d)
	}
	pile := moor.Mooring{Posts: []moor.Post{{At: [2]float64{0, 0}, Stiffness: 1e5, Play: 0.05}}}
	p, err = pile.Rest(0, moor.Load{X: 1000})
	if err != nil || math.Abs(p.X-0.06) > 1e-9 {
		t.Errorf("moved %g m against a pile with 0.05 m of play, want 0.06 m; %v", p.X, err)
	}
	if _, err := pile.Rest(0, moor.Load{Turn: 10}); !errors.Is(err, moor.ErrAdrift) {
		t.Errorf("one round pile holds no turn: %v", err)
	}
}

func TestAdrift(t *testing.T) {
	var none moor.Mooring
	if _, err := none.Rest(0, moor.Load{X: 10}); !errors.Is(err, moor.ErrAdrift) {
		t.Errorf("nothing holds: %v", err)
	}
	if p, err := none.Rest(0, moor.Load{}); err != nil || p.X != 0 {
		t.Errorf("nothing pushes: %+v, %v", p, err)
	}
	m := fourLines()
	_, err := m.Rest(8, moor.Load{})
	var reach *moor.ReachError
	if err == nil {
		// The rope stretches, so they reach; a rigid line does not.
		for i := range m.Ties {
			m.Ties[i].Line.Pieces[1].Stretch = 0
		}
		_, err = m.Rest(8, moor.Load{})
	}
	if !errors.As(err, &reach) || !errors.Is(err, moor.ErrReach) || reach.Tie != "north-east" || !strings.Contains(err.Error(), "26 ft 2-15/16 in") {
		t.Errorf("far too much water: %v", err)
	}
	if _, err := m.Rest(-4, moor.Load{}); !errors.Is(err, measure.ErrRange) || !strings.Contains(err.Error(), "north-east: rise") {
		t.Errorf("dry lake: %v", err)
	}
	// One line alone lets the dock swing round until it trails from its corner.
	one := moor.Mooring{Ties: m.Ties[:1]}
	p, err := one.Rest(0, moor.Load{X: 500})
	if err != nil {
		t.Fatal(err)
	}
	f, _ := one.Forces(p)
	if math.Abs(f[0].X+500) > 1e-5 || math.Abs(f[0].Y) > 1e-5 || math.Abs(p.Turn) < 0.1 {
		t.Errorf("trails with %+v, turned %g rad", f, p.Turn)
	}
}

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
	pushed, turned, moved, holding := 0.0, 0.0, 0.0, math.Inf(1)
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
	}
	if d := cmp.Diff(append([]float64{pushed, turned, moved}, most...), got, opt); d != "" {
		t.Error(d)
	}
	for _, c := range s.Checks {
		if c.Name == "north-east, ground: dead weight sliding" && math.Abs(c.Limit-c.Value-holding) > 1e-3 {
			t.Errorf("block has %g N to spare, by brute force %g N", c.Limit-c.Value, holding)
		}
	}
	// Fitting, two pieces or one, links, ground; the post.
	if want := 4*5 + 2*3 + 1; len(s.Checks) != want {
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
