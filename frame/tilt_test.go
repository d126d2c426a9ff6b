package frame_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// pontoon is a stiff frame of nx by ny nodes over upright prisms of water: each
// node stands on its part of a box afloat of length, width and draft, whose
// weight has its centre at height kg above the keel. The nodes lie at height
// plane above the keel.
func pontoon(nx, ny int, length, width, draft, kg, plane, ei float64) (g frame.Grillage, weight, gmx, gmy float64) {
	const gamma = 9806.65
	weight = gamma * length * width * draft
	n := float64(nx * ny)
	var xx, yy float64
	at := func(i, j int) int { return i*ny + j }
	for i := range nx {
		for j := range ny {
			x, y := length*((float64(i)+0.5)/float64(nx)-0.5), width*((float64(j)+0.5)/float64(ny)-0.5)
			xx, yy = xx+x*x/n, yy+y*y/n
			g.Nodes = append(g.Nodes, [2]float64{x, y})
			g.Weights = append(g.Weights, frame.Weight{Node: at(i, j), Force: weight / n, Height: kg - plane})
			g.Seats = append(g.Seats, frame.Seat{
				Nodes: []int{at(i, j)}, Support: frame.Spring(gamma * length * width / n),
				Heights: [2]float64{draft/2 - plane, draft/2 - plane},
			})
			m := frame.Member{EI: ei, GJ: ei}
			if i > 0 {
				m.I, m.J = at(i-1, j), at(i, j)
				g.Members = append(g.Members, m)
			}
			if j > 0 {
				m.I, m.J = at(i, j-1), at(i, j)
				g.Members = append(g.Members, m)
			}
		}
	}
	// KB + BM - KG, with the second moment of the prisms' own areas left out.
	return g, weight, draft/2 + yy/draft - kg, draft/2 + xx/draft - kg
}

// TestMetacentricHeight: with very stiff members a small moment heels a box
// afloat by moment over weight and metacentric height, GM = KB + BM - KG, on a
// broad dock and on a narrow finger alike, wherever the nodes' plane is laid.
func TestMetacentricHeight(t *testing.T) {
	for _, c := range []struct {
		name                     string
		length, width, draft, kg float64
	}{
		{"broad dock", 6, 4, 0.3, 0.9},
		{"narrow finger", 8, 1.2, 0.25, 0.5},
		{"narrow and tall", 8, 1.2, 0.25, 0.55},
	} {
		for _, plane := range []float64{0, 0.4, 0.9} {
			g, weight, gmx, gmy := pontoon(6, 5, c.length, c.width, c.draft, c.kg, plane, 1e11)
			g.Forces = make([][3]float64, len(g.Nodes))
			const small = 1e-4 // rad
			g.Forces[7][1] = weight * gmx * small
			s := solveGrid(t, g)
			near(t, c.name+": heel", s.Move[7][1], small, 2e-6*small)
			g.Forces[7] = [3]float64{0, 0, weight * gmy * small}
			s = solveGrid(t, g)
			near(t, c.name+": trim", s.Move[7][2], small, 2e-6*small)
			// Without the heights the answer is that of a stiffer dock.
			g.Forces[7] = [3]float64{0, weight * gmx * small, 0}
			for i := range g.Weights {
				g.Weights[i].Height = 0
			}
			for i := range g.Seats {
				g.Seats[i].Heights = [2]float64{}
			}
			s = solveGrid(t, g)
			flat := gmx / (gmx + c.kg - c.draft/2)
			near(t, c.name+": heel without heights", s.Move[7][1], flat*small, 2e-6*small)
			if c.name == "narrow and tall" && flat > 0.2 {
				t.Errorf("the heights matter by %g only", flat)
			}
		}
	}
}

// TestBoxInTheBooks: with many strips BM nears B²/(12 T) of a box.
func TestBoxInTheBooks(t *testing.T) {
	_, _, gm, _ := pontoon(2, 60, 5, 2, 0.4, 0.3, 0, 1)
	near(t, "GM", gm, 0.2+4/(12*0.4)-0.3, 1e-3*gm)
}

