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
		// In the axes of the dock, turned with it, where the fittings are at home.
		seen := load.Turned(-p.Turn)
		x, y, turn, size := seen.X, seen.Y, seen.Turn, 1e-3
		for k, f := range forces {
			if k < len(p.Hangs) && f.Z != -p.Hangs[k].Down {
				t.Errorf("case %d: a line that pulls down by %g N lifts by %g N", i, p.Hangs[k].Down, f.Z)
			}
			x, y, turn = x+f.X, y+f.Y, turn+f.At[0]*f.Y-f.At[1]*f.X
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
	if seen := (moor.Load{X: -500}).Turned(-p.Turn); math.Abs(f[0].X-seen.X) > 1e-5 || math.Abs(f[0].Y-seen.Y) > 1e-5 || math.Abs(p.Turn) < 0.1 {
		t.Errorf("trails with %+v, turned %g rad", f, p.Turn)
	}
}
