package lumber

import (
	"context"
	"slices"
)

// searchNodes and mendNodes stop the search for a plan, per section, and for
// what is left of a plan that is partly fixed. No clock does, so that a plan is
// the same on every machine. A search that is stopped leaves a gap between cost
// and bound, and says so.
const (
	searchNodes = 1_500_000
	mendNodes   = 100_000
)

// fixed are the shares of the boards of the linear relaxation that are cut as
// they are where the search was stopped, the rest being searched for.
var fixed = []float64{0.8, 0.5, 0.2}

// solveCut finds the cheapest plan, or a plan and a bound.
func solveCut(ctx context.Context, p *cutProblem) (cutPlan, error) {
	best, l, err := p.search(ctx, searchNodes)
	for _, share := range fixed {
		if err != nil || best.cost == best.bound {
			break
		}
		rest, boards, cost := p.without(l, share)
		var plan cutPlan
		if plan, _, err = rest.search(ctx, mendNodes); cost+plan.cost < best.cost {
			best.cost, best.boards = cost+plan.cost, slices.Concat(boards, plan.boards)
		}
	}
	if err != nil {
		return cutPlan{}, err
	}
	p.settle(&best)
	return best, nil
}

// search is the way to a plan: the linear relaxation, plans made from it without
// search, and the search for a cheaper one.
func (p *cutProblem) search(ctx context.Context, limit int) (cutPlan, *cutLP, error) {
	l := newCutLP(p)
	l.solve(ctx, 20*(l.rows+10))
	if err := ctx.Err(); err != nil {
		return cutPlan{}, nil, err
	}
	s := &cutSearch{ctx: ctx, p: p, l: l, base: l.bound(), limit: limit}
	s.best = p.greedy(l)
	s.best.bound = p.roundUp(s.base)
	if s.best.bound < s.best.cost {
		if s.corner = newCutCorner(l); s.corner != nil {
			if err := s.run(); err != nil {
				return cutPlan{}, nil, err
			}
		}
	}
	return s.best, l, ctx.Err()
}

// without fixes a share of the whole boards of the relaxation and returns what is
// left, the boards and their cost.
func (p *cutProblem) without(l *cutLP, share float64) (*cutProblem, []cutColumn, int64) {
	rest := *p
	rest.need, rest.bins = slices.Clone(p.need), slices.Clone(p.bins)
	var boards []cutColumn
	var cost int64
	for r, c := range l.basis {
		if l.slack[r] {
			continue
		}
		for range int(float64(share*l.x[r]) + 1e-6) {
			boards = append(boards, c)
			cost += c.cost
			for i, n := range c.take {
				rest.need[i] -= int64(n)
			}
			if c.bin != none && rest.bins[c.bin].limit != none {
				rest.bins[c.bin].limit--
			}
		}
	}
	return &rest, boards, cost
}
