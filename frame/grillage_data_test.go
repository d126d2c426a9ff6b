package frame_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
	"github.com/google/go-cmp/cmp"
)

func square() frame.Grillage {
	g := frame.Grillage{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}, Forces: make([][3]float64, 4)}
	for i := range 4 {
		g.Members = append(g.Members, frame.Member{I: i, J: (i + 1) % 4, EI: 1e5, GJ: 2e3})
	}
	g.Forces[2][0] = -900
	return g
}

func TestGridMechanisms(t *testing.T) {
	stand := func(g *frame.Grillage, s frame.Support, nodes ...int) {
		for _, n := range nodes {
			g.Seats = append(g.Seats, frame.Seat{Support: s, Nodes: []int{n}})
		}
	}
	for _, c := range []struct {
		name         string
		make         func() frame.Grillage
		node, motion string
	}{
		{"no seat", square, "node 0", "moves up or down"},
		{"one seat", func() frame.Grillage { g := square(); stand(&g, nil, 0); return g }, "", "turns about a line"},
		{"two seats", func() frame.Grillage { g := square(); stand(&g, nil, 0, 1); return g }, "node 2", "turns about a line through (3.000, 0.000) m"},
		{"all let go", func() frame.Grillage {
			g := square()
			stand(&g, frame.OneWay(1e4), 0, 1, 2, 3)
			g.Forces[2][0] = 900
			return g
		}, "", ""},
		{"tips over", func() frame.Grillage { g := square(); stand(&g, frame.OneWay(1e4), 0, 1, 3); return g }, "", "turns about a line"},
		{"a loose part", func() frame.Grillage {
			g := square()
			stand(&g, frame.Spring(1e4), 0, 1, 2, 3)
			g.Nodes = append(g.Nodes, [2]float64{5, 0}, [2]float64{6, 0})
			g.Members = append(g.Members, frame.Member{I: 4, J: 5, EI: 1e5, GJ: 2e3})
			g.Forces = nil
			return g
		}, "node 4", "moves up or down"},
		{"a bare node", func() frame.Grillage {
			g := square()
			stand(&g, frame.Spring(1e4), 0, 1, 2, 3)
			g.Nodes = append(g.Nodes, [2]float64{1, 1})
			g.Names = []string{"a", "b", "c", "d", "lost"}
			g.Forces = nil
			return g
		}, "node lost", "moves up or down"},
		{"a flap on a hinge", func() frame.Grillage {
			g := square()
			stand(&g, frame.Spring(1e4), 0, 1, 2, 3)
			g.Nodes = append(g.Nodes, [2]float64{5, 0}, [2]float64{5, 2})
			g.Forces = nil
			g.Members = append(g.Members,
				frame.Member{I: 1, J: 4, EI: 1e5, GJ: 2e3, HingeI: true, Untwist: true},
				frame.Member{I: 2, J: 5, EI: 1e5, GJ: 2e3, HingeI: true, Untwist: true},
				frame.Member{I: 4, J: 5, EI: 1e5, GJ: 2e3})
			return g
		}, "", "turns"},
		{"a moment that nothing takes", func() frame.Grillage {
			g := frame.Grillage{Nodes: [][2]float64{{0, 0}, {1, 1}}, Forces: [][3]float64{{}, {0, 10, 10}}}
			g.Members = []frame.Member{{I: 0, J: 1, EI: 1e5, Untwist: true}}
			g.Seats = []frame.Seat{{Nodes: []int{0}, Clamped: true}}
			return g
		}, "node 1", "turns on the spot"},
		{"a row that can roll", func() frame.Grillage {
			g := frame.Grillage{Nodes: [][2]float64{{0, 0}, {1, 0}, {2, 0}}, Forces: [][3]float64{{}, {-100}, {}}}
			g.Members = []frame.Member{{I: 0, J: 1, EI: 1e5, GJ: 1e3}, {I: 1, J: 2, EI: 1e5, GJ: 1e3}}
			stand(&g, nil, 0, 2)
			return g
		}, "", "turns on the spot"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := c.make()
			s, err := g.Solve()
			var m *frame.MechanismError
			if !errors.As(err, &m) {
				t.Fatalf("%v, %v", s, err)
			}
			if !strings.HasPrefix(m.Place, c.node) || !strings.HasPrefix(m.Motion, c.motion) {
				t.Errorf("%s: it %s; want %s, %s", m.Place, m.Motion, c.node, c.motion)
			}
		})
	}
}

