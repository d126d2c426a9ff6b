package season

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/floewright/lumber/measure"
)

// fitting holds the record in the form that the misfit is computed from.
type fitting struct {
	m       *Model
	parts   [][]Day // without gaps
	doy     [][]int
	first   []int // number of the first day of each part
	winters map[int]Winter
	holes   map[int][]Hole // by day
	inYear  map[int]int    // holes by winter
	last    int
	years   []int // with something seen, in order
	lo, hi  int   // winters that count just now
	half    float64
}

const (
	isOn = iota
	isOut
	isHole
)

func newFitting(m *Model, days []Day, seen Seen) (*fitting, error) {
	f := &fitting{m: m, winters: map[int]Winter{}, holes: map[int][]Hole{}, inYear: map[int]int{}, half: seen.HalfLife}
	if err := (measure.Range{Lo: 0, Hi: 1000, Source: paramRange}).Check("half-life", seen.HalfLife); err != nil {
		return nil, err
	}
	var err error
	if f.parts, err = split(days); err != nil {
		return nil, err
	}
	covered := map[int]bool{}
	for _, part := range f.parts {
		doy := make([]int, len(part))
		for i := range part {
			doy[i] = part[i].Date.YearDay()
			covered[m.lake.year(number(part[i].Date))] = true
		}
		f.doy = append(f.doy, doy)
		f.first = append(f.first, number(part[0].Date))
	}
	known := map[int]bool{}
	for _, w := range seen.Winters {
		if _, ok := f.winters[w.Year]; ok {
			return nil, &measure.Error{Field: "winters seen", Text: fmt.Sprint(w.Year), Class: measure.ErrName, Why: "is given twice"}
		}
		f.winters[w.Year] = w
		if covered[w.Year] && !(w.On.IsZero() && w.Out.IsZero()) {
			known[w.Year] = true
		}
	}
	for _, h := range seen.Holes {
		if err := h.check(); err != nil {
			return nil, err
		}
		n := number(h.Date)
		f.holes[n] = append(f.holes[n], h)
		y := m.lake.year(n)
		f.inYear[y]++
		if covered[y] {
			known[y] = true
		}
	}
	if len(known) < fewestWinters {
		return nil, &measure.Error{Field: "winters seen", Value: float64(len(known)), Class: measure.ErrUnknown, Why: "a fit needs three winters or more that both the record of the air and the dates or holes cover"}
	}
	for y := range known {
		f.last = max(f.last, y)
		f.years = append(f.years, y)
	}
	slices.Sort(f.years)
	f.lo, f.hi = math.MinInt, math.MaxInt
	return f, nil
}

// split cuts a record at its gaps. Days out of order or impossible are errors.
func split(days []Day) ([][]Day, error) {
	var out [][]Day
	from := 0
	for i := range days {
		if err := days[i].check(); err != nil {
			return nil, err
		}
		if i == 0 || days[i].Date == days[i-1].Date.Add(24*time.Hour) && days[i].Date.Location() == time.UTC {
			continue
		}
		step := number(days[i].Date) - number(days[i-1].Date)
		if step < 1 {
			return nil, order(days[i].Date, "is not after the day before it")
		}
		if step > 1 {
			out = append(out, days[from:i])
			from = i
		}
	}
	if len(days) > from {
		out = append(out, days[from:])
	}
	return out, nil
}

// weight of a winter by its age.
func (f *fitting) weight(year int) float64 {
	if year < f.lo || year > f.hi {
		return 0
	}
	if f.half == 0 {
		return 1
	}
	return math.Exp2(float64(year-f.last) / f.half)
}

// compare runs the params over the record and hands over each misfit with its
// weight: days, or metres.
func (f *fitting) compare(p Params, give func(kind int, weight, e float64)) {
	m := f.m.with(p)
	for k, part := range f.parts {
		s := begin(part)
		year, spell, on, out, from := math.MinInt, 0, 0, 0, 0
		flush := func(to int) {
			w, ok := f.winters[year]
			// Winters that the part does not cover from autumn to summer are left out.
			if !ok || to-from < 330 {
				return
			}
			g := f.weight(year)
			if !w.On.IsZero() {
				e := 60.0 // no ice at all where there was
				if on != 0 {
					e = float64(on - number(w.On))
				}
				give(isOn, g, e)
			}
			if !w.Out.IsZero() && out != 0 {
				give(isOut, g, float64(out-number(w.Out)))
			}
		}
		for i := range part {
			n := f.first[k] + i
			if y := f.m.lake.year(n); y != year {
				flush(n)
				year, spell, on, out, from = y, 0, 0, 0, n
			}
			m.c.step(&s, &part[i], m.sun[f.doy[k][i]])
			if s.ice {
				spell++
				out = n + 1
				if spell == lasting && on == 0 {
					on = n - lasting + 1
				}
			} else {
				spell = 0
			}
			for _, h := range f.holes[n] {
				give(isHole, f.weight(year)/float64(f.inYear[year]), s.clear+s.white-h.total())
			}
		}
		flush(f.first[k] + len(part))
	}
}

