package main

import (
	"context"
	"math/rand/v2"
	"sync"
	"sync/atomic"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// rules are the criteria that each dock is judged by, under the load of another where
// they have none of their own, and their heads in the table.
var rules = []struct{ short, name, under string }{
	{"edge dry", "deck edge dry", "20 psf over the deck"},
	{"freeboard", "10 in to the deck", ""},
	{"tilt", "tilt at most 6 deg", ""},
	{"a drum lost", "freeboard 0.10 m with one drum lost", ""},
}

// judges returns the rules to apply; workers share them.
func judges() ([]float.Rule, error) {
	var out []float.Rule
	for _, r := range rules {
		criterion, err := float.LookupCriterion(r.name)
		if err != nil {
			return nil, err
		}
		var loads []float.Criterion
		if r.under != "" {
			load, err := float.LookupCriterion(r.under)
			if err != nil {
				return nil, err
			}
			loads = append(loads, load)
		}
		out = append(out, criterion.Rule(float.Deck{Depth: top}, loads...))
	}
	return out, nil
}

var widths = []float64{6 * measure.Foot, 8 * measure.Foot, 10 * measure.Foot, 12 * measure.Foot}

// top is the deck over the drums' upper sides: the drums lie under the frame.
const top = 9 * measure.Inch

// A judgement is what the rules say of one dock.
type judgement struct {
	width    float64
	verdicts []measure.Verdict // by rule
	err      error
}

// survey invents docks and judges them. Each dock hangs on its number alone, and each
// judgement has its own place, so that nothing depends on who does what when.
func survey(ctx context.Context, seed uint64, docks, workers int) ([]judgement, error) {
	judges, err := judges()
	if err != nil {
		return nil, err
	}
	out := make([]judgement, docks)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range workers {
		wait.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= docks {
					return
				}
				width, p := invent(seed, i)
				out[i] = judge(width, p, judges)
			}
		})
	}
	wait.Wait()
	for _, j := range out {
		if j.err != nil {
			return nil, j.err // the first by number, not by time
		}
	}
	return out, ctx.Err()
}

func judge(width float64, p *float.Platform, rules []float.Rule) judgement {
	j := judgement{width: width}
	for _, rule := range rules {
		c, err := rule(p)
		if err != nil {
			j.err = err
			return j
		}
		j.verdicts = append(j.verdicts, c.Verdict())
	}
	return j
}

// invent returns a dock of one of the widths: a length, a weight, something heavy off
// the middle, and rows of one kind of drum.
func invent(seed uint64, number int) (float64, *float.Platform) {
	r := rand.New(rand.NewPCG(seed, uint64(number)))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	width := widths[r.IntN(len(widths))]
	length := between(12, 24) * measure.Foot
	drum := float.Drums()[r.IntN(5)]
	rows := 2
	if width > 9*measure.Foot {
		rows += r.IntN(2)
	}
	along := 4 + r.IntN(5) // one after another, as many as there is room for
	for float64(along)*drum.Length.Value > length {
		along--
	}
	p := &float.Platform{Density: 998}
	thick, long := drum.Diameter.Value, drum.Length.Value
	for i := range along {
		for k := range rows {
			at := r3.Vec{
				X: (length - long) * (float64(i)/float64(along-1) - 0.5),
				Y: (width - thick - 0.3) * (float64(k)/float64(rows-1) - 0.5),
				Z: -thick / 2,
			}
			p.Units = append(p.Units, drum.Unit(at, 0))
		}
	}
	x, y := length/2, width/2
	p.Corners = []r3.Vec{{X: -x, Y: -y, Z: top}, {X: x, Y: -y, Z: top}, {X: x, Y: y, Z: top}, {X: -x, Y: y, Z: top}}
	p.Weights = []float.Weight{
		{Mass: between(9, 16) * measure.PSF / measure.Gravity * length * width, At: r3.Vec{Z: top / 2}},
		{Mass: between(0, 60), At: r3.Vec{X: between(-x, x), Y: between(-y, y) / 2, Z: top + 0.4}},
	}
	return width, p
}
