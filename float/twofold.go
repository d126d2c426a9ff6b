package float

import "math"

// A twofold is a number in two parts, the sum of which it is: a product, a sum
// or a root without its rounding.
type twofold struct{ hi, lo float64 }

func (a twofold) times(b float64) twofold {
	p := float64(a.hi * b) // rounded here, not fused into a sum
	return twofold{p, math.FMA(a.hi, b, -p) + float64(a.lo*b)}
}

func (a twofold) by(b twofold) twofold {
	p := a.times(b.hi)
	p.lo += float64(a.hi * b.lo)
	return p
}

// less returns a - b for numbers of which a is the larger.
func (a twofold) less(b twofold) twofold {
	s := a.hi - b.hi
	return twofold{s, (a.hi - s) - b.hi + a.lo - b.lo}
}

func (a twofold) root() twofold {
	if !(a.hi > 0) {
		return twofold{}
	}
	s := math.Sqrt(a.hi)
	return twofold{s, (math.FMA(-s, s, a.hi) + a.lo) / (2 * s)}
}

func (a twofold) value() float64 { return a.hi + a.lo }

// π and the leading term 2√2/3 of a segment's factor, in two parts.
var (
	twofoldPi   = twofold{math.Pi, 1.2246467991473531772e-16}
	twofoldLead = twofold{chordSeries[0][0], lead(chordSeries[0][0])}
)

// lead returns what the rounded c lacks of √2/1.5: c² should be 8/9.
func lead(c float64) float64 {
	sq := float64(c * c)
	low := math.FMA(c, c, -sq)
	// 8/9 in two parts: 8/9 - fl(8/9) = -fma(9, fl(8/9), -8)/9.
	want := 8. / 9
	rest := -math.FMA(9, want, -8) / 9
	return ((want - sq) + (rest - low)) / (2 * c)
}

// segmentVolume returns r² l A(depth/r) for 0 ≤ depth ≤ r:
//
//	2 l depth √(depth r) factor(depth/r)
func segmentVolume(r, l, depth float64) twofold {
	v := twofold{depth, 0}.times(r).root().by(twofold{2 * l, 0}.times(depth))
	sum := segmentTail(depth / r)
	f := twofoldLead.hi + sum
	return v.by(twofold{f, twofoldLead.hi - f + sum + twofoldLead.lo})
}
