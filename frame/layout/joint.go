package layout

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

const (
	// bite is how deep two parts may be drawn into each other before it is called
	// a conflict: half of what stock varies by in thickness. Our choice.
	bite = measure.Inch / 16
	// near is the longest gap at the end of a piece that is taken for a slip of the
	// tape and no overhang. Our choice.
	near = 3 * measure.Inch
	tiny = 1e-9
)

// A joint is where two pieces cross or one butts on the other.
type joint struct {
	p, q int
	at   Point
	// end is which end of p butts on q, -1 the one of the lesser coordinate; 0
	// where they cross one above the other.
	end int
}

// join finds the joints of all pieces, and the ends that miss.
func (l *Layout) join() {
	met := make([]bool, len(l.bars))
	for i := range l.bars {
		for j := range i {
			l.meet(j, i, met)
		}
	}
	for i, ok := range met {
		if ok || len(l.bars) == 1 {
			continue
		}
		best, gap := -1, math.Inf(1)
		for j, b := range l.bars {
			if j == i || !l.Drawing.Pieces[j].Kind.carries() {
				continue
			}
			g := gaps(l.bars[i], b)
			if d := math.Hypot(math.Hypot(math.Max(0, g[0]), math.Max(0, g[1])), math.Max(0, g[2])); d < gap {
				best, gap = j, d
			}
		}
		if best >= 0 {
			l.conflict(Apart, l.name(i), l.name(best), math.Max(gap-l.Drawing.Room.Butt, bite), "no other piece is as near")
		}
	}
	l.spliced()
}

// meet looks at one pair of pieces.
func (l *Layout) meet(i, j int, met []bool) {
	a, b := l.bars[i], l.bars[j]
	butt := l.Drawing.Room.Butt + tiny
	carry := [2]bool{l.Drawing.Pieces[i].Kind.carries(), l.Drawing.Pieces[j].Kind.carries()}
	g := gaps(a, b)
	if g[0] < -bite && g[1] < -bite && g[2] < -bite {
		deep := math.Min(-g[0], math.Min(-g[1], -g[2]))
		l.conflict(Overlaps, l.name(i), l.name(j), deep, "both are drawn in one place")
	}
	if carry[0] != carry[1] { // something fixed to a piece that carries
		if math.Max(g[0], math.Max(g[1], g[2])) <= butt {
			fixed, host := i, j
			if carry[0] {
				fixed, host = j, i
			}
			met[fixed] = true
			l.hosts[fixed] = append(l.hosts[fixed], host)
		}
		return
	}
	if !carry[0] || a.axis == b.axis || g[2] > butt {
		return
	}
	ga, gb := g[a.axis], g[b.axis] // how a's run misses b's footprint, and b's run a's
	where := a.point(b.c)
	add := func(p, q, end int) {
		l.joints = append(l.joints, joint{p: p, q: q, at: where, end: end})
		met[i], met[j] = true, true
	}
	end := func(b bar, c float64) int {
		if math.Abs(b.lo-c) < math.Abs(b.hi-c) {
			return -1
		}
		return 1
	}
	level := g[2] < -butt // side by side, not one above the other
	switch {
	case level && ga >= -bite && ga <= butt && gb < -bite:
		add(i, j, end(a, b.c))
	case level && gb >= -bite && gb <= butt && ga < -bite:
		add(j, i, end(b, a.c))
	case ga < -bite && gb < -bite:
		add(i, j, 0)
	case level && ga > butt && ga <= near && gb < -bite:
		l.short(Apart, l.name(i), l.name(j), ga, l.Drawing.Room.Butt, practice, "the butt is open")
	case level && gb > butt && gb <= near && ga < -bite:
		l.short(Apart, l.name(j), l.name(i), gb, l.Drawing.Room.Butt, practice, "the butt is open")
	}
}

// spliced compares the splices of neighbouring plies.
func (l *Layout) spliced() {
	least := l.Drawing.Room.Stagger
	for i := range l.Drawing.Pieces {
		p := &l.Drawing.Pieces[i]
		for k, s := range p.Splices {
			if s.Ply == 0 && p.Plies > 1 && !s.Carries {
				l.short(SplicesClose, p.Name, p.Name, 0, least, practice, "all plies end at one place")
			}
			for _, o := range p.Splices[:k] {
				gap := math.Abs(s.At - o.At)
				neighbours := s.Ply != 0 && o.Ply != 0 && (s.Ply-o.Ply == 1 || o.Ply-s.Ply == 1)
				if neighbours && least-gap > tiny {
					l.short(SplicesClose, p.Name, p.Name, gap, least, practice, fmt.Sprintf("plies %d and %d", o.Ply, s.Ply))
				}
			}
		}
	}
}
