package moor_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/lumber/measure"
)

// randomLine returns a line of one to four pieces and ends within its reach.
func randomLine(rng *rand.Rand) (*moor.Line, float64, float64) {
	l := &moor.Line{Shore: rng.IntN(3) == 0}
	length, elastic := 0.0, false
	for range 1 + rng.IntN(4) {
		p := moor.Piece{Length: math.Exp(rng.NormFloat64() + 1.5), Weight: math.Exp(2 * rng.NormFloat64())}
		if rng.IntN(2) == 0 {
			p.Stretch = math.Exp(10 + 2*rng.NormFloat64())
			elastic = true
			if rng.IntN(3) == 0 {
				p.Weight = 0
			}
		}
		if n := len(l.Pieces); n > 0 && rng.IntN(3) == 0 {
			l.Pieces[n-1].Clump = math.Exp(4 + rng.NormFloat64())
		}
		length += p.Length
		l.Pieces = append(l.Pieces, p)
	}
	rise := length * (0.02 + 0.8*rng.Float64())
	if l.Shore && rng.IntN(2) == 0 {
		rise = -rise
	}
	most := math.Sqrt(length*length - rise*rise)
	reach := most * (1 - math.Pow(10, -8*rng.Float64()))
	if reach == 0 {
		reach = most / 2
	}
	if elastic && rng.IntN(3) == 0 {
		reach = most * (1 + 0.2*rng.Float64())
	}
	return l, reach, rise
}

// integrate walks down a line from its dock end under its pulls in small
// lengths, each stretched and laid along the tension at its middle by Gauss's
// rule: no closed form. It returns the reach and the rise of the dock end.
func integrate(l *moor.Line, pull, down float64) (reach, rise float64) {
	v, heavy := down, false
	for _, p := range l.Pieces {
		heavy = heavy || p.Weight > 0 || p.Clump > 0
	}
	// Five-point Gauss on n stretches.
	xi := [5]float64{0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664}
	wt := [5]float64{0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908}
	for i := len(l.Pieces) - 1; i >= 0; i-- {
		p := l.Pieces[i]
		v -= p.Clump
		if p.Weight == 0 && heavy {
			p.Weight = 1e-3 // as documented
		}
		hung := p.Length
		if !l.Shore {
			if v <= 0 {
				hung, v = 0, 0
			} else if p.Weight > 0 {
				hung = math.Min(p.Length, v/p.Weight)
			}
		}
		give := func(t float64) float64 {
			if p.Stretch == 0 {
				return 1
			}
			return 1 + t/p.Stretch
		}
		reach += (p.Length - hung) * give(pull)
		// Stretches shrink towards where the line turns over, at v = 0.
		turn := hung
		if p.Weight > 0 {
			turn = math.Min(math.Max(v/p.Weight, 0), hung)
		}
		for _, part := range [][2]float64{{turn, 0}, {turn, hung}} {
			length := part[1] - part[0]
			a := 0.0
			for k := range 200 {
				b := math.Pow(2, float64(k-199)/4)
				for g := range xi {
					s := part[0] + length*((a+b)/2+(b-a)/2*xi[g])
					h := v - p.Weight*s
					t := math.Hypot(pull, h)
					ds := math.Abs(length) * (b - a) / 2 * wt[g] * give(t)
					reach += ds * pull / t
					rise += ds * h / t
				}
				a = b
			}
		}
		v -= p.Weight * hung
	}
	return reach, rise
}

// Every line found at given ends, slack to taut, rigid and elastic, in one
// piece and several, ends there when it is integrated along its length.
func TestLineIntegrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	seen := map[moor.Regime]int{}
	for i := range 2000 {
		l, reach, rise := randomLine(rng)
		h, err := l.At(reach, rise, moor.Hang{})
		if err != nil {
			t.Fatalf("case %d %+v at %g, %g: %v", i, l, reach, rise, err)
		}
		seen[h.Regime]++
		if h.Pull == 0 {
			continue
		}
		size := math.Hypot(reach, rise)
		x, y := integrate(l, h.Pull, h.Down)
		if e := math.Hypot(x-reach, y-rise) / size; !(e < 2e-10) {
			t.Errorf("case %d, %v, pull %g N, down %g N: ends %g of its chord away", i, h.Regime, h.Pull, h.Down, e)
		}
	}
	for r := moor.Slack; r <= moor.Taut; r++ {
		if seen[r] < 20 {
			t.Errorf("only %d lines %v", seen[r], r)
		}
	}
}

