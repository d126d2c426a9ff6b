package lumber

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// someCut is a problem in whole numbers, some of it in hand.
func someCut(rng *rand.Rand, kinds, pieces int) *cutProblem {
	p := &cutProblem{step: 1, miss: make([]int64, kinds), need: make([]int64, kinds)}
	for range kinds {
		p.size = append(p.size, 200+rng.Int64N(900))
	}
	slices.Sort(p.size)
	slices.Reverse(p.size)
	p.size = slices.Compact(p.size)
	p.need = p.need[:len(p.size)]
	p.miss = p.miss[:len(p.size)]
	for range pieces {
		p.need[rng.IntN(len(p.need))]++
	}
	for _, room := range []int64{1200, 1800, 2400} {
		p.bins = append(p.bins, cutBin{room, room * (90 + rng.Int64N(20)) / 100, none})
	}
	if rng.IntN(2) == 0 {
		p.bins = append(p.bins, cutBin{600 + rng.Int64N(1500), 0, 1 + rng.Int64N(3)})
	}
	return p
}

// holdsAll fails the test unless a plan cuts just what is needed from the bins
// there are, at its cost.
func holdsAll(t *testing.T, p *cutProblem, plan cutPlan) {
	t.Helper()
	need := slices.Clone(p.need)
	used := make([]int64, len(p.bins))
	var cost int64
	for _, c := range plan.boards {
		if !p.holds(c) {
			t.Errorf("%v does not fit", c)
		}
		for i, n := range c.take {
			need[i] -= int64(n)
		}
		if c.bin != none {
			used[c.bin]++
		}
		cost += c.cost
	}
	for i, n := range need {
		if n != 0 {
			t.Errorf("%d of kind %d left", n, i)
		}
	}
	for b, n := range used {
		if limit := p.bins[b].limit; limit != none && n > limit {
			t.Errorf("%d of bin %d", n, b)
		}
	}
	if cost != plan.cost || plan.bound > plan.cost {
		t.Errorf("cost %d, said %d, bound %d", cost, plan.cost, plan.bound)
	}
}

