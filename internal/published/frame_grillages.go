package published

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"sync"

	"example.org/floewright/frame"
	"example.org/floewright/lumber/measure"
)

// Complete grillages with the answers of an independent program: units N, m,
// rad; loads up positive, rotations right-handed.
//
//go:embed data/frame_grillages.json
var frameGrillageData []byte

type frameGrillageCase struct {
	ID, Text string
	Nodes    [][3]any // name, x, y
	Members  []struct {
		Name       string
		I, J       int
		EI, GJ, GA float64
		ReleaseI   string `json:"release_i"` // m: no bending moment there; t: no torque in the member
		ReleaseJ   string `json:"release_j"`
		Loads      []struct {
			Kind string
			Q, P float64
			A, B float64
		}
	}
	NodalLoads [][4]float64 `json:"nodal_loads"` // node, force, moments
	Supports   []struct {
		Kind                     string
		Node                     int
		R, Length, Weight, Gamma float64
		K, Z0                    float64
	}
	W        [][3]json.Number // w, thx, thy by node
	Forces   []json.Number    // by support
	Ends     [][6]json.Number // Mi, Mj, Vi, Vj, T, Mmax by member
	Extremes map[string]map[string]any
}

// build makes the grillage of a case.
func (c *frameGrillageCase) build() (frame.Grillage, error) {
	g := frame.Grillage{Forces: make([][3]float64, len(c.Nodes))}
	for _, n := range c.Nodes {
		g.Names = append(g.Names, n[0].(string))
		g.Nodes = append(g.Nodes, [2]float64{n[1].(float64), n[2].(float64)})
	}
	for _, m := range c.Members {
		f := frame.Member{
			I: m.I, J: m.J, EI: m.EI, GJ: m.GJ, GA: m.GA, Name: m.Name,
			HingeI: strings.Contains(m.ReleaseI, "m"), HingeJ: strings.Contains(m.ReleaseJ, "m"),
			Untwist: strings.Contains(m.ReleaseI+m.ReleaseJ, "t"),
		}
		for _, l := range m.Loads {
			switch l.Kind {
			case "uniform":
				f.Loads = append(f.Loads, frame.Uniform(l.A, l.B, -l.Q))
			case "point":
				f.Loads = append(f.Loads, frame.Point(l.A, -l.P))
			default:
				return g, fmt.Errorf("frame: load of kind %q", l.Kind)
			}
		}
		g.Members = append(g.Members, f)
	}
	for _, l := range c.NodalLoads {
		f := &g.Forces[int(l[0])]
		for k := range f {
			f[k] += l[k+1]
		}
	}
	for _, s := range c.Supports {
		seat := frame.Seat{Nodes: []int{s.Node}, Level: s.Z0}
		switch s.Kind {
		case "drum":
			seat.Support = frameDrum(s.R, s.Length, s.Gamma, s.Weight)
		case "block":
			seat.Support = frame.OneWay(s.K)
		case "spring":
			seat.Support = frame.Spring(s.K)
		default:
			return g, fmt.Errorf("frame: support of kind %q", s.Kind)
		}
		g.Seats = append(g.Seats, seat)
	}
	return g, nil
}

// frameGrillages compares every movement, support force and end force with a
// millionth of the largest of its kind in the case.
func frameGrillages() ([]Check, error) {
	var cases []frameGrillageCase
	if err := json.Unmarshal(frameGrillageData, &cases); err != nil {
		return nil, fmt.Errorf("frame_grillages: %w", err)
	}
	var out []Check
	for _, c := range cases {
		solve := sync.OnceValues(func() (*frame.Solution, error) {
			g, err := c.build()
			if err != nil {
				return nil, err
			}
			return g.Solve()
		})
		src := measure.Source{
			Title: "Grillages solved by an independent program", Locator: c.ID, Status: measure.Independent,
		}
		kinds := map[string][]int{} // checks of one kind
		add := func(kind, quantity string, printed json.Number, of func(*frame.Solution) float64) {
			kinds[kind] = append(kinds[kind], len(out))
			out = append(out, Check{
				Package: "frame", Source: src, Quantity: c.ID + ": " + quantity, Printed: printed.String(), Unit: "SI",
				Compute: func() (float64, error) {
					s, err := solve()
					if err != nil {
						return 0, err
					}
					return of(s), nil
				},
			})
		}
		for i, m := range c.W {
			for k, name := range [3]string{"w", "thx", "thy"} {
				kind := "w"
				if k > 0 {
					kind = "turn"
				}
				add(kind, fmt.Sprintf("%s of node %v", name, c.Nodes[i][0]), m[k], func(s *frame.Solution) float64 { return s.Move[i][k] })
			}
		}
		again := sync.OnceValues(func() (*frame.Solution, error) {
			g, err := c.build()
			if err != nil {
				return nil, err
			}
			s, err := solve()
			if err != nil {
				return nil, err
			}
			return g.SolveFrom(s)
		})
		if len(c.Forces) > 0 {
			out = append(out, Check{
				Package: "frame", Source: src, Quantity: c.ID + ": force of support 0, from an earlier solution", Printed: c.Forces[0].String(), Unit: "SI", Relative: 1e-6,
				Compute: func() (float64, error) {
					s, err := again()
					if err != nil {
						return 0, err
					}
					return s.Push[0], nil
				},
			})
		}
		for i, f := range c.Forces {
			add("force", fmt.Sprintf("force of support %d", i), f, func(s *frame.Solution) float64 { return s.Push[i] })
		}
		for i, e := range c.Ends {
			name := c.Members[i].Name
			last := func(s *frame.Solution) frame.Diagram { return s.Lines[i].At(math.Inf(1)) }
			add("M", name+": moment at i", e[0], func(s *frame.Solution) float64 { return s.Lines[i].At(0).Moment })
			add("M", name+": moment at j", e[1], func(s *frame.Solution) float64 { return last(s).Moment })
			add("V", name+": shear at i", e[2], func(s *frame.Solution) float64 { return s.Lines[i].At(0).Shear })
			add("V", name+": shear at j", e[3], func(s *frame.Solution) float64 { return last(s).Shear })
			add("T", name+": torque", e[4], func(s *frame.Solution) float64 { return s.Torque[i] })
			size := json.Number(strings.TrimPrefix(e[5].String(), "-"))
			add("M", name+": largest moment of either sign", size, func(s *frame.Solution) float64 {
				x := s.Lines[i].Extremes()
				return math.Max(math.Abs(x.Sag.Moment), math.Abs(x.Hog.Moment))
			})
		}
		for _, members := range kinds {
			var largest float64
			for _, i := range members {
				x, err := json.Number(out[i].Printed).Float64()
				if err != nil {
					return nil, err
				}
				largest = math.Max(largest, math.Abs(x))
			}
			for _, i := range members {
				out[i].Step = 2e-6 * largest
			}
		}
	}
	return out, nil
}