// The pull found at a reach brings the line back to that reach; a start from
// anywhere finds the same pull.
func TestLineInverse(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 1))
	for i := range 3000 {
		l, reach, rise := randomLine(rng)
		h, err := l.At(reach, rise, moor.Hang{})
		if err != nil {
			t.Fatal(err)
		}
		if h.Pull == 0 {
			continue
		}
		back, err := l.Pull(h.Pull, rise)
		if err != nil {
			t.Errorf("case %d: %v", i, err)
			continue
		}
		if math.Abs(back.Reach-reach) > 1e-12*(reach+math.Abs(rise)) {
			t.Errorf("case %d: pull %g N at %.15g m, back at %.15g m", i, h.Pull, reach, back.Reach)
		}
		near, err := l.At(reach, rise, moor.Hang{Pull: h.Pull * math.Exp(4*rng.NormFloat64()), Down: math.Abs(h.Down) * math.Exp(4*rng.NormFloat64())})
		if err != nil {
			t.Fatal(err)
		}
		// Near bar-tight the reach itself knows the pull no better.
		loose := 1e-9 + (1e-14*reach*h.Stiffness[0][0]+1e-11*h.Tension())/h.Pull
		if math.Abs(near.Pull-h.Pull) > loose*h.Pull {
			t.Errorf("case %d: pull %.15g N from afar, %.15g N afresh", i, near.Pull, h.Pull)
		}
	}
}

// A line that hangs in a bight between a soft rope and a heavy piece has a rise that
// bends both ways as its pull changes; it is found all the same, both ways round.
func TestLineBight(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 1))
	for i := range 4000 {
		l := &moor.Line{Shore: true, Pieces: []moor.Piece{
			{Length: 30 * rng.Float64(), Weight: 200 * rng.Float64(), Stretch: 1e6, Clump: 100 * rng.Float64()},
			{Length: 200 * rng.Float64(), Weight: 2 * rng.Float64(), Stretch: math.Exp(6 + 4*rng.Float64())},
		}}
		if i%2 == 0 {
			l.Pieces[0], l.Pieces[1] = l.Pieces[1], l.Pieces[0]
			l.Pieces[0].Clump, l.Pieces[1].Clump = l.Pieces[1].Clump, 0
		}
		pull, rise := math.Exp(7*rng.Float64()), 100*(2*rng.Float64()-1)
		h, err := l.Pull(pull, rise)
		if err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		x, y := integrate(l, pull, h.Down)
		if size := math.Hypot(h.Reach, rise); math.Hypot(x-h.Reach, y-rise) > 1e-9*(size+200) {
			t.Errorf("case %d, %+v pulled with %g N: ends at %g, %g m, not %g, %g m", i, l.Pieces, pull, x, y, h.Reach, rise)
		}
		back, err := l.At(h.Reach, rise, moor.Hang{})
		if err != nil || math.Abs(back.Pull-pull) > 1e-7*(pull+h.Tension()) {
			t.Errorf("case %d: %g N, back %g N, %v", i, pull, back.Pull, err)
		}
	}
}

// The stiffness is what differences of the pulls show, and symmetric.
func TestLineStiffness(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	n := 0
	for i := range 3000 {
		l, reach, rise := randomLine(rng)
		h, err := l.At(reach, rise, moor.Hang{})
		if err != nil || h.Pull == 0 || h.Pull < 1e-3*h.Tension() {
			continue
		}
		if h.Stiffness[0][1] != h.Stiffness[1][0] {
			t.Errorf("case %d: %g and %g", i, h.Stiffness[0][1], h.Stiffness[1][0])
		}
		if !(h.Stiffness[0][0] > 0 && h.Stiffness[1][1] > 0 && h.Stiffness[0][0]*h.Stiffness[1][1] > h.Stiffness[0][1]*h.Stiffness[0][1]*(1-1e-9)) {
			t.Errorf("case %d: stiffness %v is not positive", i, h.Stiffness)
		}
		step := 1e-3 * h.Pull / math.Max(h.Stiffness[0][0], h.Stiffness[1][1])
		if step < 1e-7*(reach+math.Abs(rise)) || step > reach/10 {
			continue // differences drown in rounding
		}
		at := func(x, y float64) moor.Hang {
			s, err := l.At(x, y, h)
			if err != nil {
				t.Fatal(err)
			}
			return s
		}
		a, b := at(reach-step, rise), at(reach+step, rise)
		c, d := at(reach, rise-step), at(reach, rise+step)
		if a.Regime != b.Regime || c.Regime != d.Regime {
			continue
		}
		n++
		got := [4]float64{(b.Pull - a.Pull) / (2 * step), (b.Down - a.Down) / (2 * step), (d.Pull - c.Pull) / (2 * step), (d.Down - c.Down) / (2 * step)}
		want := [4]float64{h.Stiffness[0][0], h.Stiffness[0][1], h.Stiffness[1][0], h.Stiffness[1][1]}
		scale := h.Stiffness[0][0] + h.Stiffness[1][1]
		for k := range got {
			if math.Abs(got[k]-want[k]) > 2e-3*scale {
				t.Errorf("case %d, %v: stiffness %d: %g by differences, %g", i, h.Regime, k, got[k], want[k])
			}
		}
	}
	if n < 500 {
		t.Errorf("only %d lines compared", n)
	}
}