func TestGridBadData(t *testing.T) {
	nan := math.NaN()
	good := func() frame.Grillage {
		g := square()
		for i := range 4 {
			g.Seats = append(g.Seats, frame.Seat{Support: frame.Spring(1e4), Nodes: []int{i}})
		}
		return g
	}
	solveGrid(t, good())
	for _, c := range []struct {
		field string
		spoil func(g *frame.Grillage)
	}{
		{"Nodes", func(g *frame.Grillage) { g.Nodes = nil }},
		{"Nodes[1][0]", func(g *frame.Grillage) { g.Nodes[1][0] = nan }},
		{"Forces", func(g *frame.Grillage) { g.Forces = g.Forces[:2] }},
		{"Forces[2][1]", func(g *frame.Grillage) { g.Forces[2][1] = nan }},
		{"Forces[0][0]", func(g *frame.Grillage) { g.Forces[0][0] = math.Inf(1) }},
		{"Members[0].I", func(g *frame.Grillage) { g.Members[0].I = -1 }},
		{"rim.J", func(g *frame.Grillage) { g.Members[0].J, g.Members[0].Name = 4, "rim" }},
		{"Members[1] from I to J", func(g *frame.Grillage) { g.Members[1].J = g.Members[1].I }},
		{"Members[1].EI (N·m²)", func(g *frame.Grillage) { g.Members[1].EI = 0 }},
		{"Members[1].GJ (N·m²)", func(g *frame.Grillage) { g.Members[1].GJ = 0 }},
		{"Members[1].GJ (N·m²)", func(g *frame.Grillage) { g.Members[1].GJ, g.Members[1].Untwist = nan, true }},
		{"Members[1].GA", func(g *frame.Grillage) { g.Members[1].GA = -1 }},
		{"Members[1].Loads[0].From", func(g *frame.Grillage) { g.Members[1].Loads = []frame.Load{{From: 9}} }},
		{"Seats[0].Nodes", func(g *frame.Grillage) { g.Seats[0].Nodes = nil }},
		{"Seats[0].Nodes[1]", func(g *frame.Grillage) { g.Seats[0].Nodes = []int{0, 7} }},
		{"Seats[0].Nodes", func(g *frame.Grillage) { g.Seats[0].Nodes = []int{0, 0} }},
		{"Seats[0].Nodes", func(g *frame.Grillage) { g.Seats[0] = frame.Seat{Nodes: []int{0, 1}} }},
		{"Seats[0].Nodes", func(g *frame.Grillage) { g.Seats[0].Nodes, g.Seats[0].Clamped = []int{0, 1}, true }},
		{"Seats[0].Level", func(g *frame.Grillage) { g.Seats[0].Level = nan }},
		{"Seats[0].Share", func(g *frame.Grillage) { g.Seats[0].Share = []float64{0.5, 0.5} }},
		{"Seats[0].Share[0]", func(g *frame.Grillage) { g.Seats[0].Share = []float64{nan} }},
		{"Seats[0].Share in all", func(g *frame.Grillage) { g.Seats[0].Share = []float64{0.5} }},
		{"block.Support", func(g *frame.Grillage) { g.Seats[0].Support, g.Seats[0].Name = frame.Spring(-1), "block" }},
		{"Seats[1].Nodes", func(g *frame.Grillage) { g.Seats[0].Support, g.Seats[1] = nil, frame.Seat{Nodes: []int{0}} }},
		{"Seats[1].Clamped", func(g *frame.Grillage) {
			g.Seats[0].Clamped = true
			g.Seats[1].Nodes, g.Seats[1].Clamped = []int{0}, true
		}},
	} {
		g := good()
		c.spoil(&g)
		_, err := g.Solve()
		var m *measure.Error
		if !errors.As(err, &m) || m.Field != c.field || !errors.Is(err, measure.ErrRange) {
			t.Errorf("%s: %v", c.field, err)
		}
	}
}

func TestGridString(t *testing.T) {
	g := square()
	for i := range 4 {
		g.Seats = append(g.Seats, frame.Seat{Support: frame.OneWay(1e4), Nodes: []int{i}})
	}
	g.Seats[0].Name = "north drum"
	g.Names = []string{"", "east"}
	g.Seats[1].Level = -1
	g.Forces[0][0], g.Forces[3][0] = -300, -300
	s := solveGrid(t, g)
	text := s.String()
	for _, want := range []string{"north drum pushes", "seat 1 pushes 0.0 N (idle)", "lowest: node east", "largest moment: member", "N·m"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if d := cmp.Diff(s, solveGrid(t, g)); d != "" {
		t.Error(d)
	}
	if text := (&frame.Solution{}).String(); !strings.Contains(text, "imbalance") {
		t.Errorf("an empty solution prints %q", text)
	}
}