// bendAll fits group after group, in three rounds since ice-on moves the rest.
func (f *fitting) bendAll(ctx context.Context, start Params) (Params, error) {
	keep := make([]bool, len(bends))
	if n := len(f.years); n >= 9 {
		split := f.years[2*n/3]
		for i, block := range bends {
			f.lo, f.hi = math.MinInt, split-1
			p, err := f.bend(ctx, start, start, block, 90)
			if err != nil {
				return start, err
			}
			f.lo, f.hi = split, math.MaxInt
			keep[i] = !(f.cost(p) < f.cost(start))
		}
		f.lo, f.hi = math.MinInt, math.MaxInt
	}
	p := start
	for round := range 3 {
		for i, block := range bends {
			if keep[i] {
				continue
			}
			var err error
			if p, err = f.bend(ctx, start, p, block, 90-20*round); err != nil {
				return start, err
			}
		}
	}
	return p, nil
}

// bend fits one group of params from where they are.
func (f *fitting) bend(ctx context.Context, start, from Params, block []bend, rounds int) (Params, error) {
	bent := func(x []float64) Params {
		q := from
		for i, b := range block {
			b.do(&q, x[i]*b.sd)
		}
		return q
	}
	x, err := simplex(ctx, len(block), rounds, func(x []float64) float64 {
		q := bent(x)
		if q.check() != nil {
			return math.Inf(1)
		}
		return ours*f.cost(q) + f.distance(start, q)
	})
	if err != nil {
		return from, err
	}
	return bent(x), nil
}

func (f *fitting) cost(p Params) float64 {
	sum := 0.0
	f.compare(p, func(kind int, g, e float64) {
		x := math.Abs(e) / 5
		if kind == isHole {
			x = math.Abs(e) / 0.08
			if e > 0 {
				g *= 2
			}
		}
		if x < 2.5 {
			sum += g * x * x
		} else {
			sum += g * (5*x - 6.25)
		}
	})
	return sum
}

// distance is the squared departure from the start in units of the spread
// between lakes.
func (f *fitting) distance(start, p Params) float64 {
	ratio := func(a, b, sd float64) float64 {
		if a <= 0 || b <= 0 {
			return 0
		}
		x := math.Log(a/b) / sd
		return x * x
	}
	d := (p.SkinPoint - start.SkinPoint) / 1.5
	w := (p.WaterLoss - start.WaterLoss) / 15
	return d*d + w*w +
		ratio(p.Exchange, start.Exchange, 0.3) + ratio(p.Mixing, start.Mixing, 0.5) + ratio(p.Frost, start.Frost, 0.5) +
		ratio(p.Catch, start.Catch, 0.3) + ratio(p.OldConductivity, start.OldConductivity, 0.3) +
		ratio(p.IceExchange, start.IceExchange, 0.3) + ratio(p.WaterHeat, start.WaterHeat, 0.5) + ratio(p.Bridge, start.Bridge, 0.7) +
		ratio(p.MeltExchange, start.MeltExchange, 0.4) + ratio(p.MeltLoss, start.MeltLoss, 0.4) +
		ratio(p.SnowSun, start.SnowSun, 0.4) + ratio(p.IceSun, start.IceSun, 0.4) + ratio(p.Cover, start.Cover, 0.5)
}

// simplex minimises f from 0 with a simplex of unit steps (Nelder and Mead
// 1965: reflect, expand, contract, shrink), stopped by a count. The cost has
// steps, since dates are whole days, so no derivative would serve.
func simplex(ctx context.Context, n, rounds int, f func([]float64) float64) ([]float64, error) {
	type point struct {
		x []float64
		y float64
	}
	at := func(x []float64) point { return point{x, f(x)} }
	ps := make([]point, 0, n+1)
	for i := range n + 1 {
		x := make([]float64, n)
		if i > 0 {
			x[i-1] = 1
		}
		ps = append(ps, at(x))
	}
	for range rounds {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		slices.SortStableFunc(ps, func(a, b point) int {
			switch {
			case a.y < b.y:
				return -1
			case a.y > b.y:
				return 1
			}
			return 0
		})
		worst := ps[n]
		mid := make([]float64, n)
		for _, p := range ps[:n] {
			for i, x := range p.x {
				mid[i] += x / float64(n)
			}
		}
		along := func(t float64) point {
			x := make([]float64, n)
			for i := range x {
				x[i] = mid[i] + t*(worst.x[i]-mid[i])
			}
			return at(x)
		}
		r := along(-1)
		switch {
		case r.y < ps[0].y:
			if e := along(-2); e.y < r.y {
				r = e
			}
			ps[n] = r
		case r.y < ps[n-1].y:
			ps[n] = r
		default:
			t := 0.5
			if r.y < worst.y {
				t = -0.5
			}
			if c := along(t); c.y < math.Min(r.y, worst.y) {
				ps[n] = c
				continue
			}
			for k := 1; k <= n; k++ {
				x := make([]float64, n)
				for i := range x {
					x[i] = (ps[0].x[i] + ps[k].x[i]) / 2
				}
				ps[k] = at(x)
			}
		}
	}
	best := ps[0]
	for _, p := range ps {
		if p.y < best.y {
			best = p
		}
	}
	return best.x, nil
}