// Tension, lift and pull never fall as the dock moves off, from slack to tight.
func TestLineMonotone(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	for i := range 400 {
		l, far, rise := randomLine(rng)
		if l.Shore {
			continue // closer in, a shore line sags and weighs more on its cleat
		}
		var last moor.Hang
		for k := range 60 {
			h, err := l.At(far*(0.3+0.7*float64(k)/59), rise, last)
			if err != nil {
				t.Fatal(err)
			}
			const slip = 1 + 1e-9
			if h.Pull*slip < last.Pull || h.Tension()*slip < last.Tension() || h.Lift*slip < last.Lift-1e-9*h.Down || h.Lying > last.Lying*slip && k > 0 && last.Pull > 0 {
				t.Fatalf("case %d: %+v after %+v", i, h, last)
			}
			last = h
		}
	}
}

// A weightless elastic rope is a spring; a little weight changes it little.
func TestLineWeightless(t *testing.T) {
	rope := moor.Line{Pieces: []moor.Piece{{Length: 10, Stretch: 2e4}}}
	h, err := rope.At(12, 5, moor.Hang{})
	if err != nil {
		t.Fatal(err)
	}
	if want := 2e4 * (13 - 10) / 10.0; math.Abs(h.Tension()-want) > 1e-9 || h.Regime != moor.Taut {
		t.Errorf("tension %g N, %v, want %g N", h.Tension(), h.Regime, want)
	}
	rope.Pieces[0].Weight = 1e-7
	g, err := rope.At(12, 5, moor.Hang{})
	if err != nil {
		t.Fatal(err)
	}
	for i := range 2 {
		for j := range 2 {
			if math.Abs(g.Stiffness[i][j]-h.Stiffness[i][j]) > 1e-6*h.Stiffness[0][0] {
				t.Errorf("stiffness %v, weightless %v", g.Stiffness, h.Stiffness)
			}
		}
	}
	rope.Pieces[0].Weight = 0
	if h, err := rope.At(8, 5, moor.Hang{}); err != nil || h.Pull != 0 || h.Regime != moor.Slack {
		t.Errorf("a loose rope pulls: %+v, %v", h, err)
	}
	s, err := rope.Pull(0, 6)
	if err != nil || math.Abs(s.Reach-8) > 1e-12 {
		t.Errorf("a loose rope of 10 m reaches %g m at 6 m depth, want 8 m; %v", s.Reach, err)
	}
}

// A weight on the line works as a very short heavy piece does.
func TestLineClump(t *testing.T) {
	with := moor.Line{Pieces: []moor.Piece{{Length: 8, Weight: 20, Clump: 150}, {Length: 5, Weight: 3, Stretch: 3e4}}}
	without := moor.Line{Pieces: []moor.Piece{{Length: 8, Weight: 20}, {Length: 1e-7, Weight: 150e7}, {Length: 5, Weight: 3, Stretch: 3e4}}}
	without.Pieces[1].Weight, without.Pieces[1].Length = 1e6, 150e-6
	for _, reach := range []float64{9.5, 10.5, 11.5, 12.2} {
		a, err1 := with.At(reach, 4, moor.Hang{})
		b, err2 := without.At(reach, 4, moor.Hang{})
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if math.Abs(a.Pull-b.Pull) > 2e-3*(1+a.Pull) || math.Abs(a.Down-b.Down) > 2e-3*(1+a.Down) {
			t.Errorf("at %g m: %g, %g N with a weight, %g, %g N with a short heavy piece", reach, a.Pull, a.Down, b.Pull, b.Down)
		}
	}
}