// The two ways to search, each alone, end at the same cost, and so does a search
// whose remainders are told apart less finely, or that remembers nothing.
func TestCutSearchesAgree(t *testing.T) {
	defer func(way []turn, size int64) { turns, cornerSize = way, size }(turns, cornerSize)
	both, fine := turns, cornerSize
	rng := rand.New(rand.NewPCG(3, 1))
	filled := 0
	for range 50 {
		p := someCut(rng, 7, 22)
		var plans []cutPlan
		for _, way := range []struct {
			turns []turn
			size  int64
		}{
			{both, fine},
			{[]turn{{false, searchNodes}}, fine},
			{[]turn{{true, searchNodes}}, fine},
			{[]turn{{false, 300_000}}, 1},
			{[]turn{{true, 300_000}}, 1},
		} {
			turns, cornerSize = way.turns, way.size
			plan, err := solveCut(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			holdsAll(t, p, plan)
			plans = append(plans, plan)
		}
		first := p.firstFit()
		holdsAll(t, p, first)
		for k, plan := range plans {
			if plan.cost > first.cost {
				t.Errorf("way %d: %d, first fit %d", k, plan.cost, first.cost)
			}
			for j, other := range plans {
				if plan.bound > other.cost {
					t.Errorf("way %d proves %d, way %d costs %d", k, plan.bound, j, other.cost)
				}
			}
		}
		if plans[2].bound == plans[2].cost {
			filled++
		}
	}
	if filled < 40 {
		t.Errorf("filling proves %d of 50", filled)
	}
}

// Searches that are cut short still give plans that hold and bounds below any.
func TestCutStopped(t *testing.T) {
	defer func(p, l int) { packNodes, listNodes = p, l }(packNodes, listNodes)
	pack, list := packNodes, listNodes
	rng := rand.New(rand.NewPCG(4, 1))
	for range 15 {
		p := someCut(rng, 8, 30)
		packNodes, listNodes = pack, list
		whole, err := solveCut(context.Background(), p)
		if err != nil {
			t.Fatal(err)
		}
		for _, few := range [][2]int{{20, list}, {pack, 50}, {5, 5}} {
			packNodes, listNodes = few[0], few[1]
			plan, err := solveCut(context.Background(), p)
			if err != nil {
				t.Fatal(err)
			}
			holdsAll(t, p, plan)
			if plan.bound > whole.cost || plan.cost < whole.bound {
				t.Errorf("stopped: %d to %d, whole: %d to %d", plan.bound, plan.cost, whole.bound, whole.cost)
			}
		}
		packNodes, listNodes = pack, list
		plan, _, err := p.search(context.Background(), 5)
		if err != nil {
			t.Fatal(err)
		}
		holdsAll(t, p, plan)
		if plan.bound > whole.cost || plan.cost < whole.bound {
			t.Errorf("5 steps: %d to %d, whole: %d to %d", plan.bound, plan.cost, whole.bound, whole.cost)
		}
	}
}

// Long lists, with numbers too large for remainders and for the memory of
// states, still end in a plan with a small gap.
func TestCutManyKinds(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	p := someCut(rng, 40, 250)
	for range 30 {
		p.bins = append(p.bins, cutBin{500 + rng.Int64N(1900), 0, 1})
	}
	plan, err := solveCut(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	holdsAll(t, p, plan)
	if gap := float64(plan.cost-plan.bound) / float64(plan.cost); gap > 0.02 {
		t.Errorf("gap %.2f %%", gap*100)
	}
}

// The group of remainders is that of the basis: columns of the basis have the
// remainder zero, and remainders add up.
func TestCutGroup(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 1))
	large := 0
	for range 100 {
		p := someCut(rng, 6, 25)
		l := newCutLP(p)
		l.solve(context.Background(), 1000)
		c := newCutCorner(l)
		if c == nil {
			t.Fatal("no corner")
		}
		if int64(c.size) != c.det {
			t.Errorf("%d remainders of %d", c.size, c.det)
		}
		if c.det > 1 {
			large++
		}
		for r, b := range l.basis {
			col := l.column(b, l.slack[r])
			v := make([]int64, len(col))
			for i, x := range col {
				v[i] = int64(x)
			}
			if c.remainder(v) != 0 {
				t.Errorf("remainder of a basis column is %d", c.remainder(v))
			}
		}
		a, b, ab := make([]int64, l.rows), make([]int64, l.rows), make([]int64, l.rows)
		for i := range a {
			a[i], b[i] = rng.Int64N(9), rng.Int64N(9)
			ab[i] = a[i] + b[i]
		}
		ra, rb, rab := c.remainder(a), c.remainder(b), c.remainder(ab)
		if c.sum(ra, rb) != rab || c.difference(rab, rb) != ra {
			t.Errorf("remainders %d and %d add up to %d", ra, rb, rab)
		}
	}
	if large < 50 {
		t.Errorf("only %d groups are more than trivial", large)
	}
}

func TestCutUnits(t *testing.T) {
	for _, c := range []struct {
		x        float64
		up, down int64
	}{
		{0.0001, 32, 32},
		{0.0254 / 64, 127, 127},
		{0.1 + 0.2, 96000, 96000},
		{0.00010001, 33, 32},
		{0, 0, 0},
	} {
		if up, down := unitsUp(c.x), unitsDown(c.x); up != c.up || down != c.down {
			t.Errorf("%g m is %d and %d units, want %d and %d", c.x, up, down, c.up, c.down)
		}
	}
	if got := metres(unitsUp(3.6576)); math.Abs(got-3.6576) > 1e-12 {
		t.Errorf("12 ft is %g m", got)
	}
}

// What is clear lies between the trimmed ends: a defect that reaches into one leaves
// nothing behind it, not even a stretch of no length.
func TestClearStretches(t *testing.T) {
	u := func(m float64) int64 { return unitsDown(m) }
	for _, c := range []struct {
		defect [2]float64
		want   []stretch
	}{
		{[2]float64{0.5, 0.6}, []stretch{{u(0.01), u(0.5)}, {u(0.6), u(0.99)}}},
		{[2]float64{0.9, 1}, []stretch{{u(0.01), u(0.9)}}},
		{[2]float64{0.9, 0.99}, []stretch{{u(0.01), u(0.9)}}},
		{[2]float64{0.01, 0.05}, []stretch{{u(0.05), u(0.99)}}},
		{[2]float64{0, 0.005}, []stretch{{u(0.01), u(0.99)}}},
		{[2]float64{0, 1}, nil},
	} {
		if got := (Saw{Trim: 0.01}).clear(1, [][2]float64{c.defect}); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.defect, got, c.want)
		}
	}
}