func TestCapsizes(t *testing.T) {
	for _, lean := range []float64{0, 1e-6, 100} {
		g, weight, gmx, _ := pontoon(4, 3, 8, 1.2, 0.25, 0.72, 0.4, 1e8)
		if gmx >= 0 {
			t.Fatalf("GM %g is positive", gmx)
		}
		g.Forces = make([][3]float64, len(g.Nodes))
		g.Forces[3][1] = lean
		s, err := g.Solve()
		var c *frame.CapsizeError
		if !errors.As(err, &c) || !errors.Is(err, frame.ErrCapsizes) || errors.Is(err, frame.ErrMechanism) {
			t.Fatalf("lean %g of %g N: %v, %v", lean, weight, s, err)
		}
		if !strings.Contains(err.Error(), "turns about a line") || !strings.Contains(err.Error(), "node") {
			t.Errorf("%v", err)
		}
	}
	// Just stable, but pushed over.
	g, weight, gmx, _ := pontoon(4, 3, 8, 1.2, 0.25, 0.5, 0.4, 1e8)
	g.Forces = make([][3]float64, len(g.Nodes))
	g.Forces[3][1] = 2 * weight * gmx
	if _, err := g.Solve(); !errors.Is(err, frame.ErrCapsizes) {
		t.Errorf("pushed over: %v", err)
	}
	// A flap that hangs on hinges is loose, not capsizing, beside any heights.
	g, _, _, _ = pontoon(4, 3, 8, 1.2, 0.25, 0.3, 0.4, 1e8)
	n := len(g.Nodes)
	g.Nodes = append(g.Nodes, [2]float64{6, -0.4}, [2]float64{6, 0.4})
	g.Members = append(g.Members,
		frame.Member{I: n - 3, J: n, EI: 1e5, GJ: 1e3, HingeI: true, Untwist: true},
		frame.Member{I: n - 1, J: n + 1, EI: 1e5, GJ: 1e3, HingeI: true, Untwist: true},
		frame.Member{I: n, J: n + 1, EI: 1e5, GJ: 1e3})
	if _, err := g.Solve(); !errors.Is(err, frame.ErrMechanism) || !strings.Contains(err.Error(), "node 1") {
		t.Errorf("a flap: %v", err)
	}
	g, _, _, _ = pontoon(4, 3, 8, 1.2, 0.25, 0.3, 0.4, 1e8)
	// A loose frame stays a mechanism, heights or not.
	g.Seats = nil
	if _, err := g.Solve(); !errors.Is(err, frame.ErrMechanism) {
		t.Errorf("no seats: %v", err)
	}
}

// TestTiltReciprocity: the movements come from an energy, for seats under several
// nodes and skew axes too: what a small force at one place adds at another equals
// what it adds the other way round.
func TestTiltReciprocity(t *testing.T) {
	each(t, 40, func(t *testing.T, r *rand.Rand) {
		g := randomGrid(r, linear)
		for i := range g.Seats {
			g.Seats[i].Clamped = false
			if g.Seats[i].Support != nil {
				g.Seats[i].Heights = [2]float64{0.3 * r.Float64(), 0.3 * (r.Float64() - 0.3)}
			}
		}
		for range 3 {
			g.Weights = append(g.Weights, frame.Weight{Node: r.IntN(len(g.Nodes)), Force: 200 * r.Float64(), Height: r.Float64() - 0.4})
		}
		base, err := g.Solve()
		if err != nil { // this one tips over
			known(t, err)
			return
		}
		a, b, j, k := r.IntN(len(g.Nodes)), r.IntN(len(g.Nodes)), r.IntN(3), r.IntN(3)
		const d = 1e-3
		with := func(node, k int) *frame.Solution {
			h := g
			h.Forces = slices.Clone(g.Forces)
			h.Forces[node][k] += d
			return solveGrid(t, h)
		}
		one := with(a, j).Move[b][k] - base.Move[b][k]
		two := with(b, k).Move[a][j] - base.Move[a][j]
		w, turn := moves(base)
		near(t, "reciprocal movements", one, two, 1e-5*(math.Abs(one)+math.Abs(two))+1e-12*(w+turn))
	})
}

func TestTiltBadData(t *testing.T) {
	nan := math.NaN()
	for field, spoil := range map[string]func(g *frame.Grillage){
		"Weights[0].Node":     func(g *frame.Grillage) { g.Weights = []frame.Weight{{Node: 9}} },
		"Weights[0].Force":    func(g *frame.Grillage) { g.Weights = []frame.Weight{{Force: nan}} },
		"Weights[0].Height":   func(g *frame.Grillage) { g.Weights = []frame.Weight{{Height: nan}} },
		"Seats[1].Heights[1]": func(g *frame.Grillage) { g.Seats[1].Heights[1] = nan },
	} {
		g := square()
		for i := range 4 {
			g.Seats = append(g.Seats, frame.Seat{Support: frame.Spring(1e4), Nodes: []int{i}})
		}
		spoil(&g)
		_, err := g.Solve()
		var m *measure.Error
		if !errors.As(err, &m) || m.Field != field || !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", field, err)
		}
	}
	// Heights on a node whose rotation no member takes.
	g := frame.Grillage{
		Nodes: [][2]float64{{0, 0}, {2, 1}}, Members: []frame.Member{{I: 0, J: 1, EI: 1e5, Untwist: true}},
		Seats:   []frame.Seat{{Nodes: []int{0}, Clamped: true}, {Nodes: []int{1}, Support: frame.Spring(1e4)}},
		Weights: []frame.Weight{{Node: 1, Force: 100, Height: 1}},
	}
	if _, err := g.Solve(); !errors.Is(err, frame.ErrMechanism) || !strings.Contains(err.Error(), "node 1") {
		t.Errorf("a weight on a node that spins: %v", err)
	}
	g.Weights[0].Height = 0
	g.Seats[1].Heights[0] = -0.2
	if _, err := g.Solve(); !errors.Is(err, frame.ErrMechanism) {
		t.Errorf("a seat under a node that spins: %v", err)
	}
	g.Seats[1].Heights[0] = 0
	solveGrid(t, g)
}