// The slack line hangs by what it weighs and stretches by it; between slack and
// pulled the reach has no gap.
func TestLineSlack(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for i := range 1000 {
		l, _, rise := randomLine(rng)
		if l.Shore {
			continue
		}
		s, err := l.Pull(0, rise)
		if err != nil {
			t.Errorf("case %d: %v", i, err)
			continue
		}
		p, err := l.Pull(1e-7, rise)
		if err != nil {
			t.Fatal(err)
		}
		if !(p.Reach >= s.Reach-1e-9) || p.Reach-s.Reach > 1e-5*(1+rise)+1e-2 {
			t.Errorf("case %d: slack to %.12g m, pulled a little to %.12g m: %+v", i, s.Reach, p.Reach, l.Pieces)
		}
		if math.Abs(p.Down-s.Down) > 1e-5*(1+s.Down) && s.Down > 1e-2 {
			t.Errorf("case %d: weighs %g N slack, %g N pulled a little", i, s.Down, p.Down)
		}
	}
	// A slack line lifted a little weighs as much more as its stiffness says.
	for _, l := range []*moor.Line{
		{Pieces: []moor.Piece{{Length: 12, Weight: 20}}},
		{Pieces: []moor.Piece{{Length: 12, Weight: 20, Stretch: 400}}},
		{Pieces: []moor.Piece{{Length: 9, Weight: 20, Stretch: 900}, {Length: 2, Weight: 3, Stretch: 500}}},
		{Pieces: []moor.Piece{{Length: 9, Weight: 20, Clump: 4000}, {Length: 2.9, Weight: 3, Stretch: 500}}},
	} {
		a, err1 := l.At(2, 2.999, moor.Hang{})
		b, err2 := l.At(2, 3.001, moor.Hang{})
		h, err3 := l.At(2, 3, moor.Hang{})
		if err := errors.Join(err1, err2, err3); err != nil || h.Regime != moor.Slack {
			t.Fatal(h, err)
		}
		if k := (b.Down - a.Down) / 0.002; math.Abs(h.Stiffness[1][1]-k) > 1e-4*k || h.Stiffness[0] != [2]float64{} {
			t.Errorf("%+v: stiffness %v, by differences %g N/m", l.Pieces, h.Stiffness, k)
		}
	}
	chain := moor.Line{Pieces: []moor.Piece{{Length: 12, Weight: 20}}}
	h, err := chain.At(2, 3, moor.Hang{})
	if err != nil || h.Down != 60 || h.Pull != 0 || h.Lying != 9 || h.Regime != moor.Slack || h.Angle() != math.Pi/2 || h.GroundAngle() != 0 {
		t.Errorf("slack chain: %+v, %v", h, err)
	}
}

func TestLineTensions(t *testing.T) {
	l := moor.Line{Pieces: []moor.Piece{{Length: 8, Weight: 20, Clump: 100}, {Length: 5, Weight: 3}}}
	h, err := l.At(11.5, 4, moor.Hang{})
	if err != nil {
		t.Fatal(err)
	}
	top, err := l.Tension(1, h)
	if err != nil || math.Abs(top-h.Tension()) > 1e-9 {
		t.Errorf("top piece %g N, dock end %g N, %v", top, h.Tension(), err)
	}
	chain, err := l.Tension(0, h)
	if want := math.Hypot(h.Pull, h.Down-15-100); err != nil || math.Abs(chain-want) > 1e-9 {
		t.Errorf("chain %g N, want %g N, %v", chain, want, err)
	}
	if _, err := l.Tension(2, h); !errors.Is(err, measure.ErrRange) {
		t.Errorf("third of two pieces: %v", err)
	}
	if _, err := l.Tension(0, moor.Hang{Pull: math.NaN()}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no pull: %v", err)
	}
}

