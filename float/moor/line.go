package moor

import (
	"errors"
	"math"

	"example.org/floewright/lumber/measure"
)

// maxPieces is the most pieces a line may have.
const maxPieces = 8

// ErrReach reports a line that cannot reach: its ends lie as far apart as its
// unstretchable length, or farther.
var ErrReach = errors.New("the line is too short to reach")

// A Piece is one length of chain, rope or wire in a line. Weight and Stretch are not in the
// tables of [Lookup], which know strengths alone: they come from the maker's sheet of that
// very rope or chain, or a scale and a tape.
//
// A sheet gives mass per metre in air. A piece that hangs in air weighs that times g,
// [measure.Gravity]; one in water less by what it displaces, the share of water's density in
// its own (Archimedes): chain keeps seven eighths. Of Stretch a sheet says how many per cent a
// rope gains at some tension, and EA is that tension over the share; wet nylon gives more than
// dry.
type Piece struct {
	Gear    Gear    // its strength; the zero value answers nothing
	Length  float64 // m, unstretched
	Weight  float64 // N/m as it hangs, in water or in air; floating rope counts as 0
	Stretch float64 // N, tension over relative stretch (EA); 0: does not stretch
	Clump   float64 // N as it hangs; a weight on the line at the piece's dock end
}

// A Line runs from the ground, an anchor or a point on the shore, to the dock
// in pieces, the first at the ground.
//
// Each piece hangs in a catenary, stretching in proportion to its tension. A
// line to an anchor rests where it can on a flat frictionless bottom at the
// anchor's height; a shore line hangs free between its ends. Neglected: drag
// of the water, bending stiffness, slope of the bottom. A line holds at most 8
// pieces and has weight or stretch. A weight on the line hangs between two pieces.
type Line struct {
	Pieces []Piece
	Shore  bool // no bottom under it: a line through the air to a tree or a wall
}

// A Regime is the state a line hangs in.
type Regime int

// The regimes, from slack to bar-tight.
const (
	Slack    Regime = iota // no pull: it hangs straight down, the rest lies about
	Touching               // part of it lies on the bottom
	Lifted                 // all of it hangs
	Taut                   // longer than made: its ends are farther apart than its unstretched length
)

// String returns "slack", "touching", "lifted" or "taut".
func (r Regime) String() string {
	switch r {
	case Touching:
		return "touching"
	case Lifted:
		return "lifted"
	case Taut:
		return "taut"
	}
	return "slack"
}

// A Hang is a line hanging at rest.
type Hang struct {
	Regime Regime
	Reach  float64 // m, from the ground end to the dock end, level
	Rise   float64 // m, of the dock end above the ground end
	Pull   float64 // N, level; the same all along the line
	Down   float64 // N, what the line pulls the dock down with; negative: up
	Lift   float64 // N, what it pulls the ground end up with; 0 where chain lies on the bottom
	Lying  float64 // m of its unstretched length on the bottom

	// Stiffness is how Pull and Down grow with Reach and Rise, N/m; it is
	// symmetric. Across the line the stiffness is Pull/Reach.
	Stiffness [2][2]float64
}

// Tension returns the tension at the dock end, N, of its pull and Down: statics.
func (h Hang) Tension() float64 { return math.Hypot(h.Pull, h.Down) }

// GroundTension returns the tension at the ground end, N, of its pull and Lift: statics.
func (h Hang) GroundTension() float64 { return math.Hypot(h.Pull, h.Lift) }

// Angle returns the angle of the line at the dock end below the level, rad, by
// statics; π/2 where it hangs slack.
func (h Hang) Angle() float64 { return steep(h.Down, h.Pull) }

// GroundAngle returns the angle of the line at the ground end above the level,
// rad, by statics; 0 where it lies on the bottom or has no pull.
func (h Hang) GroundAngle() float64 { return steep(h.Lift, h.Pull) }

func steep(v, h float64) float64 {
	if v == 0 {
		return 0
	}
	return math.Atan2(v, h)
}

// totals are the sums over a line's pieces.
type totals struct{ length, weight, give float64 } // give: stretch per newton, m/N

// check finds the line's malformed fields and returns the totals.
func (l *Line) check() (totals, error) {
	var t totals
	if n := len(l.Pieces); n < 1 || n > maxPieces {
		return t, &measure.Error{
			Field: "pieces of the line", Value: float64(n), Class: measure.ErrRange,
			Range: measure.Range{Lo: 1, Hi: maxPieces, Source: srcOwn},
		}
	}
	for i := range l.Pieces {
		p := &l.Pieces[i]
		// One comparison decides the ordinary case; the errors are named after.
		if !(p.Length >= positiveLength.Lo && p.Length <= positiveLength.Hi && (p.Weight == 0 || p.Weight >= lightest && p.Weight <= 1e6) &&
			(p.Stretch == 0 || p.Stretch >= softest && p.Stretch <= 1e12) && p.Clump >= 0 && p.Clump <= 1e8) || p.Clump > 0 && i == len(l.Pieces)-1 {
			return t, p.fault()
		}
		t.length += p.Length
		t.weight += p.Length*p.Weight + p.Clump
		if p.Stretch > 0 {
			t.give += p.Length / p.Stretch
		}
	}
	if t.weight == 0 && t.give == 0 {
		return t, &measure.Error{
			Field: "weight and stretch of the line", Why: "both are 0, so its pull would jump from nothing to any size",
			Want: "a weight per length or a stretch", Class: measure.ErrUnknown,
		}
	}
	return t, nil
}

