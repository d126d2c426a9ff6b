package published

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/floewright/frame/rack"
	"example.org/floewright/lumber/measure"
)

func rackChecks() ([]Check, error) {
	frames, err := rackFrames()
	return append(append(rackTextbook(), frames...), rackMore()...), err
}

// rackCase builds the frame of a case, line by line of the table.
type rackCase struct {
	frame rack.Frame
	solve func() (*rack.Solution, error)
}

// line reads one line of the table of frames into the case.
func (c *rackCase) line(r row) error {
	f := &c.frame
	fields := strings.Fields(r["values"])
	var nodes []int
	if r["kind"] == "member" {
		for _, word := range strings.Split(fields[0], "-") {
			n, err := strconv.Atoi(word)
			if err != nil {
				return err
			}
			nodes = append(nodes, n)
		}
		fields = fields[1:]
	}
	v := make([]float64, 10)
	for i, word := range fields {
		x, err := strconv.ParseFloat(word, 64)
		if err != nil {
			return err
		}
		v[i] = x
	}
	switch of := int(v[0]); r["kind"] {
	case "node":
		f.Nodes = append(f.Nodes, [2]float64{v[0], v[1]})
		f.Names = append(f.Names, r["name"])
	case "member":
		f.Members = append(f.Members, rack.Member{
			Nodes: nodes, EA: v[0], EI: v[1], GA: v[2], Name: r["name"],
			Ends: [2]rack.End{{Turn: v[3], Along: v[4], Across: v[5]}, {Turn: v[6], Along: v[7], Across: v[8]}},
		})
	case "load":
		m := &f.Members[of]
		l := rack.Load{From: v[1], To: v[2], Along: v[3], Across: v[4], Couple: v[7]}
		if l.To > l.From { // the table has the values at both ends
			l.AlongRise, l.AcrossRise = v[5]-v[3], v[6]-v[4]
		}
		m.Loads = append(m.Loads, l)
	case "board":
		f.Boards = append(f.Boards, rack.Board{From: [2]float64{v[0], v[1]}, To: [2]float64{v[2], v[3]}, EA: v[4], EI: v[5], Name: r["name"]})
	case "screw":
		b := &f.Boards[of]
		b.Screws = append(b.Screws, rack.Screw{Member: int(v[1]), At: [2]float64{v[2], v[3]}, Slip: v[4]})
	case "hold":
		f.Holds = append(f.Holds, rack.Hold{Node: of, Angle: v[1], Along: v[2], Across: v[3], Turn: v[4], Name: r["name"]})
	case "force":
		f.Forces = append(f.Forces, rack.Force{Node: of, X: v[1], Y: v[2], Couple: v[3]})
	case "drag members":
		if f.Drag.Members == nil {
			f.Drag.Members = make([]float64, len(f.Members))
		}
		f.Drag.Members[of] = v[1]
	case "drag nodes":
		if f.Drag.Nodes == nil {
			f.Drag.Nodes = make([]float64, len(f.Nodes))
		}
		f.Drag.Nodes[of] = v[1]
	default:
		return fmt.Errorf("rack: a line of kind %q", r["kind"])
	}
	return nil
}

// rackFrames compares complete frames with the answers of an independent
// program, each value with a part of the largest of its kind in the frame.
func rackFrames() ([]Check, error) {
	lines, err := rows("rack_frames")
	if err != nil {
		return nil, err
	}
	cases := map[string]*rackCase{}
	for _, r := range lines {
		c := cases[r["case"]]
		if c == nil {
			c = &rackCase{}
			c.solve = sync.OnceValues(func() (*rack.Solution, error) { return c.frame.Solve() })
			cases[r["case"]] = c
		}
		if err := c.line(r); err != nil {
			return nil, fmt.Errorf("rack_frames: %v: %w", r, err)
		}
	}
	answers, err := rows("rack_answers")
	if err != nil {
		return nil, err
	}
	kinds := map[string]string{"across": "axial", "tension": "axial", "shear": "axial", "screw": "axial", "reaction": "axial", "couple": "moment", "clamp": "moment"}
	kind := func(r row) string {
		if k := kinds[r["kind"]]; k != "" {
			return r["case"] + k
		}
		return r["case"] + r["kind"]
	}
	largest := map[string]float64{}
	for _, r := range answers {
		x, err := r.num("value")
		if err != nil {
			return nil, err
		}
		largest[kind(r)] = math.Max(largest[kind(r)], math.Abs(x))
	}
	var out []Check
	for _, r := range answers {
		c := cases[r["case"]]
		if c == nil {
			return nil, fmt.Errorf("rack_answers: case %q has no frame", r["case"])
		}
		v, err := r.nums("of", "at")
		if err != nil {
			return nil, err
		}
		of, at, what := int(v[0]), v[1], r["kind"]
		out = append(out, Check{
			Package:  "frame/rack",
			Source:   measure.Source{Title: "Plane frames solved by an independent program", Locator: r["case"], Status: measure.Independent},
			Quantity: fmt.Sprintf("%s of %d, %.4g", what, of, at), Printed: r["value"], Unit: "SI",
			Step: 2e-9 * largest[kind(r)],
			Compute: func() (float64, error) {
				s, err := c.solve()
				if err != nil {
					return 0, err
				}
				return rackAnswer(s, what, of, at)
			},
		})
	}
	return out, nil
}

// rackAnswer finds one answer in a solution.
func rackAnswer(s *rack.Solution, what string, of int, at float64) (float64, error) {
	pick := func(all ...rack.Between) (float64, error) {
		b := all[int(at)]
		if !b.Sure() {
			return 0, errors.New("not one value")
		}
		return b.Most, nil
	}
	switch what {
	case "move":
		return s.Move[of][int(at)], nil
	case "axial":
		return pick(s.Joints[of].Axial)
	case "across":
		return pick(s.Joints[of].Across)
	case "couple":
		return pick(s.Joints[of].Couple)
	case "screw":
		return pick(s.Screws[of].X, s.Screws[of].Y)
	case "reaction", "clamp":
		return pick(s.Reactions[of].Along, s.Reactions[of].Across, s.Reactions[of].Couple)
	case "tension":
		return s.Lines[of].At(at).Axial, nil
	case "shear":
		return s.Lines[of].At(at).Shear, nil
	case "moment":
		return s.Lines[of].At(at).Moment, nil
	}
	return 0, fmt.Errorf("rack: an answer of kind %q", what)
}