// A shore line between level ends dips by its sag; one that climbs steeply does
// not dip.
func TestLineDip(t *testing.T) {
	l := moor.Line{Shore: true, Pieces: []moor.Piece{{Length: 4, Weight: 5}, {Length: 3, Weight: 5}, {Length: 3, Weight: 5}}}
	h, err := l.Pull(40, 0)
	if err != nil {
		t.Fatal(err)
	}
	// c = 8 m, half length 5 m: sag = √(c² + s²) - c.
	dip, err := l.Dip(h)
	if want := math.Sqrt(89) - 8; err != nil || math.Abs(dip-want) > 1e-12 {
		t.Errorf("dips %g m, want %g m, %v", dip, want, err)
	}
	h, err = l.At(5.9, -8, moor.Hang{})
	if err != nil {
		t.Fatal(err)
	}
	if dip, err := l.Dip(h); err != nil || dip != 0 || h.Down > 0 {
		t.Errorf("a steep line dips %g m and pulls down %g N, %v", dip, h.Down, err)
	}
	chain := moor.Line{Pieces: l.Pieces}
	h, _ = chain.At(8, 2, moor.Hang{})
	if dip, err := chain.Dip(h); err != nil || dip != 2 {
		t.Errorf("a line to the bottom 2 m down dips %g m, %v", dip, err)
	}
}

func TestLineRefuses(t *testing.T) {
	good := moor.Piece{Length: 10, Weight: 20}
	at := func(l moor.Line, reach, rise float64) error { _, err := l.At(reach, rise, moor.Hang{}); return err }
	with := func(change func(*moor.Piece)) moor.Line {
		p := good
		change(&p)
		return moor.Line{Pieces: []moor.Piece{p}}
	}
	nan := math.NaN()
	for name, err := range map[string]error{
		"no piece":        at(moor.Line{}, 5, 2),
		"nine pieces":     at(moor.Line{Pieces: slices.Repeat([]moor.Piece{good}, 9)}, 5, 2),
		"no length":       at(with(func(p *moor.Piece) { p.Length = 0 }), 5, 2),
		"NaN length":      at(with(func(p *moor.Piece) { p.Length = nan }), 5, 2),
		"negative weight": at(with(func(p *moor.Piece) { p.Weight = -1 }), 5, 2),
		"NaN stretch":     at(with(func(p *moor.Piece) { p.Stretch = nan }), 5, 2),
		"infinite clump":  at(with(func(p *moor.Piece) { p.Clump = math.Inf(1) }), 5, 2),
		"weight on dock":  at(with(func(p *moor.Piece) { p.Clump = 5 }), 5, 2),
		"NaN reach":       at(with(func(*moor.Piece) {}), nan, 2),
		"negative reach":  at(with(func(*moor.Piece) {}), -1, 2),
		"no rise":         at(with(func(*moor.Piece) {}), 5, 0),
		"shore, no reach": at(moor.Line{Shore: true, Pieces: []moor.Piece{good}}, 0, 2),
		"shore, NaN rise": at(moor.Line{Shore: true, Pieces: []moor.Piece{good}}, 2, nan),
	} {
		var e *measure.Error
		if !errors.As(err, &e) || !errors.Is(err, measure.ErrRange) || e.Field == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if err := at(moor.Line{Pieces: []moor.Piece{{Length: 3}}}, 2, 2); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("neither weight nor stretch: %v", err)
	}
	if err := at(moor.Line{Pieces: slices.Repeat([]moor.Piece{good}, 8)}, 60, 2); err != nil {
		t.Errorf("eight pieces: %v", err)
	}
	chain := moor.Line{Pieces: []moor.Piece{good}}
	if err := at(chain, 8, 6); !errors.Is(err, moor.ErrReach) {
		t.Errorf("bar-tight and beyond: %v", err)
	}
	if _, err := chain.Pull(100, 10); !errors.Is(err, moor.ErrReach) {
		t.Errorf("too deep: %v", err)
	}
	if _, err := chain.Pull(-1, 5); !errors.Is(err, measure.ErrRange) {
		t.Errorf("negative pull: %v", err)
	}
	if _, err := (&moor.Line{Shore: true, Pieces: []moor.Piece{good}}).Pull(0, 5); !errors.Is(err, measure.ErrRange) {
		t.Errorf("a shore line without pull: %v", err)
	}
	stretchy := moor.Line{Pieces: []moor.Piece{{Length: 10, Weight: 20, Stretch: 100}}}
	if _, err := stretchy.Pull(0, 30); !errors.Is(err, moor.ErrReach) {
		t.Errorf("hangs stretched even without pull: %v", err)
	}
}