// Less than that no rope weighs, N/m, and no rubber holds, N.
const lightest, softest = 1e-9, 1e-3

func (p *Piece) fault() error {
	return first(
		positiveLength.Check("length of a piece", p.Length),
		nothingOr(measure.Range{Kind: measure.LineLoad, Lo: lightest, Hi: 1e6, Source: srcSense}, "weight of a piece", p.Weight),
		nothingOr(measure.Range{Kind: measure.Force, Lo: softest, Hi: 1e12, Source: srcSense}, "stretch of a piece", p.Stretch),
		measure.Range{Kind: measure.Force, Lo: 0, Hi: 1e8, Source: srcSense}.Check("weight on the line", p.Clump),
		&measure.Error{
			Field: "weight on the line", Kind: measure.Force, Value: p.Clump, Class: measure.ErrRange, Range: measure.Range{Kind: measure.Force},
			Want: "none at the dock end of the last piece: it would hang on the dock",
		},
	)
}

// load returns the weight per length the formulas use. A piece without weight
// beside others with weight gets a thousandth of a newton a metre, so that a
// loose one has a shape; none gets less than a millionth, on which the search
// would take long.
func (p *Piece) load() float64 {
	if p.Weight == 0 {
		return 1e-3
	}
	return math.Max(p.Weight, 1e-6)
}

// checkRise refuses ends that the model does not know.
func (l *Line) checkRise(rise float64) error {
	if l.Shore {
		return anyLength.Check("rise", rise)
	}
	return positiveLength.Check("rise", rise)
}

// Tension returns the greatest tension in piece i of a line hanging as h, N, by
// statics: the greater of its two ends.
func (l *Line) Tension(i int, h Hang) (float64, error) {
	if _, err := l.check(); err != nil {
		return 0, err
	}
	if i < 0 || i >= len(l.Pieces) {
		return 0, &measure.Error{
			Field: "piece", Value: float64(i), Class: measure.ErrRange,
			Range: measure.Range{Lo: 0, Hi: float64(len(l.Pieces) - 1), Source: srcSense},
		}
	}
	if err := first(anyPull.Check("pull", h.Pull), anyPull.Check("down", h.Down)); err != nil {
		return 0, err
	}
	return l.tension(i, h), nil
}

func (l *Line) tension(i int, h Hang) float64 {
	v := h.Down
	for k := len(l.Pieces) - 1; k > i; k-- {
		v -= l.Pieces[k].Clump + l.Pieces[k].load()*l.Pieces[k].Length
	}
	p := &l.Pieces[i]
	v -= p.Clump
	low := v - p.load()*p.Length
	if !l.Shore {
		v, low = math.Max(v, 0), math.Max(low, 0)
	}
	return math.Hypot(h.Pull, math.Max(math.Abs(v), math.Abs(low)))
}

// Dip returns how far the lowest point of a line hanging as h lies below its dock
// end, m: a shore line that dips farther than its cleat stands above the water hangs
// in it. It is exact for the catenary of [Line.At]. It is 0 where the line only
// climbs from the dock.
func (l *Line) Dip(h Hang) (float64, error) {
	if _, err := l.check(); err != nil {
		return 0, err
	}
	if err := first(anyPull.Check("pull", h.Pull), anyPull.Check("down", h.Down), l.checkRise(h.Rise)); err != nil {
		return 0, err
	}
	if !l.Shore {
		return h.Rise, nil
	}
	return l.dip(h), nil
}

func (l *Line) dip(h Hang) float64 {
	dip, v := 0.0, h.Down
	for i := len(l.Pieces) - 1; i >= 0; i-- {
		p := &l.Pieces[i]
		v -= p.Clump
		if v <= 0 {
			return dip
		}
		low, s := v-p.load()*p.Length, p.Length
		if low < 0 {
			low, s = 0, v/p.load()
		}
		dip += s * (v + low) / (math.Hypot(h.Pull, v) + math.Hypot(h.Pull, low))
		if p.Stretch > 0 {
			dip += s * (v + low) / (2 * p.Stretch)
		}
		v = low
		if low == 0 {
			return dip
		}
	}
	return dip
}
